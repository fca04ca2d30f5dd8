import { z } from "zod";
import { readText } from "./files/read.ts";
import { writeWhole } from "./files/write.ts";

const MOST_BYTES = 1024 * 1024;

const bounds = z.strictObject({ x: z.int(), y: z.int(), width: z.int(), height: z.int() });

const windowState = z.strictObject({ bounds, maximized: z.boolean(), fullScreen: z.boolean() });

const settingsSchema = z.strictObject({
  /** Full paths, newest first. */
  recent: z.array(z.string()).max(100).default([]),
  window: windowState.nullable().default(null),
});

/** What the program keeps between two starts. */
export type Settings = z.infer<typeof settingsSchema>;

/** Where the window was. */
export type WindowState = z.infer<typeof windowState>;

const FIRST: Settings = { recent: [], window: null };

/** The settings' file. Losing it costs nothing but convenience, so no fault of it stops the program. */
export class SettingsFile {
  private settings: Settings = FIRST;
  private unwritten = 0;
  private writing: Promise<void> = Promise.resolve();

  /** @param path full path; the folder exists */
  constructor(private readonly path: string) {}

  /** Reads the file; one that is missing or damaged counts as empty. */
  async load(): Promise<Settings> {
    const read = await readText(this.path, MOST_BYTES);
    this.settings = "text" in read ? parse(read.text) : FIRST;
    return this.settings;
  }

  /** What was read or last set. */
  get now(): Settings {
    return this.settings;
  }

  /** Whether the file holds what was last set. */
  get isWritten(): boolean {
    return this.unwritten === 0;
  }

  /** Changes a part and writes it; two changes at once are written one after the other. */
  set(part: Partial<Settings>): void {
    this.settings = { ...this.settings, ...part };
    const text = `${JSON.stringify(this.settings, null, 2)}\n`;
    this.unwritten += 1;
    this.writing = this.writing.then(async () => {
      await writeWhole(this.path, text).catch(() => {});
      this.unwritten -= 1;
    });
  }

  /** Waits until everything set so far is written, or could not be. */
  async finished(): Promise<void> {
    while (!this.isWritten) await this.writing;
  }
}

function parse(text: string): Settings {
  try {
    return settingsSchema.parse(JSON.parse(text));
  } catch {
    return FIRST;
  }
}
