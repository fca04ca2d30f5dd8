import { expose } from "comlink";
import { cycleWork } from "./cycle-work.ts";

expose(cycleWork);
