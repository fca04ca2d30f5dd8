import {
  defineManoeuvre,
  gradeParameter,
  rateParameter,
  speedParameter,
  timeParameter,
} from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** Driving backwards; the only manoeuvre with negative speed. */
export const backUp = defineManoeuvre({
  id: "back-up",
  title: "Back up",
  summary:
    "Drive backwards from rest to rest. With the engine running its torque pushes forward, against the output machine.",
  parameters: {
    speed: speedParameter("Speed backwards, as a positive number.", 8, 1, 40),
    for: timeParameter("How long the speed is kept.", 10, 1, 600),
    rate: rateParameter("How fast the speed changes.", 0.8, 0.1, 3),
    grade: gradeParameter("Grade of the road as seen forward: backing up a road that rises goes down."),
  },
  draw: (value) => {
    const profile = new Profile(value("grade"));
    profile.phase("stand", "Standing");
    profile.hold(STAND_BEFORE);
    profile.phase("back", "Backing up");
    profile.toSpeed(-value("speed"), value("rate"));
    profile.hold(value("for"));
    profile.toSpeed(0, value("rate"));
    profile.phase("rest", "At rest");
    profile.hold(STAND_AFTER);
    return profile;
  },
});
