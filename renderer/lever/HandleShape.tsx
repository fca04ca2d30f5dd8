import type { Shaft } from "../../sim/bench/shafts.ts";
import type { Role } from "../state/bench.ts";

interface HandleShapeProps {
  readonly shaft: Shaft;
  readonly role: Role;
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** Driven: solid with chevrons. Held: solid square. Follows: open ring with a dot. */
export function HandleShape({ shaft, role, x, y, r }: HandleShapeProps) {
  if (role === "hold") {
    return (
      <g class={`handle solid ${shaft}`}>
        <rect x={x - r} y={y - r} width={2 * r} height={2 * r} />
        <rect class="inner" x={x - r * 0.35} y={y - r * 0.35} width={r * 0.7} height={r * 0.7} />
      </g>
    );
  }
  if (role === "follow") {
    return (
      <g class={`handle open ${shaft}`}>
        <circle cx={x} cy={y} r={r} />
        <circle class="dot" cx={x} cy={y} r={r * 0.3} />
      </g>
    );
  }
  const a = r * 0.38;
  const up = `M${x - a} ${y - r * 0.2}l${a} ${-r * 0.36} ${a} ${r * 0.36}`;
  const down = `M${x - a} ${y + r * 0.2}l${a} ${r * 0.36} ${a} ${-r * 0.36}`;
  return (
    <g class={`handle solid ${shaft}`}>
      <circle cx={x} cy={y} r={r} />
      <path class="grip" d={up + down} />
    </g>
  );
}
