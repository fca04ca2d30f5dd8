import { SHAFTS } from "../../sim/bench/shafts.ts";
import { setMarks } from "../state/turning.ts";
import { t } from "../texts/catalogue.ts";
import { Answering } from "../ui/Answering.tsx";
import { Icon } from "../ui/icons.tsx";
import { countedText, hasPer, perText } from "./turn-texts.ts";

/** Turns counted since the marks were set, and for one turn of the carrier. */
export function TurnsTable() {
  return (
    <div class="turns">
      <table aria-label={t.turns.name}>
        <thead>
          <tr>
            <th scope="col">{t.turns.since}</th>
            {SHAFTS.map((shaft) => (
              <th scope="col" key={shaft} class={`ink ${shaft}`}>
                {t.lower[shaft]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{t.turns.counted}</th>
            {SHAFTS.map((shaft) => (
              <td key={shaft}>
                <Answering id={`turns:${shaft}`}>{countedText[shaft]}</Answering>
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row">{t.turns.per}</th>
            {SHAFTS.map((shaft) => (
              <td key={shaft}>
                {hasPer.value ? <Answering id={`per:${shaft}`}>{perText[shaft]}</Answering> : "–"}
              </td>
            ))}
          </tr>
        </tbody>
      </table>
    </div>
  );
}

export const SetMarks = () => (
  <button type="button" class="btn" onClick={setMarks}>
    <Icon name="mark" /> {t.turns.set}
  </button>
);
