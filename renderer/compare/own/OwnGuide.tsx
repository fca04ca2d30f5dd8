import { OWN_ANSWER, OWN_INPUTS, OWN_LIMITS, OWN_VEHICLE } from "../../../sim/control/own/contract.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { num } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";

const c = t.compare.own;

interface Entry {
  readonly name: string;
  readonly meaning: string;
}

const Names = ({ title, sub, rows }: { title: string; sub: string; rows: readonly Entry[] }) => (
  <section class="guide-part" aria-label={title}>
    <h3>
      {title} <small>{sub}</small>
    </h3>
    <dl>
      {rows.map(({ name, meaning }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
  </section>
);

const inputs = (list: readonly (Entry & { readonly kind: "number" | "flag" })[]): Entry[] =>
  list.map(({ name, meaning, kind }) => ({
    name,
    meaning: kind === "flag" && !meaning.startsWith("true") ? `${meaning}: ${c.flag}` : meaning,
  }));

const answers: readonly Entry[] = OWN_ANSWER.map(({ name, meaning, needed }) => ({
  name,
  meaning: `${meaning}; ${needed === "never" ? c.neverNeeded : c.needed(needed)}`,
}));

const limits: readonly string[] = [
  c.limit.steps(num(OWN_LIMITS.steps)),
  c.limit.work(num(OWN_LIMITS.work)),
  c.limit.memory(num(OWN_LIMITS.memory / 2 ** 20)),
  c.limit.stack(num(OWN_LIMITS.stack / 1024)),
  c.limit.length(num(OWN_LIMITS.length)),
  c.limit.text(num(OWN_LIMITS.text)),
  c.limit.source(num(OWN_LIMITS.source)),
];

/** View C: inputs, answer and limits of an own strategy, from the engine's own list. */
export const OwnGuide = () => (
  <section class="view o-guide" aria-labelledby="view-c">
    <ViewHead id="view-c" tag="C" title={c.guide} sub={c.guideSub} />
    {/* It scrolls, so the keyboard must reach it. */}
    <div class="own-side" role="region" aria-labelledby="view-c" tabIndex={0}>
      <Names title={c.inputs} sub={c.inputsSub} rows={inputs(OWN_INPUTS)} />
      <Names title={c.vehicle} sub={c.vehicleSub} rows={inputs(OWN_VEHICLE)} />
      <Names title={c.answer} sub={c.answerSub} rows={answers} />
      <Names title={c.memory} sub="" rows={[{ name: "memory", meaning: c.memoryAbout }]} />
      <section class="guide-part" aria-label={c.limits}>
        <h3>
          {c.limits} <small>{c.limitsSub}</small>
        </h3>
        <ul>
          {limits.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <p>{c.sandbox}</p>
      </section>
    </div>
  </section>
);
