import type { LedgerId } from "../../../sim/run/ledger.ts";
import { t } from "../../texts/catalogue.ts";
import type { Token } from "../../ui/WorkingLines.tsx";
import { after, constant, firstThatHolds, type Lines, sym, txt, val } from "./pieces.ts";
import { ledgerAt, type RoadSource, sinceBefore } from "./source.ts";

const notes = t.roadWorking.ledgerNotes;
const TIMES = txt(" × ");

/** What is summed up over time, in symbols. */
const RATE: Readonly<Record<LedgerId, readonly Token[]>> = {
  running_fuel: [sym("P", "f", "fuel")],
  start_fuel: [sym("P", "start", "fuel")],
  engine_heat: [sym("P", "f", "fuel"), txt(" − "), sym("T", "i"), txt(" "), sym("ω", "c", "carrier")],
  engine_friction: [sym("T", "fric"), txt(" "), sym("ω", "c", "carrier")],
  engine_motoring: [sym("T", "fric"), txt(" "), sym("ω", "c", "carrier")],
  sun_machine_loss: [sym("P", "s,loss", "loss")],
  output_machine_loss: [sym("P", "o,loss", "loss")],
  mesh_loss: [
    sym("T", "loss"),
    txt(" ("),
    sym("ω", "s", "sun"),
    txt(" − "),
    sym("ω", "c", "carrier"),
    txt(")"),
  ],
  final_drive_loss: [
    txt("(1 − "),
    sym("η", "f"),
    txt(") |"),
    sym("T", "f"),
    txt("| "),
    sym("ω", "r", "ring"),
  ],
  reduction_loss: [
    txt("(1 − "),
    sym("η", "m"),
    txt(") |"),
    sym("T", "om", "ring"),
    txt("| "),
    sym("ω", "o", "ring"),
  ],
  contact_loss: [sym("T", "stop"), txt(" "), sym("ω")],
  ohmic_loss: [sym("R"), txt(" "), sym("I"), txt("²")],
  polarisation_loss: [sym("U", "1"), txt("² / "), sym("R", "1")],
  auxiliary: [sym("P", "aux")],
  rolling: [sym("F", "roll"), txt(" v")],
  air: [sym("F", "air"), txt(" v")],
  friction_brake: [sym("F", "b"), txt(" v")],
  kinetic_change: [txt("d"), sym("E", "kin"), txt("/dt")],
  potential_change: [txt("m g sin θ v")],
  battery_change: [txt("−"), sym("V", "oc", "battery"), txt(" "), sym("I", "", "battery")],
  polarisation_change: [txt("d"), sym("E", "RC"), txt("/dt")],
};

const result = (joules: number): Token => val(joules / 1000, 2, "kJ");

/** Sum so far: what it was, and the mean power since. */
function summed(id: LedgerId, from: RoadSource): Lines {
  const { now, before } = ledgerAt(from, id);
  const dt = sinceBefore(from);
  const power = (now - before) / Math.max(1e-9, dt);
  return {
    left: sym("E"),
    formula: [txt("∫ ("), ...RATE[id], txt(") dt = "), sym("E", "−"), txt(" + P̄ Δt")],
    live: [
      ...[val(before / 1000, 3, "kJ"), txt(" + "), after(power / 1000, 2, "kW"), TIMES, constant(dt, "s")],
    ],
    result: result(now),
    note: notes[id],
  };
}

function kinetic(from: RoadSource): Lines {
  const { p, detail } = from;
  const [wc, wr] = [detail.at.engineSpeed, detail.at.ringSpeed];
  const { now } = ledgerAt(from, "kinetic_change");
  const value = 0.5 * p.massCc * wc * wc + p.massCr * wc * wr + 0.5 * p.massRr * wr * wr;
  const [c, r] = [sym("ω", "c", "carrier"), sym("ω", "r", "ring")];
  const C = (): Token => after(wc, 3, "", "carrier");
  const R = (): Token => after(wr, 3, "", "ring");
  const lines = (): Lines => ({
    left: sym("E", "kin"),
    formula: [
      ...[txt("½ "), sym("M", "cc"), txt(" "), c, txt("² + "), sym("M", "cr"), txt(" "), c, txt(" "), r],
      ...[txt(" + ½ "), sym("M", "rr"), txt(" "), r, txt("²")],
    ],
    live: [
      ...[
        txt("("),
        constant(0.5),
        TIMES,
        constant(p.massCc),
        TIMES,
        C(),
        txt("² + "),
        after(p.massCr, 6),
        TIMES,
        C(),
        TIMES,
        R(),
      ],
      ...[txt(" + "), constant(0.5), TIMES, val(p.massRr, 4), TIMES, R(), txt("²) J")],
    ],
    result: result(now),
    note: notes.kinetic_change,
  });
  return firstThatHolds(now, 0.5, [{ value, lines }], () => summed("kinetic_change", from));
}

/** The working of a line of the ledger, up to the cursor. */
export const ledgerWorking = (id: LedgerId, from: RoadSource): Lines =>
  id === "kinetic_change" ? kinetic(from) : summed(id, from);
