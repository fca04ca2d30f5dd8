import { useId, useState } from "preact/hooks";
import { MANOEUVRES } from "../../cycles/manoeuvres/catalogue.ts";
import type { Parameter } from "../../cycles/manoeuvres/parameter.ts";
import { faultText } from "../../shared/errors.ts";
import type { Units } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { lineFaults, resetLine, setLine } from "./edit.ts";
import {
  parameterRange,
  parameterUnit,
  shownParameters,
  typedSetting,
  withSetting,
} from "./manoeuvre-line.ts";
import { endEdit, lineOf, lines } from "./state.ts";

const words = t.cycles;

interface FieldProps {
  readonly id: string;
  readonly name: string;
  readonly parameter: Parameter;
  readonly shown: string;
  readonly shownUnits: Units;
}

/** One parameter: meaning, value, unit, range; the picture follows while it is typed. */
function Field({ id, name, parameter, shown, shownUnits }: FieldProps) {
  const field = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState("");
  const take = (text: string): void => {
    setTyped(text);
    const line = withSetting(lineOf(id), name, typedSetting(parameter, text, shownUnits));
    const faults = lineFaults(line);
    const [first] = faults ?? [];
    setFault(first ? faultText({ ...first, where: name }) : "");
    if (!faults) setLine(id, line, `${id}:${name}`);
  };
  return (
    <div class="param">
      <label for={field}>{parameter.meaning}</label>
      <span class="value">
        <input
          id={field}
          type="text"
          autocomplete="off"
          value={typed ?? shown}
          aria-invalid={fault !== ""}
          aria-describedby={`${field}-range`}
          onInput={(event) => take(event.currentTarget.value)}
          onBlur={() => {
            setTyped(null);
            setFault("");
            endEdit();
          }}
        />
        <span class="unit">{parameterUnit(parameter, shownUnits)}</span>
      </span>
      <span class={fault ? "bad" : "range"} id={`${field}-range`} role={fault ? "alert" : undefined}>
        {fault || parameterRange(parameter, shownUnits)}
      </span>
    </div>
  );
}

/** What a manoeuvre is for, and its parameters. */
export function ManoeuvreForm({ id }: { id: string }) {
  const definition = MANOEUVRES.find((one) => one.id === id);
  if (!definition) return null;
  const shown = shownParameters(lineOf(id), definition, units.value);
  return (
    <form class="cy-manoeuvre" onSubmit={(event) => event.preventDefault()}>
      <p>{definition.summary}</p>
      <h3>{words.parameters}</h3>
      {Object.entries(definition.parameters).map(([name, parameter]) => (
        <Field
          key={`${id}:${name}`}
          id={id}
          name={name}
          parameter={parameter}
          shown={shown.get(name) ?? ""}
          shownUnits={units.value}
        />
      ))}
      {lines.value[id] !== undefined && (
        <button type="button" class="btn" onClick={() => resetLine(id)}>
          {words.reset}
        </button>
      )}
    </form>
  );
}
