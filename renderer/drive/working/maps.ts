import type { MapId } from "../../plots/map/kinds.ts";
import { efficiencyAt } from "../../plots/map/kinds.ts";
import { t } from "../../texts/catalogue.ts";
import type { Token } from "../../ui/WorkingLines.tsx";
import { flowSymbol } from "./flows.ts";
import { after, type Lines, sym, txt, val } from "./pieces.ts";
import type { RoadSource } from "./source.ts";

const notes = t.roadWorking.notes;

function wheels({ detail }: RoadSource): Lines {
  const { flows, roadMean } = detail;
  const moves = Math.abs(roadMean) >= 1e-3;
  return {
    left: sym("F", "w", "ring"),
    formula: [txt("("), flowSymbol("wheels"), txt(" − "), flowSymbol("brake"), txt(") / v̄")],
    live: [
      ...[txt("("), val(flows.wheels, 1, "", "ring"), txt(" − "), after(flows.brake, 1, "", "loss")],
      ...[txt(") W / "), after(roadMean, 3, "m/s", "ring")],
    ],
    result: moves ? val((flows.wheels - flows.brake) / roadMean, 0, "N", "ring") : txt("–"),
    note: notes.wheelForce,
  };
}

/** The working of the number at a map's point: efficiency, or force at the wheels. */
export function mapWorking(map: MapId, from: RoadSource): Lines {
  if (map === "wheels") return wheels(from);
  const { flows } = from.detail;
  const efficiency = efficiencyAt(map, flows);
  const result = efficiency === null ? txt("–") : val(efficiency * 100, 1, "%");
  const kilo = (watts: number, token: Token): Token => ({
    ...val(Math.abs(watts) / 1000, 3, "kW"),
    ...(token.ink ? { ink: token.ink } : {}),
  });
  const share = (
    top: "engine" | "sun" | "sunElectric" | "outputShaft" | "outputElectric",
    under: typeof top | "fuel",
  ) => ({
    left: sym("η"),
    formula: [flowSymbol(top), txt(" / "), flowSymbol(under)],
    live: [kilo(flows[top], flowSymbol(top)), txt(" / "), kilo(flows[under], flowSymbol(under))],
    result,
  });
  if (map === "engine") return { ...share("engine", "fuel"), note: notes.engineEfficiency };
  const [shaft, electric] =
    map === "sunMachine" ? (["sun", "sunElectric"] as const) : (["outputShaft", "outputElectric"] as const);
  const generates = map === "sunMachine" ? flows.sun > 0 : flows.outputShaft < 0;
  const lines = generates ? share(electric, shaft) : share(shaft, electric);
  return { ...lines, note: generates ? notes.generating : notes.driving };
}
