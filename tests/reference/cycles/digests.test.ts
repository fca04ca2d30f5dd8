import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { STANDARD_TABLES } from "../../../cycles/standard/tables.ts";

/** SHA-256 of the tables as they were compared with other copies; cycles/data/SOURCES.md, "Digests". */
const DIGESTS: Readonly<Record<string, string>> = {
  hwfet: "01a52b894c3b800607927db8b7b34fadeefd326f5e0f7cbe45741a68d0fac993",
  jc08: "0e5f08b672cb54b998805b88a3ba5d38148c873cdc3d05f98daa0e6f34b1622e",
  la92: "0f61fdc75d1b520ae3b88a762bddb463a483e39cb81f05a429e36c2e0190ff04",
  nedc: "4b426639404749383f0f4d992eed20049244d24444fada77826f4294130ed55f",
  nycc: "b62b26f4243d7a341fd21e8167661b3c7c4575596ffa3b976f14130abfa101b7",
  sc03: "64e289ec203e783503f77b4ed2112074079029d60cbc6d21218e0b44e04cfe34",
  udds: "a10855641577936fbb972404ab326a83f1e10bf0dfabe513577bfd5ec2290308",
  us06: "3976587932c8995db890feb95e7734493ab9e8421dbfc1b45c21d8bb07b2ef3e",
  "wltc-class3b": "d6f960e2fded87cfc272b756c462d78f531b82bb9e4dd6c87530429a64dcb2f2",
};

const read = (name: string): string =>
  readFileSync(new URL(`../../../cycles/data/${name}`, import.meta.url), "utf8");

describe("the tables are the ones that were checked", () => {
  it("all of them, and no other", () => {
    expect(STANDARD_TABLES.map((table) => table.id).sort()).toEqual(Object.keys(DIGESTS).sort());
  });

  it.each(STANDARD_TABLES)("$id", ({ id, csv }) => {
    // A checkout may put carriage returns in; the digest is of the file without.
    const text = csv.replaceAll("\r\n", "\n");
    expect(createHash("sha256").update(text).digest("hex")).toBe(DIGESTS[id]);
    expect(csv).toBe(read(`${id}.csv`));
  });

  it.each(STANDARD_TABLES)("$id has the digest that SOURCES.md states", ({ id }) => {
    expect(read("SOURCES.md")).toContain(`${DIGESTS[id]}  ${id}.csv`);
  });
});
