import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Where the desktop program's runtime is, or why it cannot be used. */
export type Runtime = { readonly binary: string } | { readonly why: string };

/**
 * Looks for Electron's runtime the way its package does, but never fetches it.
 * @param root the project's folder
 */
export function electronRuntime(root: string): Runtime {
  const folder = join(root, "node_modules", "electron");
  const pathFile = join(folder, "path.txt");
  const dist = process.env.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, "dist");
  const name = existsSync(pathFile) ? readFileSync(pathFile, "utf8") : "electron";
  const binary = join(dist, name);
  if (existsSync(binary)) return { binary };
  return { why: "Electron's runtime is not here (`npx install-electron` fetches it)" };
}

/** Whether a window can be shown at all. */
export function hasScreen(platform: NodeJS.Platform, env: NodeJS.ProcessEnv): boolean {
  return platform !== "linux" || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** Whether this is Linux's administrator, for whom Chromium's sandbox does not start. */
export const isRootOnLinux = (platform: NodeJS.Platform, uid: number | undefined): boolean =>
  platform === "linux" && uid === 0;
