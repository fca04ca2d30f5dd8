import { at } from "../../shared/at.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { LogReader } from "./log.ts";

/** How the engine's energy reached the output, J. */
export interface PowerPaths {
  /** engine work into the gear set */
  readonly engine: number;
  /** straight through the gear set to the ring */
  readonly mechanical: number;
  /** by way of the generating sun machine */
  readonly electrical: number;
  /** taken from the output by its machine and put back through the motoring sun machine */
  readonly circulating: number;
}

/**
 * Power through each path at one instant, W, steady and lossless: the mechanical path is the engine's share at the
 * ring, k/(1 + k) T ωr; what the sun takes is electrical; when the sun turns backward the two exceed the engine's
 * power by what circulates.
 * @param engineTorque N·m, > 0
 * @param sun sun speed, rad/s
 */
export function pathsAt(k: number, engineTorque: number, engineSpeed: number, sun: number): PowerPaths {
  const engine = engineTorque * engineSpeed;
  const electrical = (engineTorque * sun) / (1 + k);
  return {
    engine,
    mechanical: engine - electrical,
    electrical: Math.max(0, electrical),
    circulating: Math.max(0, -electrical),
  };
}

/** The same summed over a run's rows with the engine pulling and the vehicle moving or at rest. */
export function powerPaths(log: LogReader, p: Prepared): PowerPaths {
  const time = log.view("time");
  const torque = log.view("engineTorque");
  const speed = log.view("engineSpeed");
  const sun = log.view("sunMachineSpeed");
  const on = log.view("engineOn");
  const sum = { engine: 0, mechanical: 0, electrical: 0, circulating: 0 };
  for (let i = 1; i < log.rows; i += 1) {
    if (at(on, i) !== 1 || at(torque, i) <= 0) continue;
    const width = at(time, i) - at(time, i - 1);
    const now = pathsAt(p.k, at(torque, i), at(speed, i), at(sun, i));
    sum.engine += now.engine * width;
    sum.mechanical += now.mechanical * width;
    sum.electrical += now.electrical * width;
    sum.circulating += now.circulating * width;
  }
  return sum;
}
