import { num } from "../state/format.ts";
import { bench, point, setEngineTorque, setOutputTorque, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { TorqueRow } from "./TorqueRow.tsx";

/** The engine's torque, up to full load at its speed. */
export function EngineTorque() {
  const { engine } = point.value;
  const top = Math.max(...vehicle.value.engine.fullLoadTorque);
  const fires = engine.most > 0;
  return (
    <TorqueRow
      name={t.torque.engine}
      colour="carrier"
      value={engine.torque}
      least={engine.least}
      most={engine.most}
      from={-0.25 * top}
      to={1.08 * top}
      endLabel={fires ? t.torque.full(num(engine.most, 1)) : t.torque.noFiring}
      endWorking="full-load"
      working="torque:carrier"
      gesture="engine-torque"
      onValue={setEngineTorque}
    />
  );
}

/** The output machine's torque; or the battery rests and it uses what the sun machine makes. */
export function OutputTorque() {
  const { output } = point.value;
  const top = vehicle.value.outputMachine.peakTorque;
  const rests = bench.value.outputTorque === null;
  return (
    <TorqueRow
      name={t.torque.output}
      colour="ring"
      value={output.torque}
      least={-output.most}
      most={output.most}
      from={-1.08 * top}
      to={1.08 * top}
      endLabel={t.torque.most(num(output.most, 0))}
      endWorking="output-most"
      working="output"
      gesture="output-torque"
      onValue={setOutputTorque}
    >
      <label class="check" title={t.torque.balanceHelp}>
        <input
          type="checkbox"
          checked={rests}
          onChange={() => setOutputTorque(rests ? Math.round(output.torque * 10) / 10 : null)}
        />
        {t.torque.balance}
      </label>
    </TorqueRow>
  );
}
