import { metrics } from "../ui/metrics.ts";

/** Strokes of one tile of each pattern, in a tile of 8 by 8: told apart without colour. */
const TILES = [
  "M-2 2L2-2M0 8L8 0M6 10L10 6",
  "M-2 6L2 10M0 0L8 8M6-2L10 2",
  "M0 4H8",
  "M4 0V8",
  "M0 4H8M4 0V8",
  "M0 4C2 0 2 0 4 4S6 8 8 4",
  "M3.5 4h1",
] as const;

/** How many patterns there are. */
export const HEAT_PATTERNS = TILES.length;

/** Patterns of a map's cells. */
export function HeatPatterns() {
  const size = metrics.value.mech * 1.35;
  return (
    <defs>
      {TILES.map((d, i) => (
        <pattern
          key={d}
          id={`heat-${i}`}
          width={size}
          height={size}
          patternUnits="userSpaceOnUse"
          viewBox="0 0 8 8"
        >
          <path class="heat-stroke" d={d} />
        </pattern>
      ))}
    </defs>
  );
}

/** A pattern as a swatch beside its word. */
export const PatternSwatch = ({ pattern }: { pattern: number }) => (
  <svg class="heat-swatch" width="24" height="16" aria-hidden="true">
    <rect width="24" height="16" fill={`url(#heat-${pattern})`} />
  </svg>
);
