import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import type { BenchScene, Pointer, RunScene, ViewLetter } from "../../sim/lesson/lesson.ts";
import { GearCanvas } from "../bench/GearCanvas.tsx";
import { num, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { reducedMotion, units } from "../state/settings.ts";
import { slowing } from "../state/turning.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { BenchFlow, RunFlow } from "./LessonFlow.tsx";
import { LessonLever } from "./LessonLever.tsx";
import { toBench, toRoad } from "./open-elsewhere.ts";
import { RunPlot } from "./RunPlot.tsx";
import {
  bench,
  chosenScene,
  lessonGear,
  moved,
  now,
  point,
  pointed,
  scene,
  setAgain,
  setSpeed,
  setTorque,
  shaftsNow,
  stageRun,
  stopped,
  turning,
  vehicle,
} from "./stage.ts";
import { hidden, step } from "./state.ts";

const s = t.lesson.stage;

const FOLLOWS = { sun: "follow", carrier: "follow", ring: "follow" } as const;

/** The view that a pointer says something in: its own, or the one that shows its part or quantity. */
const viewOf = ({ view, part }: Pointer): ViewLetter =>
  view ?? (part === null || part === "battery" ? "B" : "A");

interface HeadProps {
  readonly tag: ViewLetter;
  readonly title: string;
  readonly sub: string;
}

/** Head of a view; one that is pointed at has its letter filled and says so. */
function Head({ tag, title, sub }: HeadProps) {
  const marked = pointed.value.views.has(tag);
  return (
    <h3 class={marked ? "view-head pointed" : "view-head"} id={`lesson-view-${tag}`}>
      <span class="tag">{tag}</span> {title}
      {marked && <em class="pointed-word">{s.pointedAt}</em>}
      <small>{sub}</small>
    </h3>
  );
}

/** What the step says at a view. */
const Said = ({ tag }: { tag: ViewLetter }) => (
  <>
    {pointed.value.said
      .filter((pointer) => viewOf(pointer) === tag)
      .map(({ say, line }) => (
        <p key={line} class="point-say">
          {say}
        </p>
      ))}
  </>
);

const Turning = () => (
  <button
    type="button"
    class="btn quiet"
    aria-pressed={turning.value}
    disabled={reducedMotion.value}
    onClick={() => {
      turning.value = !turning.value;
    }}
  >
    <Icon name={turning.value ? "pause" : "play"} /> {turning.value ? s.pause : s.turn}
  </button>
);

function gearWords(): string {
  const shafts = shaftsNow.value;
  if (!shafts) return "";
  const one = (name: Shaft): string => {
    const speed = hidden.value.speeds.includes(name) ? s.asked : shaftSpeed(units.value, shafts.speeds[name]);
    return `${t.shafts[name]} ${speed} ${shaftUnitName(units.value)}`;
  };
  return s.gearWords(SHAFTS.map(one).join(", "));
}

const Gear = ({ byHand }: { byHand: boolean }) => (
  <section class="view l-gear" aria-labelledby="lesson-view-A">
    <Head tag="A" title={t.gear.title} sub={t.top.shown(`1 : ${slowing.value}`)} />
    <GearCanvas source={lessonGear} />
    <p id="lesson-gear-words" class="unseen">
      {gearWords()}
    </p>
    <Said tag="A" />
    {byHand && (
      <p class="l-turning">
        <Turning />
      </p>
    )}
  </section>
);

interface TorqueProps {
  readonly name: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onValue: (value: number) => void;
}

const Torque = ({ name, value, least, most, onValue }: TorqueProps) => (
  <label class="free-torque">
    <span>{name}</span>
    <input
      type="range"
      min={least}
      max={most}
      step="1"
      value={value}
      aria-valuetext={`${num(value, 1)} N·m`}
      onInput={(event) => onValue(Number(event.currentTarget.value))}
    />
    <b>{num(value, 1)} N·m</b>
  </label>
);

/** What the student may change, and the way back. */
function Free({ of }: { of: BenchScene }) {
  const state = bench.value;
  const at = point.value;
  if (!state || !at) return null;
  const shafts = SHAFTS.filter((shaft) => of.free.includes(shaft));
  const { least, most } = at.engine;
  return (
    <section class="l-free" aria-label={s.free}>
      <p>
        <b>{s.free}</b>{" "}
        {of.free.length === 0
          ? s.freeNone
          : shafts.length > 0 && s.freeShafts(shafts.map((shaft) => t.lower[shaft]).join(", "))}
      </p>
      {of.free.includes("engine torque") && (
        <Torque
          name={s.engineTorque}
          value={state.engineTorque}
          least={Math.floor(least)}
          most={Math.floor(most)}
          onValue={(value) => setTorque("engineTorque", value)}
        />
      )}
      {of.free.includes("output torque") && (
        <Torque
          name={s.outputTorque}
          value={state.outputTorque ?? at.output.torque}
          least={-Math.floor(at.output.most)}
          most={Math.floor(at.output.most)}
          onValue={(value) => setTorque("outputTorque", value)}
        />
      )}
      <span class="grow" />
      {moved.value && <span class="moved">{s.movedNote}</span>}
      <button type="button" class="btn quiet" disabled={!moved.value} onClick={setAgain}>
        <Icon name="undo" /> {s.setAgain}
      </button>
      <button type="button" class="btn" onClick={() => toBench(of, state)}>
        <Icon name="bench" /> {s.toBench}
      </button>
    </section>
  );
}

const leverSub = (): string =>
  hidden.value.speeds.length + hidden.value.torques.length > 0 ? s.hiddenSub : shaftUnitName(units.value);

function BenchStage({ of }: { of: BenchScene }) {
  const state = bench.value;
  const at = point.value;
  if (!state || !at) return null;
  return (
    <div class="l-stage on-bench">
      <Gear byHand />
      <section class="view l-lever" aria-labelledby="lesson-view-B">
        <Head tag="B" title={t.lever.title} sub={leverSub()} />
        <LessonLever
          vehicle={vehicle.value}
          speeds={state.speeds}
          torques={at.torques}
          roles={state.roles}
          stop={stopped.value}
          hidden={hidden.value}
          pointed={pointed.value.places}
          free={SHAFTS.filter((shaft) => of.free.includes(shaft))}
          onMove={setSpeed}
        />
        <Said tag="B" />
      </section>
      <section class="view l-flow" aria-labelledby="lesson-view-C">
        <Head tag="C" title={t.flow.title} sub={s.flowSub} />
        <BenchFlow point={at} hidden={hidden.value} />
        <Said tag="C" />
      </section>
      <Free of={of} />
    </div>
  );
}

/** Which of the step's runs is looked at. */
function RunChoice() {
  const scenes = step.value?.scenes ?? [];
  if (scenes.length < 2) return null;
  const chosen = scene.value;
  return (
    <fieldset class="segments" aria-label={s.runs}>
      {scenes.map((one, place) => (
        <button
          key={one.line}
          type="button"
          aria-pressed={one === chosen}
          onClick={() => {
            chosenScene.value = place;
          }}
        >
          {one.kind === "run" ? one.name : t.rail.bench}
        </button>
      ))}
    </fieldset>
  );
}

function RunStage({ of }: { of: RunScene }) {
  const found = stageRun.value;
  const shown = now.value;
  if (found === null || typeof found === "string" || !shown) {
    return (
      <div class="l-stage waits">
        <p class="empty" role="status">
          {found === "failed" ? s.failed : s.driving}
        </p>
      </div>
    );
  }
  const { run, at } = shown;
  const regime = hidden.value.regime ? s.asked : (t.regimes[at.regime]?.title ?? "");
  return (
    <div class="l-stage on-run">
      <Gear byHand={false} />
      <section class="view l-lever" aria-labelledby="lesson-view-B">
        <Head tag="B" title={t.lever.title} sub={leverSub()} />
        <LessonLever
          vehicle={run.request.vehicle}
          speeds={at.speeds}
          torques={at.torques}
          roles={FOLLOWS}
          stop={null}
          hidden={hidden.value}
          pointed={pointed.value.places}
          free={[]}
          onMove={() => undefined}
        />
        <Said tag="B" />
      </section>
      <section class="view l-flow r-flow" aria-labelledby="lesson-view-C">
        <Head tag="C" title={t.roadFlow.title} sub={t.roadFlow.subPower} />
        <RunFlow run={run} at={at} hidden={hidden.value} />
        <Said tag="C" />
      </section>
      <section class="view l-over" aria-labelledby="lesson-view-D">
        <Head tag="D" title={s.over} sub={s.overSub(run.request.cycle.title, of.strategy)} />
        <RunPlot run={run} now={at} hidden={hidden.value} />
        <Said tag="D" />
      </section>
      <section class="l-free" aria-label={s.name}>
        <RunChoice />
        <span>
          {s.regime} <b>{regime}</b>
        </span>
        <span class="grow" />
        <button type="button" class="btn" onClick={() => toRoad(of, found.reply, at.row)}>
          <Icon name="road" /> {s.toRoad}
        </button>
      </section>
    </div>
  );
}

/** The stage as the step sets it: the bench, or an instant of a run. */
export function Stage() {
  const of = scene.value;
  if (of?.kind === "bench") return <BenchStage of={of} />;
  if (of?.kind === "run") return <RunStage of={of} />;
  return (
    <div class="l-stage waits">
      <p class="empty">{s.none}</p>
    </div>
  );
}
