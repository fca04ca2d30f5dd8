import { beforeEach, describe, expect, it, vi } from "vitest";
import { notice } from "../../../renderer/app/window.ts";
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
import type { MapReply, MapRequest } from "../../../renderer/workers/map-contract.ts";
import { mapWork } from "../../../renderer/workers/map-work.ts";
import { Cancelled } from "../../../renderer/workers/runner.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

interface Asked {
  readonly request: MapRequest;
  readonly answer: (reply: MapReply) => void;
  readonly fail: (error: Error) => void;
}

const worker = vi.hoisted(() => ({ asked: [] as Asked[], ended: 0 }));

// There are no workers here: the test answers in their place.
vi.mock("../../../renderer/vehicle/map-reader.ts", () => ({
  readMap: (request: MapRequest) =>
    new Promise<MapReply>((answer, fail) => {
      worker.asked.push({ request, answer, fail });
    }),
  cancelReading: () => {
    worker.ended += 1;
    for (const { fail } of worker.asked.splice(0)) fail(new Cancelled());
  },
}));

/** Lets the worker answer, through a copy as between threads. */
async function answered(): Promise<void> {
  for (const { request, answer } of worker.asked.splice(0)) answer(structuredClone(mapWork.read(request)));
  await Promise.resolve();
}

const fitted = () => fittedMap.value?.fitted;

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
  worker.asked.length = 0;
});

describe("an opened engine map", () => {
  it("changes nothing before it is taken, and is one step of undo then", async () => {
    openMap(TABLE, "map.csv");
    await answered();
    expect(mapReading.value?.roles.figure).toMatchObject({ unit: "g/kWh", unitHow: "guessed" });
    expect(fitted()?.vehicle?.engine.map?.torque).toEqual(TORQUES);
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

  it("is read again as it is chosen, and cannot be taken where it is refused", async () => {
    openMap(TABLE, "map.csv");
    await answered();
    readMapAgain({ units: { figure: "%" } });
    await answered();
    expect(fitted()?.vehicle).toBeNull();
    expect(fitted()?.faults[0]).toMatchObject({
      where: 'map.csv, row 2, column "fuel"',
      value: "290",
    });
    takeMap();
    expect(mapDraft.value).not.toBeNull();
    expect(vehicle.value).toBe(vehicleById("compact"));
    readMapAgain({});
    await answered();
    expect(fitted()?.vehicle).not.toBeNull();
  });

  it("goes by the fuel and the full load of the vehicle in use", async () => {
    openMap(TABLE, "map.csv");
    await answered();
    const before = fitted()?.vehicle?.engine.map?.fuelPower[0]?.[0] ?? 0;
    const { lowerHeat } = vehicle.value.fuel;
    setParameter("fuel.lowerHeat", lowerHeat * 1.1, "");
    await answered();
    expect(fitted()?.vehicle?.engine.map?.fuelPower[0]?.[0]).toBeCloseTo(before * 1.1, 6);
    setVehicle("van");
    await answered();
    // The van's engine pulls more than the table reaches to.
    expect(fitted()?.faults[0]?.where).toBe("map.csv, torques");
  });

  it("is being read until the worker has answered for what is asked now", async () => {
    openMap(TABLE, "map.csv");
    expect([mapReading.value, fittedMap.value]).toEqual([null, null]);
    expect(takeMap()).toBe(false);
    await answered();
    readMapAgain({ units: { figure: "%" } });
    // How it was read before stays to be seen; it cannot be taken so any more.
    expect(mapReading.value?.roles.figure.unit).toBe("g/kWh");
    expect(fittedMap.value).toBeNull();
    expect(takeMap()).toBe(false);
    const [late] = worker.asked;
    readMapAgain({});
    expect(worker.asked).toHaveLength(1);
    late?.answer(mapWork.read(late.request));
    await answered();
    expect(mapReading.value?.roles.figure.unit).toBe("g/kWh");
    expect(takeMap()).toBe(true);
  });

  it("ends the reading when it is left", () => {
    openMap(TABLE, "map.csv");
    const before = worker.ended;
    closeMap();
    expect(worker.ended).toBe(before + 1);
    expect(worker.asked).toEqual([]);
  });

  it("is closed, and told, where the worker fails", async () => {
    openMap(TABLE, "map.csv");
    worker.asked[0]?.fail(new Error("no room"));
    await Promise.resolve();
    await Promise.resolve();
    expect(mapDraft.value).toBeNull();
    expect(notice.value?.text).toContain("no room");
    expect(vehicle.value).toBe(vehicleById("compact"));
  });

  it("is one step with what waited for it", async () => {
    // A full load beyond the map in force waits; the opened map reaches so far.
    openMap(TABLE, "map.csv");
    await answered();
    takeMap();
    const most = vehicle.value.engine.fullLoadTorque.map((torque) => torque * 1.2);
    expect(setParameter("engine.fullLoadTorque", most, "more")).toBe(false);
    const wide = [
      "speed,torque,fuel",
      ...SPEEDS.flatMap((n) => [20, 70, 240].map((m) => `${n},${m},${300 - m / 4}`)),
    ].join("\n");
    openMap(wide, "wide.csv");
    await answered();
    expect(takeMap()).toBe(true);
    expect(vehicle.value.engine.fullLoadTorque).toEqual(most);
    undo();
    expect(vehicle.value.engine.map?.torque).toEqual(TORQUES);
  });
});
