import { at } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { PedalDriver } from "../../sim/control/pedals.ts";
import type { StrategyDefinition } from "../../sim/control/strategy.ts";
import { type LogRow, RunLog } from "../../sim/run/log.ts";
import { regimeAt, regimes } from "../../sim/run/regimes.ts";
import { checkClosure } from "../../sim/run/simulate.ts";
import { Simulation } from "../../sim/run/simulation.ts";
import { summarize } from "../../sim/run/summary.ts";
import type { LiveNews, LiveOrder, LiveRequest, LiveRow, Pedals } from "./live-contract.ts";
import { chosenIn, readyStrategy } from "./strategy.ts";

/** Time between two looks at the clock, ms. */
const BEAT = 8;

/** The engine falls behind the clock by no more than this, s; the rest is left out, so that it never runs away. */
const MOST_BEHIND = 0.2;

/** Weight of the newest beat in the mean load. */
const SMOOTHING = 0.05;

const say = (news: LiveNews, buffers: ArrayBufferLike[] = []): void =>
  self.postMessage(news, { transfer: buffers as ArrayBuffer[] });

/** A drive by hand: the same engine, advanced step by step as the clock goes. */
class LiveDrive {
  private readonly driver = new PedalDriver();
  private readonly run: Simulation;
  private readonly head = new RunLog(1);
  private told = 0;
  private started = performance.now();
  private last = performance.now();
  private load = 0;
  private pressed = false;
  /** the page has drawn the last frame: a slow page gets fewer, never a heap of old ones */
  private seen = true;

  constructor(
    private readonly request: LiveRequest,
    strategy: StrategyDefinition,
  ) {
    this.run = new Simulation(
      request.vehicle,
      this.driver,
      strategy,
      { ...request.options, step: 0.01 },
      36_000,
    );
    this.driver.gear = "park";
  }

  press({ accelerator, brake, gear, grade, electricOnly }: Pedals): void {
    Object.assign(this.driver, { accelerator, brake, gear, grade, electricOnly: electricOnly ? 1 : 0 });
    this.pressed = true;
    // The answer to a pedal does not wait for the picture that is being drawn.
    this.seen = true;
  }

  private row(row: LogRow): LiveRow {
    this.head.put(0, row);
    return { row, regime: regimeAt(this.head, 0, this.run.p.axleBrakingShare) };
  }

  /** The page has drawn the last frame. */
  drawn(): void {
    this.seen = true;
  }

  /** Advances the engine to the clock and says what happened, if the page is ready for it. */
  beat(): void {
    const now = performance.now();
    const { run } = this;
    const late = (now - this.started) / 1000 - run.time;
    const behind = late > MOST_BEHIND;
    if (behind) this.started += (late - MOST_BEHIND) * 1000;
    const due = (now - this.started) / 1000;
    while (run.time + run.p.h <= due) {
      run.step(this.pressed);
      this.pressed = false;
    }
    const spent = (performance.now() - now) / Math.max(1, now - this.last);
    this.load += SMOOTHING * (spent - this.load);
    this.last = now;
    if (!this.seen) return;
    this.seen = false;
    const rows: LiveRow[] = [];
    for (; this.told < run.log.rows; this.told += 1) rows.push(this.row(run.log.copyRow(this.told)));
    const head = this.row(run.instant());
    say({ news: "frame", rows, head, load: this.load, behind });
  }

  /** The drive as a cycle and as its run. */
  end(id: string, title: string, source: string): void {
    const { run, request } = this;
    while (run.log.rows < 2 || run.time > at(run.log.view("time"), run.log.rows - 1) + 1e-9) run.step();
    checkClosure(run);
    const [time, speed, grade] = (["time", "speed", "grade"] as const).map((of) => run.log.view(of).slice());
    if (!time || !speed || !grade) return;
    const cycle: CycleTrace = { id, title, source, time, speed, grade, phases: [], soaks: [], treatment: [] };
    const regime = regimes(run.log, run.p);
    const summary = summarize(run, request.vehicle, cycle, request.strategy, regime);
    const log = run.log.parts();
    const buffers = [log.columns, log.modes, log.masks, log.flows, regime].map((array) => array.buffer);
    say({ news: "ended", reply: { log, regime, summary }, trace: { time, speed, grade } }, buffers);
  }
}

let drive: LiveDrive | null = null;
let timer = 0;

function fail(error: unknown): void {
  clearInterval(timer);
  say({ news: "failed", why: error instanceof Error ? error.message : String(error) });
}

function guarded(work: () => void): void {
  try {
    work();
  } catch (error) {
    fail(error);
  }
}

async function start(request: LiveRequest): Promise<void> {
  drive = new LiveDrive(request, await readyStrategy(chosenIn(request)));
  timer = self.setInterval(() => guarded(() => drive?.beat()), BEAT);
}

self.onmessage = ({ data }: MessageEvent<LiveOrder>): void =>
  guarded(() => {
    if (data.order === "start") start(data.request).catch(fail);
    else if (data.order === "pedals") drive?.press(data.pedals);
    else if (data.order === "seen") drive?.drawn();
    else {
      clearInterval(timer);
      drive?.end(data.id, data.title, data.source);
    }
  });
