import { useState } from "preact/hooks";
import { mpsToKmh } from "../../shared/units.ts";
import type { LimitsResult } from "../../sim/run/limits-run.ts";
import { num, roadSpeed } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { findLimits } from "./actions.ts";

const l = t.road.limits;

const speed = (value: number): string =>
  Number.isFinite(value) && mpsToKmh(value) > 0 ? roadSpeed(units.value, value) : l.none;

function Table({ found }: { found: LimitsResult }) {
  const rows: readonly (readonly [string, string])[] = [
    [l.zeroTo100, Number.isFinite(found.zeroTo100) ? `${num(found.zeroTo100, 1)} s` : l.none],
    [l.topSpeed, speed(found.topSpeed)],
    [
      l.steepestGrade,
      Number.isFinite(found.steepestGrade) ? `${num(found.steepestGrade * 100, 1)} %` : l.none,
    ],
    [l.topElectric, speed(found.topElectricSpeed)],
  ];
  return (
    <table class="figures">
      <tbody>
        {rows.map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the vehicle can do at most: full throttle, top speed, steepest grade, top electric speed. */
export function LimitsSheet() {
  const [found, setFound] = useState<LimitsResult | "under way" | null>(null);
  const find = async (): Promise<void> => {
    setFound("under way");
    setFound(await findLimits());
  };
  return (
    <section class="view r-limits" aria-labelledby="limits-title">
      <h2 class="view-head" id="limits-title">
        {l.title}
      </h2>
      <p>{l.about}</p>
      <button type="button" class="btn filled" disabled={found === "under way"} onClick={() => void find()}>
        {found === "under way" ? t.road.running("…") : l.find}
      </button>
      <div aria-live="polite">{found !== null && found !== "under way" && <Table found={found} />}</div>
    </section>
  );
}
