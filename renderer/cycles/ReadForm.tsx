import type { Role } from "../../cycles/import/headers.ts";
import { ROLES } from "../../cycles/import/headers.ts";
import type { Delimiter } from "../../cycles/import/rows.ts";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { takenNow, unitIds, withChoice } from "./column-choices.ts";
import { readAgain } from "./edit.ts";
import { Faults } from "./Faults.tsx";
import type { Draft } from "./state.ts";

const words = t.cycles;
const DELIMITERS: readonly Delimiter[] = [",", ";", "\t", "|"];

/** One quantity: its column and unit, how they were found, both to be changed. */
function RoleRow({ draft, role }: { draft: Draft; role: Role }) {
  const taken = takenNow(draft, role);
  const header = draft.read.inspection?.header ?? [];
  const name = words.columns[role];
  const { choices } = draft;
  const choose = (column: number, unit: string | null): void => {
    const choice = column === 0 ? "none" : { column, ...(unit ? { unit } : {}) };
    readAgain({ ...choices, columns: withChoice(choices.columns, role, choice) });
  };
  const { columnHow, unitHow } = taken;
  return (
    <div class="cy-role">
      <span>{name}</span>
      <select
        aria-label={words.columnOf(name)}
        value={taken.column}
        onChange={(event) => choose(Number(event.currentTarget.value), null)}
      >
        {(taken.optional || taken.column === 0) && (
          <option value={0}>{taken.optional ? words.noColumn : words.chooseColumn}</option>
        )}
        {header.map((title, i) => (
          <option key={`${i}${title}`} value={i + 1}>
            {title === "" ? i + 1 : title}
          </option>
        ))}
      </select>
      <select
        aria-label={words.unitOf(name)}
        value={taken.unit}
        disabled={taken.column === 0}
        onChange={(event) => choose(taken.column, event.currentTarget.value)}
      >
        {taken.unit === "" && <option value="">{taken.column === 0 ? "–" : words.unitUnknown}</option>}
        {unitIds(role).map((id) => (
          <option key={id} value={id}>
            {id}
          </option>
        ))}
      </select>
      {columnHow && unitHow && <small>{words.howUnit(words.how[columnHow], words.how[unitHow])}</small>}
    </div>
  );
}

function FirstRows({ draft }: { draft: Draft }) {
  const inspection = draft.read.inspection;
  if (!inspection) return null;
  return (
    <div class="cy-rows" tabIndex={0} role="region" aria-label={words.firstRows}>
      <table>
        <thead>
          <tr>
            {inspection.header.map((name, i) => (
              <th key={`${i}${name}`} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {inspection.firstRows.slice(0, 3).map((row, i) => (
            <tr key={i}>
              {inspection.header.map((name, k) => (
                <td key={`${k}${name}`}>{row[k] ?? ""}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Table({ draft }: { draft: Draft }) {
  const { choices, read } = draft;
  const hasCurrent = takenNow(draft, "batteryCurrent").column > 0;
  return (
    <>
      {ROLES.map((role) => (
        <RoleRow key={role} draft={draft} role={role} />
      ))}
      {hasCurrent && (
        <label class="cy-pair">
          {words.positive}
          <select
            value={choices.columns?.positiveCurrent ?? "discharges"}
            onChange={(event) => {
              const positiveCurrent = event.currentTarget.value === "charges" ? "charges" : "discharges";
              readAgain({ ...choices, columns: { ...choices.columns, positiveCurrent } });
            }}
          >
            <option value="discharges">{words.positives.discharges}</option>
            <option value="charges">{words.positives.charges}</option>
          </select>
        </label>
      )}
      <label class="cy-pair">
        {words.separator}
        <select
          value={read.inspection?.delimiter ?? ","}
          onChange={(event) => {
            const delimiter = DELIMITERS.find((one) => one === event.currentTarget.value);
            // Columns chosen by number mean others in another table.
            if (delimiter) readAgain({ delimiter });
          }}
        >
          {DELIMITERS.map((one) => (
            <option key={one} value={one}>
              {words.separators[one]}
            </option>
          ))}
        </select>
      </label>
      <FirstRows draft={draft} />
    </>
  );
}

function Tracks({ draft }: { draft: Draft }) {
  const { imported } = draft.read;
  if (imported?.kind !== "gpx") return null;
  const { tracks, track } = imported.report;
  return (
    <label class="cy-pair">
      {words.track}
      <select value={track} onChange={(event) => readAgain({ track: Number(event.currentTarget.value) })}>
        {tracks.map(({ number, name, points }) => (
          <option key={number} value={number}>
            {words.trackName(number, name, num(points))}
          </option>
        ))}
      </select>
    </label>
  );
}

/** How an opened file is read: guessed, shown, and every guess to be changed. */
export function ReadForm({ draft }: { draft: Draft }) {
  const { imported, inspection, faults } = draft.read;
  const notes = imported?.report.notes ?? [];
  return (
    <form class="cy-read" onSubmit={(event) => event.preventDefault()}>
      <h3>{words.read}</h3>
      {faults.length > 0 && (
        <div class="cy-refusal" role="alert">
          <p>{words.unclear}</p>
          <Faults faults={faults} />
        </div>
      )}
      {inspection ? <Table draft={draft} /> : <Tracks draft={draft} />}
      {notes.length > 0 && (
        <>
          <h4>{words.notes}</h4>
          <ul>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </>
      )}
    </form>
  );
}
