import { useEffect } from "preact/hooks";
import { SHAFTS } from "../../sim/bench/shafts.ts";
import { FlowSheet } from "../flow/FlowSheet.tsx";
import { Lever } from "../lever/Lever.tsx";
import { enlarged } from "../state/enlarged.ts";
import { t } from "../texts/catalogue.ts";
import { GearView } from "./GearView.tsx";
import { Say } from "./Say.tsx";
import { ShaftCard } from "./ShaftCard.tsx";
import { Situations } from "./Situations.tsx";
import { EngineTorque, OutputTorque } from "./Torques.tsx";
import { ViewHead } from "./ViewHead.tsx";
import { WorkingPanel } from "./WorkingPanel.tsx";

/** Puts an enlarged view back by Esc, unless something over it was closed by that press. */
function useEscape(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== "Escape" || event.defaultPrevented || document.querySelector("dialog[open]")) return;
      enlarged.value = null;
    };
    document.addEventListener("keydown", onKey);
    return () => {
      document.removeEventListener("keydown", onKey);
      enlarged.value = null;
    };
  }, []);
}

/** The gear set turned by hand: views A, B, C, the three shafts, and the situations. */
export function Bench() {
  useEscape();
  return (
    <main class="bench" id="place" data-enlarged={enlarged.value ?? undefined}>
      <GearView />
      <section class="view v-lever" aria-labelledby="view-b">
        <ViewHead id="view-b" tag="B" title={t.lever.title} sub={t.lever.sub} enlarges />
        <Lever />
      </section>
      <section class="view v-flow" aria-labelledby="view-c">
        <ViewHead id="view-c" tag="C" title={t.flow.title} sub={t.flow.sub} enlarges />
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
}
