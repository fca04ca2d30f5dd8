export { lessonKey as key } from "./keys.ts";
export { LessonSheet as Sheet, LessonStrip as Strip, LessonTop as Top } from "./LessonPlace.tsx";
