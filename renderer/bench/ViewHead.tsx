import { enlarged, toggleEnlarged } from "../state/enlarged.ts";
import { t } from "../texts/catalogue.ts";

interface ViewHeadProps {
  readonly id: string;
  /** letter in a ring, as details on a drawing have */
  readonly tag: string;
  readonly title: string;
  readonly sub: string;
  /** a press on the letter gives the view the sheet's full height; the place must lay it out so */
  readonly enlarges?: boolean;
}

/** Over the letter. A double click is one press, not two. */
const Enlarge = ({ tag }: { tag: string }) => (
  <button
    type="button"
    class="enlarge"
    aria-pressed={enlarged.value === tag}
    aria-label={enlarged.value === tag ? t.bench.reduce(tag) : t.bench.enlarge(tag)}
    title={enlarged.value === tag ? t.bench.reduce(tag) : t.bench.enlarge(tag)}
    onClick={(event) => {
      if (event.detail < 2) toggleEnlarged(tag);
    }}
  />
);

/** Head of a view: its letter, name, and what it shows. */
export const ViewHead = ({ id, tag, title, sub, enlarges = false }: ViewHeadProps) => (
  <>
    <h2 class="view-head" id={id}>
      <span class="tag">{tag}</span> {title} <small>{sub}</small>
    </h2>
    {enlarges && <Enlarge tag={tag} />}
  </>
);
