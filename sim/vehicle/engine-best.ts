import { brakeEfficiency, engineTables, fullLoadTorque } from "../drivetrain/engine.ts";
import type { Vehicle } from "../parameters/schema.ts";

/** The warm engine's point of greatest brake efficiency. */
export interface BestPoint {
  readonly efficiency: number;
  /** rad/s */
  readonly speed: number;
  /** N·m */
  readonly torque: number;
}

const SPEEDS = 200;
const LOADS = 100;

const known = new WeakMap<Vehicle["engine"], BestPoint>();

/** Searches a grid over speed (idle to greatest) and load (to full load) for the greatest brake efficiency. */
export function bestPoint(engine: Vehicle["engine"]): BestPoint {
  const kept = known.get(engine);
  if (kept) return kept;
  const { map } = engineTables(engine);
  let best: BestPoint = { efficiency: 0, speed: engine.idleSpeed, torque: 0 };
  for (let i = 0; i <= SPEEDS; i += 1) {
    const speed = engine.idleSpeed + ((engine.maxSpeed - engine.idleSpeed) * i) / SPEEDS;
    const full = fullLoadTorque(engine, speed);
    for (let j = 1; j <= LOADS; j += 1) {
      const torque = (full * j) / LOADS;
      const efficiency = brakeEfficiency(engine, map, speed, torque);
      if (efficiency > best.efficiency) best = { efficiency, speed, torque };
    }
  }
  known.set(engine, best);
  return best;
}
