import type { ChannelId } from "../../../sim/run/channels.ts";
import { CHANNELS } from "../../../sim/run/channels.ts";
import { FLOW_NODES, FLOWS, type FlowId, type FlowNode } from "../../../sim/run/flows.ts";
import { LEDGER_LINES, type LedgerId } from "../../../sim/run/ledger.ts";
import { MAPS, type MapId } from "../../plots/map/kinds.ts";
import { FIGURES, type FigureId, type RoadWorkingId } from "../../state/road-working.ts";
import { t } from "../../texts/catalogue.ts";
import type { WorkingText } from "../../ui/WorkingLines.tsx";
import { channelWorking } from "./channels.ts";
import { figureWorking } from "./figures.ts";
import { flowWorking, nodeWorking } from "./flows.ts";
import { ledgerWorking } from "./ledger.ts";
import { mapWorking } from "./maps.ts";
import type { Lines } from "./pieces.ts";
import type { RoadSource } from "./source.ts";

const titles = t.roadWorking.titles;

/** Every number of Road whose working can be shown. */
export const ROAD_WORKINGS: readonly RoadWorkingId[] = [
  ...CHANNELS.map(({ id }) => `channel:${id}` as const),
  ...FLOWS.map((id) => `flow:${id}` as const),
  ...FLOW_NODES.map(({ id }) => `node:${id}` as const),
  ...LEDGER_LINES.map(({ id }) => `ledger:${id}` as const),
  ...FIGURES.map((id) => `figure:${id}` as const),
  ...MAPS.map((id) => `map:${id}` as const),
];

/** The working of a number of Road with its live values; null for a figure of a drive that is not at its end. */
export function roadWorkingOf(id: RoadWorkingId, from: RoadSource): WorkingText | null {
  const cut = id.indexOf(":");
  const [kind, name] = [id.slice(0, cut), id.slice(cut + 1)];
  const made = (title: string, lines: Lines): WorkingText => ({ title, ...lines });
  switch (kind) {
    case "channel":
      return made(titles.channels[name as ChannelId], channelWorking(name as ChannelId, from));
    case "flow":
      return made(titles.flows[name as FlowId], flowWorking(name as FlowId, from));
    case "node":
      return made(titles.nodes[name as FlowNode["id"]], nodeWorking(name as FlowNode["id"], from));
    case "ledger":
      return made(titles.ledger[name as LedgerId], ledgerWorking(name as LedgerId, from));
    case "map":
      return made(titles.maps[name as MapId], mapWorking(name as MapId, from));
    default: {
      const { summary } = from.run;
      return summary
        ? made(titles.figures[name as FigureId], figureWorking(name as FigureId, { ...from, summary }))
        : null;
    }
  }
}
