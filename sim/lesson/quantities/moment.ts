import { at } from "../../../shared/at.ts";
import { readable } from "../../../shared/readable.ts";
import type { Shaft } from "../../bench/shafts.ts";
import { basicRatio } from "../../drivetrain/gear-set.ts";
import type { ChannelId } from "../../run/channels.ts";
import { type FlowId, flowsAt } from "../../run/flows.ts";
import { sayNumber } from "../say.ts";
import { type LessonUnit, unitById } from "../units.ts";
import { live, ofShaft, row, symbol, type WorkToken } from "../working.ts";
import type { Reading, RunStage } from "./quantity.ts";

type MomentStage = RunStage & { readonly row: number };
type MomentReading = Reading<MomentStage>;

const RPM = unitById("rev/min");
const KW = unitById("kW");

/** A channel of the log at the instant. */
export const logged = (stage: MomentStage, id: ChannelId): number =>
  at(stage.figures.log.view(id), stage.row);

/** A flow at the instant, W. */
export const flow = (stage: MomentStage, id: FlowId): number => flowsAt(stage.figures.log, stage.row)[id];

/** A channel as it was logged. */
export const channel = (id: ChannelId, unit: LessonUnit, letter: WorkToken): MomentReading => ({
  of: (stage) => logged(stage, id),
  working: (stage) => ({
    symbol: letter,
    formula: row("read from the log"),
    live: row(live(sayNumber(logged(stage, id), unit), letter.shaft), unit.id === "" ? "" : ` ${unit.id}`),
    note: "A row of the run's log, ten a second.",
  }),
});

/** A power of the flow sheet, W. */
export const flowing = (id: FlowId, letter: WorkToken, sign = 1): MomentReading => ({
  of: (stage) => sign * flow(stage, id),
  working: (stage) => ({
    symbol: letter,
    formula: row("read from the flow sheet"),
    live: row(live(sayNumber(sign * flow(stage, id), KW), letter.shaft), " kW"),
    note: "Power of the row's last step.",
  }),
});

const SPEED_CHANNEL: Readonly<Record<Shaft, ChannelId>> = {
  sun: "sunMachineSpeed",
  carrier: "engineSpeed",
  ring: "ringSpeed",
};

/** Speed of a shaft at the instant; the sun's by the gear equation. */
export function momentSpeed(shaft: Shaft): MomentReading {
  const bare = channel(SPEED_CHANNEL[shaft], RPM, ofShaft("N", shaft));
  if (shaft !== "sun") return bare;
  return {
    of: bare.of,
    working: (stage) => {
      const k = basicRatio(stage.figures.vehicle.gearSet);
      const say = (id: ChannelId): string => sayNumber(logged(stage, id), RPM);
      return {
        symbol: ofShaft("N", "sun"),
        formula: row(
          "(1 + ",
          symbol("k"),
          ") ",
          ofShaft("N", "carrier"),
          " − ",
          symbol("k"),
          " ",
          ofShaft("N", "ring"),
        ),
        live: row(
          live(String(1 + k)),
          " × ",
          live(say("engineSpeed"), "carrier"),
          " − ",
          live(String(k)),
          " × ",
          live(say("ringSpeed"), "ring"),
        ),
        note: "The gear equation holds on every row.",
      };
    },
  };
}

/** Power of a part over another's, both of the flow sheet. */
export const flowShare = (top: FlowId, bottom: FlowId, names: readonly [string, string]): MomentReading => ({
  of: (stage) => flow(stage, top) / flow(stage, bottom),
  working: (stage) => ({
    symbol: symbol("share"),
    formula: row(symbol("P", names[0]), " / ", symbol("P", names[1])),
    live: row(
      live(readable(flow(stage, top) / 1000, 2)),
      " kW / ",
      live(readable(flow(stage, bottom) / 1000, 2)),
      " kW",
    ),
    note: "Powers of the row's last step.",
  }),
});

/** Ring speed over carrier speed at the instant. */
export const momentSpeedRatio: MomentReading = {
  of: (stage) => logged(stage, "ringSpeed") / logged(stage, "engineSpeed"),
  working: (stage) => ({
    symbol: symbol("ratio"),
    formula: row(ofShaft("N", "ring"), " / ", ofShaft("N", "carrier")),
    live: row(
      live(sayNumber(logged(stage, "ringSpeed"), RPM), "ring"),
      " / ",
      live(sayNumber(logged(stage, "engineSpeed"), RPM), "carrier"),
    ),
    note: "Output speed for one turn of the engine.",
  }),
};
