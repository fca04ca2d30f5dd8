import { listCycles } from "../../cycles/catalogue.ts";
import { ownCycles } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";

const KINDS = ["standard", "standard phase", "composite", "manoeuvre"] as const;

/** Every cycle as an option of a list, own ones first. */
export const CycleOptions = () => (
  <>
    {ownCycles.value.length > 0 && (
      <optgroup label={t.road.groups.own}>
        {ownCycles.value.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </optgroup>
    )}
    {KINDS.map((kind) => (
      <optgroup key={kind} label={t.road.groups[kind]}>
        {listCycles()
          .filter((cycle) => cycle.kind === kind)
          .map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
      </optgroup>
    ))}
  </>
);
