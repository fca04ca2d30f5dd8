import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { newProject, writeProject } from "../../shared/project.ts";
import { vehicleById } from "../../sim/vehicle/presets/registry.ts";
import { ServedApp } from "./app.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 120_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1280, 720, { flat: true }));
}, 240_000);
afterAll(() => app?.stop());

/** Drops a file on the middle of the sheet. */
const drop = (name: string, text: string): Promise<void> =>
  page.evaluate(`(() => {
    const data = new DataTransfer();
    data.items.add(new File([${JSON.stringify(text)}], ${JSON.stringify(name)}));
    document.querySelector("#place").dispatchEvent(
      new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
  })()`);

const placeIs = (name: string) => page.getByRole("heading", { level: 1, name, exact: true }).waitFor();

describe("files dropped on the sheet", () => {
  it("go to the place that reads them", async () => {
    await drop("mine.vehicle.json", JSON.stringify({ ...vehicleById("van"), id: "mine", name: "My van" }));
    await placeIs("Vehicle");
    await page.getByText("Opened: mine.vehicle.json").waitFor();
    await drop("drive.csv", "time_s,speed_kmh\n0,0\n10,36\n20,36\n30,0\n");
    await placeIs("Cycles");
    // A table goes where its columns belong, wherever it is dropped.
    const map =
      "speed (rev/min),torque (N·m),fuel (g/kWh)\n800,20,400\n800,140,260\n5500,20,420\n5500,140,270\n";
    await drop("map.csv", map);
    await placeIs("Vehicle");
    const reading = (name: string) => page.getByRole("heading", { name: `How ${name} is read` });
    await reading("map.csv").waitFor();
    await drop("drive-2.csv", "time_s,speed_kmh\n0,0\n10,36\n20,36\n30,0\n");
    await placeIs("Cycles");
    await drop("grid.csv", "N·m / rpm / g/kWh,800,3000,5500\n20,400,380,420\n140,260,240,270\n");
    await placeIs("Vehicle");
    await reading("grid.csv").waitFor();
    // Where its columns do not tell, they are chosen at the place it was dropped on.
    await drop("odd.csv", "a,b,c\n800,20,400\n800,140,260\n5500,20,420\n5500,140,270\n");
    await reading("odd.csv").waitFor();
    await page.getByRole("button", { name: "Cancel" }).click();
    await drop("mine.md", "# A lesson of mine\n\n## First step\n\nTurn the ring.\n");
    await placeIs("Lessons");
    await drop("mine.js", "export function decide(now) { return {}; }\n");
    await placeIs("Compare");
    await page.getByText("Opened: mine.js").waitFor();
    const project = newProject({ kind: "preset", id: "family" }, { kind: "catalogue", line: "udds" });
    await drop("week.trishaft.json", writeProject(project));
    await page.getByText("Opened: week.trishaft.json").waitFor();
  });

  it("are refused aloud where they are broken or nothing reads them, and what is open stays", async () => {
    await page.keyboard.press("1");
    await placeIs("Bench");
    const vehicle = page.getByRole("combobox", { name: /Vehicle/ });
    const before = await vehicle.inputValue();
    await drop("week.trishaft.json", `{ "schemaVersion": 99 }`);
    await page.getByText(/written by a newer version/).waitFor();
    await drop("photo.png", "nothing");
    await page.getByText(/Not opened: photo\.png/).waitFor();
    await drop("prices.csv", "name,price\nbolt,3\n");
    await page.getByText(/the columns of prices\.csv \(name, price\) are neither those of a cycle/).waitFor();
    await placeIs("Bench");
    expect(await vehicle.inputValue()).toBe(before);
    expect(errors).toEqual([]);
  });
});
