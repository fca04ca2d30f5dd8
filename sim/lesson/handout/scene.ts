import { html, joined, type Markup } from "../../../shared/html.ts";
import { SHAFTS, type Shaft } from "../../bench/shafts.ts";
import { basicRatio } from "../../drivetrain/gear-set.ts";
import type { BenchScene, RunScene, Scene } from "../lesson.ts";
import { sayValue } from "../say.ts";
import { speedsOf } from "../stage.ts";
import { unitById } from "../units.ts";
import { vehicleOf } from "../vehicle-spec.ts";
import type { WorkedStep } from "../work.ts";
import { leverPicture } from "./lever.ts";

const RPM = unitById("rev/min");
const NM = unitById("N·m");

function benchWords(scene: BenchScene): string {
  const { gearSet } = vehicleOf(scene.vehicle);
  const shaft = (name: Shaft): string => {
    const { role, speed } = scene.shafts[name];
    if (role === "follow") return `${name} follows`;
    return `${name} ${role === "hold" ? "held at" : "driven at"} ${sayValue(speed.value, RPM)}`;
  };
  const output =
    scene.outputTorque === null
      ? "the battery rests"
      : `output machine ${sayValue(scene.outputTorque.value, NM)} on its own shaft`;
  return [
    `${gearSet.sunTeeth}/${gearSet.planetTeeth}/${gearSet.ringTeeth} teeth`,
    ...SHAFTS.map(shaft),
    `engine torque ${sayValue(scene.engineTorque.value, NM)}`,
    output,
  ].join("; ");
}

/** The shaft whose speed a step asks for or hides. */
function askedShaft(step: WorkedStep): Shaft | null {
  const hidden = [...step.asks.flatMap(({ hides }) => hides), ...(step.stage?.hide ?? [])];
  const asked = SHAFTS.filter((shaft) => hidden.includes(`${shaft} speed`));
  return (
    asked.find((shaft) => step.stage?.kind === "bench" && step.stage.shafts[shaft].role === "follow") ?? null
  );
}

function instantWords(scene: RunScene): string {
  if (scene.at === null) return "";
  return typeof scene.at === "string"
    ? `, at the moment ${scene.at}`
    : `, at ${sayValue(scene.at.value, unitById("s"))}`;
}

function runWords(scene: RunScene): string {
  const numbers = Object.entries(scene.numbers).map(([name, { value }]) =>
    name === "charge"
      ? `charge ${sayValue(value, unitById("%"))}`
      : `${name} ${Number(value.toPrecision(6))} (SI)`,
  );
  const parts = [
    `vehicle ${vehicleOf(scene.vehicle).name}${scene.vehicle.settings.map((s) => `, ${s}`).join("")}`,
    `cycle ${scene.cycle}`,
    `strategy ${scene.strategy}`,
    ...numbers,
    ...(scene.cold ? ["cold start"] : []),
  ];
  return `${parts.join("; ")}${instantWords(scene)}`;
}

function sceneMarkup(scene: Scene, step: WorkedStep): Markup {
  if (scene.kind === "run") return html`<div><b>Run “${scene.name}”:</b> ${runWords(scene)}.</div>`;
  const k = basicRatio(vehicleOf(scene.vehicle).gearSet);
  return html`<div><b>On the bench:</b> ${benchWords(scene)}.</div>${leverPicture({
    k,
    speeds: speedsOf(scene),
    asked: askedShaft(step),
  })}`;
}

/**
 * What stands on the stage of a step: in words, and on the bench as a lever line. A bench kept from the step before is
 * told in words only; nothing for a bare text.
 */
export function stageMarkup(step: WorkedStep): Markup | null {
  const { scenes, stage, asks } = step;
  if (scenes.length > 0) {
    return html`<div class="stage">${joined(scenes.map((scene) => sceneMarkup(scene, step)))}</div>\n`;
  }
  if (asks.length === 0 || stage?.kind !== "bench") return null;
  return html`<p class="before">As before: ${benchWords(stage)}.</p>\n`;
}
