/** Texts of the Vehicle place. */
export const vehicle = {
  name: "Vehicle",
  changes: (n: number) =>
    n === 0
      ? "as the preset"
      : n === 1
        ? "1 value changed from the preset"
        : `${n} values changed from the preset`,
  changedName: (name: string) => `${name}, changed`,
  copyName: (name: string) => `${name}, copy`,
  duplicate: "Duplicate",
  back: "Back to the preset",
  drop: "Remove",
  save: "Save vehicle file",
  open: "Open vehicle file",
  saved: (name: string) => `Saved: ${name}`,
  opened: (name: string) => `Opened: ${name}`,
  refused: (why: string) => `Not opened, the vehicle stays as it was. ${why}`,
  tooLarge: (name: string, size: string, most: string) =>
    `${name} has ${size} MB; at most ${most} MB are read.`,
  title: "Name",
  range: (least: string, most: string, unit: string) => `${least} … ${most} ${unit}`.trim(),
  parameterOf: (part: string, meaning: string) => `${part}, ${meaning}`,
  place: (parameter: string, place: number) => `${parameter}, place ${place} of the list`,
  named: (meaning: string, value: string) => `“${meaning}” = ${value}`,
  waits: (why: string) =>
    `${why} It is not in force: it waits for what it must fit to be typed too. Escape takes it back.`,
  waitsFor: (parameter: string) => `Not in force: it waits for “${parameter}”.`,
  presetIs: (value: string) => `preset ${value}`,
  parts: {
    engine: "Engine",
    gearSet: "Gear set",
    sunMachine: "Sun machine",
    outputMachine: "Output machine",
    battery: "Battery",
    finalDrive: "Final drive",
    body: "Body and road",
    auxiliary: "Auxiliaries",
    fuel: "Fuel",
    control: "Control",
  },
  partsName: "Parts",
  section: "Side section",
  sectionSub: "axes turned into one plane; teeth to scale with each other, the rest is not",
  describe: (parts: string) => `Side section of the drivetrain. ${parts}`,
  parameters: (part: string) => `${part}: parameters`,
  picture: "Picture",
  figures: "Derived figures",
  figuresSub: "they follow from the parameters",
  finding: "finding",
  warnings: "Worth a look",
  limits: { zeroTo100: "0 to 100 km/h", topSpeed: "Top speed, level", steepestGrade: "Steepest start" },
  assembly: "Assembly",
  teeth: (sun: number, planet: number, ring: number) => `${sun} / ${planet} / ${ring}`,
  engineWord: "Engine",
  inverter: "Converters",
} as const;
