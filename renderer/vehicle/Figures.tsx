import { mpsToKmh, radPerSToRpm } from "../../shared/units.ts";
import { type DerivedFigure, derivedFigures } from "../../sim/vehicle/figures.ts";
import { vehicleWarnings } from "../../sim/vehicle/warnings.ts";
import { num, ratio } from "../state/format.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";

/** A figure with a unit for people. */
function shown({ value, unit, id }: DerivedFigure): string {
  switch (unit) {
    case "m/s":
      return `${num(mpsToKmh(value), 0)} km/h`;
    case "rad/s":
      return `${num(radPerSToRpm(value), 0)} rev/min`;
    case "W":
      return `${num(value / 1000, 1)} kW`;
    case "J":
      return `${num(value / 3600, 0)} W·h`;
    case "N":
      return `${num(value, 0)} N`;
    case "N m":
      return `${num(value, 0)} N·m`;
    case "kg":
      return `${num(value, 0)} kg`;
    default:
      return /share|efficiency/.test(id) ? `${num(value * 100, 1)} %` : ratio(value);
  }
}

/** What follows from the parameters; and what a reader of the numbers would remark on. */
export const Figures = () => (
  <div class="v-figures-body" tabIndex={0} role="region" aria-label={t.vehicle.figures}>
    <div class="v-columns">
      <table class="figures">
        <tbody>
          {derivedFigures(vehicle.value).map((figure) => (
            <tr key={figure.id}>
              <th scope="row">{figure.title}</th>
              <td>{shown(figure)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {vehicleWarnings(vehicle.value).length > 0 && (
        <>
          <h3>{t.vehicle.warnings}</h3>
          <ul class="warnings">
            {vehicleWarnings(vehicle.value).map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  </div>
);
