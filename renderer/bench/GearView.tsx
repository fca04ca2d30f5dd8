import { gearLook } from "../state/gear-look.ts";
import { units } from "../state/settings.ts";
import { point, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { benchGear } from "./bench-gear.ts";
import { GearCanvas } from "./GearCanvas.tsx";
import { Looking, Turning } from "./GearControls.tsx";
import { partWords } from "./parts.ts";
import { TurnsTable } from "./TurnsTable.tsx";
import { gearWords } from "./turn-texts.ts";
import { ViewHead } from "./ViewHead.tsx";

const PartLine = () => {
  const part = gearLook.value.selected;
  return (
    <p class="part-line" aria-live="polite">
      {part && (
        <>
          <b>{t.gear.parts[part]}</b> {partWords(part, vehicle.value, point.value, units.value)}
        </>
      )}
    </p>
  );
};

/** View A: the gear set in three dimensions, how it turns, and the turns counted. */
export function GearView() {
  const { sunTeeth, planetTeeth, ringTeeth, planets } = vehicle.value.gearSet;
  return (
    <section class="view v-gear" aria-labelledby="view-a">
      <ViewHead
        id="view-a"
        tag="A"
        title={t.gear.title}
        sub={t.gear.sub(sunTeeth, planetTeeth, ringTeeth, planets)}
        enlarges
      />
      <GearCanvas source={benchGear} />
      <PartLine />
      <Turning />
      <Looking />
      <TurnsTable />
      <p id="gear-words" class="unseen">
        {gearWords}
      </p>
    </section>
  );
}
