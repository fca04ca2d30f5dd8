/** Everything that changes during a run: the plant's own state, the torques of the step, and its results. */
export class PlantState {
  // State at the start of the step, and after `commit` at its end.
  carrierSpeed = 0;
  ringSpeed = 0;
  soc = 0;
  rcVoltage = 0;
  indicatedTorque = 0;
  coolant = 363.15;
  /** accelerations of the last step, rad/s² */
  carrierAcceleration = 0;
  ringAcceleration = 0;
  /** the same, but as they were in a step that ended at rest */
  carrierChange = 0;
  ringChange = 0;
  /** mesh torque and torque through the final drive (at the ring) of the last step, N·m */
  meshTorque = 0;
  driveTorque = 0;

  // Set by the control for the step.
  firing = 0;
  awake = 1;
  sunTorque = 0;
  outputTorque = 0;
  /** friction-brake force at the tyres, N, ≥ 0 */
  brakeForce = 0;
  /** weight along the road, N; positive when it pulls backward */
  gradeForce = 0;
  gradeSine = 0;
  gradeCosine = 1;
  /** rolling resistance, N, ≥ 0 */
  rollingForce = 0;
  auxiliaryPower = 0;
  startFuelPower = 0;
  /** friction over the warm engine's, ≥ 1 */
  coldFactor = 1;
  /** battery currents allowed, A, both ≥ 0 */
  currentOut = 0;
  currentIn = 0;

  // Results of the step.
  carrierEnd = 0;
  ringEnd = 0;
  freeCarrier = 0;
  freeRing = 0;
  frictionBound = 0;
  ringBound = 0;
  carrierReaction = 0;
  ringReaction = 0;
  /** 1 while the contact holds its shaft at rest at the step's end */
  carrierHeld = 1;
  ringHeld = 1;
  meshLossTorque = 0;
  driveLossTorque = 0;
  reductionLossTorque = 0;
  /** ωr/(|ωr| + smoothing): by how much, and which way, gear losses oppose the ring */
  gearFade = 0;
  airForce = 0;
  carrierMean = 0;
  ringMean = 0;
  sunMean = 0;
  outputMean = 0;
  sunElectric = 0;
  outputElectric = 0;
  sunLoss = 0;
  outputLoss = 0;
  batteryPower = 0;
  current = 0;
  voltage = 0;
  sourceVoltage = 0;
  sourceResistance = 0;
  openCircuitMid = 0;
  rcMid = 0;
  ohmic = 0;
  fuelPower = 0;
  engineTorque = 0;
  /** cursors into a gridded engine map */
  mapRow = 0;
  mapColumn = 0;
  /** bits of sim/control/limits.ts, gathered since the last log row */
  limits = 0;
}
