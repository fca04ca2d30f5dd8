import type { Teeth } from "../../sim/drivetrain/gear-set.ts";

/** Parts of the scene that can be picked, named and turned. */
export type PartId =
  | "sun"
  | "planets"
  | "carrier"
  | "ring"
  | "sun-machine"
  | "output-machine"
  | "reduction"
  | "engine"
  | "final-drive"
  | "axle";

/** What the model is built from. A change of any field rebuilds it. */
export interface SceneModel {
  readonly teeth: Teeth;
  /** output machine turns for one ring turn; 1 means mounted on the ring's shaft without a gear pair */
  readonly outputReduction: number;
  /** ring turns for one wheel turn */
  readonly finalDrive: number;
}

/** Integrated shaft angles, rad, unwrapped, positive forward; the rest follows from the teeth. */
export interface SceneAngles {
  readonly carrier: number;
  readonly ring: number;
}

/** How the model is shown. Shares are 0–1. */
export interface SceneLook {
  readonly theme: "light" | "dark";
  readonly projector: boolean;
  /** how much of ring and housing is cut away */
  readonly cut: number;
  /** how far the parts are drawn apart along the axis */
  readonly explode: number;
  readonly labels: boolean;
  readonly marks: boolean;
  /** torques on sun, carrier and ring, N·m; null hides the arrows */
  readonly torques: { readonly sun: number; readonly carrier: number; readonly ring: number } | null;
  /** the part outlined, if any */
  readonly selected: PartId | null;
  /** the part under the pointer, shown a little lighter, if any */
  readonly hovered?: PartId | null;
  /** only the gear set, or the whole drivetrain */
  readonly extent: "gear set" | "drivetrain";
}

/** Where one looks from. */
export type CameraPreset = "three-quarter" | "front" | "side" | "top";

/** What the last frame cost, for the bench. */
export interface SceneStats {
  readonly drawCalls: number;
  readonly triangles: number;
  readonly frames: number;
}

/** The gear set in 3D on a canvas. Draws only when something changed since the last frame. */
export interface GearScene {
  setModel(model: SceneModel): void;
  setAngles(angles: SceneAngles): void;
  setLook(look: SceneLook): void;
  /** CSS pixels */
  resize(width: number, height: number, pixelRatio: number): void;
  setCamera(preset: CameraPreset): void;
  /** turns the camera by drag distances in CSS pixels, and zooms by a factor */
  orbit(dx: number, dy: number, zoom: number): void;
  /** the part under a point of the canvas, CSS pixels from its corner */
  pickAt(x: number, y: number): PartId | null;
  /**
   * places of labels in CSS pixels (x, y: middle of the text), kept clear of each other; the view draws their text as
   * HTML and a leader to the anchor. Empty while labels are off; a part without room is left out
   */
  labelPlaces(): readonly {
    readonly part: PartId;
    readonly x: number;
    readonly y: number;
    readonly anchorX: number;
    readonly anchorY: number;
  }[];
  /** turns of a part for a drag of its face from one point to another: rad about its axis, or null beside it */
  dragAngle(part: PartId, fromX: number, fromY: number, toX: number, toY: number): number | null;
  /** draws if anything changed; true if it drew */
  render(): boolean;
  stats(): SceneStats;
  dispose(): void;
}
