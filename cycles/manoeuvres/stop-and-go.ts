import { defineManoeuvre, rateParameter, speedParameter, timeParameter } from "./parameter.ts";
import { Profile, STAND_AFTER, STAND_BEFORE } from "./profile.ts";

/** A queue: the same short hop again and again. */
export const stopAndGo = defineManoeuvre({
  id: "stop-and-go",
  title: "Stop and go",
  summary:
    "The same short hop again and again, as in a queue. It shows electric driving and when the engine joins in.",
  parameters: {
    speed: speedParameter("Top speed of each hop.", 30, 2, 130),
    rate: rateParameter("How fast the speed rises and falls.", 1.2, 0.2, 5),
    hold: timeParameter("How long each hop keeps its speed.", 6, 1, 600),
    wait: timeParameter("How long the vehicle stands between hops.", 8, 1, 600),
    times: { meaning: "Number of hops.", dimension: "count", unit: "", min: 1, max: 200, default: 8 },
  },
  draw: (value) => {
    const profile = new Profile();
    const last = value("times");
    profile.phase("stand", "Standing");
    profile.hold(STAND_BEFORE);
    for (let hop = 1; hop <= last; hop += 1) {
      profile.phase(`hop-${hop}`, `Hop ${hop}`);
      profile.toSpeed(value("speed"), value("rate"));
      profile.hold(value("hold"));
      profile.toSpeed(0, value("rate"));
      profile.hold(hop === last ? STAND_AFTER : value("wait"));
    }
    return profile;
  },
});
