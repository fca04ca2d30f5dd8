import {
  defineManoeuvre,
  gradeParameter,
  rateParameter,
  speedParameter,
  timeParameter,
} from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** A stop at a chosen rate: how much of it can the machines take? */
export const brakeStop = defineManoeuvre({
  id: "brake-stop",
  title: "Brake stop",
  summary:
    "Pull away, drive steadily, then brake to rest at a chosen rate. Compare a gentle with a hard stop to see how much regeneration takes.",
  parameters: {
    speed: speedParameter("Speed to brake from.", 60, 5, 250),
    rate: rateParameter("How hard to brake.", 1.5, 0.2, 10),
    lead: timeParameter("Steady driving before the brake.", 10, 1, 3600),
    grade: gradeParameter("Grade of the whole road."),
  },
  draw: (value) => {
    const profile = new Profile(value("grade"));
    profile.phase("start", "Pulling away");
    profile.hold(STAND_BEFORE);
    profile.pullAway(value("speed"));
    profile.phase("lead", "Steady");
    profile.hold(value("lead"));
    profile.phase("brake", "Braking");
    profile.toSpeed(0, value("rate"));
    profile.phase("rest", "At rest");
    profile.hold(STAND_AFTER);
    return profile;
  },
});
