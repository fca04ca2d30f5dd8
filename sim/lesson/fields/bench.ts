import { rpmToRadPerS } from "../../../shared/units.ts";
import { SHAFTS, type Shaft } from "../../bench/shafts.ts";
import { SITUATIONS, type Situation } from "../../bench/situations.ts";
import { nearest } from "../../vehicle/nearest.ts";
import type { LessonFaults } from "../faults.ts";
import { type BenchScene, FREE, type Role, type Written } from "../lesson.ts";
import { unitById } from "../units.ts";
import { type Fields, readFields } from "./fields.ts";
import { hiddenNames, wordsOf } from "./names.ts";
import { readVehicleSpec, VEHICLE_FIELDS } from "./vehicle.ts";
import { fixedNumber, readWritten } from "./written.ts";

/** Fields of a `bench` block; a star marks one that may stand several times. */
export const BENCH_FIELDS = [
  ...VEHICLE_FIELDS,
  "situation",
  ...SHAFTS,
  "engine torque",
  "output torque",
  "free",
  "hide",
];

const RPM = unitById("rev/min");
const NM = unitById("N·m");

interface Setting {
  readonly role: Role;
  readonly speed: Written;
}

function situationOf(fields: Fields): Situation | null {
  const field = fields.one("situation");
  if (!field) return null;
  const found = SITUATIONS.find(({ id }) => id === field.value);
  if (found) return found;
  const known = SITUATIONS.map(({ id }) => id);
  const what = `no situation is called this; the nearest is ${nearest(field.value, known)}`;
  fields.faults.add(field.line, what, field.value, known.join(", "));
  return null;
}

const ofSituation = ({ given }: Situation): Partial<Record<Shaft, Setting>> =>
  Object.fromEntries(
    given.map(({ shaft, rpm }) => [
      shaft,
      { role: rpm === 0 ? "hold" : "drive", speed: fixedNumber(rpmToRadPerS(rpm)) },
    ]),
  );

function written(fields: Fields): Partial<Record<Shaft, Setting>> {
  const found: Partial<Record<Shaft, Setting>> = {};
  for (const shaft of SHAFTS) {
    const field = fields.one(shaft);
    if (!field || field.value === "follow") continue;
    const [, word, number = ""] = /^(?:(drive|hold)\s+)?(.*)$/.exec(field.value) ?? [];
    const speed = fields.faults.trying(field.line, () => readWritten(number, RPM));
    const still = speed?.value === 0 && speed.choices.length === 0;
    const role = word === "hold" || (word === undefined && still) ? "hold" : "drive";
    found[shaft] = { role, speed: speed ?? fixedNumber(0) };
  }
  return found;
}

/** Two given shafts and one that follows; what the block writes goes before the situation's. */
function shaftsOf(fields: Fields, situation: Situation | null): BenchScene["shafts"] {
  const own = written(fields);
  const free = SHAFTS.filter((shaft) => fields.one(shaft)?.value === "follow");
  const base = situation && free.length === 0 ? ofSituation(situation) : {};
  const given = { ...(Object.keys(own).length >= 2 ? {} : base), ...own };
  const count = Object.keys(given).length;
  if (count !== 2) {
    fields.faults.add(
      fields.line,
      count < 2 ? "fewer than two shafts are given" : "three shafts are given, but the third follows",
      SHAFTS.filter((shaft) => given[shaft]).join(", "),
      "a situation, or speeds for exactly two of sun, carrier and ring",
    );
  }
  const of = (shaft: Shaft): Setting => given[shaft] ?? { role: "follow", speed: fixedNumber(0) };
  return { sun: of("sun"), carrier: of("carrier"), ring: of("ring") };
}

function torqueOf(fields: Fields, name: string, usual: number): Written {
  const field = fields.one(name);
  if (!field) return fixedNumber(usual);
  return fields.faults.trying(field.line, () => readWritten(field.value, NM)) ?? fixedNumber(usual);
}

/** Reads a `bench` block. */
export function readBench(line: number, text: string, faults: LessonFaults): BenchScene {
  const fields = readFields("bench", line, text, BENCH_FIELDS, faults);
  const situation = situationOf(fields);
  const output = fields.one("output torque");
  const rests = output === undefined ? (situation?.outputTorque ?? null) === null : output.value === "rests";
  return {
    kind: "bench",
    line,
    vehicle: readVehicleSpec(fields),
    situation: situation?.id ?? null,
    shafts: shaftsOf(fields, situation),
    engineTorque: torqueOf(fields, "engine torque", situation?.engineTorque ?? 0),
    outputTorque: rests ? null : torqueOf(fields, "output torque", situation?.outputTorque ?? 0),
    free: wordsOf(fields, "free", FREE),
    hide: hiddenNames(fields),
  };
}
