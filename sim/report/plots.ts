import { at } from "../../shared/at.ts";
import { html, type Markup } from "../../shared/html.ts";
import { readable } from "../../shared/readable.ts";
import { joulesToKwh, mpsToKmh, radPerSToRpm, shareToPercent } from "../../shared/units.ts";
import type { LogReader } from "../run/log.ts";
import { curvePath, rangeOf, type Scale } from "./curve.ts";
import { COLOUR, niceStep, px } from "./svg.ts";

const WIDTH = 940;
const LEFT = 78;
const RIGHT = 800;
const SPAN = RIGHT - LEFT;

/** One curve of a plot, in the unit shown. */
interface Curve {
  readonly name: string;
  readonly values: Float64Array;
  readonly colour: string;
  readonly ink: string;
  /** SVG dash pattern; empty for a whole line */
  readonly dash: string;
}

interface Plot {
  readonly title: string;
  readonly unit: string;
  readonly tall: number;
  readonly curves: readonly Curve[];
}

const mapped = (values: Float64Array, change: (value: number) => number): Float64Array =>
  Float64Array.from(values, change);

const kw = (value: number): number => value / 1000;

const curve = (
  name: string,
  values: Float64Array,
  hue: "carrier" | "sun" | "ring" | "battery" | "fuel",
  dash = "",
): Curve => ({ name, values, colour: COLOUR[hue], ink: COLOUR[`${hue}Ink`], dash });

const product = (a: Float64Array, b: Float64Array, change: (value: number) => number): Float64Array =>
  Float64Array.from(a, (value, i) => change(value * at(b, i)));

/** The grade, where the road has one. */
function gradePlot(log: LogReader): readonly Plot[] {
  const grade = log.view("grade");
  if (grade.every((value) => value === 0)) return [];
  return [
    {
      title: "Grade",
      unit: "per cent",
      tall: 60,
      curves: [
        {
          name: "grade",
          values: mapped(grade, shareToPercent),
          colour: COLOUR.ink2,
          ink: COLOUR.ink2,
          dash: "",
        },
      ],
    },
  ];
}

/** The plots of a run, top to bottom. */
function plotsOf(log: LogReader): readonly Plot[] {
  const v = log.view;
  const read = (id: Parameters<typeof v>[0], change: (value: number) => number): Float64Array =>
    mapped(log.view(id), change);
  const engine = product(log.view("engineTorque"), log.view("engineSpeed"), kw);
  return [
    {
      title: "Speed",
      unit: "km/h",
      tall: 110,
      curves: [
        {
          name: "target",
          values: read("target", mpsToKmh),
          colour: COLOUR.loss,
          ink: COLOUR.lossInk,
          dash: "6 3",
        },
        curve("speed", read("speed", mpsToKmh), "ring"),
      ],
    },
    ...gradePlot(log),
    {
      title: "Power",
      unit: "kW",
      tall: 170,
      curves: [
        curve("engine", engine, "carrier"),
        curve("sun machine", read("sunMachineElectric", kw), "sun", "7 3"),
        curve("output machine", read("outputMachineElectric", kw), "ring", "3 2"),
        curve("battery", read("batteryPower", kw), "battery", "9 2 2 2"),
      ],
    },
    {
      title: "Charge",
      unit: "%",
      tall: 80,
      curves: [curve("state of charge", read("soc", shareToPercent), "battery")],
    },
    {
      title: "Shaft speeds",
      unit: "rev/min",
      tall: 120,
      curves: [
        curve("carrier, engine", read("engineSpeed", radPerSToRpm), "carrier"),
        curve("sun", read("sunMachineSpeed", radPerSToRpm), "sun", "7 3"),
        curve("ring", read("ringSpeed", radPerSToRpm), "ring", "3 2"),
      ],
    },
    {
      title: "Energy so far",
      unit: "kWh",
      tall: 90,
      curves: [
        curve("fuel", read("fuel", joulesToKwh), "fuel"),
        curve("recovered", read("recovered", joulesToKwh), "battery", "7 3"),
      ],
    },
  ];
}

/** Time of a tick: minutes and seconds, hours before them when there are any. */
export function clockText(seconds: number): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const whole = Math.round(seconds);
  const hours = Math.floor(whole / 3600);
  const rest = `${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}`;
  return hours > 0 ? `${hours}:${rest}` : rest;
}

const TIME_STEPS = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400];

/** Ticks of the time axis, s: at most ten. */
export function timeTicks(end: number): readonly number[] {
  const step = TIME_STEPS.find((seconds) => end / seconds <= 10) ?? Math.ceil(end / 10 / 3600) * 3600;
  return Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, i) => i * step);
}

/** Place of a time, px. */
export const timeScale =
  (end: number): Scale =>
  (seconds) =>
    LEFT + (SPAN * seconds) / Math.max(1e-9, end);

/** Ends of the time axis in the pictures, px. */
export const AXIS = { left: LEFT, right: RIGHT, width: WIDTH } as const;

function legend({ curves }: Plot, top: number): Markup[] {
  return curves.map(
    ({ name, colour, ink, dash }, i) =>
      html`<path d="M${RIGHT + 8} ${px(top + 10 + i * 32)}h24" stroke="${colour}" stroke-width="2" stroke-dasharray="${dash || "none"}"/><text x="${RIGHT + 8}" y="${px(top + 25 + i * 32)}" fill="${ink}">${name}</text>`,
  );
}

function plotMarkup(plot: Plot, time: Float64Array, x: Scale, top: number): Markup {
  const [low, high] = rangeOf(plot.curves.map(({ values }) => values));
  const zero = plot.unit === "%" ? low : Math.min(0, low);
  const step = niceStep(Math.max(1e-6, high - zero), 4);
  const least = Math.floor(zero / step + 1e-9) * step;
  const most = Math.max(least + step, Math.ceil(high / step - 1e-9) * step);
  const y: Scale = (value) => top + plot.tall - ((value - least) / (most - least)) * plot.tall;
  const ticks = Array.from({ length: Math.round((most - least) / step) + 1 }, (_, i) => least + i * step);
  const decimals =
    step >= 1 ? 0 : Math.min(4, Math.ceil(-Math.log10(step)) + (step.toPrecision(1) === "0.2" ? 1 : 0));
  const lines = ticks.map(
    (tick) =>
      html`<path d="M${LEFT} ${px(y(tick))}H${RIGHT}" stroke="${Math.abs(tick) < step / 2 ? COLOUR.ink2 : COLOUR.grid}"/><text x="${LEFT - 6}" y="${px(y(tick) + 5)}" text-anchor="end">${readable(tick, decimals)}</text>`,
  );
  const curves = plot.curves.map(
    ({ values, colour, dash }) =>
      html`<path d="${curvePath(time, values, x, y, SPAN)}" fill="none" stroke="${colour}" stroke-width="1.5" stroke-linejoin="round" stroke-dasharray="${dash || "none"}"/>`,
  );
  return html`<text x="4" y="${px(top - 16)}" font-weight="600">${plot.title}, ${plot.unit}</text>${lines}${curves}${legend(plot, top)}\n`;
}

/** Room above each plot, px. */
const GAP = 44;

/** Time plots of a run over one axis. */
export function timePlots(log: LogReader): Markup {
  const time = log.view("time");
  const end = time.length > 0 ? at(time, time.length - 1) : 1;
  const x = timeScale(end);
  let top = GAP;
  const parts = plotsOf(log).map((plot) => {
    const made = plotMarkup(plot, time, x, top);
    top += plot.tall + GAP;
    return made;
  });
  const foot = top - GAP + 20;
  const ticks = timeTicks(end).map(
    (tick) =>
      html`<path d="M${px(x(tick))} ${GAP}V${px(foot - 16)}" stroke="${COLOUR.grid}"/><text x="${px(x(tick))}" y="${px(foot)}" text-anchor="middle">${clockText(tick)}</text>`,
  );
  return html`<svg viewBox="0 0 ${WIDTH} ${px(foot + 10)}" width="${WIDTH}" role="img" aria-label="Speed, powers, charge, shaft speeds and energies over time">
${ticks}${parts}</svg>`;
}
