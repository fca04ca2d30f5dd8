import { z } from "zod";
import { MAX_EXPORT_BYTES, MAX_PROJECT_BYTES, MENU_COMMANDS } from "./bridge.ts";

/**
 * Every message between page and main process, both ways. A request has the name of the bridge's function and goes over
 * the one channel `REQUEST_CHANNEL`; each end parses what it gets.
 */

/** Carries `{ request, payload }` to the main process and the answer back. */
export const REQUEST_CHANNEL = "trishaft:request";

/** Tells the page of a menu command. */
export const MENU_CHANNEL = "trishaft:menu";

/** Tells the page of a file to open. */
export const OPEN_FILE_CHANNEL = "trishaft:open-file";

const id = z.string().min(1).max(100);
const projectText = z.string().max(MAX_PROJECT_BYTES);

/** A file's name without a folder: no separators, no control characters, not only dots. */
export const fileName = z
  .string()
  .min(1)
  .max(200)
  .refine((name) => !/[\\/:*?"<>|\p{Cc}]/u.test(name) && /[^.\s]/.test(name), "not a plain file name");

const extension = z.string().regex(/^[a-z0-9]+(\.[a-z0-9]+)*$/);
const kind = z.strictObject({
  title: z.string().min(1).max(80),
  mime: z.string().regex(/^[a-z]+\/[a-z0-9.+-]+$/),
  extensions: z.array(extension).min(1).max(5).readonly(),
});

const bytes = z.custom<Uint8Array>(
  (data) => data instanceof Uint8Array && data.byteLength <= MAX_EXPORT_BYTES,
  "not bytes, or too many",
);
const content = z.union([z.string().max(MAX_EXPORT_BYTES), bytes]);

const fileRef = z.strictObject({ id, name: z.string(), folder: z.string() });
const openedFile = fileRef.extend({ text: z.string() });
const writtenFile = fileRef.extend({ id: id.nullable() });
const fault = z.strictObject({
  what: z.string(),
  where: z.string(),
  value: z.string(),
  accepted: z.string(),
});
const windowInfo = z.strictObject({
  version: z.string(),
  commandKey: z.enum(["Ctrl", "⌘"]),
  savesInPlace: z.boolean(),
  reveals: z.boolean(),
  menuBar: z.boolean(),
});

const result = <T extends z.ZodType>(value: T) =>
  z.discriminatedUnion("status", [
    z.strictObject({ status: z.literal("ok"), value }),
    z.strictObject({ status: z.literal("cancelled") }),
    z.strictObject({ status: z.literal("failed"), fault }),
  ]);

const nothing = z.null();

/** Payload and answer of each request. */
export const REQUESTS = {
  windowInfo: { payload: nothing, answer: result(windowInfo) },
  open: { payload: nothing, answer: result(openedFile) },
  save: { payload: z.strictObject({ id, text: projectText }), answer: result(fileRef) },
  saveAs: {
    payload: z.strictObject({ suggestedName: fileName, text: projectText }),
    answer: result(fileRef),
  },
  recentFiles: { payload: nothing, answer: result(z.array(fileRef)) },
  openRecent: { payload: id, answer: result(openedFile) },
  forgetRecent: { payload: id, answer: result(z.array(fileRef)) },
  exportFile: {
    payload: z.strictObject({
      suggestedName: fileName,
      kinds: z.array(kind).min(1).max(5).readonly(),
      content,
    }),
    answer: result(writtenFile),
  },
  printToPdf: {
    payload: z.strictObject({ suggestedName: fileName, landscape: z.boolean() }),
    answer: result(writtenFile),
  },
  reveal: { payload: id, answer: result(nothing) },
  /** The page listens for files now; what waits is sent over `OPEN_FILE_CHANNEL`. */
  ready: { payload: nothing, answer: result(nothing) },
} as const;

/** Name of a request. */
export type RequestName = keyof typeof REQUESTS;

/** What a request carries, once parsed. */
export type Payload<N extends RequestName> = z.infer<(typeof REQUESTS)[N]["payload"]>;

/** What a request is answered with. */
export type Answer<N extends RequestName> = z.infer<(typeof REQUESTS)[N]["answer"]>;

/** What comes over `REQUEST_CHANNEL`, before the payload is looked at. */
export const envelope = z.strictObject({ request: z.string().max(40), payload: z.unknown() });

/** What comes over `MENU_CHANNEL`. */
export const menuMessage = z.enum(MENU_COMMANDS);

/** What comes over `OPEN_FILE_CHANNEL`. */
export const openFileMessage = result(openedFile);
