import type { InputFault } from "../../../shared/errors.ts";
import { isQuantity } from "../../parameters/quantity.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { declarationAt } from "../declarations.ts";
import { crossFault, round } from "../faults.ts";
import { LEAST_TEETH, leastPlanetTeethInRing, neighbourRoom, teethWithoutUndercut } from "../gear-teeth.ts";
import type { Words } from "../words.ts";

const STANDARD =
  "profile-shifted sets are not covered: all gears are standard, 20° and full depth, on equal centre distances";

/** Whether the planetary set can be made and put together from standard gears. */
export function gearSetFaults(vehicle: Vehicle): InputFault[] {
  const g = vehicle.gearSet;
  const faults: InputFault[] = [];
  const add = (path: string, what: string | Words, accepted: string | Words): void => {
    faults.push(crossFault(vehicle, `gearSet.${path}`, what, accepted));
  };
  const ring = g.sunTeeth + 2 * g.planetTeeth;
  const meshes = g.ringTeeth === ring;
  if (!meshes) add("ringTeeth", `the ring does not fit: ${STANDARD}`, `sun + 2 × planet = ${ring}`);
  const divided = (g.sunTeeth + g.ringTeeth) / g.planets;
  if (!Number.isInteger(divided)) {
    const what = `equally spaced planets cannot be put in: (sun + ring)/planets is ${round(divided)}, not whole`;
    add("planets", what, fittingPlanets(g));
  }
  const room = neighbourRoom(g);
  if (!(room > g.planetTeeth + 2)) {
    const what = `neighbouring planets touch: (sun + planet)·sin(180°/planets) is ${round(room)}, not above planet + 2 = ${g.planetTeeth + 2}`;
    add("planets", what, fittingPlanets(g));
  }
  for (const name of ["sunTeeth", "planetTeeth"] as const) {
    if (g[name] >= LEAST_TEETH) continue;
    const least = `2/sin² 20° = ${round(teethWithoutUndercut())}, rounded to ${LEAST_TEETH}`;
    add(name, `the tool would undercut the teeth (${STANDARD})`, `at least ${least}`);
  }
  const planet = leastPlanetTeethInRing(g.ringTeeth);
  if (meshes && g.planetTeeth >= LEAST_TEETH && g.planetTeeth < planet) {
    const what = `the ring's tips would dig into the planets' flanks (${STANDARD})`;
    add("planetTeeth", what, `at least ${round(planet)} in a ring of ${g.ringTeeth}`);
  }
  return faults;
}

/** The numbers of planets, within the declared range, that can be put in and clear each other, in words. */
function fittingPlanets(set: Vehicle["gearSet"]): string {
  const meta = declarationAt("gearSet.planets")?.meta;
  if (!meta || !isQuantity(meta)) throw new Error("gearSet.planets has no range");
  const fitting: number[] = [];
  for (let planets = meta.min; planets <= meta.max; planets += 1) {
    const whole = (set.sunTeeth + set.ringTeeth) % planets === 0;
    if (whole && neighbourRoom({ ...set, planets }) > set.planetTeeth + 2) fitting.push(planets);
  }
  return fitting.length > 0
    ? `with these teeth ${fitting.join(" or ")}`
    : "with other tooth numbers, any number of";
}
