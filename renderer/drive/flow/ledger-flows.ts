import { at } from "../../../shared/at.ts";
import { LEDGER_LINES, type LedgerId, ledgerResidual } from "../../../sim/run/ledger.ts";
import type { LogReader } from "../../../sim/run/log.ts";
import type { HideableId } from "../../state/predict.ts";
import type { BarSpec } from "./balance.ts";
import type { BarId } from "./bars.ts";
import type { Drawn } from "./kinds.ts";

/** What the energy sheet draws: lines of the ledger, or several of them together, and what is left on the way. */
export const ENERGIES = [
  "fuel",
  "heat",
  "friction",
  "afterEngine",
  "mesh",
  "contacts",
  "afterGearSet",
  "sunMachine",
  "afterSunMachine",
  "stored",
  "batteryLoss",
  "battery",
  "auxiliary",
  "afterLink",
  "outputMachine",
  "afterOutput",
  "gears",
  "wheels",
  "height",
  "motion",
  "air",
  "rolling",
  "brake",
] as const;

/** Name of what the energy sheet draws. */
export type EnergyId = (typeof ENERGIES)[number];

/** Lines of the ledger that each adds up; what is left on the way has none of its own. */
export const LINES: Readonly<Partial<Record<EnergyId, readonly LedgerId[]>>> = {
  fuel: ["running_fuel", "start_fuel"],
  heat: ["engine_heat"],
  friction: ["engine_friction", "engine_motoring"],
  mesh: ["mesh_loss"],
  contacts: ["contact_loss"],
  sunMachine: ["sun_machine_loss"],
  stored: ["battery_change", "polarisation_change"],
  batteryLoss: ["ohmic_loss", "polarisation_loss"],
  auxiliary: ["auxiliary"],
  outputMachine: ["output_machine_loss"],
  gears: ["final_drive_loss", "reduction_loss"],
  height: ["potential_change"],
  motion: ["kinetic_change"],
  air: ["air"],
  rolling: ["rolling"],
  brake: ["friction_brake"],
};

/** Bars of the energy sheet: the places of the power sheet, on one lane. */
export const ENERGY_BARS = [
  { id: "engine", left: ["fuel"], right: ["afterEngine"], free: ["heat", "friction"], turns: null },
  {
    id: "gearSet",
    left: ["afterEngine"],
    right: ["afterGearSet"],
    free: ["mesh", "contacts"],
    turns: null,
  },
  {
    id: "sunMachine",
    left: ["afterGearSet"],
    right: ["afterSunMachine"],
    free: ["sunMachine"],
    turns: null,
  },
  { id: "battery", left: ["stored"], right: ["battery"], free: ["batteryLoss"], turns: null },
  {
    id: "dcLink",
    left: ["battery", "afterSunMachine"],
    right: ["afterLink"],
    free: ["auxiliary"],
    turns: "battery",
  },
  {
    id: "outputMachine",
    left: ["afterLink"],
    right: ["afterOutput"],
    free: ["outputMachine"],
    turns: null,
  },
  { id: "ring", left: ["afterOutput"], right: ["wheels"], free: ["gears"], turns: null },
  {
    id: "wheels",
    left: ["wheels"],
    right: [],
    free: ["motion", "height", "air", "rolling", "brake"],
    turns: null,
    road: true,
  },
] as const satisfies readonly (BarSpec<EnergyId> & { readonly id: BarId })[];

/** Energies since the start, J: the lines signed as in the ledger, `stored` as the battery gives. */
export type Energies = Readonly<Record<EnergyId, number>>;

/** The ledger of one row, J, in the order of LEDGER_LINES. */
export const ledgerAt = (log: Pick<LogReader, "ledgerLine">, row: number): readonly number[] =>
  LEDGER_LINES.map((_, index) => at(log.ledgerLine(index), row));

/** The energies that are drawn, from a ledger. What is left on the way is what came less what went before. */
export function energiesOf(ledger: readonly number[]): Energies {
  const line = (id: LedgerId): number =>
    at(
      ledger,
      LEDGER_LINES.findIndex((one) => one.id === id),
    );
  const sum = (id: EnergyId): number => (LINES[id] ?? []).reduce((total, one) => total + line(one), 0);
  const stored = -sum("stored");
  const battery = stored - sum("batteryLoss");
  const afterEngine = sum("fuel") - sum("heat") - sum("friction");
  const afterGearSet = afterEngine - sum("mesh") - sum("contacts");
  const afterSunMachine = afterGearSet - sum("sunMachine");
  const afterLink = afterSunMachine + battery - sum("auxiliary");
  const afterOutput = afterLink - sum("outputMachine");
  const wheels = afterOutput - sum("gears");
  return {
    fuel: sum("fuel"),
    heat: sum("heat"),
    friction: sum("friction"),
    afterEngine,
    mesh: sum("mesh"),
    contacts: sum("contacts"),
    afterGearSet,
    sunMachine: sum("sunMachine"),
    afterSunMachine,
    stored,
    batteryLoss: sum("batteryLoss"),
    battery,
    auxiliary: sum("auxiliary"),
    afterLink,
    outputMachine: sum("outputMachine"),
    afterOutput,
    gears: sum("gears"),
    wheels,
    height: sum("height"),
    motion: sum("motion"),
    air: sum("air"),
    rolling: sum("rolling"),
    brake: sum("brake"),
  };
}

/** What a ledger takes in, stores that gave included, and what is left over when all is added up, J. */
export function ledgerTotal(ledger: readonly number[]): { readonly total: number; readonly rest: number } {
  let total = 0;
  LEDGER_LINES.forEach(({ side }, index) => {
    const value = at(ledger, index);
    total += side === "in" ? value : Math.max(0, -value);
  });
  return { total, rest: ledgerResidual(ledger) };
}

const LOSS: Drawn = { kind: "heat", owner: "loss" };
const TRUNK: Drawn = { kind: "mixed", owner: "steel" };
const RING: Drawn = { kind: "mech", owner: "ring" };

const DRAWN: Readonly<Partial<Record<EnergyId, Drawn>>> = {
  fuel: { kind: "chem", owner: "fuel" },
  afterEngine: { kind: "mech", owner: "carrier" },
  afterGearSet: TRUNK,
  afterSunMachine: TRUNK,
  stored: { kind: "chem", owner: "battery" },
  battery: { kind: "elec", owner: "battery" },
  afterLink: TRUNK,
  afterOutput: TRUNK,
  wheels: RING,
  height: RING,
  motion: RING,
};

/** How an energy is drawn; what is left on the way between the machines is of both kinds, so it has no one's colour. */
export const energyDrawn = (id: EnergyId): Drawn => DRAWN[id] ?? LOSS;

const TELLS: Readonly<Partial<Record<HideableId, readonly EnergyId[]>>> = {
  fuel: ["fuel", "heat", "friction"],
  charge: ["stored", "battery"],
};

/** The energies that may not be told while some quantities are hidden. */
export function askedEnergies(hidden: ReadonlySet<HideableId>): ReadonlySet<EnergyId> {
  const asked = new Set<EnergyId>();
  for (const id of hidden) for (const energy of TELLS[id] ?? []) asked.add(energy);
  return asked;
}
