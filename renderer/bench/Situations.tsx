import { following } from "../../sim/bench/shafts.ts";
import { Glyph } from "../lever/Glyph.tsx";
import { givenSpeeds, SITUATIONS, type Situation } from "../state/situations.ts";
import { k, loadById, situation } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";

function speedsOf(one: Situation) {
  const { speeds, follower } = givenSpeeds(one);
  return following(k.value, speeds, follower);
}

/** The ten situations: a press puts one on the bench. */
export const Situations = () => (
  <nav class="v-sit sits" aria-label={t.situationsName}>
    {SITUATIONS.map((one) => (
      <button
        type="button"
        key={one.id}
        aria-pressed={situation.value?.id === one.id}
        aria-label={t.situations[one.id].name}
        onClick={() => loadById(one.id)}
      >
        <Glyph k={k.value} speeds={speedsOf(one)} />
        <span class="long">{t.situations[one.id].name}</span>
        <span class="short">{t.situations[one.id].short}</span>
      </button>
    ))}
  </nav>
);
