import type { Signal } from "@preact/signals";
import { listCycles } from "../../../cycles/catalogue.ts";
import { MOST_VALUES } from "../../../sim/study/sweep/axis.ts";
import { countJobs, type SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { tell } from "../../app/window.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { num } from "../../state/format.ts";
import { ownStrategies, strategyEntries } from "../../state/own-strategies.ts";
import { ownVehicles, vehicles } from "../../state/store.ts";
import { findVehicle } from "../../state/vehicles.ts";
import { t } from "../../texts/catalogue.ts";
import { VEHICLE_PARTS } from "../../vehicle/parts.ts";
import { shownEnds } from "../../vehicle/shown-range.ts";
import { CycleOptions } from "../CycleOptions.tsx";
import { NumberField } from "../NumberField.tsx";
import { RunButton } from "../RunButton.tsx";
import { toggled } from "../state.ts";
import { cancelSweep, planNow, SWEEPABLES, sweepableAt, sweepNow } from "./actions.ts";
import { type AxisForm, axisTitle, readAxis, type Sweepable, usualForm } from "./axis-choice.ts";
import { sweepCommand } from "./command-line.ts";
import {
  firstAxis,
  secondAxis,
  sweepCycle,
  sweepOptimum,
  sweepStrategies,
  sweepUnder,
  sweepVehicle,
} from "./state.ts";

const c = t.compare.sweep;

const GROUPS = ["options", ...VEHICLE_PARTS] as const;

/** Everything that can be swept, part by part. */
const PathOptions = () => (
  <>
    {GROUPS.map((group) => (
      <optgroup key={group} label={group === "options" ? c.options : t.vehicle.parts[group]}>
        {SWEEPABLES.filter((one) => one.group === group).map((one) => (
          <option key={one.path} value={one.path}>
            {axisTitle(one)}
          </option>
        ))}
      </optgroup>
    ))}
  </>
);

/** What is wrong with a field of an axis; empty when nothing is. */
function faultOf(entry: Sweepable, form: AxisForm, field: "from" | "to" | "steps"): string {
  const read = readAxis(entry, form);
  if (read.ok || read.field !== field) return "";
  if (read.why === "number") return c.bad.number;
  if (read.why === "steps") return c.bad.steps(num(MOST_VALUES));
  const [min, max] = entry.range ?? [0, 0];
  return c.range(...shownEnds(entry, { min, max }), entry.unit);
}

interface AxisProps {
  readonly title: string;
  readonly of: Signal<AxisForm | null>;
  readonly optional: boolean;
}

/** One parameter with its values: from, to, how many; or all words that it may be. */
function Axis({ title, of, optional }: AxisProps) {
  const form = of.value;
  const entry = form ? sweepableAt(form.path) : undefined;
  const choose = (path: string): void => {
    const chosen = sweepableAt(path);
    of.value = chosen ? usualForm(chosen, findVehicle(ownVehicles.value, sweepVehicle.value)) : null;
  };
  return (
    <fieldset class="choose axis">
      <legend>{title}</legend>
      <select
        aria-label={title}
        value={form?.path ?? ""}
        onChange={(event) => choose(event.currentTarget.value)}
      >
        {optional && <option value="">{c.none}</option>}
        <PathOptions />
      </select>
      {form && entry?.range && (
        <div class="axis-values">
          {(["from", "to", "steps"] as const).map((field) => (
            <NumberField
              key={field}
              label={c[field]}
              name={`${title}: ${c[field]}`}
              unit={field === "steps" ? "" : entry.unit}
              value={form[field]}
              fault={faultOf(entry, form, field)}
              onValue={(text) => {
                of.value = { ...form, [field]: text };
              }}
            />
          ))}
        </div>
      )}
      {entry && !entry.range && <p class="unit">{c.words(entry.words.join(", "))}</p>}
    </fieldset>
  );
}

/** What is chosen may have gone: a vehicle removed, a strategy deleted. */
function planOrNull() {
  try {
    return planNow();
  } catch {
    return null;
  }
}

/** The same sweep as a command. */
function CommandLine({ plan }: { plan: SweepPlan }) {
  const { text, files } = sweepCommand(plan, (id) => listCycles().some((cycle) => cycle.id === id));
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      tell(c.copied);
    } catch {
      tell(c.notCopied, true);
    }
  };
  return (
    <details class="command">
      <summary>{c.command}</summary>
      <code>{text}</code>
      {files && <p class="unit">{c.commandFiles}</p>}
      <button type="button" class="btn" onClick={() => void copy()}>
        {c.copy}
      </button>
    </details>
  );
}

/** View C: what is varied and driven. */
export function SweepForm() {
  const plan = planOrNull();
  return (
    <section class="view c-choice" aria-labelledby="view-c">
      <ViewHead id="view-c" tag="C" title={c.form} sub="" />
      <div class="choices">
        <Axis title={c.first} of={firstAxis} optional={false} />
        <Axis title={c.second} of={secondAxis} optional />
        <div class="two-choices">
          <label>
            {c.vehicle}
            <select
              value={sweepVehicle.value}
              onChange={(event) => {
                sweepVehicle.value = event.currentTarget.value;
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
            {c.cycle}
            <select
              value={sweepCycle.value}
              onChange={(event) => {
                sweepCycle.value = event.currentTarget.value;
              }}
            >
              <CycleOptions />
            </select>
          </label>
        </div>
        <fieldset class="choose">
          <legend>{c.strategies}</legend>
          {strategyEntries(ownStrategies.value, t.compare.own.about).map(({ id, title, about }) => (
            <label key={id} class="check" title={about}>
              <input
                type="checkbox"
                checked={sweepStrategies.value.includes(id)}
                onChange={() => {
                  sweepStrategies.value = toggled(sweepStrategies.value, id);
                }}
              />
              {title}
            </label>
          ))}
        </fieldset>
        {plan && <CommandLine plan={plan} />}
      </div>
      <div class="choice-foot">
        <label class="check">
          <input
            type="checkbox"
            checked={sweepOptimum.value}
            onChange={(event) => {
              sweepOptimum.value = event.currentTarget.checked;
            }}
          />
          {c.withOptimum}
        </label>
        <RunButton
          now={sweepUnder.value}
          words={c}
          count={plan && countJobs(plan)}
          onRun={() => void sweepNow()}
          onCancel={cancelSweep}
        />
      </div>
    </section>
  );
}
