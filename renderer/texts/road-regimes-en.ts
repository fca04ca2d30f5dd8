/** A regime of a drive in a sentence. */
export interface RoadRegimeText {
  readonly title: string;
  readonly say: string;
}

/** Regimes as they are met on the road, by their ids. */
export const roadRegimes: Readonly<Record<string, RoadRegimeText>> = {
  cranking: {
    title: "Cranking",
    say: "The sun machine turns the engine up to firing speed; the output machine bears the reaction.",
  },
  stopping: {
    title: "Engine running down",
    say: "The fuel is off and the sun machine brings the engine to rest.",
  },
  "charging-at-rest": {
    title: "Charging at rest",
    say: "The vehicle stands and the engine's power goes through the sun machine into the battery.",
  },
  idling: { title: "Idling", say: "The vehicle stands and the engine turns for itself." },
  "hill-hold": { title: "Hill hold", say: "The brakes hold the vehicle on the slope." },
  "at-rest": { title: "At rest", say: "The vehicle stands and the engine is off." },
  "engine-braking": {
    title: "Engine braking",
    say: "The engine gets no fuel and is turned along: its friction holds back.",
  },
  "braking-engine-on": {
    title: "Braking, engine on",
    say: "The vehicle is braked while the engine still runs.",
  },
  "regenerative-braking": {
    title: "Regenerative braking",
    say: "The output machine brakes as a generator; the friction brakes take only the other axle's share.",
  },
  "blended-braking": {
    title: "Blended braking",
    say: "The output machine brakes as far as it may, the friction brakes do the rest.",
  },
  "friction-braking": { title: "Friction braking", say: "Only the friction brakes act." },
  "reverse-engine": {
    title: "Reverse with the engine on",
    say: "The engine pushes the ring forward, the output machine overcomes it backward.",
  },
  "electric-reverse": {
    title: "Electric reverse",
    say: "The output machine turns backward; there is no reverse gear.",
  },
  "electric-drive": {
    title: "Electric drive",
    say: "The engine rests, the output machine drives, the sun spins backward idle.",
  },
  assist: { title: "Assist", say: "Engine and battery drive together." },
  "charging-driving": {
    title: "Charging while driving",
    say: "The engine gives more than the road takes; the rest goes into the battery.",
  },
  "mechanical-point": {
    title: "Mechanical point",
    say: "The sun stands: the engine's power goes through the teeth alone.",
  },
  "circulating-power": {
    title: "Circulating power",
    say: "The sun turns backward and its machine drives on what the output machine generates: power goes round.",
  },
  direct: { title: "One to one", say: "All three shafts turn as one." },
  "split-below-direct": {
    title: "Split below direct",
    say: "The ring is slower than the carrier: the sun runs ahead and generates, the output machine drives on it.",
  },
  "split-above-direct": {
    title: "Split above direct",
    say: "The ring is faster than the carrier: little is left for the sun machine.",
  },
  coasting: { title: "Coasting", say: "Nothing pulls and nothing brakes." },
};
