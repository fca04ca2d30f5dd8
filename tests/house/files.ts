import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** The project's folder. */
export const root = join(import.meta.dirname, "..", "..");

/** Paths, relative to the root, of the TypeScript files below a room. */
export function sources(room: string): string[] {
  if (!existsSync(join(root, room))) return [];
  return readdirSync(join(root, room), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts") && !entry.name.endsWith(".d.ts"))
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(root.length + 1)
        .replaceAll("\\", "/"),
    )
    .filter((path) => !path.includes("node_modules"))
    .sort();
}

/** Text of a file by its path from the root. */
export const textOf = (path: string): string => readFileSync(join(root, path), "utf8");
