import { PicturePanel } from "../picture/PicturePanel.tsx";
import { t } from "../texts/catalogue.ts";
import { Dialog } from "../ui/Dialog.tsx";
import { ClipPanel } from "./ClipPanel.tsx";
import { OptionsPanel } from "./OptionsPanel.tsx";
import { openPanel } from "./panel.ts";
import { RunFigures } from "./RunFigures.tsx";
import { RunsPanel } from "./RunsPanel.tsx";

/** The open panel of Road, if any. */
export function Panels() {
  const close = (): void => {
    openPanel.value = null;
  };
  switch (openPanel.value) {
    case "options":
      return (
        <Dialog title={t.road.options.title} onClose={close}>
          <OptionsPanel />
        </Dialog>
      );
    case "figures":
      return (
        <Dialog title={t.road.figures} onClose={close}>
          <RunFigures />
        </Dialog>
      );
    case "runs":
      return (
        <Dialog title={t.road.runs} onClose={close}>
          <RunsPanel />
        </Dialog>
      );
    case "picture":
      return (
        <Dialog title={t.picture.title} onClose={close}>
          <PicturePanel />
        </Dialog>
      );
    case "clip":
      return (
        <Dialog title={t.picture.clip.title} onClose={close}>
          <ClipPanel />
        </Dialog>
      );
    default:
      return null;
  }
}
