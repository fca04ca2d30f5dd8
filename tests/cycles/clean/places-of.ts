import type { RecordedPoint } from "../../../cycles/demo/receiver.ts";
import type { PositionDrive } from "../../../shared/recorded.ts";

/** A recording for tests. */
export function placesOf(points: readonly RecordedPoint[]): PositionDrive {
  const start = points[0]?.time ?? 0;
  return {
    kind: "positions",
    id: "test",
    title: "Test",
    source: "test.gpx",
    time: Float64Array.from(points, (point) => point.time - start),
    latitude: Float64Array.from(points, (point) => point.latitude),
    longitude: Float64Array.from(points, (point) => point.longitude),
    elevation: Float64Array.from(points, (point) => point.elevation),
    reading: [],
    overlay: null,
  };
}
