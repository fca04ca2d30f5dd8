import { z } from "zod";
import type { TextStore } from "./autosave.ts";

const schema = z.object({
  theme: z.enum(["system", "light", "dark"]).default("system").catch("system"),
  projector: z.boolean().default(false).catch(false),
  shaftUnit: z.enum(["rpm", "radps"]).default("rpm").catch("rpm"),
  roadUnit: z.enum(["kmh", "mph"]).default("kmh").catch("kmh"),
  singleKeys: z.boolean().default(true).catch(true),
  slowing: z.number().min(1).max(200).default(120).catch(120),
});

/** What one person likes, on this device. No project keeps it. */
export type Preferences = z.infer<typeof schema>;

export const PREFERENCES_KEY = "trishaft.preferences";

/** Preferences as kept; whatever is broken takes its default. */
export function readPreferences(store: TextStore): Preferences {
  try {
    return schema.parse(JSON.parse(store.getItem(PREFERENCES_KEY) ?? "{}"));
  } catch {
    return schema.parse({});
  }
}

/** Keeps them, as far as the store allows. */
export function keepPreferences(store: TextStore, preferences: Preferences): void {
  try {
    store.setItem(PREFERENCES_KEY, JSON.stringify(preferences));
  } catch {
    // A store that is full or switched off: the preferences last until the window closes.
  }
}
