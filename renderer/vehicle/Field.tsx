import { useId } from "preact/hooks";
import { isQuantity, type QuantityMeta } from "../../sim/parameters/quantity.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { Declaration } from "../../sim/vehicle/declarations.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { refused, setParameters } from "./edit.ts";
import { valueAtPath } from "./parts.ts";
import { digits, shownUnit } from "./shown-units.ts";

interface FieldProps {
  readonly declaration: Declaration;
  /** what it is compared with */
  readonly preset: Vehicle;
}

/** A typed number: decimal comma and true minus count; whatever is none stays text, which the vehicle refuses. */
const typedNumber = (text: string): number | string => {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  return plain !== "" && Number.isFinite(Number(plain)) ? Number(plain) : text;
};

const listText = (values: readonly number[]): string => values.map(digits).join("  ");

/** A value as it is typed and shown. */
function textOf(path: string, meta: QuantityMeta, value: unknown): string {
  const { toShown } = shownUnit(path, meta);
  if (typeof value === "number") return digits(toShown(value));
  return Array.isArray(value) ? listText(value.filter((x) => typeof x === "number").map(toShown)) : "";
}

function commitNumber(path: string, meta: QuantityMeta, text: string): boolean {
  const { fromShown } = shownUnit(path, meta);
  const one = (part: string): number | string => {
    const read = typedNumber(part);
    return typeof read === "number" ? fromShown(read) : read;
  };
  const value =
    meta.kind === "column"
      ? text
          .trim()
          .split(/[\s;]+/)
          .map(one)
      : one(text);
  return setParameters({ [path]: value });
}

function NumberInput({
  declaration,
  meta,
  id,
}: {
  declaration: Declaration;
  meta: QuantityMeta;
  id: string;
}) {
  const { path } = declaration;
  const shown = textOf(path, meta, valueAtPath(vehicle.value, path));
  const bad = refused.value?.path === path;
  return (
    <input
      id={id}
      type="text"
      class={meta.kind === "column" ? "list" : ""}
      value={shown}
      aria-invalid={bad}
      aria-describedby={`${id}-range`}
      onChange={(event) => {
        const input = event.currentTarget;
        if (input.value !== shown && !commitNumber(path, meta, input.value)) input.value = input.value.trim();
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.currentTarget.value = shown;
        refused.value = null;
      }}
    />
  );
}

function WordInput({ declaration, id }: { declaration: Declaration; id: string }) {
  const { path, meta } = declaration;
  const value = valueAtPath(vehicle.value, path);
  if (meta.kind === "flag") {
    return (
      <input
        id={id}
        type="checkbox"
        checked={value === true}
        onChange={(event) => setParameters({ [path]: event.currentTarget.checked })}
      />
    );
  }
  if (meta.kind === "choice" && !isQuantity(meta)) {
    return (
      <select
        id={id}
        value={String(value)}
        onChange={(event) => setParameters({ [path]: event.currentTarget.value })}
      >
        {meta.options.map((word) => (
          <option key={word} value={word}>
            {word}
          </option>
        ))}
      </select>
    );
  }
  return (
    <input
      id={id}
      type="text"
      class="list"
      value={String(value)}
      onChange={(event) => setParameters({ [path]: event.currentTarget.value })}
    />
  );
}

/** Range and, where it was changed, the preset's value. */
function rangeText({ path, meta }: Declaration, preset: Vehicle, changed: boolean): string {
  if (!isQuantity(meta)) return "";
  const { toShown, name } = shownUnit(path, meta);
  const range = t.vehicle.range(digits(toShown(meta.min)), digits(toShown(meta.max)), name);
  return changed ? `${range}, ${t.vehicle.presetIs(textOf(path, meta, valueAtPath(preset, path)))}` : range;
}

/** One parameter: meaning, value, unit, range; a bold bar before what differs from the preset; why it was refused. */
export function Field({ declaration, preset }: FieldProps) {
  const id = useId();
  const { path, meta } = declaration;
  const same = JSON.stringify(valueAtPath(vehicle.value, path)) === JSON.stringify(valueAtPath(preset, path));
  const unit = isQuantity(meta) ? shownUnit(path, meta).name : "";
  const fault = refused.value?.path === path ? refused.value.text : "";
  return (
    <div class={`param ${same ? "" : "changed"}`}>
      <label for={id}>{meta.meaning}</label>
      <span class="value">
        {isQuantity(meta) ? (
          <NumberInput declaration={declaration} meta={meta} id={id} />
        ) : (
          <WordInput declaration={declaration} id={id} />
        )}
        <span class="unit">{unit}</span>
      </span>
      <span class={fault ? "bad" : "range"} id={`${id}-range`} role={fault ? "alert" : undefined}>
        {fault || rangeText(declaration, preset, !same)}
      </span>
    </div>
  );
}
