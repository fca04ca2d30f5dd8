import { num, type Units } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import type { ComparedFigures } from "../workers/cycle-contract.ts";
import { replyShown } from "./figures-state.ts";
import { distanceNumber, distanceUnit, speedNumber, speedUnit } from "./units.ts";

const words = t.cycles.comparedFigures;

interface Line {
  readonly name: keyof typeof words;
  readonly unit: (units: Units) => string;
  readonly say: (figures: ComparedFigures, units: Units) => string;
}

const metres = (of: (figures: ComparedFigures) => number) => ({
  unit: () => "m",
  say: (figures: ComparedFigures) => num(of(figures)),
});
const rate = (of: (figures: ComparedFigures) => number) => ({
  unit: () => "m/s²",
  say: (figures: ComparedFigures) => num(of(figures), 2),
});
const clock = (of: (figures: ComparedFigures) => number) => ({
  unit: () => "",
  say: (figures: ComparedFigures) => clockTime(of(figures), 0),
});
const count = (of: (figures: ComparedFigures) => number) => ({
  unit: () => "",
  say: (figures: ComparedFigures) => num(of(figures)),
});

const LINES: readonly Line[] = [
  {
    name: "distance",
    unit: distanceUnit,
    say: ({ distance }, shown) => distanceNumber(shown, distance),
  },
  { name: "ascent", ...metres(({ ascent }) => ascent) },
  { name: "descent", ...metres(({ descent }) => descent) },
  { name: "maxSpeed", unit: speedUnit, say: ({ maxSpeed }, shown) => speedNumber(shown, maxSpeed) },
  { name: "maxAcceleration", ...rate(({ maxAcceleration }) => maxAcceleration) },
  { name: "maxDeceleration", ...rate(({ maxDeceleration }) => maxDeceleration) },
  { name: "steepest", unit: () => "%", say: ({ steepest }) => num(steepest * 100, 1) },
  { name: "stops", ...count(({ stops }) => stops) },
  { name: "restTime", ...clock(({ restTime }) => restTime) },
  { name: "duration", ...clock(({ duration }) => duration) },
  { name: "samples", ...count(({ samples }) => samples) },
];

/** Figures of a recording as it came and as it was treated. */
export function Changed() {
  const reply = replyShown.value;
  if (!reply) return <p class="empty">{t.cycles.counting}</p>;
  return (
    <div class="cy-table" tabIndex={0} role="region" aria-label={t.cycles.changed}>
      <table class="cy-changed">
        <thead>
          <tr>
            <th scope="col">{t.cycles.figure}</th>
            <th scope="col">{t.cycles.before}</th>
            <th scope="col">{t.cycles.after}</th>
          </tr>
        </thead>
        <tbody>
          {LINES.map(({ name, unit, say }) => (
            <tr key={name}>
              <th scope="row">
                {words[name]} <span class="unit">{unit(units.value)}</span>
              </th>
              <td>{say(reply.before, units.value)}</td>
              <td>{say(reply.after, units.value)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
