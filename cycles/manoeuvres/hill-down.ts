import { defineManoeuvre, speedParameter, timeParameter } from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** A long descent, until the battery is full. */
export const hillDown = defineManoeuvre({
  id: "hill-down",
  title: "Hill down",
  summary:
    "Drive down a long hill at steady speed. It shows regeneration, a battery filling up, and what holds the vehicle back then.",
  parameters: {
    speed: speedParameter("Steady speed.", 60, 5, 150),
    drop: {
      meaning: "How steeply the road falls; a positive number goes down.",
      dimension: "grade",
      unit: "%",
      min: 0.5,
      max: 30,
      default: 6,
    },
    length: {
      meaning: "Way driven on the full grade.",
      dimension: "length",
      unit: "m",
      min: 50,
      max: 50_000,
      default: 3000,
    },
    lead: timeParameter("Steady driving on the level before the hill.", 10, 1, 3600),
  },
  draw: (value) => {
    const profile = new Profile();
    profile.phase("start", "Pulling away");
    profile.hold(STAND_BEFORE);
    profile.pullAway(value("speed"));
    profile.hold(value("lead"));
    profile.toGrade(-value("drop"));
    profile.phase("hill", "Descent");
    profile.hold(value("length") / value("speed"));
    profile.phase("stop", "Stopping");
    profile.toGrade(0);
    profile.slowToRest();
    profile.hold(STAND_AFTER);
    return profile;
  },
});
