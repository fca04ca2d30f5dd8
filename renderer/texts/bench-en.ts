/** Texts of Bench that came with its finer parts. */
export const bench = {
  enlarge: (tag: string) => `Enlarge view ${tag}`,
  reduce: (tag: string) => `View ${tag} back to its place`,
  flat: {
    title: "Gear set from the front",
    none: "This device cannot draw in three dimensions, so the gear set is drawn flat. Everything else works as ever.",
  },
  balance: (shaft: string, torque: string) => `${shaft} torque ${torque} N·m: sum and moment`,
  working: {
    balance: "Torques on the line",
    balanceNote: "Forces on a lever at rest: their sum and their moment about the carrier's axis are zero.",
    per: (shaft: string) => `${shaft} turns for one of the carrier`,
    perNote: "Of the counted turns once there are some, else of a minute at the set speeds.",
    outputPower: "Output power",
    outputPowerNote: "What the ring hands on and what its machine adds. Point: C.",
    outputMost: "Output machine, most torque",
    outputMostNote: "Its peak torque, or its peak power over its speed where that is less; from the vehicle.",
  },
} as const;
