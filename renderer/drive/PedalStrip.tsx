import { useEffect, useState } from "preact/hooks";
import { kilowatts, num, roadSpeed } from "../state/format.ts";
import { now } from "../state/road.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { behind, discardDrive, driving, endDriving, load, pedals, press, startDriving } from "./live.ts";
import { listenToPedals } from "./pedal-keys.ts";

const p = t.road.pedals;

const Pedal = ({ name, of }: { name: string; of: "accelerator" | "brake" }) => (
  <label class="pedal">
    <span>{name}</span>
    <input
      type="range"
      min="0"
      max="1"
      step="0.01"
      value={pedals.value[of]}
      disabled={!driving.value}
      aria-valuetext={`${num(pedals.value[of] * 100)} %`}
      onInput={(event) => press({ [of]: Number(event.currentTarget.value) })}
    />
    <b>{num(pedals.value[of] * 100)} %</b>
  </label>
);

const Selector = () => (
  <fieldset class="segments" aria-label={p.gear}>
    {(["forward", "neutral", "reverse", "park"] as const).map((gear) => (
      <button
        key={gear}
        type="button"
        aria-pressed={pedals.value.gear === gear}
        disabled={!driving.value}
        onClick={() => press({ gear })}
      >
        {p.gears[gear]}
      </button>
    ))}
  </fieldset>
);

const Grade = () => (
  <label class="pedal">
    <span>{p.grade}</span>
    <input
      type="range"
      min="-0.15"
      max="0.15"
      step="0.005"
      value={pedals.value.grade}
      disabled={!driving.value}
      aria-valuetext={`${num(pedals.value.grade * 100, 1)} %`}
      onInput={(event) => press({ grade: Number(event.currentTarget.value) })}
    />
    <b>{num(pedals.value.grade * 100, 1)} %</b>
  </label>
);

/** Speed and battery power of the instant, large: what a driver looks at. */
function Reading() {
  const at = now.value;
  return (
    <span class="r-time">
      <b>{at ? roadSpeed(units.value, at.at.speed) : ""}</b>{" "}
      <span class="wide">{at ? `${kilowatts(at.flows.battery)} kW` : ""}</span>
    </span>
  );
}

/** Drives by hand: takes the transport's place, nothing else moves. */
export function PedalStrip() {
  const [pad, setPad] = useState(false);
  useEffect(() => listenToPedals(setPad), []);
  useEffect(() => () => discardDrive(), []);
  return (
    <section class="transport pedals" aria-label={p.name}>
      {driving.value ? (
        <button type="button" class="btn filled" onClick={endDriving}>
          <Icon name="save" /> {p.end}
        </button>
      ) : (
        <button type="button" class="btn filled" onClick={startDriving}>
          <Icon name="play" /> {p.start}
        </button>
      )}
      <Reading />
      <Pedal name={p.accelerator} of="accelerator" />
      <Pedal name={p.brake} of="brake" />
      <Selector />
      <label class="check">
        <input
          type="checkbox"
          checked={pedals.value.electricOnly}
          disabled={!driving.value}
          onChange={(event) => press({ electricOnly: event.currentTarget.checked })}
        />
        {p.electric}
      </label>
      <Grade />
      <span class="grow" />
      <span class="hint" title={p.keys}>
        {behind.value ? p.slow : pad ? p.pad : driving.value ? p.lag(num(load.value * 100, 1)) : p.keys}
      </span>
      {driving.value && (
        <button type="button" class="btn quiet" onClick={discardDrive}>
          {p.discard}
        </button>
      )}
    </section>
  );
}
