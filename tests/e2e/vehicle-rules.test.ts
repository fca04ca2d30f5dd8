import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { textFaults } from "../renderer/support/boxes.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { seriousFaults } from "./bench-page.ts";
import { pictured } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
const folder = mkdtempSync(join(tmpdir(), "vehicle-rules-"));
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1600, 900, { before: DOWNLOADS, place: "vehicle", flat: true }));
  await parts().waitFor();
}, 240_000);
afterAll(async () => {
  await app?.stop();
  rmSync(folder, { recursive: true });
});

const parts = () => page.getByRole("combobox", { name: "Parts" });
const field = (name: string) => page.getByRole("textbox", { name, exact: true });
const vehicleInForce = () => page.getByRole("combobox", { name: /^Vehicle/ }).inputValue();
const figures = async (): Promise<string> =>
  (await page.getByRole("region", { name: "Derived figures", exact: true }).textContent()) ?? "";

async function choosePart(part: string): Promise<void> {
  if ((await parts().locator("option:checked").textContent()) === part) return;
  await parts().selectOption({ label: part });
  await page.getByRole("heading", { name: `${part}: parameters` }).waitFor();
}

async function type(part: string, name: string, text: string): Promise<void> {
  await choosePart(part);
  await field(name).fill(text);
  await field(name).press("Enter");
}

/** The rule that is broken; part, field and what is typed; then where, found and accepted, as they are told. */
type Row = readonly [
  rule: string,
  part: string,
  field: string,
  typed: string,
  what: string,
  found: string,
  accepted: string | RegExp,
];

const FULL_SPEED = "speeds of the full-load curve, increasing";
const FULL_TORQUE = "brake torque at full load";
const CELL_SOC = "state of charge of the open-circuit points, from 0 to 1";
const CELL_VOLTAGE = "open-circuit voltage of a cell at these points";
const LEAST_VOLTAGE = "least terminal voltage of a cell";
const PLANETS = "number of planets, equally spaced";
const SUN_TORQUE = "greatest torque, both signs";
const FLOOR = "state of charge below which nothing is discharged";
const CEILING = "state of charge above which nothing is charged";
const WINDOW = `between “${FLOOR}” = 35 and “${CEILING}” = 80 %`;

/** What one declaration refuses alone: a row for each kind. */
const DECLARED: readonly Row[] = [
  [
    "too small",
    "Body and road",
    "test mass, driver included, payload not",
    "10",
    "too small",
    "10 kg",
    "300 … 12000 kg",
  ],
  ["too large", "Final drive", "ring turns for one wheel turn", "13", "too large", "13", "1 … 12"],
  ["no number", "Engine", "idle speed", "fast", "not a number", '"fast"', "478 … 1520 rev/min"],
  [
    "half a thing",
    "Battery",
    "cells in series",
    "54.5",
    "not a whole number",
    "54.5 cells",
    "a whole number, 10 … 400 cells",
  ],
  [
    "a list too short",
    "Engine",
    FULL_TORQUE,
    "98",
    "too few or too many points",
    "98 N·m",
    "a list of 2 to 500 numbers, each 0 … 2000 N·m",
  ],
  [
    "one of a list too large",
    "Battery",
    CELL_SOC,
    "0 120",
    "place 2 of the list: too large",
    "120 %",
    "0 … 100 %",
  ],
  [
    "one of a list no number",
    "Engine",
    FULL_SPEED,
    "1000 high",
    "place 2 of the list: not a number",
    '"high"',
    "0 … 10500 rev/min",
  ],
  [
    "a text of another form",
    "Fuel",
    "name of the fuel, 1 to 80 characters",
    "",
    "not a text of this form",
    '""',
    "a text: name of the fuel, 1 to 80 characters",
  ],
];

/** What does not belong together, in the order of `sim/vehicle/checks`. */
const BETWEEN: readonly Row[] = [
  [
    "ring = sun + 2 planet",
    "Gear set",
    "teeth of the ring (internal)",
    "102",
    "the ring does not fit",
    "102 teeth",
    "sun + 2 × planet = 100 teeth",
  ],
  [
    "equal spacing",
    "Gear set",
    PLANETS,
    "3",
    "(sun + ring)/planets is 46.67, not whole",
    "3 planets",
    "with these teeth 2 or 4 or 5 planets",
  ],
  [
    "neighbours clear each other",
    "Gear set",
    PLANETS,
    "7",
    "neighbouring planets touch: (sun + planet)·sin(180°/planets) is 30.37",
    "7 planets",
    "with these teeth 2 or 4 or 5 planets",
  ],
  [
    "no undercut sun",
    "Gear set",
    "teeth of the sun",
    "16",
    "the tool would undercut the teeth",
    "16 teeth",
    "17.1, rounded to 17 teeth",
  ],
  [
    "no undercut planet",
    "Gear set",
    "teeth of one planet",
    "16",
    "the tool would undercut the teeth",
    "16 teeth",
    "17.1, rounded to 17 teeth",
  ],
  [
    "pulls away",
    "Output machine",
    SUN_TORQUE,
    "5",
    "cannot pull away on the level",
    "5 N·m",
    /^above 5\.\d+ N·m/,
  ],
  [
    "breakaway above friction",
    "Engine",
    "torque that starts the standing engine turning",
    "5",
    "would turn more easily",
    "5 N·m",
    "at least “friction torque, constant part” = 10.5 N·m",
  ],
  [
    "warm enough to stop",
    "Engine",
    "coolant temperature below which the engine is not stopped",
    "100",
    "never be warm enough",
    "100 °C",
    "below “coolant temperature of the warm engine” = 90 °C",
  ],
  [
    "efficiency over speed",
    "Engine",
    "loss of efficiency at zero and at twice the best speed",
    "0.8",
    "falls to nothing within the engine's speeds",
    "0.8",
    /^at most 0\.4\d+\./,
  ],
  [
    "efficiency over load, told where it is to be mended",
    "Engine",
    "load (torque over full load) above which efficiency falls",
    "0.3",
    "Engine, fall of efficiency per load squared above the knee: the efficiency falls to nothing",
    "5.5",
    /^at most 1\.4\d+\./,
  ],
  [
    "curve: two lists of one length",
    "Engine",
    FULL_TORQUE,
    "98 110",
    "2 torques for 6 speeds",
    "98  110 N·m",
    "6 values in N·m",
  ],
  [
    "curve: rising speeds",
    "Engine",
    FULL_SPEED,
    "1000 1500 1400 3000 4000 5000",
    "place 3 of the list",
    "1000  1500  1400  3000  4000  5000 rev/min",
    "there more than 1500 rev/min",
  ],
  [
    "curve: over all speeds",
    "Engine",
    FULL_SPEED,
    "1000 1500 2000 3000 4000 4500",
    "covers 1000 … 4500 rev/min only",
    "4500 rev/min",
    /^from at most 100\d \(idle\) to at least 5000 rev\/min/,
  ],
  [
    "curve: some torque",
    "Engine",
    FULL_TORQUE,
    "98 110 0 127 131 126",
    "no torque at place 3",
    "98  110  0  127  131  126 N·m",
    "above 0 N·m",
  ],
  [
    "sun machine holds the engine",
    "Sun machine",
    SUN_TORQUE,
    "20",
    "holds only 53.44 % of the engine's full load",
    "20 N·m",
    "at least 22.46, for all of it 37.43 N·m",
  ],
  [
    "sun machine starts the engine, told there",
    "Engine",
    "torque that starts the standing engine turning",
    "200",
    "Sun machine, greatest torque, both signs: the sun machine cannot start the engine",
    "42 N·m",
    "above 57.14 N·m",
  ],
  [
    "idle at rest does not over-speed the sun",
    "Sun machine",
    "greatest speed, both signs",
    "3000",
    "(1 + k)·idle = 3509 rev/min",
    "3000 rev/min",
    /^above 369\d rev\/min/,
  ],
  [
    "battery curve: two lists of one length",
    "Battery",
    CELL_VOLTAGE,
    "3 4",
    "2 voltages for 9 states of charge",
    "3  4 V",
    "9 values in V",
  ],
  [
    "battery curve: rising charge",
    "Battery",
    CELL_SOC,
    "0 10 20 35 50 65 60 90 100",
    "place 7 of the list",
    "0  10  20  35  50  65  60  90  100 %",
    "there more than 65 %",
  ],
  [
    "battery curve: empty to full",
    "Battery",
    CELL_SOC,
    "0 10 20 35 50 65 80 90 95",
    "does not go from empty to full",
    "90  95 %",
    "first value 0, last value 100 %",
  ],
  [
    "battery curve: voltage never falls",
    "Battery",
    CELL_VOLTAGE,
    "3.2 3.5 3.4 3.65 3.7 3.8 3.93 4.02 4.15",
    "falls with rising charge at place 3",
    "4.15 V",
    "there at least 3.5 V",
  ],
  [
    "a charge window",
    "Battery",
    FLOOR,
    "85",
    "the charge window is empty",
    "85 %",
    `below “${CEILING}” = 80 %`,
  ],
  [
    "target in the window",
    "Battery",
    "state of charge that a charge-sustaining strategy keeps",
    "90",
    "the target is outside the charge window",
    "90 %",
    WINDOW,
  ],
  [
    "start in the window",
    "Battery",
    "state of charge at the start unless a run says otherwise",
    "20",
    "the start is outside the charge window",
    "20 %",
    WINDOW,
  ],
  [
    "least voltage below the window",
    "Battery",
    LEAST_VOLTAGE,
    "3.7",
    "is already below its least voltage",
    "3.7 V",
    "below 3.65 V",
  ],
  [
    "greatest voltage above the window",
    "Battery",
    "greatest terminal voltage of a cell",
    "3.9",
    "is already above its greatest voltage",
    "3.9 V",
    "above 3.93 V",
  ],
  [
    "least voltage before the greatest power",
    "Battery",
    LEAST_VOLTAGE,
    "1.5",
    "below half the open-circuit voltage",
    "1.5 V",
    "at least 1.965 V",
  ],
  [
    "a reserve the battery has",
    "Control",
    "battery power kept for a start",
    "40",
    "the engine would never be stopped",
    "40 kW",
    /^at most 2\d(\.\d+)? kW/,
  ],
  [
    "a battery that cranks",
    "Battery",
    "greatest discharge current",
    "10",
    "when nearly empty, cranking needs",
    "10 A",
    /^about \d+(\.\d+)? or more, if voltage and resistance allow, A/,
  ],
  [
    "fade ends below its start",
    "Control",
    "road speed below which there is no regeneration",
    "10.8",
    "regeneration would end before it begins to fade",
    "10.8 km/h",
    "below “road speed below which regeneration fades out” = 9 km/h",
  ],
  [
    "stops below the starting power",
    "Control",
    "rules: power below which the engine stops",
    "7",
    "would stop at a power at which it starts",
    "7 kW",
    "below “rules: wheel and auxiliary power at which the engine starts” = 7 kW",
  ],
  [
    "least power the engine has",
    "Control",
    "rules: least power asked of the running engine while driving",
    "90",
    "more than the engine's greatest power",
    "90 kW",
    "at most 65.97 kW",
  ],
  [
    "thermostat power the engine has",
    "Control",
    "thermostat: engine power while on",
    "90",
    "more than the engine's greatest power",
    "90 kW",
    "at most 65.97 kW",
  ],
];

/** What the form says is wrong. */
const alerts = () => page.locator("form").getByRole("alert");

/** Takes what is refused in a field back, and waits until its form is quiet. */
async function takeBack(...names: readonly string[]): Promise<void> {
  for (const name of names) await field(name).press("Escape");
  await alerts().first().waitFor({ state: "detached" });
}

async function expectCompactInForce(): Promise<void> {
  await page.getByText("as the preset").waitFor();
  await expect.poll(vehicleInForce).toBe("compact");
}

describe("a vehicle's rules, each broken once by typing", () => {
  for (const [rule, part, name, typed, what, found, accepted] of [...DECLARED, ...BETWEEN]) {
    it(`${rule}: ${part}`, async () => {
      await choosePart(part);
      const before = await field(name).inputValue();
      try {
        await type(part, name, typed);
        const alert = alerts().filter({ hasText: what });
        await alert.waitFor({ timeout: 10_000 });
        const told = (await alert.textContent()) ?? "";
        // Where it is to be mended: here, or at another field that is then named with its part.
        const start = told.startsWith(`${part}, ${name}`) ? `${part}, ${name}` : what;
        expect(told.slice(0, start.length)).toBe(start);
        const [, value = "", right = ""] = /Found: (.*?)\. Accepted: (.*)$/.exec(told) ?? [];
        // A long list is told by its length.
        expect(value.endsWith(found) || value === "a list of 9", `${value} | ${found}`).toBe(true);
        if (typeof accepted === "string") expect(right).toContain(accepted);
        else expect(right).toMatch(accepted);
        await expect.poll(() => field(name).getAttribute("aria-invalid")).toBe("true");
        expect(await field(name).inputValue()).toBe(typed);
        await expectCompactInForce();
      } finally {
        await takeBack(name);
      }
      await expect.poll(() => field(name).inputValue()).toBe(before);
    });
  }

  it("teeth of standard form do not dig into each other: three fields together", async () => {
    const teeth = ["teeth of the sun", "teeth of the ring (internal)", "teeth of one planet"];
    for (const [i, text] of ["26", "62", "18"].entries()) await type("Gear set", teeth[i] ?? "", text);
    const dig = alerts().filter({ hasText: "the ring's tips would dig into the planets' flanks" });
    await dig.waitFor();
    expect(await dig.textContent()).toMatch(
      /^Gear set, teeth of one planet: .*Found: 18 teeth\. Accepted: at least 2\d/,
    );
    // The other two wait for it.
    await expect
      .poll(() => alerts().filter({ hasText: "it waits for “Gear set, teeth of one planet”." }).count())
      .toBe(2);
    await expectCompactInForce();
    expect(await textFaults(page)).toEqual([]);
    expect(await seriousFaults(page)).toEqual([]);
    await takeBack(...teeth);
  });
});

/** A whole engine map that is right, with something changed. */
const withMap = (change: object): object => ({
  engine: {
    map: {
      speed: [100, 300, 530],
      torque: [0, 70, 140],
      fuelPower: [
        [4000, 25_000, 48_000],
        [14_000, 68_000, 130_000],
        [35_000, 140_000, 270_000],
      ],
      ...change,
    },
  },
});

const fuelRow = (first: number, second: number, third: number): object =>
  withMap({
    fuelPower: [
      [4000, 25_000, 48_000],
      [first, second, third],
      [35_000, 140_000, 270_000],
    ],
  });

/** Rules that no field can break: of the engine map, of words to choose from, of names. The rule, the file, what is said. */
const IN_FILES: readonly (readonly [rule: string, file: object | null, told: RegExp])[] = [
  ["no vehicle", null, /: vehicle: not a group of parameters\. Found: null\. Accepted: an object/],
  [
    "an unknown name",
    { engine: { startFule: 1 } },
    /engine\.startFule: .*nearest known is startFuel.*Found: 1\./,
  ],
  [
    "an unknown word",
    { body: { roadLoad: "abc" } },
    /body\.roadLoad: none of the known words.*"abc".*formula or coastdown/,
  ],
  [
    "neither true nor false",
    { engine: { oneWayClutch: 1 } },
    /engine\.oneWayClutch: neither.*Found: 1\..*true or false/,
  ],
  ["a later version", { schemaVersion: 2 }, /schemaVersion: too large\. Found: 2\. Accepted: .*1 … 1/],
  [
    "map: something missing",
    withMap({ torque: undefined }),
    /engine\.map\.torque: missing\. Accepted: a list/,
  ],
  [
    "map: rising axes",
    withMap({ speed: [100, 90, 530] }),
    /map\.speed: the axis does not rise at place 2.*100, 90, 530.*more than 100 rad\/s/,
  ],
  [
    "map: a row for each speed",
    withMap({
      fuelPower: [
        [1, 2, 3],
        [1, 2, 3],
      ],
    }),
    /2 rows for 3 speeds.*3 rows in W/,
  ],
  [
    "map: a value for each torque",
    withMap({
      fuelPower: [
        [1, 2, 3],
        [1, 2],
        [1, 2, 3],
      ],
    }),
    /row 2 has 2 values for 3 torques.*3 values in every row/,
  ],
  [
    "map: all speeds",
    withMap({ speed: [100, 300, 500] }),
    /covers 100 … 500 rad\/s only.*at least 523\.6 rad\/s/,
  ],
  ["map: all torques", withMap({ torque: [0, 70, 120] }), /covers 0 … 120 N m only.*at least 131 N m/],
  [
    "map: more fuel for more torque",
    fuelRow(14_000, 120_000, 110_000),
    /does not rise with torque in row 2, column 3.*more than 120000 W/,
  ],
  [
    "map: no wonder",
    fuelRow(14_000, 40_000, 130_000),
    /efficiency in row 2, column 2 is above 0\.5.*at least 42000 W/,
  ],
];

describe("a vehicle file that breaks a rule no field can break", () => {
  for (const [i, [rule, file, told]] of IN_FILES.entries()) {
    it(rule, async () => {
      const path = join(folder, `broken-${i}.vehicle.json`);
      writeFileSync(path, JSON.stringify(file));
      const chooser = page.waitForEvent("filechooser");
      await page.getByRole("button", { name: "Open vehicle file" }).click();
      await (await chooser).setFiles(path);
      const notice = page.getByRole("status").filter({ hasText: `broken-${i}.vehicle.json` });
      await notice.waitFor();
      const text = await notice.textContent();
      expect(text).toMatch(/^Not opened, the vehicle stays as it was\. /);
      expect(text).toMatch(told);
      await expectCompactInForce();
      await notice.getByRole("button").click();
    });
  }
});

type Edit = () => Promise<unknown>;

const typing =
  (part: string, name: string, text: string): Edit =>
  () =>
    type(part, name, text);

/** Ten edits, each of which changes what follows from the vehicle or how it is told. */
const EDITS: readonly Edit[] = [
  typing("Body and road", "test mass, driver included, payload not", "1600"),
  typing("Body and road", "drag coefficient times frontal area", "0,7"),
  typing("Final drive", "ring turns for one wheel turn", "3.5"),
  typing("Engine", FULL_SPEED, "1000 1600 2000 3000 4000 5000"),
  async () => {
    await choosePart("Engine");
    await page.getByRole("checkbox", { name: /^a one-way clutch/ }).check();
  },
  async () => {
    await type("Gear set", "teeth of the sun", "30");
    await type("Gear set", PLANETS, "3");
    await type("Gear set", "teeth of one planet", "24");
    await type("Gear set", "teeth of the ring (internal)", "78");
  },
  async () => {
    await type("Battery", CELL_SOC, "0 50 100");
    await type("Battery", CELL_VOLTAGE, "3.1 3.7 4.2");
  },
  typing("Sun machine", SUN_TORQUE, "50"),
  typing("Auxiliaries", "auxiliary electric load", "500"),
  async () => {
    await choosePart("Body and road");
    await page.getByRole("combobox", { name: /^road load from/ }).selectOption("coastdown");
  },
];

describe("ten edits, all taken back and all done again", () => {
  /** What is shown of the vehicle before each edit, and after the last. */
  const shown: string[] = [];
  const now = async (): Promise<string> =>
    `${await vehicleInForce()} | ${await page.getByText(/ changed from the preset$|^as the preset$/).textContent()} | ${await figures()}`;
  const push = (name: string) => page.getByRole("button", { name, exact: true });

  it("changes one thing after the other", async () => {
    for (const [i, edit] of EDITS.entries()) {
      shown.push(await now());
      await edit();
      await expect.poll(now, { message: `edit ${i + 1}` }).not.toBe(shown[i]);
      await expect.poll(() => alerts().count(), { message: `edit ${i + 1}` }).toBe(0);
      await pictured(page);
    }
    shown.push(await now());
    expect(shown[10]).toMatch(/^compact-2 \| \d+ values changed from the preset/);
    expect(new Set(shown).size).toBe(11);
  });

  it("goes back to the preset by the button and by the key, every figure as it was", async () => {
    for (let i = 9; i >= 0; i -= 1) {
      if (i % 2 === 0) await push("Undo").click();
      else await page.keyboard.press("Control+z");
      await expect.poll(now, { message: `before edit ${i + 1}` }).toBe(shown[i]);
    }
    await expectCompactInForce();
    await expect.poll(() => push("Undo").isDisabled()).toBe(true);
    await choosePart("Gear set");
    await expect.poll(() => field("teeth of the sun").inputValue()).toBe("40");
  });

  it("and on again to the last edit, every figure as it was", async () => {
    await push("Redo").focus();
    for (let i = 1; i <= 10; i += 1) {
      if (i % 2 === 0) await push("Redo").click();
      else await page.keyboard.press("Control+Shift+z");
      await expect.poll(now, { message: `after edit ${i}` }).toBe(shown[i]);
    }
    await expect.poll(() => field("teeth of the sun").inputValue()).toBe("30");
    await expect.poll(() => push("Redo").isDisabled()).toBe(true);
    expect(errors).toEqual([]);
  });
});
