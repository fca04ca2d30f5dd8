import { effect } from "@preact/signals";
import type { GearScene, PartId, SceneModel } from "../scene/contract.ts";
import { gearLook } from "../state/gear-look.ts";
import { projector, theme } from "../state/settings.ts";
import type { GearSource } from "./gear-source.ts";

/** What a host does for its view. */
export interface SceneHost {
  readonly scene: GearScene;
  readonly resize: (width: number, height: number) => void;
  /** the camera was moved from outside */
  readonly redraw: () => void;
  readonly hover: (part: PartId | null) => void;
  /** whether anybody can see it: what is hidden is not drawn */
  shown: boolean;
  /** called after each drawn frame */
  onDrawn: () => void;
  readonly dispose: () => void;
}

/** Longest step of one frame, s: a tab that slept does not catch up; a slow device still keeps the stated slowing. */
const LONGEST = 1;

/** What the scene builds of the source's vehicle. */
export function modelOf({ vehicle }: GearSource): SceneModel {
  const { gearSet, outputMachine, finalDrive } = vehicle.value;
  return { teeth: gearSet, outputReduction: outputMachine.reduction, finalDrive: finalDrive.ratio };
}

/** Feeds the scene from its source and draws when something changed. */
export function hostScene(scene: GearScene, source: GearSource): SceneHost {
  const { angles, torques, turning, pointed } = source;
  let hovered: PartId | null = null;
  let frame = 0;
  let last = 0;
  const stops: (() => void)[] = [];
  const ask = (): void => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };
  function draw(now: number): void {
    frame = 0;
    const turns = turning?.on.value ?? false;
    if (turns && last > 0) turning?.runFor(Math.min(LONGEST, (now - last) / 1000));
    last = turns ? now : 0;
    if (host.shown && scene.render()) host.onDrawn();
    if (turns) ask();
  }
  const setLook = (): void => {
    const { cut, explode, labels, arrows, extent, selected } = gearLook.value;
    const part = pointed?.value ?? null;
    scene.setLook({
      theme: theme.value,
      projector: projector.value,
      cut,
      explode,
      labels: labels || part !== null,
      marks: true,
      torques: arrows ? torques.value : null,
      selected: part ?? selected,
      hovered,
      extent,
    });
    ask();
  };
  const host: SceneHost = {
    scene,
    resize: (width, height) => {
      scene.resize(width, height, window.devicePixelRatio);
      ask();
    },
    redraw: ask,
    hover: (part) => {
      if (part === hovered) return;
      hovered = part;
      setLook();
    },
    shown: true,
    onDrawn: () => undefined,
    dispose: () => {
      for (const stop of stops) stop();
      cancelAnimationFrame(frame);
      scene.dispose();
    },
  };
  stops.push(
    effect(() => {
      scene.setModel(modelOf(source));
      ask();
    }),
    effect(() => {
      scene.setAngles(angles.value);
      ask();
    }),
    effect(setLook),
    effect(() => {
      const { camera, aimed } = gearLook.value;
      if (aimed > 0) scene.setCamera(camera);
      ask();
    }),
    effect(() => {
      if (turning?.on.value) ask();
    }),
  );
  return host;
}
