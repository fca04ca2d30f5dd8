import { niceStep } from "../lever/scale.ts";

/** Scale of a torque slider: places in px, ticks in N·m. */
export function torqueScale(from: number, to: number, width: number) {
  const x = (value: number): number => ((Math.min(to, Math.max(from, value)) - from) / (to - from)) * width;
  const step = niceStep((to - from) / 9);
  const ticks: number[] = [];
  for (let n = Math.ceil(from / step); n * step <= to; n += 1) ticks.push(n * step);
  return { x, ticks };
}
