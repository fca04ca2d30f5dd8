import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { newProject, writeProject } from "../../shared/project.ts";
import { rpmToRadPerS } from "../../shared/units.ts";
import { vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import {
  expectGearEquation,
  gearSetDrawn,
  load,
  role,
  shownNumber,
  speedOf,
  speedsOf,
} from "./bench-page.ts";
import { pictured, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1600, 900, { before: DOWNLOADS }));
}, 240_000);
afterAll(() => app?.stop());

async function openFile(name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open", exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** Tooth counts of the set of section 2 in our list of checks: k = 78 / 30 = 2.6. */
const CHECK_SET = { sunTeeth: 30, planetTeeth: 24, ringTeeth: 78 };

function checkSetProject(): string {
  const compact = vehicleById("compact");
  const parameters = {
    ...compact,
    id: "check-set",
    name: "Check set",
    gearSet: { ...compact.gearSet, ...CHECK_SET },
  };
  const own = { kind: "own", title: "Check set", parameters: structuredClone(parameters) } as const;
  const project = newProject(own, { kind: "catalogue", line: "udds" });
  const carrier = rpmToRadPerS(2000);
  return writeProject({
    ...project,
    bench: {
      ...project.bench,
      sun: { mode: "follow", speed: 3.6 * carrier },
      carrier: { mode: "drive", speed: carrier },
      ring: { mode: "hold", speed: 0 },
    },
  });
}

const perCarrierTurn = async (): Promise<readonly number[]> =>
  (
    await page
      .getByRole("row", { name: /^per carrier turn/ })
      .getByRole("button")
      .allTextContents()
  ).map((text) => shownNumber(text.replace(/^.*carrier/, "")));

describe("a project on the bench", () => {
  it("is restored after a reload", async () => {
    await load(page, "sun backward");
    const before = await speedsOf(page);
    const kept = (): Promise<number> =>
      page.evaluate<number>(`JSON.parse(localStorage["trishaft.project"] ?? "{}").bench?.sun.speed ?? NaN`);
    await expect.poll(kept).toBeCloseTo(rpmToRadPerS(before.sun), 6);
    await page.reload();
    await page.getByRole("heading", { name: "Bench" }).waitFor();
    await expect.poll(() => speedsOf(page)).toEqual(before);
    expect(before.sun).toBeLessThan(0);
  });

  it("that is broken is refused, with the reason, and the open one stays", async () => {
    const before = await speedsOf(page);
    const broken: readonly (readonly [string, string, RegExp])[] = [
      ["cut.trishaft.json", checkSetProject().slice(0, 400), /Not opened.*cut\.trishaft\.json/],
      ["other.trishaft.json", `{"schemaVersion": 99}`, /Not opened.*99/],
      [
        "teeth.trishaft.json",
        checkSetProject().replace('"ringTeeth": 78', '"ringTeeth": 77'),
        /Not opened.*77/,
      ],
    ];
    for (const [name, text, says] of broken) {
      await openFile(name, text);
      const notice = page.getByRole("status");
      await expect.poll(() => notice.textContent(), { timeout: 10_000 }).toMatch(says);
      expect(await speedsOf(page)).toEqual(before);
    }
  });

  it("with the teeth of the check set counts 3.60 and 1.385 turns", async () => {
    await openFile("check-set.trishaft.json", checkSetProject());
    await expect.poll(() => speedOf(page, "sun"), { timeout: 10_000 }).toBe(7200);
    expectGearEquation(await speedsOf(page), 2.6);
    await expect.poll(perCarrierTurn).toEqual([3.6, 1, 0]);
    // With the ring still held, all would come to rest.
    await role(page, "ring", "Drive").click();
    await role(page, "sun", "Hold").click();
    await expect.poll(perCarrierTurn).toEqual([0, 1, 1.385]);
    await page.getByRole("button", { name: "Set marks" }).click();
    const step = page.getByRole("button", { name: "Step on" });
    for (let i = 0; i < 12; i += 1) await step.click({ noWaitAfter: true });
    await expect.poll(perCarrierTurn).toEqual([0, 1, 1.385]);
    await page.getByRole("heading", { name: /30 \/ 24 \/ 78 teeth/ }).waitFor();
    expect(errors).toEqual([]);
  });

  it("goes out as a picture of the gear set on its sheet", async () => {
    await gearSetDrawn(page);
    await page.getByRole("button", { name: "Picture", exact: true }).click();
    const download = page.waitForEvent("download");
    await page
      .getByRole("dialog")
      .getByRole("button", { name: /Gear set as PNG/ })
      .click();
    const path = await (await download).path();
    const bytes = readFileSync(path);
    expect(bytes.subarray(1, 4).toString()).toBe("PNG");
    await page.keyboard.press("Escape");
    const box = await page.getByRole("region", { name: /Gear set/ }).boundingBox();
    // Width and height stand in the header of the first chunk.
    expect(bytes.readUInt32BE(16)).toBeCloseTo(2 * (box?.width ?? 0), -1);
    expect(bytes.readUInt32BE(20)).toBeCloseTo(2 * (box?.height ?? 0), -1);
    // A drawn gear set does not fold into a few kilobytes; an empty canvas does.
    expect(bytes.length).toBeGreaterThan(120_000);
    expect(errors).toEqual([]);
  });
});

describe("without what it likes best", () => {
  it("draws the gear set flat, and turns it, where three dimensions cannot be had", async () => {
    const { page: bare, errors: thrown } = await app.open(1280, 720, { flat: true });
    await bare.getByRole("img", { name: "Gear set from the front" }).waitFor();
    await bare.getByText("cannot draw in three dimensions").waitFor();
    const place = (): Promise<string> =>
      bare.evaluate<string>(
        `document.querySelector(".flat-body.sun").parentElement.getAttribute("transform")`,
      );
    const before = await place();
    await bare.getByRole("button", { name: "Turn", exact: true }).click();
    await expect.poll(place, { timeout: 10_000 }).not.toBe(before);
    expect(thrown).toEqual([]);
    await bare.context().close();
  });

  it("moves nothing by itself where little motion is asked for", async () => {
    const { page: calm } = await app.open(1280, 720, { reducedMotion: true });
    await gearSetDrawn(calm);
    await expect.poll(() => calm.getByRole("button", { name: "Turn", exact: true }).isDisabled()).toBe(true);
    await calm.keyboard.press("Space");
    const turns = (): Promise<string | null> => calm.getByRole("table").textContent();
    const before = await turns();
    for (let i = 0; i < 4; i += 1) await pictured(calm);
    expect(await turns()).toBe(before);
    // A situation jumps instead of sweeping over.
    await calm.evaluate(`document.querySelector('[aria-label="sun backward"]').click()`);
    await calm.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
    const y = await calm.evaluate<string>(`document.querySelector(".hero").getAttribute("y1")`);
    await settled(calm);
    expect(await calm.evaluate(`document.querySelector(".hero").getAttribute("y1")`)).toBe(y);
    await calm.getByRole("button", { name: "Step on" }).click();
    await expect.poll(turns).not.toBe(before);
    await calm.context().close();
  });
});
