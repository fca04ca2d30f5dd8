import { useId, useState } from "preact/hooks";
import { usualTreatments } from "../../cycles/clean/usual.ts";
import type { Recording } from "../../shared/own-cycles.ts";
import type { Treatment, TreatmentKind } from "../../shared/treatments.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { editTreatments } from "./edit.ts";
import { Faults } from "./Faults.tsx";
import { replyShown } from "./figures-state.ts";
import { durationShown } from "./plot/window.ts";
import { refusedEdit } from "./state.ts";
import {
  fieldsOf,
  fieldValue,
  freshTreatment,
  rangeWords,
  readField,
  shownNumber,
  type TreatmentField,
  unitOfMeasure,
  withField,
} from "./treatment-fields.ts";

const words = t.cycles;
const KINDS = Object.keys(words.treatments) as readonly TreatmentKind[];

interface FieldProps {
  readonly index: number;
  readonly treatment: Treatment;
  readonly field: TreatmentField;
}

/** One number of a treatment, typed. */
function Field({ index, treatment, field }: FieldProps) {
  const id = useId();
  const [fault, setFault] = useState("");
  const value = fieldValue(treatment, field.key);
  const shown = value === "auto" ? "" : shownNumber(field.measure, units.value, value);
  const commit = async (input: HTMLInputElement): Promise<void> => {
    if (input.value.trim() === shown) return setFault("");
    const read = readField(field, input.value, units.value);
    if (read === null) return setFault(words.badNumber(rangeWords(field, units.value)));
    setFault("");
    await editTreatments(
      (now) => now.map((one, i) => (i === index ? withField(one, field.key, read) : one)),
      index,
    );
  };
  return (
    <div class="cy-field">
      <label for={id}>{words.fields[field.key]}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        key={shown}
        defaultValue={shown}
        placeholder={field.auto ? words.found : ""}
        aria-invalid={fault !== ""}
        aria-describedby={`${id}-u`}
        onChange={(event) => void commit(event.currentTarget)}
      />
      <span id={`${id}-u`} class="unit">
        {unitOfMeasure(field.measure, units.value)}
        <span class="unseen">
          {" "}
          {rangeWords(field, units.value)} {field.auto ? words.autoHint : ""}
        </span>
      </span>
      {fault && (
        <span class="bad" role="alert">
          {fault}
        </span>
      )}
    </div>
  );
}

function OneTreatment({ recording, index }: { recording: Recording; index: number }) {
  const { treatments, raw } = recording;
  const treatment = treatments[index];
  if (!treatment) return null;
  const name = words.treatments[treatment.kind];
  const swapped = (other: number) => (now: readonly Treatment[]) =>
    now.map((one, i) => (i === index ? (now[other] ?? one) : i === other ? (now[index] ?? one) : one));
  const sentence = replyShown.value?.treated.steps[index]?.sentence ?? "";
  const refused = refusedEdit.value?.index === index ? refusedEdit.value.faults : null;
  return (
    <li class="cy-treatment">
      <div class="cy-treatment-head">
        <b>
          {index + 1}. {name}
        </b>
        <span class="grow" />
        <button
          type="button"
          class="iconbtn"
          aria-label={words.up(name)}
          disabled={index === 0}
          onClick={() => void editTreatments(swapped(index - 1), index)}
        >
          <Icon name="up" />
        </button>
        <button
          type="button"
          class="iconbtn"
          aria-label={words.down(name)}
          disabled={index === treatments.length - 1}
          onClick={() => void editTreatments(swapped(index + 1), index)}
        >
          <Icon name="down" />
        </button>
        <button
          type="button"
          class="iconbtn"
          aria-label={words.remove(name)}
          onClick={() => void editTreatments((now) => now.filter((_, i) => i !== index), index)}
        >
          <Icon name="close" />
        </button>
      </div>
      <div class="cy-fields">
        {fieldsOf(treatment.kind, raw.kind).map((field) => (
          <Field key={field.key} index={index} treatment={treatment} field={field} />
        ))}
      </div>
      {sentence && <p>{sentence}</p>}
      {refused && (
        <div class="cy-refusal" role="alert">
          <Faults faults={refused} />
        </div>
      )}
    </li>
  );
}

/** What is done to a recording: in order, each with its numbers and what it did. */
export function Treatments({ recording }: { recording: Recording }) {
  const { treatments } = recording;
  const beyond =
    refusedEdit.value && refusedEdit.value.index >= treatments.length ? refusedEdit.value.faults : null;
  return (
    <section class="cy-treatments" aria-labelledby="treatments-title">
      <h3 id="treatments-title">
        {words.treat} <small>{words.treatSub}</small>
      </h3>
      {treatments.length === 0 && <p>{words.none}</p>}
      <ol>
        {treatments.map((treatment, i) => (
          <OneTreatment key={`${i}${treatment.kind}`} recording={recording} index={i} />
        ))}
      </ol>
      {beyond && (
        <div class="cy-refusal" role="alert">
          <Faults faults={beyond} />
        </div>
      )}
      <div class="cy-add">
        <select
          aria-label={words.add}
          value=""
          onChange={(event) => {
            const kind = KINDS.find((one) => one === event.currentTarget.value);
            event.currentTarget.value = "";
            if (kind)
              void editTreatments(
                (now) => [...now, freshTreatment(kind, durationShown.value)],
                treatments.length,
              );
          }}
        >
          <option value="">{words.add}</option>
          {KINDS.map((kind) => (
            <option key={kind} value={kind}>
              {words.treatments[kind]}
            </option>
          ))}
        </select>
        <button
          type="button"
          class="btn"
          onClick={() => void editTreatments(() => usualTreatments(recording.raw), 0)}
        >
          {words.usual}
        </button>
      </div>
    </section>
  );
}
