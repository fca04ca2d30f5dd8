import { ViewHead } from "../../bench/ViewHead.tsx";
import { energyUnit, flowScale, flowShows } from "../../state/flow-look.ts";
import { hidden } from "../../state/predict.ts";
import { run } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import { fontsReady } from "../../ui/measure.ts";
import { metrics } from "../../ui/metrics.ts";
import { useSize } from "../../ui/use-size.ts";
import { EnergySheet } from "./EnergySheet.tsx";
import { closureText } from "./energy-now.ts";
import { FlowPatterns } from "./FlowPatterns.tsx";
import { FlowTable } from "./FlowTable.tsx";
import { PowerSheet } from "./PowerSheet.tsx";

const Choice = () => (
  <fieldset class="segments" aria-label={t.roadFlow.choice}>
    {(["power", "energy"] as const).map((shows) => (
      <button
        key={shows}
        type="button"
        aria-pressed={flowShows.value === shows}
        onClick={() => {
          flowShows.value = shows;
        }}
      >
        {t.roadFlow[shows]}
      </button>
    ))}
  </fieldset>
);

const ScaleStep = () => (
  <button
    type="button"
    class="btn quiet"
    title={t.roadFlow.scaleHelp}
    aria-pressed={flowScale.value === "moment"}
    onClick={() => {
      flowScale.value = flowScale.value === "run" ? "moment" : "run";
    }}
  >
    {flowScale.value === "run" ? t.roadFlow.scaleRun : t.roadFlow.scaleMoment}
  </button>
);

const UnitStep = () => (
  <button
    type="button"
    class="btn quiet"
    title={t.roadFlow.unitHelp}
    onClick={() => {
      energyUnit.value = energyUnit.value === "joule" ? "kwh" : "joule";
    }}
  >
    {energyUnit.value === "joule" ? "kJ" : "kWh"}
  </button>
);

/** View C on Road: where the power goes, or went. */
export function RoadFlow() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const ready = width > 0 && height > 0 && fontsReady.value >= 0 && run.value !== null;
  const power = flowShows.value === "power";
  const size = { width, height, text: metrics.value.text };
  return (
    <section class="view r-flow" aria-labelledby="view-c">
      <div class="flow-head">
        <ViewHead
          id="view-c"
          tag="C"
          title={t.roadFlow.title}
          sub={power ? t.roadFlow.subPower : hidden.value.size > 0 ? t.roadFlow.closesAsked : closureText()}
        />
        <Choice />
      </div>
      <FlowPatterns />
      <div class="drawing" ref={ref}>
        {ready && (power ? <PowerSheet {...size} /> : <EnergySheet {...size} />)}
        {ready && (
          <div class="flow-steps">
            <ScaleStep />
            {!power && <UnitStep />}
          </div>
        )}
        <FlowTable />
      </div>
    </section>
  );
}
