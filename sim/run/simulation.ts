import { actuate } from "../control/actuation.ts";
import type { Driver } from "../control/driver.ts";
import { ControlState, ENGINE } from "../control/state.ts";
import {
  type Strategy,
  StrategyAnswer,
  type StrategyDefinition,
  StrategyInput,
} from "../control/strategy.ts";
import { supervise } from "../control/supervisor.ts";
import { burn, charge, settle } from "../drivetrain/plant.ts";
import { type Prepared, prepare } from "../drivetrain/prepared.ts";
import { PlantState } from "../drivetrain/state.ts";
import { LIMIT_BIT } from "../limits.ts";
import { type RunOptions, type RunSettings, runSettings } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { COLD_REFERENCE, CONTROL_PERIOD, DEMAND_EFFICIENCY, SOC_TAPER, STANDBY_SHARE } from "../settings.ts";
import { Books, book } from "./books.ts";
import { kineticEnergy, polarisationEnergy, type StoredAtStart } from "./ledger.ts";
import { type LogRow, RunLog } from "./log.ts";

/**
 * A drivetrain under way: state, control, books and log. It is advanced one control period (0.1 s) at a time, by a
 * run over a cycle or from outside (driving by hand); nothing in it knows a clock.
 */
export class Simulation {
  readonly p: Prepared;
  readonly s = new PlantState();
  readonly c = new ControlState();
  readonly b = new Books();
  readonly log: RunLog;
  readonly settings: RunSettings;
  readonly stored: StoredAtStart;
  /** control periods made */
  ticks = 0;
  /** steps made of the period under way */
  private made = 0;
  private readonly strategy: Strategy;
  private readonly regeneration: number;
  private readonly now = new StrategyInput();
  private readonly answer = new StrategyAnswer();
  private heatBefore = 0;

  /**
   * @param rows rows to make room for; the log grows when there are more
   * @throws InputError for options out of range
   */
  constructor(
    readonly vehicle: Vehicle,
    readonly driver: Driver,
    strategy: StrategyDefinition,
    options: RunOptions,
    rows = 1024,
  ) {
    this.settings = runSettings(options, {
      startSoc: vehicle.battery.socStart,
      auxiliaryPower: vehicle.auxiliary.power,
    });
    const p = prepare(vehicle, this.settings);
    this.p = p;
    this.strategy = strategy.create(p);
    this.regeneration = strategy.regeneration ? 1 : 0;
    this.s.soc = p.socStart;
    this.s.coolant = p.thermal.start;
    this.s.auxiliaryPower = 0;
    this.s.voltage = this.s.openCircuitMid;
    this.stored = { kinetic: kineticEnergy(p, this.s), polarisation: polarisationEnergy(p, this.s) };
    this.log = new RunLog(rows);
    this.restVoltage();
    driver.look(0, this.c);
    this.log.write(0, p, this.s, this.c, this.b, this.stored);
    this.s.limits = 0;
  }

  /** s since the start. */
  get time(): number {
    return this.ticks * CONTROL_PERIOD + this.made * this.p.h;
  }

  /** Terminal voltage of the resting battery, so that the first row has one. */
  private restVoltage(): void {
    const place = Math.min(this.p.socSteps - 1, Math.floor(this.s.soc * this.p.socSteps));
    this.s.voltage = this.p.openCircuit[place] ?? 0;
  }

  /**
   * Advances one control period of 0.1 s and logs a row at its end (or a row a step). Decisions fall in the middle of
   * the period, so that a row shows an ordinary instant and not the last one before the torques change: sums over rows
   * then come near the sums over steps.
   */
  tick(): void {
    const { stepsPerTick, h } = this.p;
    const half = Math.floor(stepsPerTick / 2);
    if (this.ticks === 0 && half > 0) this.decide(0);
    this.advance(1, half);
    this.decide(this.time + half * h);
    this.advance(half + 1, stepsPerTick);
    this.endPeriod();
  }

  /**
   * Advances one step, for whoever watches every step: the same steps, decisions and rows as `tick`, which must not be
   * called in the middle of a period made by steps.
   * @param decide true decides at once too: driven by hand, a pedal does not wait for the period's middle
   */
  step(decide = false): void {
    const { stepsPerTick } = this.p;
    const half = Math.floor(stepsPerTick / 2);
    const begins = this.ticks === 0 && this.made === 0 && half > 0;
    if (begins || this.made === half || decide) this.decide(this.time);
    this.advance(1, 1);
    this.made += 1;
    if (this.made < stepsPerTick) return;
    this.made = 0;
    this.endPeriod();
  }

  /** The instant as a row of the log, also between two of them. */
  instant(): LogRow {
    this.driver.look(this.time, this.c);
    return this.log.snapshot(this.time, this.p, this.s, this.c, this.b, this.stored);
  }

  private endPeriod(): void {
    this.ticks += 1;
    if (this.c.engineMode === ENGINE.running) this.b.engineSeconds += CONTROL_PERIOD;
    if (this.settings.logEvery === "control") this.write(this.time);
  }

  /** Makes the steps of the period with these numbers, first to last. */
  private advance(first: number, last: number): void {
    const { p, s, c, b } = this;
    const perStep = this.settings.logEvery === "step";
    for (let i = first; i <= last; i += 1) {
      actuate(p, s, c);
      burn(p, s);
      charge(p, s);
      book(p, s, c, b);
      settle(p, s);
      if (perStep) this.write(this.time + i * p.h);
    }
  }

  private write(time: number): void {
    this.driver.look(time, this.c);
    this.log.write(time, this.p, this.s, this.c, this.b, this.stored);
    this.s.limits = 0;
  }

  private decide(time: number): void {
    const { p, s, c, driver, now, answer } = this;
    c.within = 0;
    this.warm();
    this.allowCurrents();
    driver.decide(time, p, s, c);
    const asleep = c.asleep === 1;
    s.auxiliaryPower = asleep ? 0 : p.auxiliaryPower;
    s.awake = asleep && s.carrierSpeed === 0 && s.ringSpeed === 0 ? 0 : 1;
    this.shareBraking();
    this.look(time);
    answer.engineOn = false;
    answer.enginePower = 0;
    answer.engineSpeed = 0;
    if (!asleep) this.strategy.decide(now, answer);
    now.limits = 0;
    if (asleep && c.engineMode === ENGINE.off) return;
    supervise(p, s, c, now, answer);
    this.pushClutch();
  }

  /** Fills in what the strategy sees. */
  private look(time: number): void {
    const { p, s, c, now } = this;
    now.time = time;
    now.speed = s.ringSpeed * p.metresPerRing;
    now.wheelPower = c.wheelForceAsk * now.speed;
    now.demand = Math.max(0, now.wheelPower / DEMAND_EFFICIENCY) + s.auxiliaryPower;
    now.soc = s.soc;
    now.engineOn = s.firing;
    now.engineTime = c.modeTime;
    now.engineSpeed = s.carrierSpeed;
    now.coolant = s.coolant;
    now.limits = s.limits;
  }

  /** Battery currents for the period: tapered at the ends of the charge window; a standby share always remains. */
  private allowCurrents(): void {
    const { p, s, now } = this;
    const place = Math.min(p.socSteps - 1, Math.max(0, Math.floor(s.soc * p.socSteps)));
    const open = (p.openCircuit[place] ?? 0) - s.rcVoltage;
    const above = Math.min(1, Math.max(0, (s.soc - p.socFloor) / SOC_TAPER));
    const below = Math.min(1, Math.max(0, (p.socCeiling - s.soc) / SOC_TAPER));
    // A start must stay possible with the charge at its floor: the reserve is there for it.
    const reserve = this.c.engineMode === ENGINE.cranking ? p.control.crankReserve : 0;
    const standby = (STANDBY_SHARE * (p.auxiliaryPower + p.sun0 + p.out0) + reserve) / open;
    s.currentOut = Math.max(standby, p.currentMostOut * above);
    s.currentIn = p.currentMostIn * below;
    const out = Math.min(s.currentOut, Math.max(0, (open - p.packLeast) / p.resistanceDischarge));
    const into = Math.min(s.currentIn, Math.max(0, (p.packMost - open) / p.resistanceCharge));
    now.batteryOut = (open - p.resistanceDischarge * out) * out;
    now.batteryIn = (open + p.resistanceCharge * into) * into;
  }

  /** Share of the braking that the driven axle's machine takes at this speed. */
  private shareBraking(): void {
    const { p, s, c } = this;
    const speed = Math.abs(s.ringSpeed * p.metresPerRing);
    const fade = Math.min(1, Math.max(0, (speed - p.fadeEnd) * p.fadePerSpeed));
    // A start at speed makes electricity itself: with a filling battery the output machine must use it, not add to it.
    const starting = c.engineMode === ENGINE.cranking && s.currentIn < p.currentMostIn;
    c.regenShare = starting ? 0 : p.axleBrakingShare * fade * this.regeneration;
    if (c.braking === 0) return;
    const axle = p.gripDriven * s.gradeCosine;
    const asked = Math.abs(c.wheelForceAsk);
    if (c.regenShare * asked > axle) {
      c.regenShare = axle / asked;
      s.limits |= LIMIT_BIT["tyre-grip"];
    }
    if (this.regeneration === 0) s.limits |= LIMIT_BIT["regeneration-off"];
    else if (fade < 1) s.limits |= LIMIT_BIT["low-speed-fade"];
  }

  /** With a one-way clutch the sun machine helps an electric pull-away that the output machine cannot make alone. */
  private pushClutch(): void {
    const { p, s, c } = this;
    c.clutchTorque = 0;
    if (!p.oneWayClutch || c.engineMode !== ENGINE.off || c.braking === 1 || c.wheelForceAsk <= 0) return;
    const missing = c.wheelForceAsk * p.metresPerRing - p.reduction * p.outPeakTorque;
    if (missing > 0 && s.ringSpeed >= 0) c.clutchTorque = Math.min(p.sunPeakTorque, missing / p.k);
  }

  /** Lumped coolant: its share of the engine's heat against what the air takes; the thermostat holds it from above. */
  private warm(): void {
    const { p, s, b } = this;
    const t = p.thermal;
    const heat = b.engineHeat + b.engineFriction + b.engineMotoring;
    const gain = t.share * (heat - this.heatBefore) - t.loss * (s.coolant - t.air) * CONTROL_PERIOD;
    this.heatBefore = heat;
    s.coolant = Math.min(t.warm, s.coolant + gain * t.perCapacity);
    const cold = Math.max(0, (t.warm - s.coolant) / (t.warm - COLD_REFERENCE));
    s.coldFactor = 1 + (t.coldFriction - 1) * cold;
  }
}
