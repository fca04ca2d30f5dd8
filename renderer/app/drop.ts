import { num } from "../state/format.ts";
import { goTo } from "../state/place.ts";
import { t } from "../texts/catalogue.ts";
import { fileKind } from "./file-kind.ts";
import { takeDropped } from "./project.ts";
import { tell } from "./window.ts";

/** bytes; what is larger is not read at all. */
const MOST_BYTES = 64 * 1024 * 1024;

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
    case "cycle": {
      const { openFile } = await import("../cycles/edit.ts");
      goTo("cycles");
      await openFile(text, file.name);
      return;
    }
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
