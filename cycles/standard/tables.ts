/// <reference path="../raw.d.ts" />
import hwfet from "../data/hwfet.csv?raw";
import jc08 from "../data/jc08.csv?raw";
import la92 from "../data/la92.csv?raw";
import nedc from "../data/nedc.csv?raw";
import nycc from "../data/nycc.csv?raw";
import sc03 from "../data/sc03.csv?raw";
import udds from "../data/udds.csv?raw";
import us06 from "../data/us06.csv?raw";
import wltcClass3b from "../data/wltc-class3b.csv?raw";
import { phasesUpTo, type StandardTable } from "./table.ts";

/** The schedules of `cycles/data/`; `cycles/data/SOURCES.md` tells where each comes from and how it was checked. */
export const STANDARD_TABLES: readonly StandardTable[] = [
  {
    id: "udds",
    title: "EPA Urban Dynamometer Driving Schedule (LA-4)",
    publishedIn: "40 CFR Part 86, Appendix I(a)",
    unit: "mph",
    duration: 1369,
    standing: "Firm: five copies agree in every sample.",
    treatment: [],
    phases: phasesUpTo(
      ["phase-1", "Phase 1 (first 505 seconds)", 505],
      ["phase-2", "Phase 2 (last 864 seconds)", 1369],
    ),
    phasesAlone: false,
    csv: udds,
  },
  {
    id: "hwfet",
    title: "EPA Highway Fuel Economy driving schedule",
    publishedIn: "40 CFR Part 600, Appendix I",
    unit: "mph",
    duration: 765,
    standing: "Firm: three copies agree in every sample.",
    treatment: [],
    phases: [],
    phasesAlone: false,
    csv: hwfet,
  },
  {
    id: "us06",
    title: "US06 Supplemental FTP schedule",
    publishedIn: "40 CFR Part 86, Appendix I(g)",
    unit: "mph",
    duration: 600,
    standing:
      "Firm: three copies agree in every sample. The often quoted 8.46 mph/s is 8.4 mph/s in the table of one sample a second.",
    treatment: [],
    phases: [],
    phasesAlone: false,
    csv: us06,
  },
  {
    id: "sc03",
    title: "SC03 air-conditioning Supplemental FTP schedule",
    publishedIn: "40 CFR Part 86, Appendix I(h)",
    unit: "mph",
    duration: 600,
    standing: "Firm on the published statistics; a single copy, recovered from a smoothed trace.",
    treatment: ["The table in mph was recovered from a smoothed trace in m/s at four samples a second."],
    phases: [],
    phasesAlone: false,
    csv: sc03,
  },
  {
    id: "nycc",
    title: "EPA New York City Cycle",
    publishedIn: "40 CFR Part 86, Appendix I(e)",
    unit: "mph",
    duration: 598,
    standing: "Firm: two copies agree in every sample.",
    treatment: [],
    phases: [],
    phasesAlone: false,
    csv: nycc,
  },
  {
    id: "la92",
    title: "LA-92, California Unified Cycle, phases 1 and 2",
    publishedIn: "40 CFR Part 86, Appendix I(c), first 1435 s",
    unit: "mph",
    duration: 1435,
    standing: "Firm on the published statistics; a single copy.",
    treatment: ["The table in mph was turned back from a copy in km/h at ten samples a second."],
    phases: phasesUpTo(
      ["phase-1", "Phase 1 (first 300 seconds)", 300],
      ["phase-2", "Phase 2 (last 1135 seconds)", 1435],
    ),
    phasesAlone: false,
    csv: la92,
  },
  {
    id: "wltc-class3b",
    title: "Worldwide harmonized Light vehicles Test Cycle, class 3b",
    publishedIn: "UN GTR No. 15, Annex 1; UN Regulation No. 154, Annex B1",
    unit: "km/h",
    duration: 1800,
    standing:
      "Firm: the phase checksums of the regulation are met. This is the adopted cycle, not the 2012 draft.",
    treatment: [],
    phases: phasesUpTo(
      ["low", "Low", 589],
      ["medium", "Medium", 1022],
      ["high", "High", 1477],
      ["extra-high", "Extra high", 1800],
    ),
    phasesAlone: true,
    csv: wltcClass3b,
  },
  {
    id: "nedc",
    title: "New European Driving Cycle",
    publishedIn: "UN Regulation No. 83, Annex 4a, para. 6.1, Tables 1 and 2",
    unit: "km/h",
    duration: 1180,
    standing:
      "Firm on timing. The urban part is 1.018 km long here, 0.5 % above the regulation's stated 1.013 km; no cause was found.",
    treatment: [
      "Built from the regulation's list of operations; the two-second gear changes hold their speed.",
    ],
    phases: phasesUpTo(
      ["urban-1", "First urban cycle", 195],
      ["urban-2", "Second urban cycle", 390],
      ["urban-3", "Third urban cycle", 585],
      ["urban-4", "Fourth urban cycle", 780],
      ["extra-urban", "Extra-urban cycle", 1180],
    ),
    phasesAlone: false,
    csv: nedc,
  },
  {
    id: "jc08",
    title: "Japanese JC08 mode",
    publishedIn: "MLIT notice on details of the vehicle safety regulations, Attachment 42",
    unit: "km/h",
    duration: 1204,
    standing: "Usable: a single copy, its distance 0.15 % under the published 8.171 km.",
    treatment: ["The whole seconds of a copy at ten samples a second."],
    phases: [],
    phasesAlone: false,
    csv: jc08,
  },
];
