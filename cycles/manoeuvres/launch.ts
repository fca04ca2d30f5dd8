import {
  defineManoeuvre,
  gradeParameter,
  rateParameter,
  speedParameter,
  timeParameter,
} from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** Pulling away at a chosen rate, on the level or on a hill. */
export const launch = defineManoeuvre({
  id: "launch",
  title: "Launch",
  summary:
    "Pull away from rest at a chosen rate, keep the speed, stop. A rate beyond the vehicle's power makes it a full-throttle start.",
  parameters: {
    speed: speedParameter("Speed to reach.", 100, 5, 250),
    rate: rateParameter("How fast the asked speed rises.", 2.5, 0.2, 10),
    grade: gradeParameter("Grade of the whole road, so the vehicle starts and stops on the hill."),
    hold: timeParameter("How long the speed is kept.", 5, 1, 3600),
  },
  draw: (value) => {
    const profile = new Profile(value("grade"));
    profile.phase("stand", "Standing");
    profile.hold(STAND_BEFORE);
    profile.phase("launch", "Launch");
    profile.toSpeed(value("speed"), value("rate"));
    profile.phase("hold", "Steady");
    profile.hold(value("hold"));
    profile.phase("stop", "Stopping");
    profile.slowToRest();
    profile.hold(STAND_AFTER);
    return profile;
  },
});
