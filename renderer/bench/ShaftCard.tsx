import { ringOfRoad, roadOfRing, type Shaft } from "../../sim/bench/shafts.ts";
import { speedKeys } from "../lever/Grips.tsx";
import type { Role } from "../state/bench.ts";
import { idleShown, kilowatts, num, roadSpeed, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { parseSpeed } from "../state/parse.ts";
import { units } from "../state/settings.ts";
import { bench, limits, point, setRole, setSpeed, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { Answering } from "../ui/Answering.tsx";
import { TypedNumber } from "../ui/TypedNumber.tsx";
import { Vernier } from "./Vernier.tsx";

const ROLES: readonly Role[] = ["drive", "hold", "follow"];

const Roles = ({ shaft }: { shaft: Shaft }) => (
  <span class="modes" role="group" aria-label={t.card.role(t.shafts[shaft])}>
    {ROLES.map((role) => (
      <button
        type="button"
        key={role}
        aria-pressed={bench.value.roles[shaft] === role}
        onClick={() => setRole(shaft, role)}
      >
        {t.roles[role]}
      </button>
    ))}
  </span>
);

function Speed({ shaft }: { shaft: Shaft }) {
  const { speeds, roles } = bench.value;
  const shown = shaftSpeed(units.value, speeds[shaft]);
  if (roles[shaft] === "follow") {
    return (
      <Answering id={`speed:${shaft}`} className="big">
        {shown}
      </Answering>
    );
  }
  const v = vehicle.value;
  const ofRoad = shaft === "ring" ? (mps: number) => ringOfRoad(v, mps) : null;
  return (
    <TypedNumber
      name={t.card.typed(t.shafts[shaft])}
      className="big"
      shown={shown}
      parse={(text) => parseSpeed(text, { units: units.value, ofRoad })}
      onValue={(value) => setSpeed(shaft, value)}
      onKey={(event) => speedKeys(event, shaft)}
      reasons={t.card.bad}
    />
  );
}

/** Power in words: "put in" or "taken out", never a bare sign. */
function Power({ shaft }: { shaft: Shaft }) {
  const power = point.value.powers[shaft];
  const shown = kilowatts(Math.abs(power));
  const none = Number(shown) === 0;
  return (
    <span>
      <Answering id={`power:${shaft}`}>{shown}</Answering>{" "}
      <small>{none ? t.card.noPower : power > 0 ? t.card.putIn : t.card.takenOut}</small>
    </span>
  );
}

function limitWords(shaft: Shaft): string {
  const say = (speed: number): string => shaftSpeed(units.value, speed);
  const { least, most } = limits.value[shaft];
  const speed = bench.value.speeds[shaft];
  if (shaft === "ring") return t.card.output(say(most));
  if (shaft === "sun") {
    const end = speed < 0 ? least : most;
    return t.card.over(say(end), say(Math.abs(end - speed)));
  }
  const idle = num(idleShown(units.value, vehicle.value.engine.idleSpeed));
  const below = point.value.limits.some((limit) => limit.id === "below-idle");
  return below ? t.card.belowIdle(idle) : t.card.engine(idle, say(most));
}

const Sub = ({ shaft }: { shaft: Shaft }) => (
  <span class="sub">
    {t.machines[shaft]}
    {shaft === "ring" && (
      <>
        {", "}
        <Answering id="road">
          {roadSpeed(units.value, roadOfRing(vehicle.value, bench.value.speeds.ring))}
        </Answering>
      </>
    )}
  </span>
);

/** One shaft: what it does, how fast, with which torque and power, and what is its nearest limit. */
export const ShaftCard = ({ shaft }: { shaft: Shaft }) => (
  <section class={`card ${shaft}`} aria-label={t.shafts[shaft]}>
    <header>
      <h3 class={`ink ${shaft}`}>{t.shafts[shaft]}</h3>
      <Sub shaft={shaft} />
      <Roles shaft={shaft} />
    </header>
    <div class="row">
      <Speed shaft={shaft} />
      <span class="unit">{shaftUnitName(units.value)}</span>
      <span class="effects">
        <span>
          <Answering id={`torque:${shaft}`}>{num(point.value.torques[shaft], 1)}</Answering> N·m
        </span>
        <Power shaft={shaft} />
      </span>
    </div>
    <Vernier shaft={shaft} />
    <p class="limitwords">
      <Answering id={`limit:${shaft}`} className="plain">
        {limitWords(shaft)}
      </Answering>
    </p>
  </section>
);
