import { useState } from "preact/hooks";
import { openProject, saveProject } from "../app/project.ts";
import { ActionButton, ProjectorButton, VehicleChoice } from "../app/top-parts.tsx";
import { PicturePanel } from "../picture/PicturePanel.tsx";
import { canRedo, canUndo, redo, situation, undo } from "../state/store.ts";
import { playing, slowing } from "../state/turning.ts";
import { t } from "../texts/catalogue.ts";
import { Dialog } from "../ui/Dialog.tsx";

/** Where one is, what stands on the bench, and what can be done with all of it. */
export function BenchTop() {
  const at = situation.value;
  const [picturing, setPicturing] = useState(false);
  return (
    <header class="top">
      <h1>{t.rail.bench}</h1>
      <span class="fact">
        {t.top.situation} <b>{at ? t.situations[at.id].name : t.top.byHand}</b>
      </span>
      <VehicleChoice />
      <span class="grow" />
      <span class="fact wide">
        {playing.value ? t.top.turnsItself : t.top.stands}, {t.top.shown("")}
        <b>1 : {slowing.value}</b>
      </span>
      <ActionButton icon="undo" text={t.top.undo} onClick={undo} disabled={!canUndo.value} />
      <ActionButton icon="redo" text={t.top.redo} onClick={redo} disabled={!canRedo.value} />
      <ActionButton icon="open" text={t.top.open} onClick={() => void openProject()} />
      <ActionButton icon="save" text={t.top.save} onClick={() => void saveProject()} />
      <ActionButton icon="picture" text={t.picture.open} onClick={() => setPicturing(true)} />
      <ProjectorButton />
      {picturing && (
        <Dialog title={t.picture.title} onClose={() => setPicturing(false)}>
          <PicturePanel />
        </Dialog>
      )}
    </header>
  );
}
