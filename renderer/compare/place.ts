export { ComparePlace as Sheet, CompareStrip as Strip, CompareTop as Top } from "./ComparePlace.tsx";

/** Compare has no single keys of its own. */
export const key = (): boolean => false;
