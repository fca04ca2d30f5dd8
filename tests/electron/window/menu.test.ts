import { describe, expect, it } from "vitest";
import { menuTemplate } from "../../../electron/window/menu.ts";
import { MENU_COMMANDS } from "../../../shared/bridge.ts";

type Template = ReturnType<typeof menuTemplate>;
const below = (items: Template): Template =>
  items.flatMap((item) => [item, ...(Array.isArray(item.submenu) ? below(item.submenu) : [])]);

function menu(mac: boolean, recent: Parameters<typeof menuTemplate>[0] = []) {
  const told: string[] = [];
  const template = menuTemplate(recent, mac, {
    command: (command) => told.push(command),
    openRecent: (file) => told.push(`recent ${file.id}`),
  });
  return { told, items: below(template) };
}

/** Electron hands over things that our entries do not look at. */
const click = (item: Template[number]): void => (item.click as (() => void) | undefined)?.();

describe.each([true, false])("the menu (mac: %s)", (mac) => {
  it("has each command once", () => {
    const { told, items } = menu(mac);
    for (const item of items) click(item);
    expect([...told].sort()).toEqual([...MENU_COMMANDS].sort());
  });

  it("has no key twice, and leaves undo to the page", () => {
    const { items } = menu(mac);
    const keys = items.flatMap((item) => item.accelerator ?? []);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain("CmdOrCtrl+Shift+S");
    expect(keys.join(" ")).not.toMatch(/\+Z/);
  });
});

describe("recent files in the menu", () => {
  it("are opened by a click", () => {
    const { told, items } = menu(false, [{ id: "7", name: "R&D.json", folder: "/p" }]);
    const entry = items.find((item) => item.label === "R&&D.json (/p)");
    expect(entry).toBeDefined();
    if (entry) click(entry);
    expect(told).toEqual(["recent 7"]);
  });

  it("say so when there are none", () => {
    const { items } = menu(false);
    expect(items.find((item) => item.label === "No recent projects")?.enabled).toBe(false);
  });
});
