import { useId, useState } from "preact/hooks";
import { runOptions } from "../state/road.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { OPTION_FIELDS, type OptionField, parseOption, shownOption } from "./option-fields.ts";

/** One option: empty means the vehicle's own or the standard's. */
function Field({ field }: { field: OptionField }) {
  const id = useId();
  const [fault, setFault] = useState("");
  const commit = (text: string): void => {
    const read = parseOption(field, text);
    setFault(read.ok ? "" : t.road.options.bad(read.least, read.most, field.unit));
    if (!read.ok) return;
    const { [field.of]: _, ...others } = runOptions.value;
    runOptions.value = read.value === null ? others : { ...others, [field.of]: read.value };
  };
  return (
    <div class="option">
      <label for={id}>{t.road.options[field.of]}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        value={shownOption(field, runOptions.value[field.of])}
        placeholder={field.standard(vehicle.value)}
        aria-invalid={fault !== ""}
        aria-describedby={`${id}-unit`}
        onChange={(event) => commit(event.currentTarget.value)}
      />
      <span id={`${id}-unit`} class={fault ? "bad" : "unit"}>
        {fault || field.unit}
      </span>
    </div>
  );
}

/** Run options: what changes a run without changing the vehicle. */
export const OptionsPanel = () => (
  <form class="options" onSubmit={(event) => event.preventDefault()}>
    <p>{t.road.options.about}</p>
    {OPTION_FIELDS.map((field) => (
      <Field key={`${field.of}:${runOptions.value[field.of] ?? ""}`} field={field} />
    ))}
    <label class="check">
      <input
        type="checkbox"
        checked={runOptions.value.coldStart ?? false}
        onChange={(event) => {
          runOptions.value = { ...runOptions.value, coldStart: event.currentTarget.checked };
        }}
      />
      {t.road.options.coldStart}
    </label>
    <button
      type="button"
      class="btn"
      onClick={() => {
        runOptions.value = {};
      }}
    >
      {t.road.options.reset}
    </button>
  </form>
);
