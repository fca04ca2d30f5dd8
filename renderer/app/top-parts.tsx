import { projector } from "../state/settings.ts";
import { bench, setVehicle, vehicles } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { Icon, type IconName } from "../ui/icons.tsx";
import { toggleProjector } from "./appearance.ts";

interface ButtonProps {
  readonly icon: IconName;
  readonly text: string;
  readonly onClick: () => void;
  readonly disabled?: boolean;
  readonly className?: string;
}

/** A button of the top bar: icon and word. */
export const ActionButton = ({ icon, text, onClick, disabled = false, className = "quiet" }: ButtonProps) => (
  <button type="button" class={`btn ${className}`} disabled={disabled} onClick={onClick}>
    <Icon name={icon} /> {text}
  </button>
);

/** The vehicle of the project, the same on every place. */
export const VehicleChoice = () => (
  <label class="fact vehicle">
    <span class="vehicle-word">{t.top.vehicle}</span>
    <select value={bench.value.vehicle} onChange={(event) => setVehicle(event.currentTarget.value)}>
      {vehicles.value.map(({ id, title }) => (
        <option key={id} value={id}>
          {title}
        </option>
      ))}
    </select>
  </label>
);

/** Into the projector's look, and out of it. */
export const ProjectorButton = () => (
  <ActionButton
    icon="projector"
    className="projector"
    text={projector.value ? t.top.leaveProjector : t.top.projector}
    onClick={toggleProjector}
  />
);
