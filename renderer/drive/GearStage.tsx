import { GearCanvas } from "../bench/GearCanvas.tsx";
import { ViewHead } from "../bench/ViewHead.tsx";
import { num, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { gearLook } from "../state/gear-look.ts";
import { instant } from "../state/instant.ts";
import { hidden } from "../state/predict.ts";
import { run, slowing } from "../state/road.ts";
import { units } from "../state/settings.ts";
import { SLOWINGS } from "../state/turns.ts";
import { t } from "../texts/catalogue.ts";
import { roadPartWords } from "./part-words.ts";
import { roadGear } from "./road-gear.ts";

const Slowing = () => (
  <label class="slowing">
    <span class="wide">{t.road.gear.ratios}</span> {t.road.gear.shown}
    <select
      aria-label={t.gear.slowedName}
      value={slowing.value}
      onChange={(event) => {
        slowing.value = Number(event.currentTarget.value);
      }}
    >
      {SLOWINGS.map((times) => (
        <option key={times} value={times}>
          1 : {times}
        </option>
      ))}
    </select>
  </label>
);

function gearWords(): string {
  const at = instant.stage.value;
  if (!at) return t.road.noRun;
  const { speeds } = at;
  const one = (name: string, speed: number): string =>
    `${name} ${shaftSpeed(units.value, speed)} ${shaftUnitName(units.value)}`;
  return t.road.gear.words(
    [
      one(t.shafts.sun, speeds.sun),
      one(t.shafts.carrier, speeds.carrier),
      one(t.shafts.ring, speeds.ring),
    ].join(", "),
  );
}

const PartLine = () => {
  const part = gearLook.value.selected;
  const at = instant.stage.value;
  const one = run.value;
  return (
    <p class="part-line" aria-live="polite">
      {part && at && one && (
        <>
          <b>{t.gear.parts[part]}</b>{" "}
          {roadPartWords(part, one.request.vehicle, at, units.value, hidden.value)}
        </>
      )}
    </p>
  );
};

/** View A on Road: the gear set, turned by the drive. */
export const GearStage = () => (
  <section class="view r-gear" aria-labelledby="view-a">
    <ViewHead id="view-a" tag="A" title={t.gear.title} sub="" />
    <GearCanvas source={roadGear} />
    <PartLine />
    <p class="r-slow">
      <Slowing />
    </p>
    <p id="road-gear-words" class="unseen">
      {gearWords()} {t.road.gear.sub(num(slowing.value))}
    </p>
  </section>
);
