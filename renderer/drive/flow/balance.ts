/** Powers below this are nothing to draw, W (or energies, J). */
export const NOTHING = 0.5;

/** A bar of the sheet and on which side of it each flow stands. */
export interface BarSpec<F extends string> {
  readonly id: string;
  readonly left: readonly F[];
  readonly right: readonly F[];
  /** flows that end on the sheet: losses, loads, stores; they may leave the bar on either side */
  readonly free: readonly F[];
  /** the flow that turns round the bar when both sides cannot be equal otherwise */
  readonly turns: F | null;
  /** what leaves freely does so on the right alone: there is the road */
  readonly road?: true;
}

/** What of a flow stands on either side of its bar, both at least 0. */
export interface Sides {
  readonly left: number;
  readonly right: number;
}

/** How flows divide where they meet a bar. */
export interface Balance<F extends string> {
  /** the free flows */
  readonly free: ReadonlyMap<F, Sides>;
  /** what of a flow turns round its bar, at least 0 */
  readonly turned: ReadonlyMap<F, number>;
}

const out = (power: number): number => Math.max(0, power);
const back = (power: number): number => Math.max(0, -power);
const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));

/** What of all that leaves freely, and of all that comes in freely, stands on the left; and what then has to turn. */
function divide<F extends string>(bar: BarSpec<F>, power: (flow: F) => number) {
  const sum = (flows: readonly F[], part: (power: number) => number): number =>
    flows.reduce((total, flow) => total + part(power(flow)), 0);
  // What the right side has too much of each way, before the free flows.
  const away = sum(bar.right, out) - sum(bar.left, out);
  const home = sum(bar.right, back) - sum(bar.left, back);
  const leaving = sum(bar.free, out);
  const coming = sum(bar.free, back);
  const leaves = bar.road ? 0 : clamp(home, leaving);
  const comes = clamp(bar.road ? away + leaving : away, coming);
  // Both ways have the same surplus but for rounding; free flows that stand on the right take it away first.
  const surplus = (away + leaving - comes + home + coming - comes) / 2 - leaves;
  if (bar.road || surplus <= 0) return { leaves, comes, surplus };
  const more = Math.min(surplus, coming - comes);
  const rest = Math.min(surplus - more, leaving - leaves);
  return { leaves: leaves + rest, comes: comes + more, surplus: surplus - more - rest };
}

/**
 * Divides the free flows of every bar, and those that turn round, so that what comes in on the left leaves on the right
 * and the other way about: then both sides are as tall as all that goes through.
 * @param power of a flow, signed as it runs from left to right, free ones positive as they leave
 * @param asked flows that may not be told: their bars turn nothing round, for that would tell their direction
 */
export function balance<F extends string>(
  bars: readonly BarSpec<F>[],
  power: (flow: F) => number,
  asked: ReadonlySet<F> = new Set(),
): Balance<F> {
  const free = new Map<F, Sides>();
  const turned = new Map<F, number>();
  for (const bar of bars) {
    const telling = [...bar.left, ...bar.right, ...bar.free].some((flow) => asked.has(flow));
    const { leaves, comes, surplus } = telling ? { leaves: 0, comes: 0, surplus: 0 } : divide(bar, power);
    if (bar.turns) turned.set(bar.turns, Math.min(Math.abs(power(bar.turns)), Math.abs(surplus)));
    let [leaveLeft, comeLeft] = [leaves, comes];
    for (const flow of bar.free) {
      const size = Math.abs(power(flow));
      const left = Math.min(size, power(flow) > 0 ? leaveLeft : comeLeft);
      if (power(flow) > 0) leaveLeft -= left;
      else comeLeft -= left;
      free.set(flow, { left, right: size - left });
    }
  }
  return { free, turned };
}
