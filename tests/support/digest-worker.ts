import { createHash } from "node:crypto";
import { parentPort, workerData } from "node:worker_threads";
import { runDigest } from "./digest.ts";

parentPort?.postMessage(runDigest(String(workerData), createHash));
