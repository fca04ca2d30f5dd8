import { computed, signal } from "@preact/signals";

/** Quantities that can be hidden before a class, to be predicted and revealed. */
export const HIDEABLE = [
  "road-speed",
  "engine-power",
  "sun-machine-power",
  "output-machine-power",
  "battery-power",
  "charge",
  "sun-speed",
  "carrier-speed",
  "ring-speed",
  "regime",
  "recovered",
  "fuel",
] as const;

export type HideableId = (typeof HIDEABLE)[number];

/** Whether the panel for asking is open. */
export const asking = signal(false);

/** What is asked for now, in the order in which it was chosen; a view shows "?" in its place. */
export const asked = signal<readonly HideableId[]>([]);

/** Whether the answers are shown; what was guessed stays beside them. */
export const revealed = signal(false);

/** Guesses, in SI; a regime by its id. */
export const guesses = signal<Readonly<Partial<Record<HideableId, number | string>>>>({});

/** What no view may show just now. */
export const hidden = computed<ReadonlySet<HideableId>>(
  () => new Set(asking.value && !revealed.value ? asked.value : []),
);
