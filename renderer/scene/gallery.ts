import type { CameraPreset, GearScene, PartId, SceneLook, SceneModel } from "./contract.ts";
import { createGearScene } from "./gear-scene.ts";
import { FIRST_LOOK } from "./graph/scene-graph.ts";
import { paletteFor } from "./palette.ts";

/**
 * Named scenes on a page of their own, for looking at and for picture tests; not part of the app. Everything is in the
 * address: `?scene=set&theme=dark&cut=0.4`. The page turns nothing by itself; `window.gallery` drives it.
 */
interface NamedScene {
  readonly model: SceneModel;
  readonly look: Partial<SceneLook>;
  readonly camera?: CameraPreset;
}

const compact: SceneModel = {
  teeth: { sunTeeth: 40, planetTeeth: 30, ringTeeth: 100, planets: 4 },
  outputReduction: 2.5,
  finalDrive: 3.3,
};
const torques = { sun: -28.6, carrier: 100, ring: -71.4 };

const SCENES: Readonly<Record<string, NamedScene>> = {
  set: { model: compact, look: {} },
  wide: {
    model: { ...compact, teeth: { sunTeeth: 40, planetTeeth: 32, ringTeeth: 104, planets: 4 } },
    look: {},
  },
  small: {
    model: { ...compact, teeth: { sunTeeth: 30, planetTeeth: 22, ringTeeth: 74, planets: 4 } },
    look: {},
  },
  three: {
    model: { ...compact, teeth: { sunTeeth: 42, planetTeeth: 33, ringTeeth: 108, planets: 3 } },
    look: {},
  },
  whole: { model: compact, look: { cut: 0 } },
  cut: { model: compact, look: { cut: 0.7 } },
  apart: { model: compact, look: { explode: 1 } },
  torque: { model: compact, look: { torques } },
  labels: { model: compact, look: { labels: true } },
  drivetrain: { model: compact, look: { extent: "drivetrain", cut: 0.5 } },
  "drivetrain-direct": {
    model: { ...compact, outputReduction: 1 },
    look: { extent: "drivetrain", cut: 0.5 },
  },
  "drivetrain-apart": { model: compact, look: { extent: "drivetrain", cut: 0.5, explode: 0.7 } },
  "drivetrain-labels": {
    model: compact,
    look: { extent: "drivetrain", cut: 0.5, labels: true, torques },
  },
};

/** What a test can do with the page. */
export interface Gallery {
  readonly scene: GearScene;
  readonly names: readonly string[];
  readonly model: SceneModel;
  readonly look: SceneLook;
  /** Milliseconds of script per frame while turning. */
  turn(frames: number): number[];
  /** Milliseconds of script of rebuilding for other teeth and back, with the first frame after it. */
  rebuild(times: number): { build: number[]; frame: number[] };
}

declare global {
  interface Window {
    gallery?: Gallery;
  }
}

const asked = new URLSearchParams(location.search);
const named = SCENES[asked.get("scene") ?? "set"] ?? { model: compact, look: {} };
const number = (name: string): number | null => {
  const text = asked.get(name);
  return text === null ? null : Number(text);
};
const flag = (name: string, otherwise: boolean): boolean =>
  asked.has(name) ? asked.get(name) !== "0" : otherwise;

const base: SceneLook = { ...FIRST_LOOK, ...named.look };
const look: SceneLook = {
  ...base,
  theme: asked.get("theme") === "dark" ? "dark" : "light",
  projector: flag("projector", false),
  cut: number("cut") ?? base.cut,
  explode: number("explode") ?? base.explode,
  labels: flag("labels", base.labels),
  marks: flag("marks", base.marks),
  selected: (asked.get("selected") as PartId | null) ?? null,
  hovered: (asked.get("hovered") as PartId | null) ?? null,
};

const canvas = document.querySelector("canvas");
if (canvas === null) throw new Error("the page has no canvas");
const palette = paletteFor(look);
const css = ([r, g, b]: readonly [number, number, number]): string =>
  `rgb(${[r, g, b].map((share) => Math.round(255 * share)).join(" ")})`;
document.body.style.background = css(palette.sheet);
document.body.style.color = css(palette.ink);

const scene = createGearScene(canvas, named.model);
scene.setLook(look);
scene.setCamera((asked.get("camera") as CameraPreset | null) ?? named.camera ?? "three-quarter");
scene.resize(innerWidth, innerHeight, devicePixelRatio);
scene.orbit(number("dx") ?? 0, number("dy") ?? 0, number("zoom") ?? 1);
scene.setAngles({ carrier: number("carrier") ?? 0, ring: number("ring") ?? 0 });
scene.render();
writeLabels();

function writeLabels(): void {
  const host = document.querySelector("#labels");
  if (host === null) return;
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  host.replaceChildren(svg);
  for (const { part, x, y, anchorX, anchorY } of scene.labelPlaces()) {
    const line = document.createElementNS("http://www.w3.org/2000/svg", "path");
    line.setAttribute("d", `M${x} ${y + (anchorY > y ? 11 : -11)}L${anchorX} ${anchorY}`);
    line.setAttribute("stroke", "currentColor");
    line.setAttribute("stroke-width", "0.75");
    const dot = document.createElementNS("http://www.w3.org/2000/svg", "circle");
    dot.setAttribute("cx", String(anchorX));
    dot.setAttribute("cy", String(anchorY));
    dot.setAttribute("r", "2.5");
    dot.setAttribute("fill", "currentColor");
    svg.append(line, dot);
    const text = document.createElement("span");
    text.textContent = part;
    text.style.left = `${x}px`;
    text.style.top = `${y}px`;
    host.append(text);
  }
}

window.gallery = {
  scene,
  names: Object.keys(SCENES),
  model: named.model,
  look,
  turn(frames) {
    const times: number[] = [];
    for (let i = 0; i < frames; i += 1) {
      const start = performance.now();
      scene.setAngles({ carrier: 0.021 * i, ring: 0.0087 * i });
      scene.render();
      times.push(performance.now() - start);
    }
    return times;
  },
  rebuild(times) {
    const build: number[] = [];
    const frame: number[] = [];
    const other = SCENES.wide?.model ?? named.model;
    for (let i = 0; i < times; i += 1) {
      const start = performance.now();
      scene.setModel(i % 2 === 0 ? other : named.model);
      build.push(performance.now() - start);
      const drawn = performance.now();
      scene.render();
      frame.push(performance.now() - drawn);
    }
    return { build, frame };
  },
};
