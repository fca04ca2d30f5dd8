import { PRESETS } from "../../sim/vehicle/presets/registry.ts";
import { projector } from "../state/settings.ts";
import { bench, canRedo, canUndo, redo, setVehicle, situation, undo } from "../state/store.ts";
import { playing, slowing } from "../state/turning.ts";
import { t } from "../texts/catalogue.ts";
import { Icon, type IconName } from "../ui/icons.tsx";
import { toggleProjector } from "./keys.ts";
import { openProject, saveProject } from "./project.ts";

interface ButtonProps {
  readonly icon: IconName;
  readonly text: string;
  readonly onClick: () => void;
  readonly disabled?: boolean;
  readonly className?: string;
}

const Button = ({ icon, text, onClick, disabled = false, className = "quiet" }: ButtonProps) => (
  <button type="button" class={`btn ${className}`} disabled={disabled} onClick={onClick}>
    <Icon name={icon} /> {text}
  </button>
);

const VehicleChoice = () => (
  <label class="fact vehicle">
    {t.top.vehicle}
    <select value={bench.value.vehicle} onChange={(event) => setVehicle(event.currentTarget.value)}>
      {PRESETS.map((preset) => (
        <option key={preset.id} value={preset.id}>
          {preset.title}
        </option>
      ))}
    </select>
  </label>
);

/** Where one is, what stands on the bench, and what can be done with all of it. */
export function TopBar() {
  const at = situation.value;
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
      <Button icon="undo" text={t.top.undo} onClick={undo} disabled={!canUndo.value} />
      <Button icon="redo" text={t.top.redo} onClick={redo} disabled={!canRedo.value} />
      <Button icon="open" text={t.top.open} onClick={() => void openProject()} />
      <Button icon="save" text={t.top.save} onClick={() => void saveProject()} />
      <Button
        icon="projector"
        className="projector"
        text={projector.value ? t.top.leaveProjector : t.top.projector}
        onClick={toggleProjector}
      />
    </header>
  );
}
