import { at } from "../../shared/at.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import { TeachingCell, TeethCell } from "../app/strip-parts.tsx";
import { num, ratio, shaftSpeed } from "../state/format.ts";
import { instant } from "../state/instant.ts";
import { hidden } from "../state/predict.ts";
import { fits, run } from "../state/road.ts";
import type { Run } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";

/** 2 × 10⁻¹⁵, as on a drawing. */
function power(value: number): string {
  if (!(value > 0)) return "0";
  const exponent = Math.floor(Math.log10(value));
  const digits = [...String(Math.abs(exponent))].map((digit) => "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(digit)]).join("");
  return `${num(value / 10 ** exponent, 0)} × 10${exponent < 0 ? "⁻" : ""}${digits}`;
}

/** sun + k · ring = (1 + k) · carrier, with the numbers of the instant. */
function Check({ k }: { k: number }) {
  const here = instant.figures.value;
  const asks = (["sun-speed", "carrier-speed", "ring-speed"] as const).some((id) => hidden.value.has(id));
  if (!here || asks) return <b>{t.strip.checkSum}</b>;
  const { sun, carrier, ring } = here.speeds;
  const say = (speed: number): string => shaftSpeed(units.value, speed);
  return (
    <b title={t.strip.checkSum}>
      <span class="ink sun">{say(sun)}</span> + {ratio(k)} × <span class="ink ring">{say(ring)}</span> ={" "}
      {ratio(1 + k)} × <span class="ink carrier">{say(carrier)}</span>
    </b>
  );
}

const Charge = ({ one }: { one: Run }) => {
  const soc = one.log.view("soc");
  return (
    <b>
      {num(at(soc, 0) * 100, 1)} % → {num(at(soc, one.log.rows - 1) * 100, 1)} %
    </b>
  );
};

/** Title block of Road: gear set, the equation, the ledger's closure, the charge. */
export function RoadStrip() {
  const v = run.value?.request.vehicle ?? vehicle.value;
  return (
    <footer class="strip road-strip" aria-label={t.strip.name}>
      <TeethCell gearSet={v.gearSet} />
      <div>
        {t.strip.check} <Check k={basicRatio(v.gearSet)} />
      </div>
      {run.value && !fits.value && (
        <div>
          {t.road.stripShown} <b>{run.value.name}</b>
        </div>
      )}
      {run.value?.summary && (
        <div>
          {t.road.stripNodes} <b>{power(run.value.summary.closure_relative)}</b>
        </div>
      )}
      {run.value && (
        <div class="wide">
          {t.road.stripCharge} <Charge one={run.value} />
        </div>
      )}
      <TeachingCell />
    </footer>
  );
}
