import { InputError } from "../../shared/errors.ts";
import type { Project } from "../../shared/project.ts";
import { following, SHAFTS } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { PRESETS, presetById, vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../sim/vehicle/read.ts";
import { t } from "../texts/catalogue.ts";
import { type BenchState, situationOf } from "./bench.ts";
import { readBench } from "./saved-bench.ts";
import { SITUATIONS } from "./situations.ts";
import { findVehicle, freshId } from "./vehicles.ts";

/** What a project puts on the bench: its state, and the vehicle it brings if it is no preset. */
export interface ProjectBench {
  readonly bench: BenchState;
  readonly own: readonly Vehicle[];
}

/** The project's vehicle. @throws InputError for an unknown preset, or parameters that the engine refuses */
function vehicleOf({ vehicle }: Project): { readonly vehicle: Vehicle; readonly own: readonly Vehicle[] } {
  if (vehicle.kind === "preset") return { vehicle: vehicleById(presetById(vehicle.id).id), own: [] };
  const read = readVehicle(vehicle.parameters, "vehicle");
  const taken = PRESETS.some((preset) => preset.id === read.id);
  const own = taken ? readVehicle({ ...vehicle.parameters, id: freshId([], read.id) }, "vehicle") : read;
  return { vehicle: own, own: [own] };
}

/** The bench of a project file, which may come from anywhere. @throws InputError when no bench can stand so */
export function benchOfProject(project: Project): ProjectBench {
  const { vehicle, own } = vehicleOf(project);
  const { bench } = project;
  const follower = SHAFTS.find((shaft) => bench[shaft].mode === "follow") ?? "sun";
  const shown = { sun: bench.sun.speed, carrier: bench.carrier.speed, ring: bench.ring.speed };
  const situation = SITUATIONS.find((one) => one.id === bench.situation);
  const read = readBench(
    {
      vehicle: vehicle.id,
      speeds: following(basicRatio(vehicle.gearSet), shown, follower),
      roles: { sun: bench.sun.mode, carrier: bench.carrier.mode, ring: bench.ring.mode },
      touched: [...SHAFTS],
      engineTorque: bench.engineTorque,
      outputTorque: bench.outputTorque ?? situation?.outputTorque ?? null,
    },
    own,
  );
  if (read.ok) return { bench: read.bench, own };
  throw new InputError({ what: read.reason, where: "bench", value: "", accepted: t.notice.benchRules });
}

/** A project with this bench and its vehicle in it, everything else as it was. */
export function projectWith(project: Project, bench: BenchState, own: readonly Vehicle[]): Project {
  const shaft = (name: (typeof SHAFTS)[number]) => ({ mode: bench.roles[name], speed: bench.speeds[name] });
  const mine = own.find((vehicle) => vehicle.id === bench.vehicle);
  return {
    ...project,
    vehicle: mine
      ? { kind: "own", title: mine.name, parameters: structuredClone(mine) }
      : { kind: "preset", id: bench.vehicle },
    bench: {
      sun: shaft("sun"),
      carrier: shaft("carrier"),
      ring: shaft("ring"),
      engineTorque: bench.engineTorque,
      outputTorque: bench.outputTorque,
      situation: situationOf(bench, findVehicle(own, bench.vehicle))?.id ?? null,
    },
  };
}
