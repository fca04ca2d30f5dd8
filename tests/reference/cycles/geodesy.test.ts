/**
 * Distances on the Earth against published values and a reference library.
 * From memory, not found again: the haversine example and the Flinders Peak line. Found in public pages: the formula
 * for the length of a degree and the arc lengths at latitude 0 and 90.
 */
import fc from "fast-check";
import geodesic from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { greatCircleDistance, groundStep, placeAfter, stepLength } from "../../../cycles/clean/geodesy.ts";
import { rollOut } from "../../../cycles/clean/track.ts";

const WGS84 = geodesic.Geodesic.WGS84;
const degree = (d: number, m: number, s: number): number => d + m / 60 + s / 3600;

describe("great-circle distance", () => {
  it("is 2887.26 km from Nashville to Los Angeles airport on a sphere of 6372.8 km", () => {
    // The worked example of the haversine formula in many languages (Rosetta Code, task "Haversine formula"); memory.
    const nashville = { latitude: 36.12, longitude: -86.67 };
    const losAngeles = { latitude: 33.94, longitude: -118.4 };
    expect(greatCircleDistance(nashville, losAngeles, 6_372_800) / 1000).toBeCloseTo(2887.26, 2);
  });

  it("is a quarter of a great circle from pole to equator, and half between opposite places", () => {
    const pole = { latitude: 90, longitude: 12 };
    expect(greatCircleDistance(pole, { latitude: 0, longitude: 77 }, 1)).toBeCloseTo(Math.PI / 2, 12);
    expect(
      greatCircleDistance({ latitude: 0, longitude: 0 }, { latitude: 0, longitude: 180 }, 1),
    ).toBeCloseTo(Math.PI, 12);
  });

  it("lies within 0.57 % of the ellipsoid's geodesic", () => {
    fc.assert(
      fc.property(places(), places(), (a, b) => {
        const exact = geodesicLength(a, b);
        expect(Math.abs(greatCircleDistance(a, b) - exact)).toBeLessThanOrEqual(0.0057 * exact + 1e-3);
      }),
    );
  });
});

describe("ground step", () => {
  it("gives Flinders Peak to Buninyong, 54,972.271 m", () => {
    // Geocentric Datum of Australia technical manual, test line of Vincenty's formulae; GRS 80, which differs from
    // WGS 84 by less than a millimetre here. From memory.
    const flinders = { latitude: -degree(37, 57, 3.7203), longitude: degree(144, 25, 29.5244) };
    const buninyong = { latitude: -degree(37, 39, 10.1561), longitude: degree(143, 55, 35.3839) };
    expect(stepLength(groundStep(flinders, buninyong))).toBeCloseTo(54_972.271, 0);
  });

  it.each([
    [0, 110_574],
    [45, 111_132],
    [90, 111_694],
  ])("gives a degree of latitude at %d degrees as %d m", (latitude, metres) => {
    const half = latitude === 90 ? 0 : 0.5;
    const south = { latitude: latitude - (latitude === 90 ? 1e-3 : half), longitude: 10 };
    const north = { latitude: latitude + half, longitude: 10 };
    const span = north.latitude - south.latitude;
    expect(groundStep(south, north).north / span).toBeCloseTo(metres, -1);
  });

  it("follows the published series for the length of a degree of latitude", () => {
    // 111132.92 − 559.82 cos 2φ + 1.175 cos 4φ − 0.0023 cos 6φ, "correct within a centimetre".
    for (let latitude = -80; latitude <= 80; latitude += 5) {
      const phi = (latitude * Math.PI) / 180;
      const series =
        111132.92 - 559.82 * Math.cos(2 * phi) + 1.175 * Math.cos(4 * phi) - 0.0023 * Math.cos(6 * phi);
      const step = groundStep(
        { latitude: latitude - 0.005, longitude: 0 },
        { latitude: latitude + 0.005, longitude: 0 },
      );
      expect(step.north / 0.01).toBeCloseTo(series, 0);
    }
  });

  it("agrees with the geodesic to 1 in 10⁶ up to 50 km", () => {
    fc.assert(
      fc.property(
        places(65),
        fc.double({ min: 1, max: 50_000, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (from, length, azimuth) => {
          const end = WGS84.Direct(from.latitude, from.longitude, azimuth, length);
          const to = { latitude: end.lat2 ?? Number.NaN, longitude: end.lon2 ?? Number.NaN };
          expect(Math.abs(stepLength(groundStep(from, to)) / length - 1)).toBeLessThan(4e-6);
          if (length < 5000)
            expect(Math.abs(stepLength(groundStep(from, to)) / length - 1)).toBeLessThan(1e-7);
        },
      ),
      { numRuns: 500 },
    );
  });

  it("takes the short way across the date line", () => {
    const step = groundStep({ latitude: 0, longitude: 179.999 }, { latitude: 0, longitude: -179.999 });
    expect(step.east).toBeCloseTo(222.64, 1);
  });

  it("is undone by placeAfter", () => {
    fc.assert(
      fc.property(places(70), fc.double({ min: -5e3, max: 5e3, noNaN: true }), (from, east) => {
        const step = { east, north: 1234 };
        const back = groundStep(from, placeAfter(from, step));
        expect(back.east).toBeCloseTo(step.east, 4);
        expect(back.north).toBeCloseTo(step.north, 4);
      }),
    );
  });
});

describe("a track rolled out", () => {
  it("is as long as the geodesics between its places, however far it goes", () => {
    // Every half degree along a bending line from 10° to 60° north and across the date line.
    const latitude = Float64Array.from({ length: 101 }, (_, i) => 10 + i / 2);
    const longitude = Float64Array.from({ length: 101 }, (_, i) => {
      const turn = 170 + i / 5 + 5 * Math.sin(i / 9);
      return turn > 180 ? turn - 360 : turn;
    });
    const { east, north } = rollOut(latitude, longitude);
    let rolled = 0;
    let exact = 0;
    for (let i = 1; i <= 100; i += 1) {
      rolled += Math.hypot((east[i] ?? 0) - (east[i - 1] ?? 0), (north[i] ?? 0) - (north[i - 1] ?? 0));
      exact += geodesicLength(
        { latitude: latitude[i - 1] ?? 0, longitude: longitude[i - 1] ?? 0 },
        { latitude: latitude[i] ?? 0, longitude: longitude[i] ?? 0 },
      );
    }
    expect(Math.abs(rolled / exact - 1)).toBeLessThan(1e-5);
  });
});

function places(most = 89): fc.Arbitrary<{ latitude: number; longitude: number }> {
  return fc.record({
    latitude: fc.double({ min: -most, max: most, noNaN: true }),
    longitude: fc.double({ min: -180, max: 180, noNaN: true }),
  });
}

function geodesicLength(
  a: { latitude: number; longitude: number },
  b: { latitude: number; longitude: number },
): number {
  return WGS84.Inverse(a.latitude, a.longitude, b.latitude, b.longitude).s12 ?? Number.NaN;
}
