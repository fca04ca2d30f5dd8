import { type CycleInfo, listCycles } from "../../cycles/catalogue.ts";
import { at } from "../../shared/at.ts";
import { DRAFT } from "../state/cycle-ids.ts";
import { ownCycles } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";
import { FilePick } from "../ui/FilePick.tsx";
import { Icon } from "../ui/icons.tsx";
import { clockTime } from "../ui/time.ts";
import { openFile, openInvented } from "./edit.ts";
import { MOST_BYTES, refuseLarge } from "./open.ts";
import { busy, draft, look, selected } from "./state.ts";

const words = t.cycles;
const KINDS = ["standard", "composite", "standard phase", "manoeuvre"] as const;

interface EntryProps {
  readonly id: string;
  readonly title: string;
  /** s; null: it depends */
  readonly duration: number | null;
}

const Entry = ({ id, title, duration }: EntryProps) => (
  <li>
    <button type="button" aria-pressed={selected.value === id} onClick={() => look(id)}>
      <span>{title}</span>
      <span class="cy-long">
        {duration === null ? (id === DRAFT ? words.unclearLong : words.varies) : clockTime(duration, 0)}
      </span>
    </button>
  </li>
);

const Group = ({ name, entries }: { name: string; entries: readonly EntryProps[] }) =>
  entries.length > 0 ? (
    <section>
      <h3>{name}</h3>
      <ul>
        {entries.map((entry) => (
          <Entry key={entry.id} {...entry} />
        ))}
      </ul>
    </section>
  ) : null;

const infoOf = ({ id, title, duration }: CycleInfo): EntryProps => ({ id, title, duration });

/** View A: every cycle there is, and the ways to bring one's own. */
export function CycleList() {
  const now = draft.value;
  const all = listCycles();
  const opened = now
    ? [{ id: DRAFT, title: now.trace?.title ?? now.name, duration: now.trace ? endOf(now.trace.time) : null }]
    : [];
  return (
    <>
      <nav class="cy-list" aria-label={words.list}>
        <Group name={words.groups.draft} entries={opened} />
        <Group
          name={words.groups.own}
          entries={ownCycles.value.map(({ id, title, time }) => ({ id, title, duration: endOf(time) }))}
        />
        {KINDS.map((kind) => (
          <Group
            key={kind}
            name={words.groups[kind]}
            entries={all.filter((one) => one.kind === kind).map(infoOf)}
          />
        ))}
      </nav>
      <div class="cy-open">
        <FilePick
          name={words.openFile}
          accept=".csv,.txt,.tsv,.gpx,.json,text/csv,application/gpx+xml,application/json"
          most={MOST_BYTES}
          onText={(text, name) => void openFile(text, name)}
          onTooLarge={refuseLarge}
        />
        <button
          type="button"
          class="btn quiet"
          disabled={busy.value !== null}
          onClick={() => void openInvented()}
        >
          <Icon name="plus" /> {words.tryInvented}
        </button>
        <p>{words.dropHint}</p>
      </div>
    </>
  );
}

const endOf = (time: Float64Array): number => at(time, time.length - 1);
