export { CyclesSheet as Sheet } from "./CyclesSheet.tsx";
export { CyclesStrip as Strip } from "./CyclesStrip.tsx";
export { CyclesTop as Top } from "./CyclesTop.tsx";

/** Cycles has no single keys of its own. */
export const key = (): boolean => false;
