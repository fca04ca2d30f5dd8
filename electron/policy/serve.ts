import { readFile } from "node:fs/promises";
import { extname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { codeOf } from "../files/faults.ts";
import { SECURITY_HEADERS } from "./csp.ts";
import { originOf } from "./origin.ts";

/** What is asked of the program's own files. */
export interface FileRequest {
  readonly method: string;
  /** The whole address. */
  readonly url: string;
}

/** The answer, for the own protocol as for the loopback server. */
export interface FileAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".csv": "text/csv; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/vnd.microsoft.icon",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".wasm": "application/wasm",
};

/**
 * The file that an address means.
 * @param root folder of the build, full path
 * @param url whole address; only its path counts here
 * @returns null when it leads outside the root or is no plain path
 */
export function fileFor(root: string, url: string): string | null {
  const path = decoded(url);
  if (path === null || /[\\\0:]/.test(path)) return null;
  return within(root, `.${path.endsWith("/") ? `${path}index.html` : path}`);
}

/**
 * A path below a folder.
 * @returns null for one that leads outside it, or to the folder itself
 */
export function within(root: string, path: string): string | null {
  const inside = relative(root, resolve(root, path));
  const outside = inside === "" || inside === ".." || inside.startsWith(`..${sep}`) || isAbsolute(inside);
  return outside ? null : join(root, inside);
}

function decoded(url: string): string | null {
  try {
    const { pathname } = new URL(url);
    // An encoded separator is never ours.
    return /%2f|%5c/i.test(pathname) ? null : decodeURIComponent(pathname || "/");
  } catch {
    return null;
  }
}

/**
 * Answers a request for the program's own files: GET only, exact origin, inside the root.
 * @param origin the one that is served
 */
export async function answer(request: FileRequest, root: string, origin: string): Promise<FileAnswer> {
  if (originOf(request.url) !== origin) return refusal(403, "This host is not served.");
  if (request.method !== "GET") return refusal(405, "Only GET is served.", { Allow: "GET" });
  const file = fileFor(root, request.url);
  if (file === null) return refusal(403, "This path is not served.");
  try {
    const body = await readFile(file);
    const type = TYPES[extname(file).toLowerCase()] ?? "application/octet-stream";
    return { status: 200, headers: { ...SECURITY_HEADERS, "Content-Type": type }, body };
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
    return refusal(404, "There is no such file.");
  }
}

const refusal = (status: number, text: string, extra: Readonly<Record<string, string>> = {}): FileAnswer => ({
  status,
  headers: { ...SECURITY_HEADERS, ...extra, "Content-Type": "text/plain; charset=utf-8" },
  body: new TextEncoder().encode(`${text}\n`),
});
