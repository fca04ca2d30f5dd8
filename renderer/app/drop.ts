import { num } from "../state/format.ts";
import { goTo, place } from "../state/place.ts";
import { t } from "../texts/catalogue.ts";
import { fileKind } from "./file-kind.ts";
import { takeDropped } from "./project.ts";
import { tell } from "./window.ts";

/** Columns that a refusal names, and characters of them all. */
const MOST_NAMED = 8;
const LONGEST_FOUND = 200;

/** bytes; what is larger is not read at all. */
const MOST_BYTES = 64 * 1024 * 1024;

async function openCycle(text: string, name: string): Promise<void> {
  const { openFile } = await import("../cycles/edit.ts");
  goTo("cycles");
  await openFile(text, name);
}

/**
 * Gives a table to the place of what it holds. Where its columns do not tell, the place it was dropped on lets them be
 * chosen, if it is one that reads tables; else it is refused.
 */
async function openTable(file: File, text: string): Promise<void> {
  const { tableKind } = await import("../../sim/vehicle/engine-map/table-kind.ts");
  const { kind, header } = tableKind(text);
  const at = place.value;
  if (kind === "drive" || (kind === null && at === "cycles")) return openCycle(text, file.name);
  if (kind === null && at !== "vehicle") {
    const found = header.length > MOST_NAMED ? [...header.slice(0, MOST_NAMED), "…"] : header;
    tell(t.notice.unknownTable(file.name, found.join(", ").slice(0, LONGEST_FOUND)), true);
    return;
  }
  const { takeMapFile } = await import("../vehicle/open.ts");
  goTo("vehicle");
  takeMapFile(text, file.name, file.size);
}

/** Gives a file to the place that reads its kind, and goes there; a place refuses in its own words. */
async function open(file: File): Promise<void> {
  if (file.size > MOST_BYTES) {
    tell(t.notice.tooLarge(file.name, num(file.size / 1e6), num(MOST_BYTES / 1e6)), true);
    return;
  }
  const text = await file.text();
  switch (fileKind(file.name, text)) {
    case "project":
      takeDropped(text, file.name);
      return;
    case "cycle":
      return openCycle(text, file.name);
    case "table":
      return openTable(file, text);
    case "lesson": {
      const { takeLessonFile } = await import("../lesson/files.ts");
      goTo("lessons");
      takeLessonFile(text, file.name);
      return;
    }
    case "strategy": {
      const [{ openStrategy }, { compareView }] = await Promise.all([
        import("../compare/own/actions.ts"),
        import("../compare/state.ts"),
      ]);
      goTo("compare");
      compareView.value = "own";
      openStrategy(text, file.name);
      return;
    }
    case "vehicle": {
      const { takeVehicleFile } = await import("../vehicle/open.ts");
      goTo("vehicle");
      takeVehicleFile(text, file.name);
      return;
    }
    case null:
      tell(t.notice.unknownKind(file.name), true);
  }
}

/** Files dropped anywhere on the sheet are opened; the page is never left for one. */
export function followDrops(): void {
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const file = event.dataTransfer?.files[0];
    if (!file || event.defaultPrevented) return;
    event.preventDefault();
    void open(file);
  });
}
