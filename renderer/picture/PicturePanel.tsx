import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { t } from "../texts/catalogue.ts";
import { capture, pngOf } from "./capture.ts";
import { standaloneSvg } from "./standalone.ts";
import { viewSvg } from "./view-svg.ts";

/** A view of the place: its element, its name, and the text of its drawing if it is made of nothing else. */
interface View {
  readonly element: HTMLElement;
  readonly name: string;
  readonly drawing: (() => string) | null;
}

/** The views that are shown now, by their headings, and the whole sheet. */
function viewsNow(): View[] {
  const place = document.getElementById("place");
  if (!place) return [];
  const views = [...place.querySelectorAll<HTMLElement>(".view, .r-time-view")]
    .filter((element) => element.checkVisibility())
    .map((element): View => {
      const heading = element.querySelector(".view-head")?.cloneNode(true) as HTMLElement | undefined;
      for (const extra of heading?.querySelectorAll("small, select, label, button, fieldset") ?? [])
        extra.remove();
      const drawings = [...element.querySelectorAll("svg")].filter(
        (svg) => !svg.matches(".icon, .glyph, .patterns") && svg.getBoundingClientRect().width > 100,
      );
      const [drawing, another] = drawings;
      const name = heading?.textContent?.trim() ?? "";
      const plain = drawing && !element.querySelector("canvas");
      const write = (): string =>
        drawing && !another ? standaloneSvg(drawing, name) : viewSvg(element, name);
      return { element, name, drawing: plain ? write : null };
    })
    .filter((view) => view.name !== "");
  return [...views, { element: place, name: t.picture.whole, drawing: null }];
}

const fileName = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");

async function savePng({ element, name }: View): Promise<void> {
  const canvas = await capture(element, 2);
  const result = await bridge.exportFile({
    suggestedName: `${fileName(name)}.png`,
    kinds: [{ title: "PNG", mime: "image/png", extensions: ["png"] }],
    content: await pngOf(canvas),
  });
  take(result, (saved) => tell(t.picture.saved(saved.name)), t.notice.notSaved);
}

async function saveSvg(drawing: () => string, name: string): Promise<void> {
  const result = await bridge.exportFile({
    suggestedName: `${fileName(name)}.svg`,
    kinds: [{ title: "SVG", mime: "image/svg+xml", extensions: ["svg"] }],
    content: drawing(),
  });
  take(result, (saved) => tell(t.picture.saved(saved.name)), t.notice.notSaved);
}

/** Every view of the place as a picture: PNG as it stands, SVG where it is drawings alone. */
export const PicturePanel = () => (
  <ul class="pictures">
    {viewsNow().map((view) => (
      <li key={view.name}>
        <span>{view.name}</span>
        <button
          type="button"
          class="btn"
          aria-label={t.picture.as(view.name, "PNG")}
          onClick={() => void savePng(view)}
        >
          PNG
        </button>
        {view.drawing && (
          <button
            type="button"
            class="btn"
            aria-label={t.picture.as(view.name, "SVG")}
            onClick={() => view.drawing && void saveSvg(view.drawing, view.name)}
          >
            SVG
          </button>
        )}
      </li>
    ))}
  </ul>
);
