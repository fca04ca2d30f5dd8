import type { InputFault } from "../../shared/errors.ts";
import { t } from "../texts/catalogue.ts";

/** Faults told at once in a narrow column; the rest is counted. */
const MOST = 4;

/** What is wrong, where, what was found and what would be right. */
export const Faults = ({ faults }: { faults: readonly InputFault[] }) => (
  <>
    {faults.slice(0, MOST).map(({ what, where, value, accepted }) => (
      <dl key={`${where}${what}`} class="cy-fault">
        <dt>{t.cycles.fault.what}</dt>
        <dd>
          <b>{what}</b>
        </dd>
        <dt>{t.cycles.fault.where}</dt>
        <dd>{where}</dd>
        {value !== "" && (
          <>
            <dt>{t.cycles.fault.value}</dt>
            <dd>{value}</dd>
          </>
        )}
        <dt>{t.cycles.fault.accepted}</dt>
        <dd>{accepted}</dd>
      </dl>
    ))}
    {faults.length > MOST && <p>{t.cycles.moreFaults(faults.length - MOST)}</p>}
  </>
);
