import { DECLARATIONS } from "../../sim/vehicle/declarations.ts";
import { PRESETS, vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { take } from "../app/project.ts";
import { ActionButton, ProjectorButton, VehicleChoice } from "../app/top-parts.tsx";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { canRedo, canUndo, dropVehicle, redo, undo, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { FilePick } from "../ui/FilePick.tsx";
import { backToPreset, duplicate, presetOf } from "./edit.ts";
import { refuseLarge, takeVehicleFile } from "./open.ts";
import { valueAtPath } from "./parts.ts";

const ALIKE: ReadonlySet<string> = new Set(["id", "name", "note"]);

/** Whether two parameters are the same; a table may have 250,000 numbers. */
function same(a: unknown, b: unknown): boolean {
  if (!Array.isArray(a) || !Array.isArray(b)) return a === b;
  return a.length === b.length && a.every((one, i) => same(one, b[i]));
}

/** Parameters that differ from the preset that the vehicle began as. */
function changes(): number {
  const preset = vehicleById(presetOf(vehicle.value.id));
  return DECLARATIONS.filter(
    ({ path }) => !ALIKE.has(path) && !same(valueAtPath(vehicle.value, path), valueAtPath(preset, path)),
  ).length;
}

async function saveVehicle(): Promise<void> {
  const result = await bridge.exportFile({
    suggestedName: `${vehicle.value.id}.vehicle.json`,
    kinds: [{ title: t.vehicle.name, mime: "application/json", extensions: ["json"] }],
    content: `${JSON.stringify(vehicle.value, null, 2)}\n`,
  });
  take(result, (saved) => tell(t.vehicle.saved(saved.name)), t.notice.notSaved);
}

/** Top bar of Vehicle: which one, how much of it is changed, and what can be done with it. */
export function VehicleTop() {
  const own = !PRESETS.some((preset) => preset.id === vehicle.value.id);
  return (
    <header class="top vehicle-top">
      <h1>{t.vehicle.name}</h1>
      <VehicleChoice />
      <span class="fact wide">{t.vehicle.changes(changes())}</span>
      <span class="grow" />
      <ActionButton icon="undo" text={t.top.undo} onClick={undo} disabled={!canUndo.value} />
      <ActionButton icon="redo" text={t.top.redo} onClick={redo} disabled={!canRedo.value} />
      <ActionButton icon="list" text={t.vehicle.duplicate} onClick={duplicate} />
      {own && <ActionButton icon="first" text={t.vehicle.back} onClick={backToPreset} />}
      {own && (
        <ActionButton icon="close" text={t.vehicle.drop} onClick={() => dropVehicle(vehicle.value.id)} />
      )}
      <FilePick
        name={t.vehicle.open}
        accept=".json,application/json"
        onText={takeVehicleFile}
        onTooLarge={refuseLarge}
      />
      <ActionButton icon="save" text={t.vehicle.save} onClick={() => void saveVehicle()} />
      <ProjectorButton />
    </header>
  );
}
