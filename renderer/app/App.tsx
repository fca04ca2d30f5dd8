import { useEffect } from "preact/hooks";
import { type PlaceId, place } from "../state/place.ts";
import { t } from "../texts/catalogue.ts";
import { Patterns } from "../ui/Patterns.tsx";
import { afterPaint } from "./after-paint.ts";
import { Notice } from "./Notice.tsx";
import { failedPlaces, loadPlace, partsOf } from "./places.ts";
import { Rail } from "./Rail.tsx";
import { Windows } from "./Windows.tsx";

/** The sheet before its place is there: the same frame, empty. */
const Opening = ({ id }: { id: PlaceId }) => (
  <>
    <header class="top">
      <h1>{t.rail[id]}</h1>
    </header>
    <main id="place" class="opening" aria-busy={!failedPlaces.value.has(id)}>
      {failedPlaces.value.has(id) && (
        <div class="missing-piece" role="alert">
          <h2>{t.place.missing(t.rail[id])}</h2>
          <p>{t.place.mend}</p>
          <button type="button" class="btn" onClick={() => void loadPlace(id)}>
            {t.place.again}
          </button>
        </div>
      )}
    </main>
    <footer class="strip" aria-label={t.strip.name} />
  </>
);

function Place({ id }: { id: PlaceId }) {
  useEffect(() => afterPaint(() => void loadPlace(id)), [id]);
  const parts = partsOf(id);
  if (!parts) return <Opening id={id} />;
  const { Top, Sheet, Strip } = parts;
  return (
    <>
      <Top />
      <Sheet />
      <Strip />
    </>
  );
}

/** The sheet: rail, top bar, the place, title block; windows over it. */
export const App = () => (
  <>
    <Patterns />
    <Rail />
    <Place id={place.value} />
    <Notice />
    <Windows />
  </>
);
