import { beforeAll, describe, expect, it } from "vitest";
import { succeed, temporaryFolder, textIn } from "./command.ts";
import { electricPower, Rows, type VehicleFile } from "./rows.ts";

/** Everything below is recomputed from run.csv and vehicle.json: no formula of the product is called. */

const SIDES: Record<string, readonly string[]> = {
  in: ["running_fuel_j", "start_fuel_j"],
  stored: ["kinetic_change_j", "potential_change_j", "battery_change_j", "polarisation_change_j"],
};

const SCENES = [
  {
    title: "every step of a launch up a hill",
    args: ["--cycle", "launch:speed=70km/h,rate=2m/s2,grade=4%", "--log-every", "step", "--wind", "3"],
    exact: true,
  },
  { title: "the urban schedule at 10 Hz", args: ["--cycle", "udds"], exact: false },
  {
    title: "every step of backing up with the van",
    args: ["--cycle", "back-up", "--vehicle", "van", "--log-every", "step", "--step", "0.02", "--soc", "40%"],
    exact: true,
  },
];

describe.each(SCENES)("from the files alone: $title", ({ args, exact }) => {
  const folder = temporaryFolder();
  let rows: Rows;
  let vehicle: VehicleFile;

  beforeAll(() => {
    succeed(folder, "run", ...args, "--out", "run.csv", "--vehicle-out", "vehicle.json");
    rows = new Rows(textIn(folder, "run.csv"));
    vehicle = JSON.parse(textIn(folder, "vehicle.json")) as VehicleFile;
  });

  it("the gear equation holds on every row to 1e-9 of the greatest speed", () => {
    const k = vehicle.gearSet.ringTeeth / vehicle.gearSet.sunTeeth;
    const top = rows.greatest((i) => Math.abs(rows.at("sun_machine_speed_radps", i)));
    const worst = rows.greatest((i) => {
      const sun = (1 + k) * rows.at("engine_speed_radps", i) - k * rows.at("ring_speed_radps", i);
      return Math.abs(sun - rows.at("sun_machine_speed_radps", i));
    });
    expect(worst).toBeLessThan(1e-9 * top);
    const reduction = rows.greatest((i) =>
      Math.abs(
        vehicle.outputMachine.reduction * rows.at("ring_speed_radps", i) -
          rows.at("output_machine_speed_radps", i),
      ),
    );
    expect(reduction).toBeLessThan(1e-9 * top);
  });

  it("voltage times current is power, and both machines with the auxiliaries are the battery", () => {
    const worst = rows.greatest((i) => {
      const power = rows.at("battery_power_w", i);
      const product = rows.at("battery_voltage_v", i) * rows.at("battery_current_a", i);
      const parts =
        rows.at("sun_machine_electric_w", i) + rows.at("output_machine_electric_w", i) + rows.at("aux_w", i);
      return Math.max(Math.abs(product - power), Math.abs(parts - power)) / Math.max(1, Math.abs(power));
    });
    expect(worst).toBeLessThan(1e-6);
  });

  it("both machines' electrical power follows from their coefficients", () => {
    for (const name of ["sun", "output"] as const) {
      const machine = name === "sun" ? vehicle.sunMachine : vehicle.outputMachine;
      // The power is that of a row's last step. Every step logged, that step's mean speed is known; at 10 Hz the speed
      // at its end stands for it.
      const speed = (i: number): number =>
        exact ? rows.mean(`${name}_machine_speed_radps`, i) : rows.at(`${name}_machine_speed_radps`, i);
      const power = (i: number): number =>
        electricPower(machine, rows.at(`${name}_machine_torque_nm`, i), speed(i));
      const logged = (i: number): number => rows.at(`${name}_machine_electric_w`, i);
      const scale = (i: number): number => Math.max(1, Math.abs(logged(i)));
      if (exact) expect(rows.greatest((i) => Math.abs(power(i) - logged(i)) / scale(i))).toBeLessThan(1e-6);
      const whole = rows.sum((i) => Math.abs(logged(i)));
      expect(Math.abs(rows.sum((i) => power(i) - logged(i))) / whole).toBeLessThan(exact ? 1e-9 : 0.01);
    }
  });

  it("the ledger's columns add up on every row", () => {
    const ledger = rows.header.slice(rows.header.indexOf("limits") + 1);
    const losses = ledger.filter((name) => !SIDES.in?.includes(name) && !SIDES.stored?.includes(name));
    expect(losses.length).toBe(15);
    const total = (names: readonly string[], i: number): number =>
      names.reduce((sum, name) => sum + rows.at(name, i), 0);
    const worst = rows.greatest((i) => {
      const sources = total(SIDES.in ?? [], i);
      const lost = total(losses, i);
      return Math.abs(sources - lost - total(SIDES.stored ?? [], i)) / Math.max(1000, sources + lost);
    });
    expect(worst).toBeLessThan(1e-9);
    const least = Math.min(...losses.map((name) => rows.at(name, rows.count - 1)));
    expect(least).toBeGreaterThanOrEqual(0);
  });

  it("distance, fuel and charge are the integrals of the rows", () => {
    const tolerance = exact ? 1e-9 : 5e-3;
    const last = rows.count - 1;
    const near = (found: number, expected: number, scale: number, within = tolerance): void =>
      expect(Math.abs(found - expected)).toBeLessThanOrEqual(within * scale);
    const distance = rows.at("distance_m", last);
    near(
      rows.sum((i) => rows.mean("speed_mps", i) * rows.width(i)),
      distance,
      Math.abs(distance),
    );
    const fuel = rows.at("fuel_j", last);
    near(
      rows.sum((i) => rows.at("fuel_power_w", i) * rows.width(i)),
      fuel,
      fuel,
    );
    const capacity = vehicle.battery.capacityAh * 3600;
    const charge = (i: number): number => (rows.at("battery_current_a", i) * rows.width(i)) / capacity;
    const change = rows.at("soc", last) - rows.at("soc", 0);
    const turnedOver = rows.sum((i) => Math.abs(charge(i)));
    // At 10 Hz a row's current is that of one step in ten, taken in the middle between two decisions.
    near(-rows.sum(charge), change, turnedOver, exact ? tolerance : 0.005);
  });
});
