import { useEffect, useRef } from "preact/hooks";
import { flowShows } from "../../state/flow-look.ts";
import { playing } from "../../state/road.ts";
import { reducedMotion } from "../../state/settings.ts";
import { metrics } from "../../ui/metrics.ts";
import type { Kind, Owner } from "./kinds.ts";

/** Kinds that have a pattern. */
export type Patterned = Exclude<Kind, "mixed">;

const PAIRS: readonly (readonly [Patterned, Owner])[] = [
  ["chem", "fuel"],
  ["chem", "battery"],
  ["heat", "loss"],
  ["mech", "carrier"],
  ["mech", "sun"],
  ["mech", "ring"],
  ["mech", "steel"],
  ["elec", "sun"],
  ["elec", "battery"],
  ["elec", "ring"],
];

/** Reference to a pattern of this sheet; it drifts the way it is given: +1 to the right, −1 to the left. */
export const patternOf = (kind: Patterned, owner: Owner, way: 1 | -1): string =>
  `url(#flow-${kind}-${owner}-${way > 0 ? "on" : "back"})`;

/** Seconds that a pattern takes for one of its lengths. */
const SECONDS = 1.4;

interface TileProps {
  readonly kind: Patterned;
  readonly owner: Owner;
  readonly way: 1 | -1;
  readonly pitch: number;
}

function Marks({
  kind,
  owner,
  pitch,
  across,
  down,
}: Omit<TileProps, "way"> & { across: number; down: number }) {
  const stroke = `stroke ${owner}`;
  if (kind === "mech")
    return <line x1="0" y1="0" x2="0" y2={pitch} class={stroke} stroke-width={pitch * 0.36} />;
  if (kind === "elec") {
    return (
      <>
        <path class={stroke} stroke-width="1.5" d={`M0 ${pitch / 2}H${across - pitch * 0.6}`} />
        <path
          class={stroke}
          stroke-width="1.5"
          d={`M0 ${pitch * 1.5}H${across / 2 - pitch * 0.6}M${across / 2} ${pitch * 1.5}H${across}`}
        />
      </>
    );
  }
  if (kind === "chem") {
    const dot = pitch * 0.19;
    return (
      <g class={`fillline ${owner}`}>
        <circle cx={across / 4} cy={down / 4} r={dot} />
        <circle cx={(across * 3) / 4} cy={(down * 3) / 4} r={dot} />
      </g>
    );
  }
  const [q, y, a] = [across / 4, down / 2, down * 0.3];
  return (
    <path
      class={stroke}
      fill="none"
      stroke-width="1"
      d={`M0 ${y}q${q / 2} ${-a * 2} ${q} 0t${q} 0t${q} 0t${q} 0`}
    />
  );
}

/** One tile, long enough that it repeats seamlessly, sliding by its own length while it drifts. */
function Tile({ kind, owner, way, pitch }: TileProps) {
  const across = kind === "elec" ? pitch * 14 : kind === "heat" ? pitch * 2 : pitch;
  const down = kind === "elec" ? pitch * 2 : pitch;
  const turned = kind === "mech" ? "rotate(45)" : "rotate(0)";
  return (
    <pattern
      id={`flow-${kind}-${owner}-${way > 0 ? "on" : "back"}`}
      width={across}
      height={down}
      patternUnits="userSpaceOnUse"
      patternTransform={turned}
    >
      <rect width={across} height={down} class={`tint ${owner}`} />
      <Marks kind={kind} owner={owner} pitch={pitch} across={across} down={down} />
      <animateTransform
        attributeName="patternTransform"
        type="translate"
        additive="sum"
        from={way > 0 ? "0 0" : `${across} 0`}
        to={way > 0 ? `${across} 0` : "0 0"}
        dur={`${SECONDS * (kind === "elec" ? 7 : 1)}s`}
        repeatCount="indefinite"
      />
    </pattern>
  );
}

/** The sheet's patterns. They drift while the powers of a run play, and never otherwise. */
export function FlowPatterns() {
  const ref = useRef<SVGSVGElement>(null);
  const { mech, elec, text } = metrics.value;
  const drifts = playing.value && flowShows.value === "power" && !reducedMotion.value;
  useEffect(() => {
    if (drifts) ref.current?.unpauseAnimations();
    else ref.current?.pauseAnimations();
  }, [drifts]);
  const pitches: Readonly<Record<Patterned, number>> = { mech, elec, chem: text * 0.5, heat: text * 0.55 };
  return (
    <svg ref={ref} class="patterns" width="0" height="0" aria-hidden="true">
      <defs>
        {PAIRS.flatMap(([kind, owner]) =>
          ([1, -1] as const).map((way) => (
            <Tile key={`${kind}${owner}${way}`} kind={kind} owner={owner} way={way} pitch={pitches[kind]} />
          )),
        )}
      </defs>
    </svg>
  );
}
