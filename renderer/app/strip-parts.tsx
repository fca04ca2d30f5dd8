import type { Vehicle } from "../../sim/parameters/schema.ts";
import { t } from "../texts/catalogue.ts";

/** Title block: teeth of sun, planets and ring. */
export const TeethCell = ({ gearSet }: Pick<Vehicle, "gearSet">) => (
  <div>
    {t.strip.gearSet}{" "}
    <b>
      {gearSet.sunTeeth} / {gearSet.planetTeeth} / {gearSet.ringTeeth}
    </b>
  </div>
);

/** Title block, at the right: what the numbers are not for. */
export const TeachingCell = () => (
  <>
    <div class="grow" />
    <div class="teaching">
      <span>
        {t.strip.teaching}
        <span class="wide">{t.strip.teachingRest}</span>
      </span>
    </div>
  </>
);
