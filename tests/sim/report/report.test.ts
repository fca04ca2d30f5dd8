import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { strategyById } from "../../../sim/control/strategies/registry.ts";
import type { RunOptions } from "../../../sim/options.ts";
import { curvePath, rangeOf } from "../../../sim/report/curve.ts";
import { regimeSpans } from "../../../sim/report/lanes.ts";
import { ledgerPicture, ledgerSides } from "../../../sim/report/ledger-picture.ts";
import { clockText, timeTicks } from "../../../sim/report/plots.ts";
import { repeatRun, shellWord } from "../../../sim/report/repeat.ts";
import { repeatBalanceOf, repeatOf, runReport } from "../../../sim/report/report.ts";
import type { ReportSource } from "../../../sim/report/source.ts";
import { niceStep } from "../../../sim/report/svg.ts";
import { regimes } from "../../../sim/run/regimes.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { summarize } from "../../../sim/run/summary.ts";
import { presetById } from "../../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";
import { applySettings } from "../../../sim/vehicle/setting.ts";

function sourceOf(cycle: string, settings: readonly string[], options: RunOptions): ReportSource {
  const vehicle = readVehicle(applySettings(presetById("compact").parameters, settings), "");
  const trace = cycleById(cycle);
  const run = simulate(vehicle, trace, strategyById("rules"), options);
  const regime = regimes(run.log, run.p);
  return {
    vehicle,
    summary: summarize(run, vehicle, trace, "rules", regime),
    log: run.log,
    regime,
    balance: null,
    cycleLine: cycle,
    notes: ["A note <b>of a person</b>."],
    version: "0.0.0",
    made: "",
  };
}

const EVIL = `</title><script>alert("x")</script><img src=x onerror=alert(1)>`;
const source = sourceOf(
  "brake-stop:speed=60km/h,rate=2m/s2",
  ["body.mass=1600", `name=${EVIL.slice(0, 60)}`],
  {
    payload: 120,
    headWind: -3,
    startSoc: 0.55,
    coldStart: true,
  },
);
const page = runReport(source);

describe("how a report is repeated", () => {
  const balance = {
    l_per_100km: 4,
    mpg_us: 58.8,
    co2_g_per_km: 93,
    slope: 2.6,
    runs: 4,
    reason: "",
  };

  it("asks for balance where the run told is the balanced one", () => {
    const balanced = { ...source, balance: { ...balance, ofThisRun: true } };
    expect(repeatOf(balanced).words).toContain("--balance");
    expect(runReport(balanced).match(/npm run/g)).toHaveLength(1);
  });

  it("tells apart the run and its balanced figure where they are two", () => {
    const apart = { ...source, balance: { ...balance, ofThisRun: false } };
    expect(repeatOf(apart).words).not.toContain("--balance");
    expect(repeatOf(apart).line).toContain("--soc 0.55");
    expect(repeatBalanceOf(apart)?.words).toEqual(expect.arrayContaining(["run", "--balance"]));
    expect(runReport(apart).match(/npm run/g)).toHaveLength(2);
  });
});

describe("a report", () => {
  it("is one file without script or network, and escapes what people type", () => {
    expect(page).not.toMatch(/<script|https?:|<link|<img|<iframe|\son\w+="|@import|url\((?!#)/i);
    expect(page).toContain("default-src 'none'");
    expect(page).toContain("&lt;/title&gt;&lt;script&gt;");
    expect(page).toContain("A note &lt;b&gt;of a person&lt;/b&gt;.");
  });

  it("names every pattern that it draws with", () => {
    const ids = new Set([...page.matchAll(/<pattern id="([^"]+)"/g)].map(([, id]) => id));
    const used = [...page.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id);
    expect(used.length).toBeGreaterThan(10);
    for (const id of used) expect(ids.has(id), id).toBe(true);
  });

  it("holds no number that is none", () => {
    expect(page.replace(/<style>[\s\S]*?<\/style>/, "")).not.toMatch(/NaN|Infinity|undefined|\[object/);
  });

  it("tells figures, ledger, parameters, the caution and how to repeat it", () => {
    const { summary } = source;
    for (const line of summary.ledger) expect(page).toContain(`<td>${line.title.replace("'", "&#39;")}</td>`);
    for (const { sentence } of summary.moments) expect(page).toContain(sentence.replaceAll("'", "&#39;"));
    expect(page).toContain("not for calibrating, certifying or repairing");
    expect(page).toContain("gearSet.sunTeeth");
    expect(page).toContain("--set body.mass=1600");
    expect(page).toContain("--payload 120");
  });

  it("is the same text every time", () => {
    expect(runReport(source)).toBe(page);
  });
});

describe("the ledger picture", () => {
  it("adds up: what came in is what went out or was stored, to 1e-9", () => {
    for (const made of [source, sourceOf("hill-down:length=600m", [], { headWind: -25 })]) {
      const { from, to } = ledgerSides(made.summary.ledger);
      const sum = (side: typeof from): number => side.reduce((total, { energy }) => total + energy, 0);
      expect(Math.abs(sum(from) / sum(to) - 1)).toBeLessThan(1e-9);
      for (const { energy } of [...from, ...to]) expect(energy).toBeGreaterThan(0);
    }
  });

  it("puts a store that gave, and air that pushed, beside what came in", () => {
    const { from } = ledgerSides(sourceOf("hill-down:length=600m", [], { headWind: -25 }).summary.ledger);
    expect(from.map(({ id }) => id)).toEqual(expect.arrayContaining(["potential_change", "air"]));
  });

  it("draws ribbons as tall at the bar as the bar itself, both sides", () => {
    const { text } = ledgerPicture(source.summary.ledger);
    const bar = Number(/width="4" height="([\d.]+)"/.exec(text)?.[1]);
    // A ribbon's path begins at the bar, above, and ends there, below.
    const ribbons = [
      ...text.matchAll(/d="M([\d.]+) ([\d.]+)C[^V]*V[\d.]+C[\d.]+ [\d.]+ [\d.]+ [\d.]+ [\d.]+ ([\d.]+)Z"/g),
    ];
    const tall = (node: number): number =>
      ribbons
        .filter(([, x]) => Number(x) === node)
        .reduce((sum, [, , top, foot]) => sum + Number(foot) - Number(top), 0);
    expect(bar).toBe(280);
    // Lines thinner than 1.2 px are drawn 1.2 px: at most that many more.
    for (const node of [438, 442]) {
      expect(tall(node)).toBeGreaterThan(bar - 1);
      expect(tall(node)).toBeLessThan(bar + 1.3 * ribbons.length);
    }
  });
});

describe("curves", () => {
  const points = (path: string): [number, number][] =>
    [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

  it("keep the extremes and both ends, with few points, however dense", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 3000 }),
        (values) => {
          const time = values.map((_, i) => i);
          const same = (value: number): number => value;
          const drawn = points(curvePath(time, values, same, same, 100));
          expect(drawn.length).toBeLessThanOrEqual(4 * 101);
          const ys = drawn.map(([, y]) => y);
          expect(Math.abs(Math.min(...ys) - Math.min(...values))).toBeLessThanOrEqual(0.05 + 1e-9);
          expect(Math.abs(Math.max(...ys) - Math.max(...values))).toBeLessThanOrEqual(0.05 + 1e-9);
          expect(drawn[0]?.[0]).toBe(0);
          expect(drawn.at(-1)?.[0]).toBe(values.length - 1);
          for (let i = 1; i < drawn.length; i += 1) {
            expect(drawn[i]?.[0]).toBeGreaterThanOrEqual(drawn[i - 1]?.[0] ?? 0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("have ranges, ticks and clocks", () => {
    expect(rangeOf([[3, -1], [5]])).toEqual([-1, 5]);
    expect(rangeOf([])).toEqual([0, 1]);
    for (const range of [0.003, 1, 7, 84, 12345]) {
      const step = niceStep(range, 4);
      expect(range / step).toBeLessThanOrEqual(4);
      expect(range / step).toBeGreaterThan(1.5);
    }
    for (const end of [3, 45, 600, 1369, 86_400, 500_000])
      expect(timeTicks(end).length).toBeLessThanOrEqual(11);
    expect(clockText(3661)).toBe("1:01:01");
  });

  it("lanes cover the whole time once", () => {
    const time = source.log.view("time");
    const spans = regimeSpans(time, source.regime);
    expect(spans[0]?.from).toBe(0);
    expect(spans.at(-1)?.until).toBe(time[time.length - 1]);
    for (let i = 1; i < spans.length; i += 1) expect(spans[i]?.from).toBe(spans[i - 1]?.until);
  });
});

describe("how to repeat a run", () => {
  it("names what differs from preset and defaults, and nothing else", () => {
    const { words, whole, changed } = repeatOf(source);
    expect(whole).toBe(true);
    expect(changed).toEqual([{ path: "body.mass", usual: "1530", here: "1600" }]);
    expect(words.join(" ")).toBe(
      "report --vehicle compact --set body.mass=1600 --cycle brake-stop:speed=60km/h,rate=2m/s2 --strategy rules " +
        "--soc 0.55 --payload 120 --wind -3 --cold --out report.html",
    );
  });

  it("sets lists and is read back as the same vehicle", () => {
    const settings = ["engine.fullLoadTorque=90,100,110,120,125,120", "control.fadeEnd=2"];
    const { vehicle, summary } = sourceOf("launch", settings, {});
    const { words } = repeatRun("run", vehicle, "launch", "rules", summary.settings);
    const again = words.flatMap((word, i) => (words[i - 1] === "--set" ? [word] : []));
    expect(readVehicle(applySettings(presetById("compact").parameters, again), "")).toEqual(vehicle);
  });

  it("quotes for a shell", () => {
    expect(shellWord("udds")).toBe("udds");
    expect(shellWord("my drive.csv")).toBe("'my drive.csv'");
    expect(shellWord("it's; rm -rf")).toBe("'it'\\''s; rm -rf'");
  });
});
