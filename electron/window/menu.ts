import type { MenuItemConstructorOptions } from "electron";
import { COMMAND_KEYS, type FileRef, type MenuCommand } from "../../shared/bridge.ts";
import { TEXTS } from "../texts.ts";

/** What the menu's entries do. */
export interface MenuActions {
  command(command: MenuCommand): void;
  openRecent(file: FileRef): void;
}

type Item = MenuItemConstructorOptions;

/** The whole menu, for `Menu.buildFromTemplate`. */
export function menuTemplate(recent: readonly FileRef[], mac: boolean, actions: MenuActions): Item[] {
  const { menu } = TEXTS;
  const item = (label: string, command: MenuCommand): Item => ({
    label,
    ...accelerator(command),
    click: () => actions.command(command),
  });
  return [
    ...(mac ? [appMenu(item)] : []),
    { label: menu.file, submenu: [...fileItems(item, recent, actions), ...(mac ? [] : [line, quit])] },
    { label: menu.edit, submenu: [item(menu.undo, "undo"), item(menu.redo, "redo"), line, ...textRoles] },
    { label: menu.places, submenu: placeItems(item) },
    { label: menu.view, submenu: viewItems(item) },
    ...(mac ? [{ role: "windowMenu" } as const] : []),
    { label: menu.help, role: "help", submenu: helpItems(item, mac) },
  ];
}

type MakeItem = (label: string, command: MenuCommand) => Item;

const line: Item = { type: "separator" };
const quit: Item = { role: "quit" };
const textRoles: readonly Item[] = [
  { role: "cut" },
  { role: "copy" },
  { role: "paste" },
  { role: "selectAll" },
];

function accelerator(command: MenuCommand): Pick<Item, "accelerator"> {
  const found = COMMAND_KEYS.find((entry) => entry.command === command);
  if (!found) return {};
  return { accelerator: `CmdOrCtrl+${found.shift ? "Shift+" : ""}${found.key.toUpperCase()}` };
}

const appMenu = (item: MakeItem): Item => ({
  label: TEXTS.app,
  submenu: [
    item(TEXTS.menu.about, "about"),
    line,
    { role: "services" },
    line,
    { role: "hide" },
    { role: "hideOthers" },
    { role: "unhide" },
    line,
    quit,
  ],
});

function fileItems(item: MakeItem, recent: readonly FileRef[], actions: MenuActions): Item[] {
  const { menu } = TEXTS;
  const known = recent.map(
    // A single & would underline the next letter.
    (file): Item => ({
      label: `${file.name} (${file.folder})`.replaceAll("&", "&&"),
      click: () => actions.openRecent(file),
    }),
  );
  return [
    item(menu.new, "new"),
    item(menu.open, "open"),
    {
      label: menu.recent,
      submenu: known.length > 0 ? known : [{ label: menu.recentNone, enabled: false }],
    },
    line,
    item(menu.save, "save"),
    item(menu.saveAs, "save-as"),
    line,
    item(menu.exportRun, "export-run"),
    item(menu.exportReport, "export-report"),
    item(menu.print, "print"),
  ];
}

function placeItems(item: MakeItem): Item[] {
  const { menu } = TEXTS;
  return [
    item(menu.bench, "place-bench"),
    item(menu.road, "place-road"),
    item(menu.compare, "place-compare"),
    item(menu.lessons, "place-lessons"),
    item(menu.vehicle, "place-vehicle"),
    item(menu.cycles, "place-cycles"),
  ];
}

const viewItems = (item: MakeItem): Item[] => [
  item(TEXTS.menu.projector, "projector"),
  item(TEXTS.menu.theme, "theme"),
  line,
  { role: "resetZoom" },
  { role: "zoomIn" },
  { role: "zoomOut" },
  line,
  { role: "togglefullscreen" },
  { role: "toggleDevTools" },
];

const helpItems = (item: MakeItem, mac: boolean): Item[] => [
  item(TEXTS.menu.shortcuts, "shortcuts"),
  item(TEXTS.menu.glossary, "glossary"),
  ...(mac ? [] : [line, item(TEXTS.menu.about, "about")]),
];
