import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { command, namesIn, succeed, temporaryFolder, textIn } from "./command.ts";

const MINE = `# Mine

## Turn it

\`\`\`bench
carrier: 2000 rev/min (1500 to 2500 by 100)
ring: hold 0
\`\`\`

The carrier turns at {carrier speed}.

\`\`\`ask
name: sun
question: How fast does the sun turn?
key: sun speed
unit: rev/min
tolerance: 1 %
\`\`\`
`;

describe("lessons on the command line", () => {
  it("are listed, shown with their keys, and checked", () => {
    const folder = temporaryFolder();
    expect(succeed(folder, "lesson", "list")).toContain("torque-split");
    expect(succeed(folder, "lesson", "show", "torque-split")).toContain(
      "T_s = −T_c / (1 + k) = −100.0 / 3.5",
    );
    writeFileSync(join(folder, "mine.md"), MINE);
    expect(succeed(folder, "lesson", "check", "mine.md")).toMatch(
      /1 steps, 1 questions, all right, good with/,
    );
    writeFileSync(
      join(folder, "bad.md"),
      MINE.replace("by 100", "by 100,").replace("key: sun speed", "key: sun sped"),
    );
    const bad = command(folder, "lesson", "check", "bad.md");
    expect(bad.status).toBe(2);
    expect(bad.stderr).toMatch(/bad\.md, line 6[\s\S]*bad\.md, line 15/);
    writeFileSync(join(folder, "far.md"), MINE.replace("1500 to 2500", "1500 to 4500"));
    expect(command(folder, "lesson", "check", "far.md").stderr).toContain("narrow the ranges");
  });

  it("are handed out and marked, each student by own numbers", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "mine.md"), MINE);
    writeFileSync(join(folder, "class.txt"), "Ada Lindqvist\r\nBen Okoro\r\n\r\n");
    const made = [
      "--seed",
      "3",
      "--students",
      "class.txt",
      "--out",
      "s.html",
      "--key",
      "k.html",
      "--form",
      "f.csv",
    ];
    succeed(folder, "handout", "mine.md", ...made);
    expect(namesIn(folder)).toEqual(["class.txt", "f.csv", "k.html", "mine.md", "s.html"]);
    const keys = [...textIn(folder, "k.html").matchAll(/<td>([\d\u202f]+)\u00a0rev\/min<\/td>/g)].map(
      ([, n]) => n ?? "",
    );
    expect(keys).toHaveLength(2);
    const [ada = "", ben = ""] = keys.map((n) => n.replace("\u202f", ""));
    expect(Number(ada) / 3.5).toBeGreaterThanOrEqual(1500);
    const answers = textIn(folder, "f.csv")
      .replace("Ada Lindqvist,sun,,", `Ada Lindqvist,sun,${ada},`)
      .replace("Ben Okoro,sun,,", `Ben Okoro,sun,-${ben},`);
    writeFileSync(join(folder, "a.csv"), answers);
    const marked = succeed(
      folder,
      "mark",
      "mine.md",
      "a.csv",
      "--seed",
      "3",
      "--students",
      "class.txt",
      "--out",
      "m.csv",
    );
    expect(marked).toMatch(/Ada Lindqvist +1 of 1\n +Ben Okoro +0 of 1/);
    expect(textIn(folder, "m.csv")).toContain("the sign is not");
    const wrong = command(folder, "mark", "mine.md", "a.csv", "--seed", "x");
    expect(wrong.status).toBe(2);
    writeFileSync(join(folder, "odd.csv"), "student,question,value\nAda,moon,1\n");
    expect(command(folder, "mark", "mine.md", "odd.csv").stderr).toMatch(
      /odd\.csv, row 2, column "question"/,
    );
  });

  it("refuse to overwrite what they read, and to write nothing", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "mine.md"), MINE);
    expect(command(folder, "handout", "mine.md", "--out", "mine.md").stderr).toContain("overwrite the input");
    expect(command(folder, "handout", "mine.md").stderr).toContain("nothing to write");
    expect(textIn(folder, "mine.md")).toBe(MINE);
  });
});

describe("reports on the command line", () => {
  it("are one file, and its own line makes the same file again", () => {
    const folder = temporaryFolder();
    const words = ["--cycle", "brake-stop:speed=50km/h", "--payload", "80", "--set", "body.mass=1500"];
    succeed(folder, "report", ...words, "--out", "first.html");
    const page = textIn(folder, "first.html");
    const line = /<pre>npm run -s cli -- (.*)<\/pre>/.exec(page)?.[1] ?? "";
    expect(line).toContain("--payload 80");
    succeed(folder, ...line.split(" "));
    expect(textIn(folder, "report.html")).toBe(page);
  });

  it("need a file, and one drive", () => {
    const folder = temporaryFolder();
    expect(command(folder, "report").status).toBe(2);
    const test = command(folder, "report", "--cycle", "combined", "--out", "r.html");
    expect(test.status).toBe(2);
    expect(test.stderr).toContain("several drives");
  });
});
