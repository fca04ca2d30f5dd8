import { capture } from "./capture.ts";

/** What a clip shows, and how. */
export interface ClipPlan {
  /** s of the drive */
  readonly from: number;
  readonly to: number;
  /** times real time */
  readonly rate: number;
  readonly framesPerSecond: number;
  readonly width: number;
  readonly height: number;
  /** one line under the stage at a time; null: none */
  readonly caption: ((time: number) => string) | null;
}

/** What the clip is made of: the stage, and the way to put it at a time. */
export interface ClipStage {
  readonly element: HTMLElement;
  readonly moveTo: (time: number) => void;
}

/** Times of the drive that the frames show. Both ends of the span are among them. */
export function frameTimes({ from, to, rate, framesPerSecond }: ClipPlan): readonly number[] {
  const count = Math.max(1, Math.round(((to - from) / rate) * framesPerSecond));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

const nextFrame = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => resolve())));

/** Largest box of the stage's proportions over the caption, middle of the picture. */
function fitted(stage: HTMLCanvasElement, width: number, height: number) {
  const scale = Math.min(width / stage.width, height / stage.height);
  const [w, h] = [stage.width * scale, stage.height * scale];
  return { x: (width - w) / 2, y: (height - h) / 2, width: w, height: h };
}

function drawCaption(
  context: CanvasRenderingContext2D,
  text: string,
  y: number,
  size: number,
  width: number,
): void {
  const style = getComputedStyle(document.body);
  context.fillStyle = style.color;
  context.font = `600 ${size}px ${style.fontFamily}`;
  context.textBaseline = "middle";
  context.textAlign = "center";
  context.fillText(text, width / 2, y, width - 2 * size);
}

/**
 * Draws a clip frame by frame and writes it as WebM: each frame waits until the stage has drawn its time, so that a slow
 * machine makes the same clip.
 * @param report hears the share done, 0–1
 * @param cancelled asked before each frame
 * @returns the file, or null when it was cancelled
 */
export async function makeClip(
  plan: ClipPlan,
  stage: ClipStage,
  report: (share: number) => void,
  cancelled: () => boolean,
): Promise<Uint8Array | null> {
  const canvas = document.createElement("canvas");
  canvas.width = plan.width;
  canvas.height = plan.height;
  const context = canvas.getContext("2d", { alpha: false });
  if (!context) throw new Error("no canvas to draw on");
  // Only who makes a clip loads what writes one.
  const { BufferTarget, CanvasSource, Output, QUALITY_HIGH, WebMOutputFormat } = await import("mediabunny");
  const target = new BufferTarget();
  const output = new Output({ format: new WebMOutputFormat(), target });
  const source = new CanvasSource(canvas, { codec: "vp9", bitrate: QUALITY_HIGH });
  output.addVideoTrack(source, { frameRate: plan.framesPerSecond });
  await output.start();
  const times = frameTimes(plan);
  const foot = plan.caption ? Math.round(plan.height * 0.08) : 0;
  const ground = getComputedStyle(document.body).backgroundColor;
  for (const [i, time] of times.entries()) {
    if (cancelled()) {
      await output.cancel();
      return null;
    }
    stage.moveTo(time);
    await nextFrame();
    const box = stage.element.getBoundingClientRect();
    const drawn = await capture(stage.element, Math.max(plan.width / box.width, 1));
    context.fillStyle = ground;
    context.fillRect(0, 0, plan.width, plan.height);
    const place = fitted(drawn, plan.width, plan.height - foot);
    context.drawImage(drawn, place.x, place.y, place.width, place.height);
    if (plan.caption)
      drawCaption(context, plan.caption(time), plan.height - foot / 2, foot * 0.42, plan.width);
    await source.add(i / plan.framesPerSecond, 1 / plan.framesPerSecond);
    report((i + 1) / times.length);
  }
  await output.finalize();
  return target.buffer ? new Uint8Array(target.buffer) : null;
}

/** Whether this browser can write video. */
export const canMakeClips = (): boolean => typeof VideoEncoder !== "undefined";
