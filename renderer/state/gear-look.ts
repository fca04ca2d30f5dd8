import { signal } from "@preact/signals";
import type { CameraPreset, PartId } from "../scene/contract.ts";

/** How view A shows the gear set; nobody keeps it. */
export interface GearLook {
  readonly cut: number;
  readonly explode: number;
  readonly labels: boolean;
  readonly arrows: boolean;
  readonly extent: "gear set" | "drivetrain";
  readonly selected: PartId | null;
  readonly camera: CameraPreset;
  /** counts up when a camera is asked for, also the same one again */
  readonly aimed: number;
}

export const gearLook = signal<GearLook>({
  cut: 0.22,
  explode: 0,
  labels: false,
  arrows: false,
  extent: "gear set",
  selected: null,
  camera: "three-quarter",
  aimed: 0,
});

/** Changes some of it. */
export const look = (changed: Partial<GearLook>): void => {
  gearLook.value = { ...gearLook.value, ...changed };
};

export const aim = (camera: CameraPreset): void => look({ camera, aimed: gearLook.value.aimed + 1 });
