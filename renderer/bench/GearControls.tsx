import { useEffect, useRef } from "preact/hooks";
import type { CameraPreset, PartId } from "../scene/contract.ts";
import { aim, gearLook, look } from "../state/gear-look.ts";
import { prefer, reducedMotion } from "../state/settings.ts";
import { anyTurns, playing, slowing, stepBy } from "../state/turning.ts";
import { SLOWINGS } from "../state/turns.ts";
import { t } from "../texts/catalogue.ts";
import { Icon, type IconName } from "../ui/icons.tsx";
import { PARTS } from "./parts.ts";
import { SetMarks } from "./TurnsTable.tsx";

/** A hand's step: the fastest shaft turns this share of a turn. */
export const STEP = 1 / 48;

/** Starts or stops the turning, unless little motion is asked for or nothing turns. */
export function togglePlay(): void {
  playing.value = !playing.value && !reducedMotion.value && anyTurns.value;
}

const Step = ({ name, icon, by }: { name: string; icon: IconName; by: number }) => (
  <button type="button" class="iconbtn" aria-label={name} title={name} onClick={() => stepBy(by)}>
    <Icon name={icon} />
  </button>
);

const Slowing = () => (
  <label class="slowing">
    <span class="unseen">{t.gear.slowedName}</span>
    <select
      value={slowing.value}
      onChange={(event) => {
        slowing.value = Number(event.currentTarget.value);
        prefer({ slowing: slowing.value });
      }}
    >
      {SLOWINGS.map((times) => (
        <option key={times} value={times}>
          1 : {times}
        </option>
      ))}
    </select>
  </label>
);

/** Turning by itself at the set speeds, slowed by the stated factor, or by hand step by step. */
export const Turning = () => (
  <div class="turning">
    <button
      type="button"
      class="btn"
      aria-pressed={playing.value}
      disabled={reducedMotion.value}
      onClick={togglePlay}
    >
      <Icon name={playing.value ? "pause" : "play"} /> {playing.value ? t.gear.pause : t.gear.play}
    </button>
    <Step name={t.gear.back} icon="back" by={-STEP} />
    <Step name={t.gear.on} icon="on" by={STEP} />
    <Slowing />
    <SetMarks />
  </div>
);

const Share = ({ name, of }: { name: string; of: "cut" | "explode" }) => (
  <label class="share">
    <span>{name}</span>
    <input
      type="range"
      min="0"
      max="1"
      step="0.01"
      value={gearLook.value[of]}
      onInput={(event) => look({ [of]: Number(event.currentTarget.value) })}
    />
  </label>
);

const CAMERAS: readonly CameraPreset[] = ["three-quarter", "front", "side", "top"];

const Check = ({ name, of }: { name: string; of: "labels" | "arrows" }) => (
  <label class="check">
    <input
      type="checkbox"
      checked={gearLook.value[of]}
      onChange={() => look({ [of]: !gearLook.value[of] })}
    />
    {name}
  </label>
);

/** Closes an open details by Esc or a press beside it. */
function useCloses(ref: { readonly current: HTMLDetailsElement | null }): void {
  useEffect(() => {
    const press = (event: Event): void => {
      const beside = event.target instanceof Node && !ref.current?.contains(event.target);
      if (beside) ref.current?.removeAttribute("open");
    };
    document.addEventListener("pointerdown", press);
    return () => document.removeEventListener("pointerdown", press);
  }, []);
}

function closeByEsc(event: KeyboardEvent): void {
  const details = event.currentTarget;
  if (event.key !== "Escape" || !(details instanceof HTMLDetailsElement) || !details.open) return;
  event.preventDefault();
  details.open = false;
  details.querySelector("summary")?.focus();
}

/** Everything else about the view, behind one button. */
function More() {
  const ref = useRef<HTMLDetailsElement>(null);
  useCloses(ref);
  return (
    <details class="more" ref={ref} onKeyDown={closeByEsc}>
      <summary class="btn">
        <Icon name="view" /> {t.gear.view}
      </summary>
      <div class="more-body">
        <label>
          {t.gear.camera}
          <select
            value={gearLook.value.camera}
            onChange={(event) => aim(event.currentTarget.value as CameraPreset)}
          >
            {CAMERAS.map((camera) => (
              <option key={camera} value={camera}>
                {t.gear.cameras[camera]}
              </option>
            ))}
          </select>
        </label>
        <label>
          {t.gear.extent}
          <select
            value={gearLook.value.extent}
            onChange={(event) => look({ extent: event.currentTarget.value as "gear set" | "drivetrain" })}
          >
            <option value="gear set">{t.gear.extents["gear set"]}</option>
            <option value="drivetrain">{t.gear.extents.drivetrain}</option>
          </select>
        </label>
        <label>
          {t.gear.part}
          <select
            value={gearLook.value.selected ?? ""}
            onChange={(event) => look({ selected: (event.currentTarget.value || null) as PartId | null })}
          >
            <option value="">{t.gear.noPart}</option>
            {PARTS.map((part) => (
              <option key={part} value={part}>
                {t.gear.parts[part]}
              </option>
            ))}
          </select>
        </label>
        <Check name={t.gear.labels} of="labels" />
        <Check name={t.gear.arrows} of="arrows" />
      </div>
    </details>
  );
}

/** How view A is looked at: cut open, drawn apart, and the rest. */
export const Looking = () => (
  <div class="looking">
    <Share name={t.gear.cut} of="cut" />
    <Share name={t.gear.explode} of="explode" />
    <More />
  </div>
);
