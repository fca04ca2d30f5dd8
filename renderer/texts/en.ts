import type { BenchLimitId } from "../../sim/bench/limits.ts";
import type { Shaft } from "../../sim/bench/shafts.ts";
import type { Role, Stop } from "../state/bench.ts";
import type { SituationId } from "../state/situations.ts";
import { bench } from "./bench-en.ts";
import { compare } from "./compare-en.ts";
import { cycles } from "./cycles-en.ts";
import { roadFlow } from "./flow-en.ts";
import { lesson } from "./lesson-en.ts";
import { map } from "./map-en.ts";
import { picture } from "./picture-en.ts";
import { plots } from "./plots-en.ts";
import { road } from "./road-en.ts";
import { roadRegimes } from "./road-regimes-en.ts";
import { roadWorking } from "./road-working-en.ts";
import { vehicle } from "./vehicle-en.ts";

/** A regime in words. */
export interface RegimeText {
  readonly title: string;
  readonly say: (at: RegimeNumbers) => string;
}

/** Numbers a regime sentence may name, already formatted. */
export interface RegimeNumbers {
  readonly electrical: string;
  readonly circulating: string;
  readonly battery: string;
  readonly sun: string;
}

const shafts: Readonly<Record<Shaft, string>> = { sun: "Sun", carrier: "Carrier", ring: "Ring" };
const lower: Readonly<Record<Shaft, string>> = { sun: "sun", carrier: "carrier", ring: "ring" };
const machines: Readonly<Record<Shaft, string>> = {
  sun: "sun machine",
  carrier: "engine",
  ring: "output",
};

const regimes: Readonly<Record<string, RegimeText>> = {
  cranking: {
    title: "Cranking",
    say: () =>
      "The sun machine turns the engine up. The ring bears the reaction, so it must be held or pushed back.",
  },
  stopping: {
    title: "Engine running down",
    say: () => "The engine turns below its idle speed without firing and is being brought to rest.",
  },
  "charging-at-rest": {
    title: "Charging at rest",
    say: (n) =>
      `The ring is held, so all of the engine's power goes through the sun machine: ${n.battery} kW into the battery.`,
  },
  idling: {
    title: "Idling",
    say: () => "The ring stands, the engine turns and gives nothing. The sun spins along without torque.",
  },
  "hill-hold": { title: "Hill hold", say: () => "The brakes hold the vehicle on the slope." },
  "at-rest": { title: "At rest", say: () => "The ring stands and the engine is off: nothing goes anywhere." },
  "engine-braking": {
    title: "Engine braking",
    say: () => "The engine gets no fuel and is turned by the vehicle: its friction brakes.",
  },
  "braking-engine-on": {
    title: "Braking, engine on",
    say: (n) => `The output machine brakes while the engine still turns: ${n.battery} kW into the battery.`,
  },
  "regenerative-braking": {
    title: "Slowing down by regeneration",
    say: (n) =>
      `The output machine brakes and generates: ${n.battery} kW into the battery. With the engine at rest the sun spins backward.`,
  },
  "blended-braking": {
    title: "Blended braking",
    say: () => "Machine and friction brakes share the braking.",
  },
  "friction-braking": { title: "Friction braking", say: () => "Only the friction brakes act." },
  "reverse-engine": {
    title: "Reverse with the engine on",
    say: () =>
      "The engine still pushes the ring forward. The output machine must overcome that and turn it backward.",
  },
  "electric-reverse": {
    title: "Electric reverse",
    say: (n) =>
      `The output machine turns backward on ${n.battery} kW from the battery. There is no reverse gear to engage.`,
  },
  "electric-drive": {
    title: "Electric drive",
    say: (n) =>
      `The engine rests and the output machine drives on ${n.battery} kW from the battery. The sun spins backward, idle.`,
  },
  assist: {
    title: "Assist",
    say: (n) => `Engine and battery drive together: ${n.battery} kW come from the battery.`,
  },
  "charging-driving": {
    title: "Charging while driving",
    say: (n) => `The engine gives more than the output takes: ${n.battery} kW go into the battery.`,
  },
  "mechanical-point": {
    title: "Mechanical point",
    say: () =>
      "The sun stands still. Its machine holds it without any power: all of the engine's power goes through the gears.",
  },
  "circulating-power": {
    title: "Circulating power",
    say: (n) =>
      `The sun turns backward, so its machine must drive: ${n.circulating} kW taken at the output go round and come back.`,
  },
  direct: {
    title: "One to one",
    say: (n) =>
      `All three turn as one. Still ${n.electrical} % of the engine's power goes the electrical way, for the sun turns too.`,
  },
  "split-below-direct": {
    title: "Split below direct",
    say: (n) =>
      `The ring turns slower than the carrier, so the sun runs ahead and its machine must generate: ${n.electrical} % of the engine's power goes the electrical way.`,
  },
  "split-above-direct": {
    title: "Split above direct",
    say: (n) =>
      `The ring turns faster than the carrier, so the sun lags and little is left for its machine: ${n.electrical} % of the engine's power goes the electrical way.`,
  },
  coasting: {
    title: "Nothing pulls",
    say: () => "The shafts turn freely: no torque is set, so no power goes anywhere.",
  },
};

const situations: Readonly<Record<SituationId, { readonly name: string; readonly short: string }>> = {
  "engine-start": { name: "engine start at rest", short: "start" },
  "electric-pull-away": { name: "electric pull-away", short: "electric" },
  "engine-pull-away": { name: "engine pull-away", short: "pull-away" },
  "one-to-one": { name: "one to one", short: "one to one" },
  "above-direct": { name: "above direct", short: "above" },
  "sun-at-rest": { name: "sun at rest", short: "sun at rest" },
  "sun-backward": { name: "sun backward", short: "backward" },
  "charging-at-rest": { name: "charging at rest", short: "charging" },
  "slowing-down": { name: "slowing down", short: "slowing" },
  "backing-up": { name: "backing up", short: "backing up" },
};

const stops: Readonly<Record<Shaft, Readonly<Record<Stop["end"], (n: string) => RegimeStop>>>> = {
  sun: {
    most: (n) => ({
      title: "Sun machine at its top speed",
      why: `Beyond ${n} its rotor and windings are not safe. Give the ring more speed or the carrier less.`,
    }),
    least: (n) => ({
      title: "Sun machine at its top speed, backward",
      why: `Beyond ${n} its rotor and windings are not safe. Turn the carrier, or slow the ring.`,
    }),
  },
  carrier: {
    most: (n) => ({
      title: "Engine at its top speed",
      why: `The engine does not turn faster than ${n}: its valves and rods set the end.`,
    }),
    least: () => ({
      title: "The engine never turns backward",
      why: "Its oil pump, valves and mounts are made for one sense of turning, so the carrier stops at zero.",
    }),
  },
  ring: {
    most: (n) => ({
      title: "Output machine at its top speed",
      why: `It is geared to the ring and ends at ${n} of the ring: that is the vehicle's top speed.`,
    }),
    least: (n) => ({
      title: "Output machine at its top speed, backward",
      why: `It is geared to the ring and ends at ${n} of the ring.`,
    }),
  },
};

interface RegimeStop {
  readonly title: string;
  readonly why: string;
}

const limits: Readonly<Record<BenchLimitId, (limit: string, value: string) => RegimeStop>> = {
  "full-load": (limit, value) => ({
    title: "More than full load",
    why: `${value} N·m are asked, the engine gives ${limit} N·m at this speed. It gives that.`,
  }),
  "no-firing": () => ({
    title: "Too slow to fire",
    why: "Below its firing speed the engine makes no torque. Turn the carrier faster, or set the torque to zero.",
  }),
  "motored-friction": (limit, value) => ({
    title: "Less than the engine's friction",
    why: `${value} N·m are asked, but without fuel the engine resists with no more than ${limit} N·m.`,
  }),
  "sun-torque": (limit, value) => ({
    title: "Too much for the sun machine",
    why: `It would have to hold ${value} N·m and can hold ${limit} N·m at this speed. The engine would run away from it.`,
  }),
  "output-torque": (limit, value) => ({
    title: "More than the output machine gives",
    why: `${value} N·m are asked, it gives ${limit} N·m at this speed.`,
  }),
  "battery-discharge": (limit, value) => ({
    title: "More than the battery gives",
    why: `${value} kW are asked, ${limit} kW is the most that it gives at its usual charge.`,
  }),
  "battery-charge": (limit, value) => ({
    title: "More than the battery takes",
    why: `${value} kW come, ${limit} kW is the most that it takes at its usual charge.`,
  }),
  "below-idle": (limit) => ({
    title: "Below idle",
    why: `The engine passes through here on its way up or down; it idles at ${limit}.`,
  }),
};

const roles: Readonly<Record<Role, string>> = { drive: "Drive", hold: "Hold", follow: "Follow" };
const roleState: Readonly<Record<Role, string>> = { drive: "given", hold: "held still", follow: "follows" };

/** Every text of the app in English. A translation is another object of this shape. */
export const en = {
  app: "Trishaft",
  shafts,
  lower,
  machines,
  roles,
  roleState,
  regimes,
  situations,
  stops,
  limits,
  compare,
  lesson,
  cycles,
  bench,
  map,
  picture,
  plots,
  road,
  roadFlow,
  roadRegimes,
  roadWorking,
  vehicle,
  close: "Close",
  rail: {
    name: "Places",
    bench: "Bench",
    road: "Road",
    compare: "Compare",
    lessons: "Lessons",
    vehicle: "Vehicle",
    cycles: "Cycles",
    glossary: "Glossary",
    keys: "Keys",
    settings: "Settings",
  },
  top: {
    situation: "Situation",
    byHand: "set by hand",
    vehicle: "Vehicle",
    shown: (slowing: string) => `shown ${slowing}`,
    turnsItself: "turning",
    stands: "standing",
    undo: "Undo",
    redo: "Redo",
    open: "Open",
    save: "Save",
    projector: "Projector",
    leaveProjector: "Leave projector",
  },
  strip: {
    name: "Title block",
    gearSet: "Gear set",
    check: "Check",
    checkSum: "sun + k·ring = (1 + k)·carrier",
    vehicle: "Vehicle",
    units: "Units",
    teaching: "Teaching model",
    teachingRest: ": not for certifying or repairing a vehicle",
  },
  place: {
    missing: (name: string) => `${name} could not be loaded.`,
    mend: "A piece of the program is missing or cannot be read. All other places go on working, and nothing is lost: save the project, then try again or reload.",
    again: "Try again",
  },
  notice: {
    dismiss: "Dismiss",
    restored: "The bench stands as you left it.",
    ignored: (reason: string) =>
      `What was kept from the last time could not be used (${reason}). The bench starts anew.`,
    saved: (name: string) => `Saved: ${name}`,
    opened: (name: string) => `Opened: ${name}`,
    refused: (fault: string) => `Not opened, the bench stays as it was. ${fault}`,
    notSaved: (fault: string) => `Not saved. ${fault}`,
    tooLarge: (name: string, size: string, most: string) =>
      `Not opened: ${name} has ${size} MB, and at most ${most} MB are read.`,
    unknownKind: (name: string) =>
      `Not opened: ${name} is no project or vehicle (.json), cycle (.csv, .gpx, .cycle.json), engine map (.csv), lesson (.md) or strategy (.js).`,
    unknownTable: (name: string, found: string) =>
      `Not opened: the columns of ${name} (${found === "" ? "none" : found}) are neither those of a cycle (time and speed, time_s and speed_kmh say) nor those of an engine map (speed, torque and fuel or efficiency, or a grid). Dropped on Cycles or Vehicle, it opens there, and its columns can be chosen.`,
    notKept:
      "This device has no more room for it: save the project as a file, or it is lost with the window.",
    benchRules: "speeds within the vehicle's limits that satisfy the gear equation, one shaft that follows",
  },
  gear: {
    title: "Gear set",
    sub: (sun: number, planet: number, ring: number, planets: number) =>
      `${sun} / ${planet} / ${ring} teeth, ${planets} planets`,
    play: "Turn",
    pause: "Pause",
    back: "Step back",
    on: "Step on",
    slowed: "Slowed",
    slowedName: "Shown this many times slower",
    view: "View",
    camera: "Look from",
    cameras: { "three-quarter": "three-quarter", front: "front", side: "side", top: "above" },
    cut: "Cut",
    explode: "Apart",
    labels: "Labels",
    arrows: "Torque arrows",
    extent: "Show",
    extents: { "gear set": "gear set", drivetrain: "whole drivetrain" },
    part: "Part",
    noPart: "none",
    teeth: (n: number) => `${n} teeth`,
    onPin: (speed: string) => `${speed} on its pin`,
    canvas:
      "Gear set in three dimensions. Drag a shaft to turn it, drag beside it to look from elsewhere; arrow keys turn the view.",
    canvasDriven:
      "Gear set in three dimensions, turned by the drive. Drag to look from elsewhere; arrow keys turn the view.",
    loading: "The gear set is being drawn.",
    none: "This device cannot draw in three dimensions. All numbers and drawings beside it work.",
    heldStill: (shaft: string) => `The ${shaft} is at rest: the other two turn about it.`,
    describe: (at: string, turning: string) => `The gear set ${turning}. ${at}`,
    parts: {
      sun: "Sun",
      planets: "Planets",
      carrier: "Carrier",
      ring: "Ring",
      "sun-machine": "Sun machine",
      "output-machine": "Output machine",
      reduction: "Reduction",
      engine: "Engine",
      "final-drive": "Final drive",
      axle: "Axle",
    },
  },
  turns: {
    since: "turns since mark",
    counted: "counted",
    per: "per carrier turn",
    set: "Set marks",
    name: "Turns since the marks were set",
  },
  lever: {
    title: "Lever line",
    sub: "two speeds given, the third follows",
    name: (shaft: string) => `${shaft} speed`,
    line: "Whole line: shifts all three",
    idle: (n: string) => `idle ${n}`,
    never: "never backward",
    neverShort: "never back",
    to: (n: string) => `to ${n}`,
    teeth: (n: number) => `${n} teeth: `,
    ratio: (n: number) => `${n}: 1`,
    subs: { sun: "machine", carrier: "engine", ring: "output" },
    describe: (parts: string) => `A line over three axes, spaced by the teeth. ${parts}`,
    at: (shaft: string, speed: string, state: string) => `${shaft} ${speed}, ${state}`,
    torque: (torque: string) => `torque ${torque} N·m`,
  },
  card: {
    over: (end: string, left: string) => `over-speed at ${end}, ${left} left`,
    engine: (idle: string, top: string) => `idle ${idle}, top ${top}, never backward`,
    belowIdle: (idle: string) => `below idle ${idle}: only passed through`,
    output: (end: string) => `output machine over-speed at ${end}`,
    putIn: "kW put in",
    takenOut: "kW taken out",
    noPower: "kW",
    typed: (shaft: string) => `${shaft} speed, typed`,
    vernier: (shaft: string) => `${shaft} speed, on the scale`,
    role: (shaft: string) => `${shaft}: what it does`,
    bad: {
      notNumber: "Not a number. Such as 2400, 251 rad/s or, for the ring, 35 km/h.",
      unknownUnit: "Unknown unit. Known: rev/min, rad/s and, for the ring, km/h, mph, m/s.",
      roadNeedsRing: "A road speed belongs to the ring: only the output turns with the wheels.",
    },
  },
  torque: {
    engine: "Engine torque",
    output: "Output machine",
    full: (n: string) => `full load ${n}`,
    most: (n: string) => `most ${n}`,
    noFiring: "no firing here",
    balance: "matched",
    balanceHelp: "It uses what the sun machine makes, so that the battery need not",
    slider: (name: string) => `${name}, on the scale`,
    typed: (name: string) => `${name}, typed`,
    bad: {
      notNumber: "Not a number. Such as 100 or 100 N·m.",
      unknownUnit: "Unknown unit. Known: N·m.",
      roadNeedsRing: "Not a torque.",
    },
  },
  flow: {
    title: "Power paths",
    sub: "kW, steady, losses left out; width is power",
    engine: "Engine",
    gearSet: "Gear set",
    sunMachine: "Sun machine",
    dcLink: "DC link",
    outputMachine: "Output machine",
    battery: "Battery",
    ring: "Ring",
    output: "Output",
    mechanicalPath: "mechanical path",
    mechanical: "mechanical",
    electrical: "electrical",
    generating: "generating",
    driving: "driving",
    idle: "idle",
    charging: "charging",
    giving: "giving",
    byHand: "by hand",
    motored: "motored",
    brake: "brake",
    pushed: "pushed",
    shares: (electrical: string, mechanical: string) =>
      `${electrical} % electrical, ${mechanical} % mechanical`,
    circulating: "circulating",
    scale: (n: string) => `${n} kW`,
    describe: (parts: string) => `Power paths in kW. ${parts}`,
    between: (name: string, n: string) => `${name} ${n}`,
    none: "No power flows.",
  },
  situationsName: "Situations",
  working: {
    of: (what: string) => `${what}: the working`,
    speed: (shaft: string) => `${shaft} speed`,
    torque: (shaft: string) => `${shaft} torque`,
    power: (shaft: string) => `${shaft} power`,
    turns: (shaft: string) => `${shaft} turns`,
    given: "given: driven at this speed",
    held: "given: held still",
    ask: "given: asked of the engine",
    teeth: (ring: number, sun: number, k: string) => `= ${ring} / ${sun} = ${k}.`,
    point: (place: string) => `Point: ${place}.`,
    atB: (shaft: string) => `B, ${shaft} axis`,
    atC: "C",
    steady: "Steady, no losses: forces and moments on the line add up to nothing.",
    powerNote: "Positive puts power into the gear set, negative takes it out.",
    turnsNote: "The same relation as of the speeds, summed over time.",
    fullLoad: "Engine full load",
    fullLoadNote: "Read from the vehicle's full-load curve at the carrier's speed.",
    electrical: "Electrical share",
    output: "Output machine torque",
    outputNote: "Matched: it uses what the sun machine makes.",
    outputGiven: "given: asked of the output machine",
    reduction: (n: string) => `Reduction ${n} from the machine to the ring, from the vehicle.`,
    battery: "Battery power",
    ratio: "Basic ratio",
    limit: (shaft: string) => `${shaft} limit`,
    limitSun: "The sun machine's top speed, from the vehicle.",
    limitCarrier: "The engine's top speed, from the vehicle.",
    limitRing: "The output machine's top speed over its reduction, from the vehicle.",
    road: "Road speed",
    roadNote: "Wheel radius and final drive, from the vehicle.",
  },
  settings: {
    title: "Settings",
    theme: "Appearance",
    themes: { system: "as the system", light: "light", dark: "dark" },
    projector: "Projector mode: large, high contrast, no side panels",
    shaftUnit: "Shaft speeds in",
    roadUnit: "Road speeds in",
    singleKeys: "Single keys without Ctrl do things (see Keys)",
    kept: "Kept on this device, for you; a project does not carry them.",
  },
  keys: {
    title: "Keys",
    columns: ["Key", "Does"],
    rows: [
      ["Tab, Shift Tab", "go through everything"],
      ["↑ ↓", "change the number in focus: a speed by 10, a torque by 1"],
      ["Shift ↑ ↓, Page up, Page down", "the same, ten times as much"],
      ["Home", "to zero"],
      ["Enter", "type the number in focus; show the working of a plain number"],
      ["Esc", "leave the number as it was; close what is open"],
      ["Ctrl Z, Ctrl Shift Z", "undo, redo"],
      ["Ctrl O, Ctrl S", "open, save a project"],
    ],
    single: [
      ["Space", "turn, pause (with no button in focus)"],
      ["[ ]", "step back, step on"],
      ["M", "set the marks"],
      ["A B C", "give this view the full height, and back (Esc)"],
      ["N B", "Lessons: step on, step back"],
      ["P", "projector"],
      ["T", "light, dark"],
      ["G", "glossary"],
      ["?", "these keys"],
    ],
    singleOff: "The keys below are switched off in Settings.",
  },
  glossaryTitle: "Glossary",
  caution:
    "On real hardware: hybrid packs carry lethal direct current. Only people qualified under local rules open them, with the maker's procedure, isolation, a wait for capacitors and a proof of zero volts. Guards belong on rotating parts.",
  glossary: [
    [
      "Planetary gear set",
      "Sun, planets on a carrier, and a ring with internal teeth. Two speeds may be chosen, the third follows.",
    ],
    ["Sun", "The gear in the middle. The sun machine turns with it."],
    ["Carrier", "The plate that carries the planets' pins. The engine turns it."],
    [
      "Ring",
      "The outer gear with teeth inside. The output and, by a reduction, the output machine turn with it.",
    ],
    [
      "Sun machine",
      "The electric machine on the sun. It sets the engine's speed, generates, and starts the engine. Other books call it MG1 or the generator.",
    ],
    [
      "Output machine",
      "The electric machine geared to the ring. It drives, brakes and backs up. Other books call it MG2 or the motor.",
    ],
    [
      "Basic ratio k",
      "Teeth of the ring over teeth of the sun. It fixes how a torque on the carrier divides.",
    ],
    [
      "Lever line",
      "Three axes spaced as k to 1 with the speeds upon them: the three points always lie on one straight line.",
    ],
    [
      "Torque split",
      "k/(1 + k) of the engine's torque acts at the ring and 1/(1 + k) at the sun, at any speed. Only the powers change.",
    ],
    ["Mechanical path", "Power that goes from the carrier through the teeth to the ring."],
    ["Electrical path", "Power that goes by way of the sun machine, the DC link and the output machine."],
    ["Mechanical point", "The sun at rest: nothing goes the electrical way."],
    [
      "Circulating power",
      "Power taken at the output by its machine and put back by the sun machine, so that it goes round. The teeth carry more than the engine gives.",
    ],
    ["Regeneration", "Braking with the output machine as a generator, into the battery."],
    ["DC link", "The direct-current rails that join both inverters and the battery."],
    ["State of charge", "What is left in the battery, as a share of its full charge."],
    ["Charge-sustaining", "Driving so that the battery ends as full as it began."],
    ["Put in, taken out", "Power that a shaft gives to the gear set, or gets from it."],
  ],
} as const;

/** The shape of a catalogue. */
export type Texts = typeof en;
