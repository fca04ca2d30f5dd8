import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import { TeachingCell, TeethCell } from "../app/strip-parts.tsx";
import { ratio } from "../state/format.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { selectedPart } from "./SectionDrawing.tsx";

/** Title block of Vehicle: teeth, ratio, and that the set can be put together. */
export function VehicleStrip() {
  const { sunTeeth, ringTeeth, planets } = vehicle.value.gearSet;
  return (
    <footer class="strip" aria-label={t.strip.name}>
      <TeethCell gearSet={vehicle.value.gearSet} />
      <div>
        <i class="math">k</i> = <b>{ratio(basicRatio(vehicle.value.gearSet))}</b>
      </div>
      <div>
        {t.vehicle.assembly}{" "}
        <b>
          ({sunTeeth} + {ringTeeth}) / {planets} = {ratio((sunTeeth + ringTeeth) / planets)}
        </b>
      </div>
      <div class="wide">
        {t.strip.vehicle}{" "}
        <button
          type="button"
          class="strip-name"
          title={t.vehicle.editName}
          onClick={() => {
            selectedPart.value = "about";
          }}
        >
          {vehicle.value.name}
        </button>
      </div>
      <TeachingCell />
    </footer>
  );
}
