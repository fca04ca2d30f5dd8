import { flowScale } from "../../state/flow-look.ts";
import { hidden } from "../../state/predict.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { energyLabels } from "./energy-labels.ts";
import { energyLayout, energyScale } from "./energy-layout.ts";
import { energyNow, runScale, unitsNow } from "./energy-now.ts";
import { EnergyKey } from "./Key.tsx";
import { askedEnergies, type EnergyId, energyDrawn, LINES } from "./ledger-flows.ts";
import { type Answer, Numbers } from "./Numbers.tsx";
import { placesOf, type SheetSize } from "./places.ts";
import { Shapes } from "./Shapes.tsx";

/** A number answers with the first of its ledger's lines; what is left on the way has none. */
const answerOf = (kind: string, of: string): Answer | null => {
  if (kind !== "value") return null;
  const id = of as EnergyId;
  const [line] = LINES[id] ?? [];
  const { owner } = energyDrawn(id);
  return line
    ? { working: `ledger:${line}`, name: t.roadFlow.ledger[line], owner }
    : { working: null, name: "", owner };
};

/** The ledger at the cursor as a picture that adds up. */
export function EnergySheet({ width, height, text }: SheetSize) {
  const at = energyNow.value;
  if (!at) return null;
  const size = { width, height, text };
  const places = placesOf(size);
  const own = energyScale(places, at.energies);
  const perJoule = flowScale.value === "run" ? Math.min(own, runScale(places)) : own;
  const asked = askedEnergies(hidden.value);
  const layout = energyLayout({ ...size, energies: at.energies, perJoule, asked });
  const units = unitsNow.value;
  const labels = energyLabels(layout, units, measure);
  return (
    <>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={t.roadFlow.title}
        aria-describedby="road-flow-words"
      >
        <Shapes picture={layout} />
        <EnergyKey {...size} perUnit={perJoule} units={units} />
      </svg>
      <Numbers labels={labels} width={width} height={height} answer={answerOf} />
    </>
  );
}
