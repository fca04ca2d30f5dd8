// Learns: keeps a running mean of the power asked and runs the engine steadily at it, so that the battery gives the
// peaks. The steadier the engine, the nearer it stays to its best point. An invented example for teaching.

const MEAN_OVER_S = 120; // how long the mean remembers
const PERIOD_S = 0.1; // a decision every tenth of a second
const BAND = 0.03; // charge below and above the target at which the engine starts and stops
const LEAST_KW = 9; // below this the engine works badly

export function decide(now, memory) {
  if (memory.mean_kW === undefined) {
    memory.mean_kW = 6;
    memory.on = false;
  }
  memory.mean_kW += ((now.demand_kW - memory.mean_kW) * PERIOD_S) / MEAN_OVER_S;

  const { socTarget, enginePower_kW } = now.vehicle;
  if (now.soc < socTarget - BAND) memory.on = true;
  if (now.soc > socTarget + BAND) memory.on = false;

  // The battery cannot give any more: the engine has to help, whatever the charge is.
  const short_kW = now.demand_kW - 0.9 * now.batteryOut_kW;
  if (!memory.on && short_kW <= 0) return { engineOn: false };

  const steady_kW = Math.max(LEAST_KW, 1.6 * memory.mean_kW);
  return { engineOn: true, enginePower_kW: Math.min(enginePower_kW, Math.max(steady_kW, short_kW)) };
}
