import type { Shaft } from "../../sim/bench/shafts.ts";
import { num } from "../state/format.ts";
import { point } from "../state/store.ts";
import { toggleWorking, working } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import type { LeverLayout, TorqueArrow } from "./layout.ts";

const answer = (): void => toggleWorking("balance");

function onKeyDown(event: KeyboardEvent): void {
  if (event.key !== "Enter" && event.key !== " ") return;
  event.preventDefault();
  answer();
}

function Hit({ arrow, first }: { arrow: TorqueArrow; first: boolean }) {
  const { shaft, x, from, to, half } = arrow;
  const reach = Math.max(2 * half, metrics.value.text * 0.6);
  // A short arrow takes the label at its tip along.
  const tall = Math.max(Math.abs(to - from) + 4, metrics.value.target);
  const name = (of: Shaft): string => t.bench.balance(t.shafts[of], num(point.value.torques[of], 1));
  return (
    <rect
      class="answers-torque"
      x={x - reach}
      y={to > from ? from : from - tall}
      width={2 * reach}
      height={tall}
      role="button"
      tabindex={first ? 0 : -1}
      aria-label={name(shaft)}
      aria-expanded={working.value === "balance"}
      onClick={answer}
      onKeyDown={onKeyDown}
    />
  );
}

/** The torque arrows as what can be pressed: sum and moment of all three. They share one stop of the Tab key. */
export const TorqueGrips = ({ layout }: { layout: LeverLayout }) => (
  <g>
    {layout.arrows.map((arrow, i) => (
      <Hit key={arrow.shaft} arrow={arrow} first={i === 0} />
    ))}
  </g>
);
