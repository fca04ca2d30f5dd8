import { listCycles } from "../../cycles/catalogue.ts";
import { STRATEGIES } from "../../sim/control/strategies/registry.ts";
import { ActionButton, ProjectorButton, VehicleChoice } from "../app/top-parts.tsx";
import { num } from "../state/format.ts";
import { ownId, ownStrategies } from "../state/own-strategies.ts";
import { asking } from "../state/predict.ts";
import {
  balances,
  chosenCycle,
  cycleId,
  fits,
  mode,
  ownCycles,
  progress,
  run,
  strategyId,
} from "../state/road.ts";
import { projector } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { cancelRun, runNow } from "./actions.ts";
import { openPanel, togglePanel } from "./panel.ts";

const KINDS = ["standard", "standard phase", "composite", "manoeuvre"] as const;

/** Title of a chosen cycle that no list has: a manoeuvre with parameters of its own. */
function unlisted(): string | null {
  const id = cycleId.value;
  const listed = [...listCycles(), ...ownCycles.value].some((one) => one.id === id);
  try {
    return listed ? null : chosenCycle(id).title;
  } catch {
    return null;
  }
}

function CycleChoice() {
  const cycles = listCycles();
  const other = unlisted();
  return (
    <select
      aria-label={t.road.cycle}
      class="cyclechoice"
      value={cycleId.value}
      onChange={(event) => {
        cycleId.value = event.currentTarget.value;
      }}
    >
      {other && <option value={cycleId.value}>{other}</option>}
      {ownCycles.value.length > 0 && (
        <optgroup label={t.road.groups.own}>
          {ownCycles.value.map((cycle) => (
            <option key={cycle.id} value={cycle.id}>
              {cycle.title}
            </option>
          ))}
        </optgroup>
      )}
      {KINDS.map((kind) => (
        <optgroup key={kind} label={t.road.groups[kind]}>
          {cycles
            .filter((cycle) => cycle.kind === kind)
            .map((cycle) => (
              <option key={cycle.id} value={cycle.id}>
                {cycle.title}
              </option>
            ))}
        </optgroup>
      ))}
    </select>
  );
}

const StrategyChoice = () => (
  <select
    aria-label={t.road.strategy}
    class="strategychoice"
    value={strategyId.value}
    onChange={(event) => {
      strategyId.value = event.currentTarget.value;
    }}
  >
    {ownStrategies.value.length > 0 && (
      <optgroup label={t.road.groups.ownStrategies}>
        {ownStrategies.value.map(({ title }) => (
          <option key={title} value={ownId(title)}>
            {title}
          </option>
        ))}
      </optgroup>
    )}
    {STRATEGIES.map((strategy) => (
      <option key={strategy.id} value={strategy.id}>
        {strategy.title}
      </option>
    ))}
  </select>
);

/** Run, or how far the run under way is, with the way out of it. */
function RunButton() {
  const share = progress.value;
  if (share === null) {
    return (
      <ActionButton
        icon="run"
        className={fits.value ? "" : "filled"}
        text={fits.value ? t.road.again : t.road.run}
        onClick={() => void runNow()}
      />
    );
  }
  return (
    <span class="runs-now">
      <progress max={1} value={share} aria-label={t.road.running(num(share * 100))} />
      <button type="button" class="btn" onClick={cancelRun}>
        <Icon name="close" /> {t.road.cancel}
      </button>
    </span>
  );
}

/** Litres over 100 km, balanced as soon as that is known. */
function Fuel() {
  const one = run.value;
  if (!one?.summary) return null;
  const found = balances.value.get(one.id) ?? null;
  const known = found !== null && found !== "under way" && found.balanced;
  const litres = known ? found.litresPer100Km : one.summary.fuel.l_per_100km;
  const word = known
    ? t.road.balanced
    : found === "under way"
      ? t.road.balancing
      : found
        ? t.road.notBalanced
        : t.road.raw;
  return (
    <button type="button" class="fact asbutton" onClick={() => togglePanel("figures")}>
      {t.road.fuel} <b>{num(litres, 2)} L/100 km</b> <span class="wide">{word}</span>
    </button>
  );
}

const Modes = () => (
  <fieldset class="segments" aria-label={t.road.modesName}>
    {(["replay", "pedals", "limits"] as const).map((one) => (
      <button
        key={one}
        type="button"
        aria-pressed={mode.value === one}
        onClick={() => {
          mode.value = one;
        }}
      >
        {t.road.modes[one]}
      </button>
    ))}
  </fieldset>
);

/** Top bar of Road: what is driven, how, and what can be done with it. */
export const RoadTop = () => (
  <header class="top road-top">
    <h1>{t.road.name}</h1>
    {projector.value && run.value && <span class="fact driven">{run.value.name}</span>}
    <VehicleChoice />
    <CycleChoice />
    <StrategyChoice />
    <button
      type="button"
      class="iconbtn"
      aria-label={t.road.options.open}
      title={t.road.options.open}
      aria-expanded={openPanel.value === "options"}
      onClick={() => togglePanel("options")}
    >
      <Icon name="settings" />
    </button>
    <RunButton />
    <span class="grow" />
    <Fuel />
    <Modes />
    <button
      type="button"
      class="btn"
      aria-pressed={asking.value}
      title={t.road.predict}
      onClick={() => {
        asking.value = !asking.value;
      }}
    >
      <Icon name="ask" /> {t.road.predictShort}
    </button>
    <ProjectorButton />
  </header>
);
