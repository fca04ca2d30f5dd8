import { useId } from "preact/hooks";
import { isQuantity } from "../../sim/parameters/quantity.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { Declaration } from "../../sim/vehicle/declarations.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { refused, setParameter, takeBack } from "./edit.ts";
import { valueAtPath } from "./parts.ts";
import { shownEnds } from "./shown-range.ts";
import { shownUnit } from "./shown-units.ts";
import { readTyped, textOf } from "./typed.ts";

interface FieldProps {
  readonly declaration: Declaration;
  /** what it is compared with */
  readonly preset: Vehicle;
}

interface InputProps {
  readonly declaration: Declaration;
  readonly id: string;
}

/** A number, a list of numbers or a text: what was refused stays in the field until it is taken back. */
function TypedInput({ declaration: { path, meta }, id }: InputProps) {
  const now = valueAtPath(vehicle.value, path);
  const inForce = textOf(path, meta, now);
  const bad = refused.value.get(path);
  const shown = bad?.typed ?? inForce;
  const commit = (input: HTMLInputElement): void => {
    const typed = input.value.trim();
    if (typed === inForce) takeBack(path);
    else setParameter(path, isQuantity(meta) ? readTyped(path, meta, typed, now) : typed, typed);
    // Nothing draws the field anew where what is shown stays the same.
    input.value = refused.value.get(path)?.typed ?? textOf(path, meta, valueAtPath(vehicle.value, path));
  };
  return (
    <input
      id={id}
      type="text"
      class={isQuantity(meta) && meta.kind !== "column" ? "" : "list"}
      value={shown}
      aria-invalid={bad !== undefined}
      aria-describedby={`${id}-range`}
      onChange={(event) => commit(event.currentTarget)}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.currentTarget.value = inForce;
        takeBack(path);
      }}
    />
  );
}

/** A text of several lines, such as where the numbers come from. */
function LongText({ declaration: { path, meta }, id }: InputProps) {
  const inForce = textOf(path, meta, valueAtPath(vehicle.value, path));
  const bad = refused.value.get(path);
  return (
    <textarea
      id={id}
      rows={6}
      value={bad?.typed ?? inForce}
      aria-invalid={bad !== undefined}
      aria-describedby={`${id}-range`}
      onChange={({ currentTarget }) => {
        const typed = currentTarget.value.trim();
        if (typed === inForce) takeBack(path);
        else setParameter(path, typed, typed);
        currentTarget.value = refused.value.get(path)?.typed ?? typed;
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.currentTarget.value = inForce;
        takeBack(path);
      }}
    />
  );
}

function Input({ declaration, id }: InputProps) {
  const { path, meta } = declaration;
  const value = valueAtPath(vehicle.value, path);
  const set = (word: string | boolean): boolean => setParameter(path, word, String(word));
  if (meta.kind === "flag") {
    return (
      <input
        id={id}
        type="checkbox"
        checked={value === true}
        onChange={(event) => set(event.currentTarget.checked)}
      />
    );
  }
  if (path === "note") return <LongText declaration={declaration} id={id} />;
  if (isQuantity(meta) || meta.kind === "text") return <TypedInput declaration={declaration} id={id} />;
  return (
    <select id={id} value={String(value)} onChange={(event) => set(event.currentTarget.value)}>
      {meta.options.map((word) => (
        <option key={word} value={word}>
          {word}
        </option>
      ))}
    </select>
  );
}

/** Range and, where it was changed, the preset's value. */
function rangeText({ path, meta }: Declaration, preset: Vehicle, changed: boolean): string {
  if (!isQuantity(meta)) return "";
  const unit = shownUnit(path, meta);
  const beside = [valueAtPath(vehicle.value, path), valueAtPath(preset, path)].flat();
  const numbers = beside.filter((value) => typeof value === "number");
  const range = t.vehicle.range(...shownEnds(unit, meta, numbers), unit.name);
  return changed ? `${range}, ${t.vehicle.presetIs(textOf(path, meta, valueAtPath(preset, path)))}` : range;
}

/** One parameter: meaning, value, unit, range; a bold bar before what differs from the preset; why it was refused. */
export function Field({ declaration, preset }: FieldProps) {
  const id = useId();
  const { path, meta } = declaration;
  const same = JSON.stringify(valueAtPath(vehicle.value, path)) === JSON.stringify(valueAtPath(preset, path));
  const unit = isQuantity(meta) ? shownUnit(path, meta).name : "";
  const fault = refused.value.get(path)?.why ?? "";
  return (
    <div class={`param ${same ? "" : "changed"} ${path === "name" || path === "note" ? "long" : ""}`}>
      <label for={id}>{meta.meaning}</label>
      <span class="value">
        <Input declaration={declaration} id={id} />
        <span class="unit">{unit}</span>
      </span>
      <span class={fault ? "bad" : "range"} id={`${id}-range`} role={fault ? "alert" : undefined}>
        {fault || rangeText(declaration, preset, !same)}
      </span>
    </div>
  );
}
