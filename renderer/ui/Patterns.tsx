import { metrics } from "./metrics.ts";

const COLOURS = ["carrier", "sun", "ring", "battery"] as const;

/** One pattern a kind of power and colour, for all drawings of the page. */
export function Patterns() {
  const { mech, elec, limit } = metrics.value;
  return (
    <svg class="patterns" width="0" height="0" aria-hidden="true">
      <defs>
        {COLOURS.map((colour) => (
          <pattern
            key={`m${colour}`}
            id={`mech-${colour}`}
            width={mech}
            height={mech}
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <rect width={mech} height={mech} class={`tint ${colour}`} />
            <line x1="0" y1="0" x2="0" y2={mech} class={`stroke ${colour}`} stroke-width={mech * 0.36} />
          </pattern>
        ))}
        {COLOURS.map((colour) => (
          <pattern
            key={`e${colour}`}
            id={`elec-${colour}`}
            width={elec}
            height={elec}
            patternUnits="userSpaceOnUse"
          >
            <rect width={elec} height={elec} class={`tint ${colour}`} />
            <line
              x1="0"
              y1={elec / 2}
              x2={elec}
              y2={elec / 2}
              class={`stroke ${colour}`}
              stroke-width="1.5"
            />
          </pattern>
        ))}
        <pattern
          id="limit"
          width={limit}
          height={limit}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <line x1="0" y1="0" x2="0" y2={limit} class="hatch" stroke-width="2.2" />
        </pattern>
        <pattern
          id="below"
          width={limit * 1.8}
          height={limit * 1.8}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <line x1="0" y1="0" x2="0" y2={limit * 1.8} class="hatch" stroke-width="1.1" />
        </pattern>
      </defs>
    </svg>
  );
}
