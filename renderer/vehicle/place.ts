export { VehicleSheet as Sheet } from "./VehicleSheet.tsx";
export { VehicleStrip as Strip } from "./VehicleStrip.tsx";
export { VehicleTop as Top } from "./VehicleTop.tsx";

/** Vehicle has no single keys of its own. */
export const key = (): boolean => false;
