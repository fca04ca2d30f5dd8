import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { kmhToMps } from "../../shared/units.ts";
import { Draws } from "./draws.ts";
import { type GpxText, writeGpx } from "./gpx-text.ts";
import { type RecordedPoint, receive } from "./receiver.ts";
import { type SpeedPlan, type TrueDrive, trueDrive } from "./true-drive.ts";

/**
 * An invented recording for trying the import, with everything that goes wrong with real ones: a cold start, jitter and
 * wander, stops, lost reception, a tunnel with nothing recorded, one in which the last place is repeated, wild places,
 * wrong elevations. Its road leads over hills in the open Atlantic, so that nobody takes it for a real one.
 */
export interface MessyRecording {
  /** What was really driven. */
  readonly truth: TrueDrive;
  /** The file that the receiver wrote. */
  readonly gpx: string;
  /** s; where nothing was recorded. */
  readonly gaps: readonly Span[];
}

const START = { latitude: 47.5, longitude: -31.5 };
/** 2024-05-01 06:30:00 UTC. */
const START_TIME = 1_714_545_000;
/** m. */
const LENGTH = 20_000;

/** Makes the invented recording; the same seed gives the same file. */
export function messyRecording(seed = 20_240_501): MessyRecording {
  const plan = planDrive(new Draws(seed));
  const hills = [
    { height: 70, length: 6500 },
    { height: 12, length: 1700 },
  ];
  const truth = trueDrive(plan.plan, hills, seed + 1);
  const gaps = [plan.tunnel, ...plan.lost];
  const points = receive(
    truth,
    1,
    START,
    {
      jitter: 1.2,
      wander: 1,
      wanderTime: 120,
      elevationJitter: 1.5,
      elevationStep: 0.1,
      gaps,
      frozen: [plan.frozen],
      noHeight: [{ start: 0, end: 25 }, plan.noHeight],
      wild: 0.003,
    },
    seed + 2,
  );
  return { truth, gpx: writeGpx(inFile(points, plan.tunnel)), gaps };
}

/** The file breaks the track where the tunnel was, repeats one time, and leaves one out. */
function inFile(points: readonly RecordedPoint[], tunnel: Span): GpxText {
  const timed = points.map((point, i) => ({
    ...point,
    // Two places a file cannot mean: a time that is there twice, and one that is missing.
    time: i === 300 ? at(points, i - 1).time + START_TIME : i === 301 ? null : point.time + START_TIME,
  }));
  const first = points.filter((point) => point.time < tunnel.end).length;
  return {
    name: "Invented drive, 20 km",
    description: "Made up to try the import with: no such road, no such drive.",
    segments: [timed.slice(0, first), timed.slice(first)],
  };
}

interface Planned {
  readonly plan: SpeedPlan;
  readonly tunnel: Span;
  readonly frozen: Span;
  readonly lost: readonly Span[];
  readonly noHeight: Span;
}

/** Town, country road, motorway with two tunnels, village, town. */
function planDrive(draws: Draws): Planned {
  const pen = new PlanPen();
  pen.hold(20);
  const lost: Span[] = [];
  for (let leg = 0; leg < 7; leg += 1) {
    pen.goTo(kmhToMps(draws.between(28, 52)), draws.between(0.8, 1.6));
    pen.hold(draws.between(10, 45));
    if (leg === 2) lost.push(pen.holdSpan(14));
    pen.goTo(0, draws.between(1, 2));
    if (leg === 4) lost.push(pen.holdSpan(35));
    pen.hold(draws.between(6, 40));
  }
  for (let leg = 0; leg < 3; leg += 1) {
    pen.goTo(kmhToMps(draws.between(70, 95)), 0.8);
    pen.hold(draws.between(40, 70));
  }
  const noHeight = pen.holdSpan(12);
  pen.goTo(kmhToMps(115), 0.7);
  pen.hold(30);
  const tunnel = pen.holdSpan(38);
  pen.hold(35);
  const frozen = pen.holdSpan(16);
  pen.hold(20);
  pen.goTo(kmhToMps(48), 1.1);
  pen.hold(60);
  while (pen.way < LENGTH - 900) {
    pen.goTo(kmhToMps(draws.between(25, 50)), draws.between(0.8, 1.6));
    pen.hold(draws.between(8, 30));
    pen.goTo(0, draws.between(1, 2));
    pen.hold(draws.between(5, 30));
  }
  const last = kmhToMps(45);
  pen.goTo(last, 1);
  // Braking at 1.2 m/s² takes the rest of the way.
  pen.hold((LENGTH - pen.way - (last * last) / 2.4) / last);
  pen.goTo(0, 1.2);
  pen.hold(25);
  return { plan: pen.plan(), tunnel, frozen, lost, noHeight };
}

/** Draws a speed plan piece by piece. */
class PlanPen {
  private readonly times: number[] = [0];
  private readonly speeds: number[] = [0];
  private now = 0;
  private speed = 0;
  /** m. */
  way = 0;

  /** @param speed m/s @param ramp m/s² */
  goTo(speed: number, ramp: number): void {
    const length = Math.abs(speed - this.speed) / ramp;
    if (length === 0) return;
    this.way += ((speed + this.speed) / 2) * length;
    this.speed = speed;
    this.add(length);
  }

  /** @param length s */
  hold(length: number): void {
    this.way += this.speed * length;
    this.add(length);
  }

  /** @returns the time held */
  holdSpan(length: number): Span {
    const start = this.now;
    this.hold(length);
    return { start, end: this.now };
  }

  plan(): SpeedPlan {
    return { time: Float64Array.from(this.times), speed: Float64Array.from(this.speeds) };
  }

  private add(length: number): void {
    this.now += length;
    this.times.push(this.now);
    this.speeds.push(this.speed);
  }
}
