import { useEffect, useRef } from "preact/hooks";
import type { Delimiter } from "../../cycles/import/rows.ts";
import { MAP_ROLES, type MapRole, unitsOfRole } from "../../sim/vehicle/engine-map/measures.ts";
import type { MapChoices } from "../../sim/vehicle/engine-map/reading.ts";
import { tell } from "../app/window.ts";
import { Faults } from "../cycles/Faults.tsx";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import type { MapReply } from "../workers/map-contract.ts";
import { closeMap, fittedMap, type MapDraft, mapReading, readMapAgain, takeMap } from "./map-draft.ts";

const words = t.vehicle.map;
const DELIMITERS: readonly Delimiter[] = [",", ";", "\t", "|"];

type MapReading = MapReply["reading"];

interface Props {
  readonly reading: MapReading;
  readonly choices: MapChoices;
}

/** Column of one quantity in a table with a row for each point. */
function ColumnChoice({ reading, choices, role }: Props & { readonly role: MapRole }) {
  const { column } = reading.roles[role];
  return (
    <select
      aria-label={words.columnOf(words.roles[role])}
      value={column}
      onChange={({ currentTarget }) => {
        const columns = { ...choices.columns, [role]: Number(currentTarget.value) };
        // The unit chosen was that of the column before.
        const { [role]: _, ...units } = choices.units ?? {};
        readMapAgain({ ...choices, columns, units });
      }}
    >
      {column === 0 && <option value={0}>{words.chooseColumn}</option>}
      {reading.header.map((title, i) => (
        <option key={`${i}${title}`} value={i + 1}>
          {title === "" ? i + 1 : title}
        </option>
      ))}
    </select>
  );
}

/** One quantity: where it stands and its unit, how they were found, both to be changed. */
function RoleRow({ reading, choices, role }: Props & { readonly role: MapRole }) {
  const { column, columnHow, unit, unitHow } = reading.roles[role];
  const name = words.roles[role];
  const long = reading.layout === "long";
  const how = words.how[unitHow];
  return (
    <div class="cy-role">
      <span>{name}</span>
      {long ? <ColumnChoice reading={reading} choices={choices} role={role} /> : <span />}
      <select
        aria-label={words.unitOf(name)}
        value={unit}
        disabled={long && column === 0}
        onChange={({ currentTarget }) =>
          readMapAgain({ ...choices, units: { ...choices.units, [role]: currentTarget.value } })
        }
      >
        {unit === "" && <option value="">{words.unitUnknown}</option>}
        {unitsOfRole(role).map(({ id }) => (
          <option key={id} value={id}>
            {id}
          </option>
        ))}
      </select>
      {unit !== "" && <small>{long ? words.howBoth(words.how[columnHow], how) : how}</small>}
    </div>
  );
}

function LayoutRow({ reading, choices }: Props) {
  return (
    <label class="cy-pair">
      {words.layout}
      <select
        value={reading.layout}
        onChange={({ currentTarget }) => {
          const layout = currentTarget.value === "grid" ? "grid" : "long";
          readMapAgain({ ...choices, layout, columns: {} });
        }}
      >
        <option value="long">{words.layouts.long}</option>
        <option value="grid">{words.layouts.grid}</option>
      </select>
    </label>
  );
}

function SeparatorRow({ reading }: { readonly reading: MapReading }) {
  return (
    <label class="cy-pair">
      {t.cycles.separator}
      <select
        value={reading.delimiter}
        onChange={({ currentTarget }) => {
          const delimiter = DELIMITERS.find((one) => one === currentTarget.value);
          // Columns chosen by number mean others in another table.
          if (delimiter) readMapAgain({ delimiter });
        }}
      >
        {DELIMITERS.map((one) => (
          <option key={one} value={one}>
            {t.cycles.separators[one]}
          </option>
        ))}
      </select>
    </label>
  );
}

const FirstRows = ({ reading }: { readonly reading: MapReading }) => (
  <div class="cy-rows" tabIndex={0} role="region" aria-label={t.cycles.firstRows}>
    <table>
      <tbody>
        {[reading.header, ...reading.firstRows].map((row, i) => (
          <tr key={i}>
            {reading.header.map((_, k) => (
              <td key={k}>{row[k] ?? ""}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

/** What was found, or why it cannot be taken. */
function Outcome({ name }: { readonly name: string }) {
  const found = fittedMap.value;
  if (!found) {
    const said = t.cycles.reading(name);
    return (
      <p class="map-busy" role="status">
        {said} <progress aria-label={said} />
      </p>
    );
  }
  const { vehicle, faults } = found.fitted;
  if (!vehicle?.engine.map) {
    return (
      <div class="cy-refusal" role="alert">
        <p>{words.unclear}</p>
        <Faults faults={faults} />
      </div>
    );
  }
  const { speed, torque } = vehicle.engine.map;
  const best = num(100 * found.best, 1);
  return <p role="status">{words.found(speed.length, torque.length, best)}</p>;
}

/** How an opened table of the engine map is read: guessed, shown, every guess to be changed; then taken or not. */
export function EngineMapForm({ draft }: { readonly draft: MapDraft }) {
  const reading = mapReading.value;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const { choices } = draft;
  return (
    <form class="params map-form" onSubmit={(event) => event.preventDefault()}>
      <h3 ref={title} tabIndex={-1}>
        {words.read(draft.name)}
      </h3>
      <Outcome name={draft.name} />
      <div class="map-actions">
        <button
          type="button"
          class="btn"
          disabled={!fittedMap.value?.fitted.vehicle}
          onClick={() => {
            if (takeMap()) tell(words.taken(draft.name));
          }}
        >
          {words.take}
        </button>
        <button type="button" class="btn quiet" onClick={closeMap}>
          {words.cancel}
        </button>
      </div>
      {reading && reading.header.length > 0 && (
        <>
          <LayoutRow reading={reading} choices={choices} />
          {MAP_ROLES.map((role) => (
            <RoleRow key={role} reading={reading} choices={choices} role={role} />
          ))}
          <SeparatorRow reading={reading} />
          <FirstRows reading={reading} />
        </>
      )}
      {reading && reading.notes.length > 0 && (
        <>
          <h4>{t.cycles.notes}</h4>
          <ul>
            {reading.notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </>
      )}
    </form>
  );
}
