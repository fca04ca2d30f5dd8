import { ActionButton, ProjectorButton } from "../app/top-parts.tsx";
import { t } from "../texts/catalogue.ts";
import { driveIt, dropShown, keepShown } from "./edit.ts";
import { saveShown } from "./out.ts";
import { busy, canRedo, canUndo, cycleShown, kindShown, redoCycles, undoCycles } from "./state.ts";

const words = t.cycles;

/** What can be taken out: the table, or the cycle with all that belongs to it. */
const Out = () => (
  <select
    aria-label={words.out}
    value=""
    disabled={!cycleShown.value}
    onChange={(event) => {
      const what = event.currentTarget.value;
      event.currentTarget.value = "";
      if (what === "csv" || what === "file") void saveShown(what);
    }}
  >
    <option value="">{words.out}</option>
    <option value="csv">{words.outCsv}</option>
    <option value="file">{words.outFile}</option>
  </select>
);

/** Top bar of Cycles: what is looked at, and what can be done with it. */
export function CyclesTop() {
  const kind = kindShown.value;
  const keeps = kind === "draft" || kind === "manoeuvre";
  const drops = kind === "draft" || kind === "own";
  const shown = cycleShown.value;
  return (
    <header class="top">
      <h1>{words.name}</h1>
      <span class="fact cy-what">
        <b>{shown?.title ?? ""}</b> <span class="wide">{words.kinds[kind]}</span>
      </span>
      <span class="fact cy-busy" role="status">
        {busy.value && (
          <>
            {busy.value} <progress aria-label={busy.value} />
          </>
        )}
      </span>
      <span class="grow" />
      <ActionButton icon="undo" text={t.top.undo} onClick={undoCycles} disabled={!canUndo.value} />
      <ActionButton icon="redo" text={t.top.redo} onClick={redoCycles} disabled={!canRedo.value} />
      {drops && <ActionButton icon="close" text={words.drop} onClick={dropShown} />}
      <Out />
      {keeps && (
        <ActionButton
          icon="save"
          className=""
          text={words.keep}
          onClick={() => keepShown()}
          disabled={!shown}
        />
      )}
      <ActionButton icon="road" className="" text={words.drive} onClick={driveIt} disabled={!shown} />
      <ProjectorButton />
    </header>
  );
}
