/**
 * Reading GPX. The cases follow the GPX 1.1 schema (topografix.com/GPX/1/1: latitudes −90 … 90, longitudes −180 … 180,
 * ele and time optional, xsd:dateTime in UTC, a new trkseg where reception was lost) and GPX 1.0 (speed and course in a
 * point, foreign elements anywhere).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { writeGpx } from "../../../cycles/demo/gpx-text.ts";
import { type GpxOptions, importGpx } from "../../../cycles/import/gpx/gpx.ts";
import { looksLikeGpx } from "../../../cycles/import/gpx/guard.ts";
import { MAX_GPX_LENGTH, MAX_GPX_POINTS } from "../../../cycles/import/gpx/limits.ts";
import { InputError, type InputFault } from "../../../shared/errors.ts";
import { faultsOf } from "../faults-of.ts";

const read = (text: string, options: Partial<GpxOptions> = {}) =>
  importGpx(text, { fileName: "ride.gpx", ...options });

const refused = (text: string, options: Partial<GpxOptions> = {}): readonly InputFault[] => {
  const faults = faultsOf(() => read(text, options));
  for (const fault of faults) {
    expect(fault.where).toMatch(/^ride\.gpx/);
    expect(fault.accepted).not.toBe("");
  }
  return faults;
};

const file = (inner: string, root = 'version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1"') =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<gpx ${root}>${inner}</gpx>`;

const point = (second: number | string, lat: number | string = 50, inner = ""): string => {
  const time = typeof second === "number" ? `2024-05-01T07:30:${String(second).padStart(2, "0")}Z` : second;
  return `<trkpt lat="${lat}" lon="-30.5">${inner}${time === "" ? "" : `<time>${time}</time>`}</trkpt>`;
};

const track = (...segments: string[]): string =>
  `<trk><name>Way home</name>${segments.map((segment) => `<trkseg>${segment}</trkseg>`).join("")}</trk>`;

const four = [0, 1, 2, 3].map((second) => point(second, 50 + second / 1e4)).join("");

describe("importGpx", () => {
  it("reads places, elevations and times of a track with its segments", () => {
    const text = file(
      track(
        point(0, 50, "<ele>12.5</ele>") + point(1, "50.0001", "<ele>-3</ele>"),
        point(3, "50.0002") + point(5, "+5.00003e1"),
      ),
    );
    const { raw, report } = read(text);
    expect([...raw.time]).toEqual([0, 1, 3, 5]);
    expect([...raw.latitude]).toEqual([50, 50.0001, 50.0002, 50.0003]);
    expect([...raw.longitude]).toEqual([-30.5, -30.5, -30.5, -30.5]);
    expect([...raw.elevation]).toEqual([12.5, -3, Number.NaN, Number.NaN]);
    expect(raw).toMatchObject({ id: "way-home", title: "Way home", source: "ride.gpx", overlay: null });
    expect(report).toEqual({
      fileName: "ride.gpx",
      version: "1.1",
      tracks: [{ number: 1, name: "Way home", segments: 2, points: 4, timed: 4 }],
      track: 1,
      points: 4,
      notes: ["2 points have no elevation."],
    });
    expect(raw.reading).toEqual([
      "Read from ride.gpx, track 1, 4 places from 07:30:00 UTC.",
      "2 points have no elevation.",
    ]);
  });

  it("reads 1.0 with stated speeds and foreign elements, and lays the speeds beside", () => {
    const inner = "<speed>3.5</speed><course>10</course><other:speed>99</other:speed>";
    const text = file(
      track(point(0, 50, inner) + point(1, 50, "<speed>oops</speed>") + point(2)),
      'version="1.0" creator="x" xmlns="http://www.topografix.com/GPX/1/0" xmlns:other="urn:x"',
    );
    const { raw } = read(text);
    expect(raw.overlay?.channels[0]).toMatchObject({ id: "vehicleSpeed" });
    expect([...(raw.overlay?.channels[0]?.values ?? [])]).toEqual([3.5, Number.NaN, Number.NaN]);
  });

  it("reads a file that gives its elements a prefix, and passes over elements of others", () => {
    const inner = `${track(four)}<w:trk/>`.replace(/<(\/?)(trk|trkseg|trkpt|time|name)\b/g, "<$1g:$2");
    const text = `<!-- made by hand --><g:gpx version="1.1" xmlns:g="http://www.topografix.com/GPX/1/1" xmlns:w="urn:w">${inner}</g:gpx>`;
    expect(read(text).report.points).toBe(4);
  });

  it("passes over extensions, CDATA, entities, waypoints and attributes on elements", () => {
    const extension = "<extensions><x:trkpt lat='1'/><time>never</time></extensions>";
    const text = file(
      `<wpt lat="1" lon="2"><time>x</time></wpt><trk><name><![CDATA[A & B]]></name><trkseg>${four}${point(9, 50, extension)}</trkseg></trk>`,
    );
    expect(read(text).report.points).toBe(5);
    expect(read(text).raw.title).toBe("A & B");
    expect(read(file(track(four)).replace("Way home", "A &amp; B &#60;")).raw.title).toBe("A & B <");
    expect(read(`\uFEFF${file(track(four))}`).report.points).toBe(4);
  });

  it("takes the track with the most timed points, or the one that was chosen", () => {
    const text = file(track(point(0) + point(1) + point(2)) + track(four) + track(point("") + four));
    expect(read(text).report).toMatchObject({ track: 2 });
    expect(read(text).report.notes).toContain("The file holds 3 tracks; one was read.");
    expect(read(text, { track: 1 }).report).toMatchObject({ track: 1, points: 3 });
    expect(refused(text, { track: 4 })[0]).toMatchObject({ value: "4", accepted: "1 to 3" });
  });

  it("puts segments in the order of time and sets hiccups aside", () => {
    const late = [20, 21, 22, 23, 24, 25, 26, 22, 26, 27].map((second) => point(second)).join("");
    const { raw, report } = read(file(track(late, four)));
    expect([...raw.time]).toEqual([0, 1, 2, 3, 20, 21, 22, 23, 24, 25, 26, 27]);
    expect(report.notes).toEqual([
      "Segments were put in the order of time.",
      "1 point repeats the time of another one and was set aside.",
      "1 point goes back in time and was set aside.",
      "12 points have no elevation.".replace("12", "14"),
    ]);
  });

  it("sets points without time and impossible elevations aside, and counts them", () => {
    const inner = point("") + four + point(5, 50, "<ele>-32768</ele>") + point(6, 50, "<ele>99999</ele>");
    const { raw, report } = read(file(track(inner)));
    expect(report.points).toBe(6);
    expect(raw.elevation.every(Number.isNaN)).toBe(true);
    expect(report.notes).toContain("1 point has no time and was set aside.");
    expect(report.notes).toContain("2 elevations are impossible and were set aside.");
  });

  it("takes times without a zone as UTC and says so", () => {
    const text = file(track(four.replaceAll("Z<", "<")));
    expect(read(text).report.notes).toContain("4 times name no zone and were taken as UTC.");
  });

  it("reads back what our own writer wrote", () => {
    const place = fc.record({
      latitude: fc.integer({ min: -9e8, max: 9e8 }).map((n) => n / 1e7),
      longitude: fc.integer({ min: -18e8, max: 18e8 }).map((n) => n / 1e7),
      elevation: fc.option(fc.integer({ min: -4000, max: 40_000 }).map((n) => n / 10)),
    });
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 30 }), fc.string(), (places, name) => {
        const points = places.map((p, i) => ({ ...p, time: 1_700_000_000 + i * 1.5 }));
        const cut = points.length >> 1;
        const segments = [points.slice(0, cut), points.slice(cut)];
        const clean = name.replace(/[^ -~]/g, "");
        const { raw } = read(writeGpx({ name: clean, description: "", segments }));
        expect([...raw.time]).toEqual(points.map((_, i) => i * 1.5));
        expect([...raw.latitude]).toEqual(points.map((p) => p.latitude + 0));
        expect([...raw.longitude]).toEqual(points.map((p) => p.longitude + 0));
        expect([...raw.elevation]).toEqual(points.map((p) => p.elevation ?? Number.NaN));
      }),
    );
  });
});

describe("a file that is no recorded drive", () => {
  it.each([
    ["nothing", "", "empty"],
    ["text", "Dear diary", "does not start as a GPX file"],
    ["a table", "t,km/h\n0,0\n", "does not start as a GPX file"],
    ["a web page", "<!DOCTYPE html><html><gpx></gpx></html>", "does not start as a GPX file"],
    ["another kind of XML", '<?xml version="1.0"?><kml><gpx/></kml>', "does not start as a GPX file"],
    ["bytes", "\u0000\u0001<gpx>", "not a text file"],
    ["broken XML", '<gpx version="1.1"><trk></gpx>', "not sound XML"],
    ["XML cut short", file(track(four)).slice(0, 300), "not sound XML"],
    ["no track", file(""), "no track"],
    ["waypoints only", file('<wpt lat="1" lon="2"/>'), "no track"],
    ["a route", file('<rte><rtept lat="1" lon="2"/></rte>'), "a route"],
    ["a track without points", file(track("")), "no points"],
    ["a drawn track", file(track(point("") + point("") + point(""))), "No point of the track has a time"],
    ["a track with few times", file(track(four + point("").repeat(5))), "More than half of the points"],
    ["two points", file(track(point(0) + point(1))), "Fewer than 3 points"],
    ["one moment", file(track(point(0).repeat(5))), "times do not go on"],
    ["a drive backward", file(track([9, 8, 7, 6].map((s) => point(s)).join(""))), "times do not go on"],
  ])("(%s) is refused with the reason", (_, text, said) => {
    expect(refused(text)[0]?.what).toContain(said);
  });

  it("with a document type of its own is refused before it is read", () => {
    const bomb = `<gpx version="1.1">${track(four)}</gpx>`;
    const text = `<?xml version="1.0"?><gpx version="1.1"><!-- <!ENTITY a "aa"> -->${bomb}</gpx>`;
    expect(refused(text)[0]?.what).toContain("document type");
  });

  it("of any size is refused by its first lines or its length", () => {
    const wrong = "x".repeat(200_000_000);
    const long = `<gpx version="1.1">${" ".repeat(MAX_GPX_LENGTH)}</gpx>`;
    expect(refused(wrong)[0]?.what).toContain("does not start");
    expect(refused(long)[0]?.what).toContain("too long");
    expect(looksLikeGpx(wrong)).toBe(false);
  });

  it("with too many points is refused before it is parsed", () => {
    const text = `<gpx version="1.1"><trk><trkseg>${"<trkpt/>".repeat(MAX_GPX_POINTS + 1)}`;
    expect(refused(text)[0]?.what).toContain("more than 200,000 track points");
  });

  it("longer than 100 hours is refused", () => {
    const text = file(track(four + point("2024-05-08T07:30:00Z")));
    expect(refused(text)[0]?.what).toContain("longer than 100 hours");
  });
});

describe("a wrong point is named by track, segment, number and value", () => {
  it.each([
    ["latitude out of range", point(4, "90.0001"), "90.0001", "lat: degrees from -90 to 90"],
    ["latitude that is no number", point(4, "north"), "north", "lat: degrees from -90 to 90"],
    ["decimal comma", point(4, "50,5"), "50,5", "lat: degrees from -90 to 90"],
    ["longitude out of range", point(4).replace("-30.5", "181"), "181", "lon: degrees from -180 to 180"],
    ["no longitude", point(4).replace(' lon="-30.5"', ""), "", "lon: degrees from -180 to 180"],
    ["time that is none", point("soon"), "soon", "date and time such as 2024-05-01T07:30:00Z"],
    ["time before the epoch", point("1969-12-31T23:59:59Z"), "1969-12-31T23:59:59Z", "from 1970 to 2099"],
    ["elevation that is no number", point(4, 50, "<ele>high</ele>"), "high", "metres, or no ele element"],
  ])("%s", (_, wrong, value, accepted) => {
    const [fault, more] = refused(file(track(four, point(3) + wrong)));
    expect(fault?.where).toBe("ride.gpx, track 1, segment 2, point 2");
    expect(fault?.value).toBe(value);
    expect(fault?.accepted).toContain(accepted);
    expect(more).toBeUndefined();
  });

  it("and ten are told at once", () => {
    const faults = refused(file(track(point("soon", "x").repeat(20))));
    expect(faults).toHaveLength(10);
    expect(faults.at(-1)?.what).toContain("Reading stopped here");
  });

  it("tells line and column of broken XML", () => {
    expect(refused('<gpx version="1.1">\n<trk>\n</trg></gpx>')[0]?.where).toBe("ride.gpx, line 3, column 1");
  });
});

describe("any text at all", () => {
  const piece = fc.constantFrom(
    "<trk>",
    "</trk>",
    "<trkseg>",
    "</trkseg>",
    four,
    point(4),
    "<ele>1</ele>",
    '<trkpt lat="1" lon="2">',
    "</trkpt>",
    "<time>2024-05-01T07:30:30Z</time>",
    "&amp;",
    "&x;",
    "<![CDATA[",
    "]]>",
    "<!--",
    "-->",
    "<__proto__>",
    "</__proto__>",
    '<trkpt constructor="1"/>',
    " ",
  );
  it("is either read with rising times or refused with an InputError", () => {
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        try {
          const { time } = read(file(pieces.join(""))).raw;
          expect(time.every((t, i) => i === 0 || t > (time[i - 1] ?? Number.NaN))).toBe(true);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
        }
      }),
      { numRuns: 1000 },
    );
  });
});
