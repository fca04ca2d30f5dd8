import { useEffect, useRef, useState } from "preact/hooks";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { type ClipPlan, canMakeClips, frameTimes, makeClip } from "../picture/clip.ts";
import { num, roadSpeed } from "../state/format.ts";
import { chosen, cursor, duration, moveTo, playing, RATES, run } from "../state/road.ts";
import { type Run, readNow, rowAt } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";

const c = t.picture.clip;

const SIZES = [
  [1280, 720],
  [1920, 1080],
] as const;
const FRAMES = [12, 25, 50] as const;

/** Longest clip, frames. */
const MOST_FRAMES = 3000;

interface Wish {
  readonly from: number;
  readonly to: number;
  readonly rate: number;
  readonly frames: number;
  readonly size: number;
  readonly captions: boolean;
}

function firstWish(): Wish {
  const stretch = chosen.value ?? { from: cursor.value, to: Math.min(duration.value, cursor.value + 10) };
  return { ...stretch, rate: 1, frames: 25, size: 0, captions: true };
}

/** The line under the stage: time, speed, regime. */
function captionOf(one: Run, time: number): string {
  const now = readNow(one, rowAt(one.log, time));
  const title = t.roadRegimes[now.regime]?.title ?? now.regime;
  return `${clockTime(time)}   ${roadSpeed(units.value, now.at.speed)}   ${title}`;
}

function planOf(wish: Wish, one: Run): ClipPlan {
  const [width, height] = SIZES[wish.size] ?? SIZES[0];
  return {
    from: wish.from,
    to: wish.to,
    rate: wish.rate,
    framesPerSecond: wish.frames,
    width,
    height,
    caption: wish.captions ? (time) => captionOf(one, time) : null,
  };
}

interface NumberFieldProps {
  readonly name: string;
  readonly value: number;
  readonly onValue: (value: number) => void;
}

const Seconds = ({ name, value, onValue }: NumberFieldProps) => (
  <label>
    {name}
    <input
      type="number"
      min="0"
      step="0.1"
      value={Number(value.toFixed(1))}
      onChange={(event) => onValue(Number(event.currentTarget.value))}
    />
    <span class="unit">{c.seconds}</span>
  </label>
);

interface ChoiceProps {
  readonly name: string;
  readonly value: number;
  readonly options: readonly (readonly [number, string])[];
  readonly onValue: (value: number) => void;
}

const Choice = ({ name, value, options, onValue }: ChoiceProps) => (
  <label>
    {name}
    <select value={value} onChange={(event) => onValue(Number(event.currentTarget.value))}>
      {options.map(([of, text]) => (
        <option key={of} value={of}>
          {text}
        </option>
      ))}
    </select>
  </label>
);

async function save(file: Uint8Array): Promise<void> {
  const result = await bridge.exportFile({
    suggestedName: "drive.webm",
    kinds: [{ title: "WebM", mime: "video/webm", extensions: ["webm"] }],
    content: file,
  });
  take(result, (saved) => tell(t.picture.saved(saved.name)), t.notice.notSaved);
}

function Preview({ file }: { file: Uint8Array }) {
  const [address, setAddress] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([file.slice()], { type: "video/webm" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return (
    <>
      {address && <video class="clip" src={address} controls muted aria-label={c.title} />}
      <button type="button" class="btn filled" onClick={() => void save(file)}>
        {c.save}
      </button>
    </>
  );
}

/** Why a wish cannot be a clip; empty when it can. */
function faultOf(wish: Wish, frames: number): string {
  const inside = wish.from >= 0 && wish.to <= duration.value + 0.05 && wish.to > wish.from;
  if (!inside) return c.bad;
  return frames > MOST_FRAMES ? c.long(num(MOST_FRAMES)) : "";
}

/** Makes a clip of the stage. */
export function ClipPanel() {
  const [wish, setWish] = useState(firstWish);
  const [share, setShare] = useState<number | null>(null);
  const [file, setFile] = useState<Uint8Array | null>(null);
  const cancelled = useRef(false);
  const one = run.value;
  useEffect(
    () => () => {
      cancelled.current = true;
    },
    [],
  );
  if (!one) return <p>{t.road.noRun}</p>;
  if (!canMakeClips()) return <p>{c.none}</p>;
  const plan = planOf(wish, one);
  const frames = frameTimes(plan).length;
  const fault = faultOf(wish, frames);
  const set = (changed: Partial<Wish>): void => setWish({ ...wish, ...changed });
  const make = async (): Promise<void> => {
    const stage = document.querySelector<HTMLElement>(".stage");
    if (!stage) return;
    cancelled.current = false;
    playing.value = false;
    const before = cursor.value;
    setFile(null);
    setShare(0);
    setFile(await makeClip(plan, { element: stage, moveTo }, setShare, () => cancelled.current));
    setShare(null);
    moveTo(before);
  };
  return (
    <form class="clip-form" onSubmit={(event) => event.preventDefault()}>
      <p>{c.about}</p>
      <Seconds name={c.from} value={wish.from} onValue={(from) => set({ from })} />
      <Seconds name={c.to} value={wish.to} onValue={(to) => set({ to })} />
      <Choice
        name={c.rate}
        value={wish.rate}
        options={RATES.map((rate) => [rate, `×${rate}`])}
        onValue={(rate) => set({ rate })}
      />
      <Choice
        name={c.frames}
        value={wish.frames}
        options={FRAMES.map((n) => [n, String(n)])}
        onValue={(n) => set({ frames: n })}
      />
      <Choice
        name={c.size}
        value={wish.size}
        options={SIZES.map(([w, h], i) => [i, `${w} × ${h}`])}
        onValue={(size) => set({ size })}
      />
      <label class="check">
        <input
          type="checkbox"
          checked={wish.captions}
          onChange={(event) => set({ captions: event.currentTarget.checked })}
        />
        {c.captions}
      </label>
      <p class={fault ? "bad" : "unit"} aria-live="polite">
        {fault || c.length(num((frames - 1) / wish.frames, 1), num(frames))}
      </p>
      {share === null ? (
        <button type="button" class="btn filled" disabled={fault !== ""} onClick={() => void make()}>
          {c.make}
        </button>
      ) : (
        <span class="runs-now">
          <progress max={1} value={share} aria-label={c.making(num(share * 100))} />
          <button
            type="button"
            class="btn"
            onClick={() => {
              cancelled.current = true;
            }}
          >
            {c.cancel}
          </button>
        </span>
      )}
      {file && <Preview file={file} />}
    </form>
  );
}
