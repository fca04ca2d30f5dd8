import fc from "fast-check";
import {
  centreCheck,
  neighbourCheck,
  type SetTeeth,
  spacingCheck,
} from "../../../../renderer/scene/gears/assembly.ts";

/** Sets that can be built: no undercut at 20°, both meshes at one centre distance, equal spacing, neighbours clear. */
export const buildableSet: fc.Arbitrary<SetTeeth> = fc
  .record({
    sunTeeth: fc.integer({ min: 18, max: 60 }),
    planetTeeth: fc.integer({ min: 18, max: 50 }),
    planets: fc.integer({ min: 1, max: 6 }),
  })
  .map(({ sunTeeth, planetTeeth, planets }) => ({
    sunTeeth,
    planetTeeth,
    ringTeeth: sunTeeth + 2 * planetTeeth,
    planets,
  }))
  .filter((set) => centreCheck(set).pass && spacingCheck(set).pass && neighbourCheck(set).pass);
