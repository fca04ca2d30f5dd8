export {
  givenSpeeds,
  SITUATIONS,
  type Situation,
  type SituationId,
  situationById,
} from "../../sim/bench/situations.ts";
