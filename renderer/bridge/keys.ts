import { COMMAND_KEYS, type MenuCommand } from "../../shared/bridge.ts";
import type { BrowserWindow, KeyPress } from "./browserWindow.ts";

/** Whether the keyboard has a ⌘ key that goes with letters. */
export const hasCommandKey = (page: BrowserWindow): boolean => /^(Mac|iP)/.test(page.navigator.platform);

/** The command a key press means; undefined for any other press. */
export function commandOf(press: KeyPress, withMeta: boolean): MenuCommand | undefined {
  const modifier = withMeta ? press.metaKey && !press.ctrlKey : press.ctrlKey && !press.metaKey;
  if (!modifier || press.altKey) return undefined;
  const key = press.key.toLowerCase();
  return COMMAND_KEYS.find((entry) => entry.key === key && entry.shift === press.shiftKey)?.command;
}

/** Tells of command keys. @returns stops listening */
export function listenToKeys(page: BrowserWindow, tell: (command: MenuCommand) => void): () => void {
  const withMeta = hasCommandKey(page);
  const listener = (press: KeyPress): void => {
    const command = commandOf(press, withMeta);
    if (command === undefined) return;
    press.preventDefault();
    tell(command);
  };
  page.addEventListener("keydown", listener);
  return () => page.removeEventListener("keydown", listener);
}
