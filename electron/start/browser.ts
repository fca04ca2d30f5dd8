import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

/** Programs of the Chromium family under their general names; any other is named by CHROME_PATH. */
const COMMANDS = ["chromium", "chromium-browser", "chrome"];

const MAC = ["/Applications/Chromium.app/Contents/MacOS/Chromium"];

const WINDOWS = [["Chromium", "Application", "chrome.exe"]];

/**
 * An installed browser that can show one page without its own frame.
 * @param env CHROME_PATH, when set, is the only one looked for
 * @returns its full path, or null
 */
export function findBrowser(
  platform: NodeJS.Platform,
  env: NodeJS.ProcessEnv,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const wanted = env.CHROME_PATH ? [env.CHROME_PATH] : places(platform, env);
  return wanted.find(exists) ?? null;
}

function places(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): string[] {
  if (platform === "darwin") return MAC;
  if (platform === "win32") {
    const roots = [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA];
    return roots.flatMap((root) => (root ? WINDOWS.map((parts) => join(root, ...parts)) : []));
  }
  const folders = (env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return COMMANDS.flatMap((command) => folders.map((folder) => join(folder, command)));
}

/**
 * How the browser is started.
 * @param url page to show
 * @param profile empty folder of its own, so that the process ends with its window and touches nobody's settings
 * @param withoutSandbox for Linux's administrator
 */
export function browserWords(url: string, profile: string, withoutSandbox: boolean): string[] {
  return [
    `--app=${url}`,
    `--user-data-dir=${profile}`,
    "--no-first-run",
    "--no-default-browser-check",
    "--disable-sync",
    "--window-size=1600,900",
    ...(withoutSandbox ? ["--no-sandbox"] : []),
  ];
}
