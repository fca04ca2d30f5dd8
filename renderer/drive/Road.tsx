import { useEffect } from "preact/hooks";
import { Moments } from "../plots/Moments.tsx";
import { OperatingMap } from "../plots/map/OperatingMap.tsx";
import { SpanStatistics } from "../plots/SpanStatistics.tsx";
import { TimePlots } from "../plots/TimePlots.tsx";
import { asking } from "../state/predict.ts";
import { followRecording } from "../state/recorded-overlay.ts";
import { chosen, mode, projected, run } from "../state/road.ts";
import { projector } from "../state/settings.ts";
import { driveUnasked } from "./actions.ts";
import { RoadFlow } from "./flow/RoadFlow.tsx";
import { GearStage } from "./GearStage.tsx";
import { LimitsSheet } from "./LimitsSheet.tsx";
import { Panels } from "./Panels.tsx";
import { PedalStrip } from "./PedalStrip.tsx";
import { PredictPanel } from "./PredictPanel.tsx";
import { ProjectorChoice } from "./ProjectorChoice.tsx";
import { RoadLever } from "./RoadLever.tsx";
import { RoadSay } from "./RoadSay.tsx";
import { RoadWorking } from "./RoadWorking.tsx";
import { Transport } from "./Transport.tsx";

/** A drive with everything in view: stage A, B, C; time D; map E; moments F; and what moves the cursor. */
export function Road() {
  useEffect(followRecording, []);
  useEffect(() => {
    if (!run.value) driveUnasked(false);
  }, []);
  return (
    <main class={`road shows-${projected.value}`} id="place">
      <div class="stage">
        <GearStage />
        <RoadLever />
        <RoadFlow />
      </div>
      <div class="r-time-view">
        <TimePlots />
      </div>
      <aside class="r-side">
        {asking.value ? <PredictPanel /> : mode.value === "limits" ? <LimitsSheet /> : <OperatingMap />}
        {!asking.value && (chosen.value ? <SpanStatistics /> : <Moments />)}
      </aside>
      {projector.value && (
        <div class="r-foot">
          <RoadSay />
          <ProjectorChoice />
        </div>
      )}
      {mode.value === "pedals" ? <PedalStrip /> : <Transport />}
      <RoadWorking />
      <Panels />
    </main>
  );
}
