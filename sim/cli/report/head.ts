import { kelvinToCelsius } from "../../../shared/units.ts";
import type { DriveSummary } from "../drive.ts";
import { clock, digits, fixed, wrap } from "./text.ts";
import { percent, type ReportUnits } from "./units.ts";

/** What was driven, by whom, under which circumstances. */
export function headLines(s: DriveSummary, units: ReportUnits, notes: readonly string[]): string[] {
  const { cycle, vehicle } = s;
  const mean = s.distance_m / s.duration_s;
  return [
    ...wrap(`${cycle.title} (${cycle.id})`),
    `${vehicle.name} (${vehicle.id}), strategy ${s.strategy}`,
    `${units.distance(s.distance_m)} in ${clock(s.duration_s)}, mean ${units.speed(mean)}`,
    ...wrap(circumstances(s, units)),
    ...(cycle.source.startsWith("own manoeuvre") ? wrap(cycle.source) : []),
    ...[...cycle.treatment, ...notes].flatMap((sentence) => wrap(sentence, "  ")),
  ];
}

function circumstances({ settings }: DriveSummary, units: ReportUnits): string {
  const parts = [
    `step ${digits(settings.step * 1000, 4)} ms`,
    `charge at the start ${percent(settings.startSoc)}`,
    `auxiliaries ${digits(settings.auxiliaryPower, 5)} W`,
    `air ${fixed(kelvinToCelsius(settings.airTemperature), 1)} °C, ${digits(settings.airDensity, 4)} kg/m³`,
    settings.coldStart ? "cold engine" : "warm engine",
  ];
  if (settings.payload !== 0) parts.push(`payload ${digits(settings.payload, 5)} kg`);
  if (settings.headWind !== 0) parts.push(`head wind ${units.speed(settings.headWind)}`);
  return parts.join(", ");
}
