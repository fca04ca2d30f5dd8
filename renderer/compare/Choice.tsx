import { listCycles } from "../../cycles/catalogue.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { ownStrategies, strategyEntries } from "../state/own-strategies.ts";
import { ownCycles } from "../state/road.ts";
import { vehicles } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { cancelCompare, compareNow } from "./actions.ts";
import { RunButton } from "./RunButton.tsx";
import { chosenCycles, chosenStrategies, chosenVehicles, toggled, under, withBound } from "./state.ts";

const c = t.compare;

interface ListProps {
  readonly name: string;
  readonly of: typeof chosenCycles;
  readonly entries: readonly {
    readonly id: string;
    readonly title: string;
    readonly about?: string;
    readonly own?: boolean;
  }[];
}

const List = ({ name, of, entries }: ListProps) => (
  <fieldset class="choose">
    <legend>{name}</legend>
    {entries.map(({ id, title, about, own }) => (
      <label key={id} class="check" title={about}>
        <input
          type="checkbox"
          checked={of.value.includes(id)}
          onChange={() => {
            of.value = toggled(of.value, id);
          }}
        />
        {title} {own && <span class="unit">{c.ownWord}</span>}
      </label>
    ))}
  </fieldset>
);

/** How many lines there are; null while there is nothing to compare. */
const linesNow = (): number | null =>
  chosenVehicles.value.length * chosenCycles.value.length * chosenStrategies.value.length || null;

/** View C: which vehicles, cycles and strategies are set side by side. */
export const Choice = () => (
  <section class="view c-choice" aria-labelledby="view-c">
    <ViewHead id="view-c" tag="C" title={c.choice} sub="" />
    <div class="choices">
      <List
        name={c.strategies}
        of={chosenStrategies}
        entries={strategyEntries(ownStrategies.value, c.own.about)}
      />
      <List name={c.vehicles} of={chosenVehicles} entries={vehicles.value} />
      <List
        name={c.cycles}
        of={chosenCycles}
        entries={[...ownCycles.value, ...listCycles()].map(({ id, title }) => ({ id, title }))}
      />
    </div>
    <div class="choice-foot">
      <label class="check">
        <input
          type="checkbox"
          checked={withBound.value}
          onChange={(event) => {
            withBound.value = event.currentTarget.checked;
          }}
        />
        {c.withBound}
      </label>
      <RunButton
        now={under.value}
        words={c}
        count={linesNow()}
        onRun={() => void compareNow()}
        onCancel={cancelCompare}
      />
    </div>
  </section>
);
