import type { DesktopBridge, MenuCommand } from "../../../shared/bridge.ts";

/** A bridge in surroundings that the test plays the person in. */
export interface BridgeWorld {
  readonly bridge: DesktopBridge;
  /** Puts a file there. */
  put(name: string, content: string | Uint8Array): Promise<void>;
  /** What a file holds; undefined when there is none. */
  contentOf(name: string): Promise<string | undefined>;
  /** Takes a file away behind the program's back. */
  vanish(name: string): Promise<void>;
  /** The next window for choosing files is answered with this name, or closed. */
  answerWith(name: string | null): void;
  /** From now on nothing can be written. */
  breakWriting(): Promise<void>;
  /** A person picks a menu entry or presses its key. */
  command(command: MenuCommand): void;
}
