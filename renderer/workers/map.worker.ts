import "../bridge/jitless.ts";
import { expose } from "comlink";
import { mapWork } from "./map-work.ts";

expose(mapWork);
