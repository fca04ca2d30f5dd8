import { computed } from "@preact/signals";
import { energyUnit } from "../../state/flow-look.ts";
import { instant } from "../../state/instant.ts";
import { run } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import { energyScale } from "./energy-layout.ts";
import { type EnergyScale, energyText, energyUnits } from "./energy-units.ts";
import { type Energies, energiesOf, ledgerAt, ledgerTotal } from "./ledger-flows.ts";
import type { Places } from "./places.ts";

/** The ledger at the cursor, J, with what it sums up to; null without a run. */
export const energyNow = computed(() => {
  const one = run.value;
  const at = instant.flow.value;
  if (!one || !at) return null;
  const ledger = ledgerAt(one.log, at.row);
  return { ledger, energies: energiesOf(ledger), ...ledgerTotal(ledger) };
});

/** The unit that the whole run's energies are shown in, so that it holds still while the run plays. */
export const unitsNow = computed((): EnergyScale => {
  const one = run.value;
  if (!one) return energyUnits(energyUnit.value, 0);
  return energyUnits(energyUnit.value, ledgerTotal(ledgerAt(one.log, one.log.rows - 1)).total);
});

/** Rows looked at for the greatest energies of a run. */
const SAMPLES = 100;

const known = new WeakMap<object, { readonly rows: number; readonly energies: readonly Energies[] }>();

/** px a joule that holds for the whole run. */
export function runScale(places: Places): number {
  const one = run.value;
  if (!one) return 1;
  const { rows } = one.log;
  let found = known.get(one);
  if (found?.rows !== rows) {
    const energies = Array.from({ length: SAMPLES }, (_, i) =>
      energiesOf(ledgerAt(one.log, Math.round(((i + 1) / SAMPLES) * (rows - 1)))),
    );
    found = { rows, energies };
    known.set(one, found);
  }
  return Math.min(...found.energies.map((energies) => energyScale(places, energies)));
}

const superscript = (power: number): string =>
  String(power).replace(/[-\d]/g, (sign) => (sign === "-" ? "⁻" : ("⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(sign)] ?? "")));

/** What is left over, J, with its power of ten. */
function restText(rest: number): string {
  const size = Math.abs(rest);
  if (size === 0 || size >= 0.1) return `${size.toFixed(size === 0 ? 0 : 1)} J`;
  const [digits = "0", power = "0"] = size.toExponential(0).split("e");
  return `${digits} × 10${superscript(Number(power))} J`;
}

/** That the ledger closes, in words: what goes in and out, and what is left over. */
export function closureText(): string {
  const at = energyNow.value;
  if (!at) return "";
  const units = unitsNow.value;
  return t.roadFlow.closes(energyText(units, at.total), units.unit, restText(at.rest));
}
