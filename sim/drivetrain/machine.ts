/**
 * An electric machine with its inverter. Torque and speed are signed; electrical power is positive when taken from
 * the DC link. Loss form: c0 + c1 T² + c2|ω| + c3|ω|³ + c4|T ω| (copper, iron, windage and inverter; the first four
 * terms as in Larminie and Lowry, Electric Vehicle Technology Explained, 1st ed. eq. 7.23).
 */
export interface MachineLimits {
  readonly peakTorque: number;
  readonly peakPower: number;
  readonly maxSpeed: number;
}

/** Coefficients of the loss, SI. */
export interface MachineLoss {
  readonly loss0: number;
  readonly loss1: number;
  readonly loss2: number;
  readonly loss3: number;
  readonly loss4: number;
}

/** Loss of machine and inverter, W, never negative. */
export function machineLoss(m: MachineLoss, torque: number, speed: number): number {
  const w = Math.abs(speed);
  return (
    m.loss0 + m.loss1 * torque * torque + m.loss2 * w + m.loss3 * w * w * w + m.loss4 * Math.abs(torque) * w
  );
}

/** Electrical power, W: shaft power plus loss, so never below the shaft power, in all four quadrants. */
export const machineElectric = (m: MachineLoss, torque: number, speed: number): number =>
  torque * speed + machineLoss(m, torque, speed);

/** Greatest torque, N·m, at a speed: min(peak torque, peak power / |ω|). */
export function torqueLimit(m: MachineLimits, speed: number): number {
  const w = Math.abs(speed);
  return m.peakTorque * w > m.peakPower ? m.peakPower / w : m.peakTorque;
}

/**
 * A torque brought within the machine's limits at a speed; beyond the greatest speed only braking torque is left.
 */
export function limitTorque(m: MachineLimits, torque: number, speed: number): number {
  const most = torqueLimit(m, speed);
  const limited = Math.min(most, Math.max(-most, torque));
  return Math.abs(speed) >= m.maxSpeed && limited * speed > 0 ? 0 : limited;
}

/** Motoring or generating efficiency (0–1): useful power out over power in; 0 where nothing useful comes out. */
export function machineEfficiency(m: MachineLoss, torque: number, speed: number): number {
  const shaft = torque * speed;
  const electric = shaft + machineLoss(m, torque, speed);
  if (shaft > 0) return shaft / electric;
  return electric < 0 ? electric / shaft : 0;
}
