import { signal } from "@preact/signals";

/** Whether the sheet of a run's figures is open: it shows their workings itself. */
export const figuresShown = signal(false);
