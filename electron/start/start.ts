import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { browserWords, findBrowser } from "./browser.ts";
import { run } from "./children.ts";
import { electronRuntime, hasScreen, isRootOnLinux } from "./runtime.ts";
import { serveLoopback } from "./server.ts";

/** What the launcher stands in. */
export interface Around {
  /** The project's folder. */
  readonly root: string;
  readonly platform: NodeJS.Platform;
  readonly env: NodeJS.ProcessEnv;
  readonly uid: number | undefined;
  /** Writes one line for the person. */
  readonly say: (line: string) => void;
  /** Ctrl-C. */
  readonly stop: AbortSignal;
}

/** An Electron that ends sooner than this, s, with an error did not start. */
const STILLBORN = 5;

/**
 * Opens the built app: in Electron when its runtime is here, else in a browser, else it prints the address.
 * @param words behind `npm start --`: `--no-open` to serve only, or project files
 * @returns exit code
 */
export async function start(words: readonly string[], around: Around): Promise<number> {
  const unknown = words.find((word) => word.startsWith("-") && word !== "--no-open");
  if (unknown !== undefined) {
    around.say(`Unknown option ${unknown}. Options: --no-open, or the path of a project file.`);
    return 2;
  }
  if (words.includes("--no-open")) return serve(null, "Serving only", around);
  const noScreen = !hasScreen(around.platform, around.env);
  if (noScreen) return serve(null, "There is no screen here", around);
  const runtime = electronRuntime(around.root);
  if ("why" in runtime) return serve(browser(around), runtime.why, around);
  const ended = await run(runtime.binary, electronWords(words, around), true, around.stop);
  if (around.stop.aborted || ended.code === 0 || ended.seconds > STILLBORN) return ended.code ?? 0;
  return serve(browser(around), `Electron did not start (exit code ${ended.code ?? "none"})`, around);
}

const withoutSandbox = ({ platform, uid }: Around): boolean => isRootOnLinux(platform, uid);

const browser = ({ platform, env }: Around): string | null => findBrowser(platform, env);

const electronWords = (words: readonly string[], around: Around): string[] => [
  ...(withoutSandbox(around) ? ["--no-sandbox"] : []),
  around.root,
  ...words,
];

/** @param why Electron is not used */
async function serve(binary: string | null, why: string, around: Around): Promise<number> {
  const page = join(around.root, "dist", "renderer");
  if (!existsSync(join(page, "index.html"))) throw new Error("dist/renderer holds no page");
  const server = await serveLoopback(page);
  try {
    const how = binary ? "the app opens in a browser from" : "open in a browser:";
    around.say(`${why}; ${how} ${server.url}`);
    if (binary && (await show(binary, server.url, around))) return 0;
    if (binary && !around.stop.aborted)
      around.say(`The browser did not start; open it yourself: ${server.url}`);
    await stopped(around.stop);
    return 0;
  } finally {
    await server.close();
  }
}

/** @returns whether the browser was there and its window was closed, or we were told to stop */
async function show(binary: string, url: string, around: Around): Promise<boolean> {
  const profile = await mkdtemp(join(tmpdir(), "trishaft-"));
  try {
    const ended = await run(binary, browserWords(url, profile, withoutSandbox(around)), false, around.stop);
    return around.stop.aborted || ended.code === 0 || ended.seconds > STILLBORN;
  } finally {
    // Its helpers may still be writing for a moment.
    await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 }).catch(() => {});
  }
}

const stopped = (stop: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    if (stop.aborted) resolve();
    else stop.addEventListener("abort", () => resolve(), { once: true });
  });

export { electronRuntime, hasScreen, isRootOnLinux } from "./runtime.ts";
