export { roadKey as key } from "./keys.ts";
export { Road as Sheet } from "./Road.tsx";
export { RoadStrip as Strip } from "./RoadStrip.tsx";
export { RoadTop as Top } from "./RoadTop.tsx";
