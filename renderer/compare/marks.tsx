/** Dash and mark say which line of the table a curve belongs to; colour says the quantity. */
const DASHES = ["", "8 3", "2 3", "8 3 2 3", "12 4", "4 4"] as const;
const SHAPES = [
  "M0-5L5 0L0 5L-5 0Z",
  "M-4.500 0a4.500 4.500 0 109 0a4.500 4.500 0 10-9 0",
  "M0-5L5 4H-5Z",
  "M-4-4h8v8h-8Z",
  "M0 5L5-4H-5Z",
  "M-5 0h10M0-5v10",
] as const;

export const dashAt = (place: number): string => DASHES[place % DASHES.length] ?? "";
export const shapeAt = (place: number): string => SHAPES[place % SHAPES.length] ?? "";

/** The dash with its mark, as a key. */
export const LineKey = ({ place, picked }: { place: number; picked: boolean }) => (
  <svg class="line-key" width="38" height="14" aria-hidden="true">
    <line x1="0" x2="38" y1="7" y2="7" stroke-dasharray={dashAt(place)} stroke-width={picked ? 2.25 : 1.25} />
    <path transform="translate(19 7)" d={shapeAt(place)} class={picked ? "picked" : ""} />
  </svg>
);

/** The mark alone, beside a value. */
export const MarkKey = ({ place, picked }: { place: number; picked: boolean }) => (
  <svg class="line-key mark-key" width="14" height="14" aria-hidden="true">
    <path transform="translate(7 7)" d={shapeAt(place)} class={picked ? "picked" : ""} />
  </svg>
);
