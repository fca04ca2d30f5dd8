import { TeachingCell, TeethCell } from "../app/strip-parts.tsx";
import { ratio, roadUnitName, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { bench, k, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { Answering } from "../ui/Answering.tsx";

/** sun + k · ring = (1 + k) · carrier, with the live numbers. */
function Check() {
  const { sun, carrier, ring } = bench.value.speeds;
  const say = (speed: number): string => shaftSpeed(units.value, speed);
  return (
    <b title={t.strip.checkSum}>
      <span class="ink sun">{say(sun)}</span> + {ratio(k.value)} × <span class="ink ring">{say(ring)}</span> ={" "}
      {ratio(1 + k.value)} × <span class="ink carrier">{say(carrier)}</span>
    </b>
  );
}

/** Title block at the foot, ruled as on a drawing: here a picture of the screen proves itself. */
export function BenchStrip() {
  return (
    <footer class="strip" aria-label={t.strip.name}>
      <TeethCell gearSet={vehicle.value.gearSet} />
      <div>
        <Answering id="ratio">
          <i class="math">k</i> = <b>{ratio(k.value)}</b>
        </Answering>
      </div>
      <div>
        {t.strip.check} <Check />
      </div>
      <div class="wide">
        {t.strip.vehicle} <b>{vehicle.value.name}</b>
      </div>
      <div class="wide">
        {t.strip.units}{" "}
        <b>
          {shaftUnitName(units.value)}, {roadUnitName(units.value)}, N·m, kW
        </b>
      </div>
      <TeachingCell />
    </footer>
  );
}
