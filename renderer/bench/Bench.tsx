import { SHAFTS } from "../../sim/bench/shafts.ts";
import { FlowSheet } from "../flow/FlowSheet.tsx";
import { Lever } from "../lever/Lever.tsx";
import { t } from "../texts/catalogue.ts";
import { GearView } from "./GearView.tsx";
import { Say } from "./Say.tsx";
import { ShaftCard } from "./ShaftCard.tsx";
import { Situations } from "./Situations.tsx";
import { EngineTorque, OutputTorque } from "./Torques.tsx";
import { ViewHead } from "./ViewHead.tsx";
import { WorkingPanel } from "./WorkingPanel.tsx";

/** The gear set turned by hand: views A, B, C, the three shafts, and the situations. */
export const Bench = () => (
  <main class="bench" id="place">
    <GearView />
    <section class="view v-lever" aria-labelledby="view-b">
      <ViewHead id="view-b" tag="B" title={t.lever.title} sub={t.lever.sub} />
      <Lever />
    </section>
    <section class="view v-flow" aria-labelledby="view-c">
      <ViewHead id="view-c" tag="C" title={t.flow.title} sub={t.flow.sub} />
      <FlowSheet />
    </section>
    <aside class="v-side">
      {SHAFTS.map((shaft) => (
        <ShaftCard key={shaft} shaft={shaft} />
      ))}
      <div class="torques">
        <EngineTorque />
        <OutputTorque />
      </div>
      <Say />
    </aside>
    <Situations />
    <WorkingPanel />
  </main>
);
