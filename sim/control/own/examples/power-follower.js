// Rules with hysteresis: the engine follows the power asked, and a little more when the charge is low.
// An invented example for teaching.

const START_KW = 8; // start the engine above this demand
const STOP_KW = 4; // stop it below this one
const LEAST_ON_S = 5; // but let it run this long
const KW_PER_SOC = 60; // charge correction: 10 % of charge missing adds 6 kW

export function decide(now, memory) {
  const missing = now.vehicle.socTarget - now.soc;
  if (missing > 0.08) memory.charging = true;
  if (missing < 0.05) memory.charging = false;

  const wanted = now.engineOn
    ? now.demand_kW > STOP_KW || now.engineTime_s < LEAST_ON_S
    : now.demand_kW > START_KW;
  if (!wanted && !memory.charging) return { engineOn: false };

  const power = now.demand_kW + KW_PER_SOC * missing;
  return {
    engineOn: true,
    enginePower_kW: Math.min(now.vehicle.enginePower_kW, Math.max(5, power)),
  };
}
