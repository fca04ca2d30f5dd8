// Weighs costs: for each of some engine powers it adds up fuel and what the battery's share will cost to put back, and
// takes the cheapest. The engine is a straight line here: fuel = idle losses + power / slope. The price of battery
// energy rises when the charge is low. An invented example for teaching.

const LOSSES_KW = 4.5; // fuel power for a running engine that gives nothing
const SLOPE = 0.43; // brake power for each kW of fuel above that
const PRICE = 2.75; // kW of fuel for each kW from the battery, at the target
const PRICE_PER_SOC = 9; // the price rises by 0.9 for 10 % of charge missing
const BATTERY_LOSS = 0.004; // share lost for each kW through battery and machines
const START_KW = 2.2; // a start must gain more than this

const fuel = (power) => LOSSES_KW + power / SLOPE;

export function decide(now) {
  const price = PRICE + PRICE_PER_SOC * (now.vehicle.socTarget - now.soc);
  const battery = (power) => power + BATTERY_LOSS * power * power;
  const cost = (engine) => (engine > 0 ? fuel(engine) : 0) + price * battery(now.demand_kW - engine);

  let best = 0;
  let least = cost(0) + (now.engineOn ? START_KW : -START_KW);
  if (now.demand_kW > now.batteryOut_kW) least = Infinity;
  for (let engine = 5; engine <= now.vehicle.enginePower_kW; engine += 1) {
    if (engine - now.demand_kW > now.batteryIn_kW) break;
    if (cost(engine) < least) {
      least = cost(engine);
      best = engine;
    }
  }
  return best > 0 ? { engineOn: true, enginePower_kW: best } : { engineOn: false };
}
