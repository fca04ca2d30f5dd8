import { computed, signal } from "@preact/signals";
import type { Units } from "./format.ts";
import type { Preferences } from "./preferences.ts";

/** What one person likes; set at the start from what the device kept. */
export const preferences = signal<Preferences>({
  theme: "system",
  projector: false,
  shaftUnit: "rpm",
  roadUnit: "kmh",
  singleKeys: true,
  slowing: 120,
});

/** Whether the system asks for dark, and for little motion. */
export const systemDark = signal(false);
export const reducedMotion = signal(false);

export const theme = computed<"light" | "dark">(() => {
  const { theme: chosen } = preferences.value;
  return chosen === "system" ? (systemDark.value ? "dark" : "light") : chosen;
});

export const projector = computed(() => preferences.value.projector);

export const units = computed<Units>(() => ({
  shaft: preferences.value.shaftUnit,
  road: preferences.value.roadUnit,
}));

/** Changes some of the preferences. */
export const prefer = (changed: Partial<Preferences>): void => {
  preferences.value = { ...preferences.value, ...changed };
};
