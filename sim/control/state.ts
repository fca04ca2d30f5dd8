/** What the engine is doing. */
export const ENGINE = { off: 0, cranking: 1, running: 2, stopping: 3 } as const;

/** Name of an engine mode by its number. */
export const ENGINE_MODES = ["off", "cranking", "running", "stopping"] as const;

/** What driver, strategy and supervisor decided for the present control period, and their own memory. */
export class ControlState {
  // From the driver.
  /** force asked at the wheels, N; positive forward */
  wheelForceAsk = 0;
  /** 1 forward, −1 backward: the way the driver means to go */
  direction = 1;
  /** force with which the brakes hold a standing vehicle, N */
  holdForce = 0;
  /** 1 while the driver brakes */
  braking = 0;
  driverIntegral = 0;
  /** 1 while the driver wants the engine kept off */
  electricOnly = 0;
  /** 1 while the vehicle is switched off */
  asleep = 0;
  /** what the log shows as asked: speed, m/s, and grade */
  target = 0;
  grade = 0;

  // From the strategy, after the supervisor.
  engineMode: 0 | 1 | 2 | 3 = 0;
  /** power asked of the engine, W */
  enginePower = 0;
  /** carrier speed asked at the start of the period, rad/s, and its change, rad/s² */
  carrierTarget = 0;
  carrierTargetRate = 0;
  regeneration = 1;
  /** seconds since the engine was last started or stopped */
  modeTime = 1e6;
  starts = 0;
  startFuelLeft = 0;
  forced = 0;
  /** 1 while the engine is turned to hold the vehicle back */
  holdBack = 0;
  /** s for which there has been reason to begin with that, or to end it */
  holdBackTime = 0;
  /** 1 while the engine turns for that and has not fired since it stood */
  unlit = 0;

  // For the actuation, within the period.
  /** indicated torque at the step's end, N·m */
  laggedTorque = 0;
  /** seconds since the period began */
  within = 0;
  /** share of the braking that the driven axle carries at this speed */
  regenShare = 0;
  /** torque with which the sun machine pushes against the one-way clutch, N·m, ≥ 0 */
  clutchTorque = 0;
}
