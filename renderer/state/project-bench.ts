import { InputError } from "../../shared/errors.ts";
import type { Project } from "../../shared/project.ts";
import { following, SHAFTS } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import { presetById, vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { t } from "../texts/catalogue.ts";
import { type BenchState, situationOf } from "./bench.ts";
import { readBench } from "./saved-bench.ts";
import { SITUATIONS } from "./situations.ts";

/** The bench of a project file, which may come from anywhere. @throws InputError when no bench can stand so */
export function benchOfProject(project: Project): BenchState {
  if (project.vehicle.kind !== "preset") {
    throw new InputError({
      what: t.notice.ownVehicle,
      where: "vehicle",
      value: project.vehicle.title,
      accepted: t.notice.presetsOnly,
    });
  }
  const { id } = presetById(project.vehicle.id);
  const { bench } = project;
  const follower = SHAFTS.find((shaft) => bench[shaft].mode === "follow") ?? "sun";
  const shown = { sun: bench.sun.speed, carrier: bench.carrier.speed, ring: bench.ring.speed };
  const situation = SITUATIONS.find((one) => one.id === bench.situation);
  const read = readBench({
    vehicle: id,
    speeds: following(basicRatio(vehicleById(id).gearSet), shown, follower),
    roles: { sun: bench.sun.mode, carrier: bench.carrier.mode, ring: bench.ring.mode },
    touched: [...SHAFTS],
    engineTorque: bench.engineTorque,
    outputTorque: situation?.outputTorque ?? null,
  });
  if (read.ok) return read.bench;
  throw new InputError({ what: read.reason, where: "bench", value: "", accepted: t.notice.presetsOnly });
}

/** A project with this bench in it, everything else as it was. */
export function projectWith(project: Project, bench: BenchState): Project {
  const shaft = (name: (typeof SHAFTS)[number]) => ({ mode: bench.roles[name], speed: bench.speeds[name] });
  return {
    ...project,
    vehicle: { kind: "preset", id: bench.vehicle },
    bench: {
      sun: shaft("sun"),
      carrier: shaft("carrier"),
      ring: shaft("ring"),
      engineTorque: bench.engineTorque,
      situation: situationOf(bench, vehicleById(bench.vehicle))?.id ?? null,
    },
  };
}
