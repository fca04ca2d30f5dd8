import { beforeEach, describe, expect, it } from "vitest";
import { redo, resetStore, setVehicle, undo, vehicle } from "../../../renderer/state/store.ts";
import { setParameter } from "../../../renderer/vehicle/edit.ts";
import {
  closeMap,
  dropMap,
  fittedMap,
  mapDraft,
  mapReading,
  openMap,
  readMapAgain,
  takeMap,
} from "../../../renderer/vehicle/map-draft.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const SPEEDS = [800, 3000, 5500];
const TORQUES = [20, 70, 140];

/** A table in g/kWh without a word on its units. */
const TABLE = [
  "speed,torque,fuel",
  ...SPEEDS.flatMap((n) => TORQUES.map((m) => `${n},${m},${300 - m / 2}`)),
].join("\n");

beforeEach(() => {
  resetStore();
  closeMap();
});

describe("an opened engine map", () => {
  it("changes nothing before it is taken, and is one step of undo then", () => {
    openMap(TABLE, "map.csv");
    expect(mapReading.value?.roles.figure).toMatchObject({ unit: "g/kWh", unitHow: "guessed" });
    expect(fittedMap.value?.vehicle?.engine.map?.torque).toEqual(TORQUES);
    expect(vehicle.value).toBe(vehicleById("compact"));
    takeMap();
    expect(mapDraft.value).toBeNull();
    expect(vehicle.value.id).toBe("compact-2");
    expect(vehicle.value.engine.map?.speed).toHaveLength(3);
    undo();
    expect(vehicle.value).toBe(vehicleById("compact"));
    redo();
    expect(vehicle.value.engine.map?.torque).toEqual(TORQUES);
    expect(dropMap()).toBe(true);
    expect(vehicle.value.engine.map).toBeUndefined();
    undo();
    expect(vehicle.value.engine.map?.torque).toEqual(TORQUES);
  });

  it("is read again as it is chosen, and cannot be taken where it is refused", () => {
    openMap(TABLE, "map.csv");
    readMapAgain({ units: { figure: "%" } });
    expect(fittedMap.value?.vehicle).toBeNull();
    expect(fittedMap.value?.faults[0]).toMatchObject({
      where: 'map.csv, row 2, column "fuel"',
      value: "290",
    });
    takeMap();
    expect(mapDraft.value).not.toBeNull();
    expect(vehicle.value).toBe(vehicleById("compact"));
    readMapAgain({});
    expect(fittedMap.value?.vehicle).not.toBeNull();
  });

  it("goes by the fuel and the full load of the vehicle in use", () => {
    openMap(TABLE, "map.csv");
    const before = fittedMap.value?.vehicle?.engine.map?.fuelPower[0]?.[0] ?? 0;
    const { lowerHeat } = vehicle.value.fuel;
    setParameter("fuel.lowerHeat", lowerHeat * 1.1, "");
    expect(fittedMap.value?.vehicle?.engine.map?.fuelPower[0]?.[0]).toBeCloseTo(before * 1.1, 6);
    setVehicle("van");
    // The van's engine pulls more than the table reaches to.
    expect(fittedMap.value?.faults[0]?.where).toBe("map.csv, torques");
  });
});
