import { defineManoeuvre, gradeParameter, speedParameter, timeParameter } from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** Steady speed on a steady grade. */
export const cruise = defineManoeuvre({
  id: "cruise",
  title: "Cruise",
  summary:
    "Steady speed on a steady grade. The grade lasts as long as the cruise; start and stop are on the level.",
  parameters: {
    speed: speedParameter("Steady speed.", 100, 5, 250),
    grade: gradeParameter("Grade while cruising."),
    for: timeParameter("How long the cruise lasts.", 300, 5, 14_400),
  },
  draw: (value) => {
    const profile = new Profile();
    profile.phase("start", "Pulling away");
    profile.hold(STAND_BEFORE);
    profile.pullAway(value("speed"));
    profile.toGrade(value("grade"));
    profile.phase("cruise", "Cruise");
    profile.hold(value("for"));
    profile.phase("stop", "Stopping");
    profile.toGrade(0);
    profile.slowToRest();
    profile.hold(STAND_AFTER);
    return profile;
  },
});
