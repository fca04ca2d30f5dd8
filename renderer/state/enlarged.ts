import { signal } from "@preact/signals";

/** Letter of the view that has the sheet's full height; null: all stand in their places. Nobody keeps it. */
export const enlarged = signal<string | null>(null);

/** Enlarges a view, or puts it back. */
export function toggleEnlarged(tag: string): void {
  enlarged.value = enlarged.value === tag ? null : tag;
}
