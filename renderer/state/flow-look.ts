import { signal } from "@preact/signals";

/** What the flow sheet shows: the powers of the instant, or the energies since the start. */
export const flowShows = signal<"power" | "energy">("power");

/** What its scale holds: the largest moment of the run, or this moment. */
export const flowScale = signal<"run" | "moment">("run");

/** Unit that energies are shown in: joule takes kJ or MJ. */
export const energyUnit = signal<"joule" | "kwh">("joule");
