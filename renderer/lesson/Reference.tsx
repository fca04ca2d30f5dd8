import { t } from "../texts/catalogue.ts";
import { type BlockName, FIELDS, NAMES, QUANTITY_LIST, stagesOf } from "./reference.ts";

const w = t.lesson.write;

/** Fields of the blocks, the words that they take, and every quantity: from the engine's own registries. */
export const Reference = () => (
  <div class="reference">
    <h3>{w.fields}</h3>
    <dl>
      {(Object.keys(FIELDS) as BlockName[]).map((block) => (
        <div key={block}>
          <dt>{block}</dt>
          <dd>
            {FIELDS[block].map(({ name, many }, i) => (
              <span key={name}>
                {i > 0 && ", "}
                <code>{name}</code>
                {many && ` (${w.many})`}
              </span>
            ))}
          </dd>
        </div>
      ))}
      {(Object.keys(NAMES) as (keyof typeof NAMES)[]).map((kind) => (
        <div key={kind}>
          <dt>{w.names[kind]}</dt>
          <dd>{NAMES[kind].join(", ")}</dd>
        </div>
      ))}
    </dl>
    <h3>{w.quantities}</h3>
    <table>
      <thead>
        <tr>
          <th scope="col">{w.quantity}</th>
          <th scope="col">{w.meaning}</th>
          <th scope="col">{w.unit}</th>
          <th scope="col">{w.stands}</th>
        </tr>
      </thead>
      <tbody>
        {QUANTITY_LIST.map((quantity) => (
          <tr key={quantity.name}>
            <th scope="row">
              <code>{quantity.name}</code>
            </th>
            <td>{quantity.meaning}</td>
            <td>{quantity.unit.id || "–"}</td>
            <td>
              {stagesOf(quantity)
                .map((stage) => w.where[stage])
                .join(", ")}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
