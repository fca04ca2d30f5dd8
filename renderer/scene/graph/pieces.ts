import type { PartId } from "../contract.ts";
import type { Body } from "../shape/body.ts";

/** The parts in the order of the numbers the shaders know them by. */
export const PARTS: readonly PartId[] = [
  "sun",
  "planets",
  "carrier",
  "ring",
  "sun-machine",
  "output-machine",
  "reduction",
  "engine",
  "final-drive",
  "axle",
];

/** Classes of cut, as the shaders number them. */
export const CUT = { none: 0, ring: 1, sunMachine: 2, outputMachine: 3, ringFloor: -1 } as const;

/** Which class. */
export type CutClass = (typeof CUT)[keyof typeof CUT];

/** One body as it goes into a buffer, with what it belongs to. */
export interface Piece {
  readonly body: Body;
  readonly part: PartId;
  readonly cut?: CutClass;
  /** A paint mark, which can be hidden. */
  readonly mark?: boolean;
}
