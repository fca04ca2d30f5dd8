/**
 * The limits and overrides that a run logs, one bit each, in the column `limits`. A row carries every bit that was
 * set in any step since the row before it.
 */
export const LIMITS = [
  ["sun-torque", "the sun machine is at its torque or power limit"],
  ["sun-speed", "the sun machine is at its greatest speed"],
  ["output-torque", "the output machine is at its torque or power limit"],
  ["output-speed", "the output machine is at its greatest speed"],
  ["engine-full-load", "the engine is at full load"],
  ["battery-discharge", "the battery gives no more: current, voltage or charge"],
  ["battery-charge", "the battery takes no more: current, voltage or charge"],
  ["tyre-grip", "the tyres carry no more force"],
  ["axle-share", "the driven axle may carry no more of the braking"],
  ["low-speed-fade", "regeneration fades out at low speed"],
  ["engine-speed", "the engine is at a speed limit"],
  ["engine-stop", "the engine's stop bears a reaction beyond breakaway"],
  ["start-charge", "override: engine started because the charge is low"],
  ["start-sun-speed", "override: engine started before the sun machine over-speeds"],
  ["start-crank-reserve", "override: engine started while a start is still possible"],
  ["stop-refused-time", "override: engine kept on for its least time"],
  ["stop-refused-cold", "override: engine kept on, coolant cold"],
  ["stop-refused-speed", "override: engine kept on, the sun machine would over-speed"],
  ["start-refused-time", "override: engine kept off for its least time"],
  ["engine-power-cut", "override: engine power cut, the battery cannot take it"],
  ["engine-torque-cut", "override: engine torque cut, the sun machine cannot hold it"],
  ["sun-machine-cut", "override: sun machine cut to keep the battery's limits"],
  ["demand-unmet", "the driver asks for more than the vehicle can do"],
  ["charge-high", "override: no charging by the engine, charge high"],
  ["strategy-answer", "the strategy's answer was out of range and was brought into it"],
  ["regeneration-off", "the strategy asks for no regeneration"],
  ["engine-holds-back", "override: engine turned to hold the vehicle back, the battery is full"],
  ["charge-low", "override: the engine carries the load and charges, the charge is low"],
] as const;

/** Name of a limit or override. */
export type LimitId = (typeof LIMITS)[number][0];

/** Bit of each limit: 1, 2, 4, … in the order of the list. */
export const LIMIT_BIT = Object.freeze(
  Object.fromEntries(LIMITS.map(([id], index) => [id, 2 ** index])) as Record<LimitId, number>,
);

/** The limits named in a bit mask, in the order of the list. */
export const limitsIn = (mask: number): LimitId[] =>
  LIMITS.filter(([id]) => (mask & LIMIT_BIT[id]) !== 0).map(([id]) => id);

/** What a limit means, one phrase. */
export const limitMeaning = (id: LimitId): string => LIMITS.find(([name]) => name === id)?.[1] ?? "";

/** Bits that are overrides of a strategy, not limits of the hardware. */
export const OVERRIDES: readonly LimitId[] = LIMITS.filter(([, text]) => text.startsWith("override")).map(
  ([id]) => id,
);
