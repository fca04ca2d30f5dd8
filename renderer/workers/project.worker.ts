import "../bridge/jitless.ts";
import { expose } from "comlink";
import { projectWork } from "./project-work.ts";

expose(projectWork);
