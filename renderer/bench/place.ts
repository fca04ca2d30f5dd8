export { Bench as Sheet } from "./Bench.tsx";
export { BenchStrip as Strip } from "./BenchStrip.tsx";
export { BenchTop as Top } from "./BenchTop.tsx";
export { benchKey as key } from "./keys.ts";
