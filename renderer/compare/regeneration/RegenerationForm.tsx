import { ViewHead } from "../../bench/ViewHead.tsx";
import { num, roadUnitName } from "../../state/format.ts";
import { ownStrategies, strategyEntries } from "../../state/own-strategies.ts";
import { units } from "../../state/settings.ts";
import { vehicles } from "../../state/store.ts";
import { t } from "../../texts/catalogue.ts";
import { NumberField } from "../NumberField.tsx";
import { RunButton } from "../RunButton.tsx";
import { brakeNow, cancelBraking, rangesNow, studyNow } from "./actions.ts";
import { faultsIn, MOST_SIDE, type SideForm, type StudyField } from "./plan.ts";
import { studyForm, studyStrategy, studyUnder, studyVehicle } from "./state.ts";

const c = t.compare.regeneration;
const range = t.compare.sweep.range;

/** What would be right in a field that is wrong; empty otherwise. */
function wanted(field: StudyField): string {
  const ranges = rangesNow();
  if (!faultsIn(studyForm.value, ranges).has(field)) return "";
  if (field.endsWith("steps")) return range("2", num(MOST_SIDE), "");
  const [least, most] = ranges[field.split(".")[0] as "speeds" | "rates" | "charge"];
  return range(num(least, 1), num(most, 1), "");
}

function Side({ side, title, unit }: { side: "speeds" | "rates"; title: string; unit: string }) {
  const form = studyForm.value;
  return (
    <fieldset class="choose axis">
      <legend>{title}</legend>
      <div class="axis-values">
        {(["from", "to", "steps"] as const satisfies readonly (keyof SideForm)[]).map((field) => (
          <NumberField
            key={field}
            label={c[field]}
            name={`${title}: ${c[field]}`}
            unit={field === "steps" ? "" : unit}
            value={form[side][field]}
            fault={wanted(`${side}.${field}`)}
            onValue={(text) => {
              studyForm.value = { ...form, [side]: { ...form[side], [field]: text } };
            }}
          />
        ))}
      </div>
    </fieldset>
  );
}

/** How many stops there are; null also when what is chosen has gone: a vehicle removed, a strategy deleted. */
function stopsNow(): number | null {
  try {
    const plan = studyNow()?.plan;
    return plan ? plan.speeds.length * plan.rates.length : null;
  } catch {
    return null;
  }
}

/** View C: which stops are braked. */
export const RegenerationForm = () => (
  <section class="view c-choice" aria-labelledby="view-c">
    <ViewHead id="view-c" tag="C" title={c.form} sub="" />
    <div class="choices">
      <p class="unit">{c.about}</p>
      <Side side="speeds" title={c.speeds} unit={roadUnitName(units.value)} />
      <Side side="rates" title={c.rates} unit={c.rateUnit} />
      <fieldset class="choose axis">
        <legend>{c.charge}</legend>
        <NumberField
          label=""
          name={c.charge}
          unit="%"
          value={studyForm.value.charge}
          fault={wanted("charge")}
          onValue={(text) => {
            studyForm.value = { ...studyForm.value, charge: text };
          }}
        />
      </fieldset>
      <div class="two-choices">
        <label>
          {c.vehicle}
          <select
            value={studyVehicle.value}
            onChange={(event) => {
              studyVehicle.value = event.currentTarget.value;
            }}
          >
            {vehicles.value.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
        <label>
          {c.strategy}
          <select
            value={studyStrategy.value}
            onChange={(event) => {
              studyStrategy.value = event.currentTarget.value;
            }}
          >
            {strategyEntries(ownStrategies.value, "").map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
      </div>
    </div>
    <div class="choice-foot">
      <RunButton
        now={studyUnder.value}
        words={c}
        count={stopsNow()}
        onRun={() => void brakeNow()}
        onCancel={cancelBraking}
      />
    </div>
  </section>
);
