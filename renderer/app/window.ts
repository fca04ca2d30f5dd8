import { signal } from "@preact/signals";

/** A window over the sheet, if one is open. */
export type AppWindow = "settings" | "keys" | "glossary";

export const openWindow = signal<AppWindow | null>(null);

export const toggleWindow = (name: AppWindow): void => {
  openWindow.value = openWindow.value === name ? null : name;
};

/** One line at the foot of the top bar: what was saved, opened, refused or restored. */
export const notice = signal<{ readonly text: string; readonly grave: boolean } | null>(null);

export const tell = (text: string, grave = false): void => {
  notice.value = { text, grave };
};
