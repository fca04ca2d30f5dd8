import type { FaultList } from "../../../cycles/import/faults.ts";
import { at } from "../../../shared/at.ts";
import { isQuantity, LEAST_POINTS, MOST_POINTS } from "../../parameters/quantity.ts";
import { MOST_EFFICIENCY } from "../checks/engine-map.ts";
import { declarationAt } from "../declarations.ts";
import { round } from "../faults.ts";
import { type MapRole, needsPower } from "./measures.ts";
import type { EngineMapParameters, FilePoint, MapUnits } from "./reading.ts";

/** A point with what it is in SI. */
interface Point {
  readonly file: FilePoint;
  /** rad/s */
  readonly speed: number;
  /** N·m */
  readonly torque: number;
  /** W */
  readonly fuel: number;
}

const PATHS: Readonly<Record<MapRole, string>> = {
  speed: "engine.map.speed",
  torque: "engine.map.torque",
  figure: "engine.map.fuelPower",
};

/** Least and greatest value that the vehicle accepts, SI. */
function rangeOf(role: MapRole): { min: number; max: number } {
  const meta = declarationAt(PATHS[role])?.meta;
  if (!meta || !isQuantity(meta)) throw new Error(`no quantity is declared at ${PATHS[role]}`);
  return meta;
}

const placeOf = (point: FilePoint, role: MapRole) => ({
  row: point.at[role].line,
  column: point.at[role].column,
});

/** Puts points together to the map's rectangle; books all that is wrong, in the file's own units. */
export class MapBuilder {
  /** What a person should know of how the points were taken. */
  readonly notes: string[] = [];
  private readonly units: MapUnits;
  private readonly lowerHeat: number;
  private readonly faults: FaultList;

  /** @param lowerHeat of the fuel, J/kg */
  constructor(units: MapUnits, lowerHeat: number, faults: FaultList) {
    this.units = units;
    this.lowerHeat = lowerHeat;
    this.faults = faults;
  }

  /** @returns null, with the faults booked, where the points make no map */
  build(points: readonly FilePoint[]): EngineMapParameters | null {
    const telling = this.leaveOut(points);
    const read = telling.map((point) => this.toSi(point));
    for (const point of read) this.checkPoint(point);
    if (this.faults.any) return null;
    return this.rectangle(read);
  }

  /** Leaves out points at which the figure tells no fuel: below the first torque, fuel follows the friction. */
  private leaveOut(points: readonly FilePoint[]): readonly FilePoint[] {
    if (!needsPower(this.units.figure)) return points;
    const kept = points.filter(({ speed, torque }) => !(speed === 0 || torque <= 0));
    const count = points.length - kept.length;
    if (count > 0) {
      const points = count === 1 ? "1 point" : `${count} points`;
      this.notes.push(
        `${points} without power at the shaft left out: ${this.units.figure.id} tells no fuel there. Below the first torque, fuel follows the engine's friction.`,
      );
    }
    return kept;
  }

  private toSi(file: FilePoint): Point {
    const speed = this.units.speed.toSi(file.speed);
    const torque = this.units.torque.toSi(file.torque);
    return {
      file,
      speed,
      torque,
      fuel: this.units.figure.toFuelPower(file.figure, speed * torque, this.lowerHeat),
    };
  }

  private checkPoint(point: Point): void {
    const { speed, torque } = this.units;
    if (point.file.speed < 0) {
      this.refuse(point.file, "speed", "The speed is negative.", `0 ${speed.id} or more`);
    } else if (
      this.inRange(point, "speed", point.speed, speed.fromSi) &&
      this.inRange(point, "torque", point.torque, torque.fromSi)
    ) {
      this.checkFigure(point);
    }
  }

  private checkFigure(point: Point): void {
    const { file } = point;
    const { figure } = this.units;
    const lossless = this.figureAt(point, 1);
    const most = this.figureAt(point, MOST_EFFICIENCY);
    const limit = figure.kind === "efficiency" ? "at most" : "at least";
    if (file.figure < 0) {
      this.refuse(file, "figure", "The value is negative.", `0 ${figure.id} or more`);
    } else if (figure.kind === "efficiency" && file.figure === 0) {
      this.refuse(file, "figure", "An efficiency of 0 would take endless fuel.", `above 0 ${figure.id}`);
    } else if (point.speed * point.torque >= point.fuel && point.speed * point.torque > 0) {
      const words = `The efficiency is 1 or more here; the unit looks wrong.`;
      this.refuse(file, "figure", words, `${limit} ${most}; ${lossless} would be without any loss`);
    } else if (point.speed * point.torque > MOST_EFFICIENCY * point.fuel) {
      const words = `The efficiency is above ${MOST_EFFICIENCY}, which no car's engine reaches; the unit looks wrong.`;
      this.refuse(file, "figure", words, `${limit} ${most}`);
    } else if (point.fuel > rangeOf("figure").max) {
      const words = "The fuel is more than any car's engine burns; the unit looks wrong.";
      const top = figure.fromFuelPower(rangeOf("figure").max, point.speed * point.torque, this.lowerHeat);
      this.refuse(
        file,
        "figure",
        words,
        `${figure.kind === "efficiency" ? "at least" : "at most"} ${round(top)} ${figure.id}`,
      );
    }
  }

  /** The figure that an efficiency would have at a point, with its unit. */
  private figureAt({ speed, torque }: Point, efficiency: number): string {
    const { figure } = this.units;
    const power = speed * torque;
    return `${round(figure.fromFuelPower(power / efficiency, power, this.lowerHeat))} ${figure.id}`;
  }

  private inRange(
    { file }: Point,
    role: "speed" | "torque",
    value: number,
    fromSi: (value: number) => number,
  ): boolean {
    const { min, max } = rangeOf(role);
    if (value >= min && value <= max) return true;
    const accepted = `${round(fromSi(min))} … ${round(fromSi(max))} ${this.units[role].id}`;
    this.refuse(file, role, `The ${role} is beyond any car's engine; the unit looks wrong.`, accepted);
    return false;
  }

  private refuse(point: FilePoint, role: MapRole, what: string, accepted: string): void {
    this.faults.add(what, placeOf(point, role), point.at[role].text, accepted);
  }

  /** Every speed with every torque, once. */
  private rectangle(points: readonly Point[]): EngineMapParameters | null {
    const speeds = this.axis(points, "speed");
    const torques = this.axis(points, "torque");
    if (this.faults.any) return null;
    const cells = new Map<number, Map<number, Point>>();
    for (const point of points) this.putIn(cells, point);
    const empty = speeds.length * torques.length - points.length;
    if (!this.faults.any && empty > points.length) {
      const what = `The points are no grid: ${speeds.length} speeds and ${torques.length} torques, but ${points.length} points.`;
      this.faults.add(
        what,
        {},
        "",
        "each speed with each torque, measured points brought onto common ones before",
      );
      return null;
    }
    const rows = speeds.map((speed) => torques.flatMap((torque) => this.cell(cells, speed, torque)));
    if (this.faults.any) return null;
    for (const row of rows) this.checkRow(row);
    if (this.faults.any) return null;
    const first = at(rows, 0);
    return {
      speed: rows.map((row) => at(row, 0).speed),
      torque: first.map(({ torque }) => torque),
      fuelPower: rows.map((row) => row.map(({ fuel }) => fuel)),
    };
  }

  private axis(points: readonly Point[], role: "speed" | "torque"): readonly number[] {
    const values = [...new Set(points.map(({ file }) => file[role]))].sort((a, b) => a - b);
    if (values.length < LEAST_POINTS || values.length > MOST_POINTS) {
      const found = values.length === 1 ? `1 ${role}` : `${values.length} ${role}s`;
      const few = values.length < LEAST_POINTS;
      const accepted = `${LEAST_POINTS} to ${MOST_POINTS} ${role}s`;
      this.faults.add(`There are too ${few ? "few" : "many"} ${role}s.`, {}, found, accepted);
    }
    return values;
  }

  private putIn(cells: Map<number, Map<number, Point>>, point: Point): void {
    const { speed, torque } = point.file;
    const row = cells.get(speed) ?? new Map<number, Point>();
    const before = row.get(torque);
    cells.set(speed, row.set(torque, before ?? point));
    if (!before) return;
    const line = before.file.at.figure.line;
    this.refuse(
      point.file,
      "figure",
      `The point ${this.named(speed, torque)} stands twice.`,
      `once; it stands in row ${line} too`,
    );
  }

  private cell(cells: Map<number, Map<number, Point>>, speed: number, torque: number): readonly Point[] {
    const point = cells.get(speed)?.get(torque);
    if (point) return [point];
    const what = `The point ${this.named(speed, torque)} is missing.`;
    this.faults.add(what, {}, "", "each speed with each torque, above full load too");
    return [];
  }

  private named(speed: number, torque: number): string {
    return `at ${speed} ${this.units.speed.id} and ${torque} ${this.units.torque.id}`;
  }

  /** At one speed more torque takes more fuel; at standstill it may be alike. */
  private checkRow(row: readonly Point[]): void {
    row.forEach((point, i) => {
      if (i === 0) return;
      const before = at(row, i - 1);
      if (point.fuel > before.fuel || (point.speed === 0 && point.fuel === before.fuel)) return;
      const { figure } = this.units;
      const power = point.speed * point.torque;
      const bound = round(figure.fromFuelPower(before.fuel, power, this.lowerHeat));
      const where = `at ${before.file.at.torque.text} ${this.units.torque.id}`;
      const accepted = `${figure.kind === "efficiency" ? "below" : "above"} ${bound} ${figure.id}, the fuel ${where}`;
      this.refuse(point.file, "figure", "More torque takes no more fuel here.", accepted);
    });
  }
}
