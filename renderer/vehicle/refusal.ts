import { faultText, type InputFault } from "../../shared/errors.ts";
import { isQuantity, type ParameterMeta } from "../../sim/parameters/quantity.ts";
import { declarationAt } from "../../sim/vehicle/declarations.ts";
import { acceptedRange, show, valueAt } from "../../sim/vehicle/faults.ts";
import { told } from "../../sim/vehicle/words.ts";
import { t } from "../texts/catalogue.ts";
import { VEHICLE_PARTS } from "./parts.ts";
import { shownEnds } from "./shown-range.ts";
import { digits, shownUnit } from "./shown-units.ts";
import { textOf } from "./typed.ts";

/** Longest list that is told whole, characters. */
const LONGEST = 60;

/** Digits of a typed number that survive the way to SI and back. */
const TYPED = 12;

/** Unit and scale of a parameter in the form; words have none. */
const unitOf = (path: string, meta: ParameterMeta) =>
  isQuantity(meta)
    ? shownUnit(path, meta)
    : { name: "", toShown: (value: number) => value, fromShown: (value: number) => value };

/** A number found; as it was typed where it would seem to lie in the range with fewer digits. */
function foundNumber(path: string, meta: ParameterMeta, value: number, shown: number): string {
  const short = digits(shown);
  if (!isQuantity(meta) || (value >= meta.min && value <= meta.max)) return short;
  const [least = 0, most = 0] = shownEnds(shownUnit(path, meta), meta).map(Number);
  return Number(short) >= least && Number(short) <= most ? String(Number(shown.toPrecision(TYPED))) : short;
}

/** The value found, as the form would show it. */
function found(path: string, meta: ParameterMeta, value: unknown): string {
  const { name, toShown } = unitOf(path, meta);
  if (typeof value === "number") return `${foundNumber(path, meta, value, toShown(value))} ${name}`.trim();
  if (!Array.isArray(value) || value.some((entry) => typeof entry !== "number")) return show(value);
  const whole = textOf(path, meta, value);
  return whole.length > LONGEST ? show(value) : `${whole} ${name}`.trim();
}

/** What a parameter is called on the screen: its part and its meaning. */
function nameOf(path: string, meta: ParameterMeta): string {
  const part = VEHICLE_PARTS.find((one) => path.startsWith(`${one}.`));
  return part ? t.vehicle.parameterOf(t.vehicle.parts[part], meta.meaning) : meta.meaning;
}

/** What a declaration accepts, in the form's unit. */
function range(path: string, meta: ParameterMeta, element: boolean): string {
  if (!isQuantity(meta)) return `${acceptedRange(meta)}: ${meta.meaning}`;
  const unit = shownUnit(path, meta);
  const [min, max] = shownEnds(unit, meta).map(Number);
  return acceptedRange({ ...meta, unit: unit.name || "1", min: min ?? 0, max: max ?? 0 }, element);
}

/** Where a fault lies, as the form calls it. @param fault as for `refusalText` */
export function whereText({ where }: InputFault): string {
  const [path = ""] = where.split("[");
  const meta = declarationAt(path)?.meta;
  return meta ? nameOf(path, meta) : where;
}

/**
 * A fault of a vehicle in the names and units of the form.
 * @param fault of `readVehicle`, read without a file's name
 * @param of the vehicle that was refused
 */
export function refusalText(fault: InputFault, of: unknown): string {
  const [path = ""] = fault.where.split("[");
  const places = [...fault.where.matchAll(/\[(\d+)\]/g)].map(([, n]) => Number(n));
  const meta = declarationAt(path)?.meta;
  if (!meta) return faultText(fault);
  const { name, toShown } = unitOf(path, meta);
  const how = {
    number: (value: number) => digits(Number(toShown(value).toPrecision(4))),
    unit: name === "" ? "" : ` ${name}`,
    named: (other: string, value: string) =>
      t.vehicle.named(declarationAt(other)?.meta.meaning ?? other, value),
  };
  const where = nameOf(path, meta);
  const [place] = places;
  return faultText({
    what: fault.pieces ? told(fault.pieces.what, how) : fault.what,
    where: place === undefined ? where : t.vehicle.place(where, place + 1),
    value: found(path, meta, valueAt(of, [...path.split("."), ...places])),
    accepted: fault.pieces ? told(fault.pieces.accepted, how) : range(path, meta, places.length > 0),
  });
}
