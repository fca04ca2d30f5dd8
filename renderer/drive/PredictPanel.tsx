import { REGIMES } from "../../sim/run/regimes.ts";
import { asked, asking, guesses, HIDEABLE, type HideableId, revealed } from "../state/predict.ts";
import { QUANTITY } from "../state/quantity.ts";
import { now, playing } from "../state/road.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";

const p = t.road.predictPanel;

function toggle(id: HideableId): void {
  revealed.value = false;
  playing.value = false;
  asked.value = asked.value.includes(id) ? asked.value.filter((one) => one !== id) : [...asked.value, id];
}

const guess = (id: HideableId, value: number | string | undefined): void => {
  const { [id]: _, ...others } = guesses.value;
  guesses.value = value === undefined ? others : { ...others, [id]: value };
};

const RegimeGuess = () => (
  <select
    aria-label={p.guess(t.road.quantities.regime)}
    value={String(guesses.value.regime ?? "")}
    onChange={(event) => guess("regime", event.currentTarget.value || undefined)}
  >
    <option value="">{p.choose}</option>
    {REGIMES.map(({ id }) => (
      <option key={id} value={id}>
        {t.roadRegimes[id]?.title ?? id}
      </option>
    ))}
  </select>
);

const NumberGuess = ({ id }: { id: HideableId }) => (
  <>
    <input
      type="text"
      inputMode="decimal"
      aria-label={p.guess(t.road.quantities[id])}
      onChange={(event) => {
        const typed = Number(event.currentTarget.value.replace(",", ".").replace("−", "-"));
        const read = event.currentTarget.value.trim() === "" || !Number.isFinite(typed);
        guess(id, read ? undefined : QUANTITY[id].read(typed, units.value));
      }}
    />
    <span class="unit">{QUANTITY[id].unit(units.value)}</span>
  </>
);

/** What was said against what is: the value, and by how much the guess is off. */
function Answer({ id }: { id: HideableId }) {
  const at = now.value;
  if (!at) return null;
  const value = QUANTITY[id].of(at);
  const said = guesses.value[id];
  if (typeof value === "string") {
    const verdict = said === undefined ? "" : said === value ? p.right : p.other;
    return (
      <span class="answer">
        {p.was} <b>{t.roadRegimes[value]?.title ?? value}</b> {verdict}
      </span>
    );
  }
  const off = typeof said === "number" ? `${p.off} ${QUANTITY[id].say(said - value, units.value)}` : "";
  return (
    <span class="answer">
      {p.was} <b>{QUANTITY[id].say(value, units.value)}</b> {off}
    </span>
  );
}

/** Hides quantities before a class, takes its guesses, and reveals. */
export const PredictPanel = () => (
  <section class="view r-predict" aria-labelledby="predict-title">
    <h2 class="view-head" id="predict-title">
      {p.title}
    </h2>
    <p>{p.about}</p>
    <ul>
      {HIDEABLE.map((id) => (
        <li key={id}>
          <label class="check">
            <input type="checkbox" checked={asked.value.includes(id)} onChange={() => toggle(id)} />
            {t.road.quantities[id]}
          </label>
          {asked.value.includes(id) &&
            (revealed.value ? (
              <Answer id={id} />
            ) : id === "regime" ? (
              <RegimeGuess />
            ) : (
              <NumberGuess id={id} />
            ))}
        </li>
      ))}
    </ul>
    <div class="row">
      <button
        type="button"
        class="btn filled"
        disabled={asked.value.length === 0 || !now.value}
        onClick={() => {
          revealed.value = !revealed.value;
        }}
      >
        {revealed.value ? p.hide : p.reveal}
      </button>
      <button
        type="button"
        class="btn"
        onClick={() => {
          asking.value = false;
          revealed.value = false;
          asked.value = [];
          guesses.value = {};
        }}
      >
        {p.close}
      </button>
      {asked.value.length === 0 && <span class="unit">{p.nothing}</span>}
    </div>
  </section>
);
