import { cpus, totalmem } from "node:os";
import { expectWords, readArguments } from "../arguments.ts";
import type { Around } from "../around.ts";
import { type Times, WARM_UP } from "../bench/measure.ts";
import { OPTIMUM_TARGETS, type OptimumTimes } from "../bench/optimum.ts";
import { type BenchResult, measureScenes } from "../bench/scenes.ts";
import { STUDY_TARGETS, type StudyTimes } from "../bench/studies.ts";
import { BENCH_OPTIONS } from "../options.ts";
import { readWhole } from "../quantity.ts";
import { columns, fixed, grouped, section, wrap } from "../report/text.ts";
import { percent } from "../report/units.ts";

/** `bench`: measures a fixed scene and checks what it computes. */
export async function bench(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("bench", words, BENCH_OPTIONS);
  expectWords("bench", args.words, [], 0);
  const runs = readWhole("--runs", args.text("runs") ?? "20", 1, 1000);
  const machine = describeMachine();
  const result = await measureScenes(runs, around);
  const json = { format: "trishaft-bench", format_version: 1, machine, ...result };
  around.out(args.has("json") ? `${JSON.stringify(json, null, 2)}\n` : benchText(machine, result));
  if (!result.check.good) throw new Error("the benchmark's own result is outside what is expected of it");
}

interface Machine {
  readonly node: string;
  readonly system: string;
  readonly processor: string;
  readonly cores: number;
  readonly memory_bytes: number;
}

function describeMachine(): Machine {
  const cores = cpus();
  return {
    node: process.version,
    system: `${process.platform} ${process.arch}`,
    processor: cores[0]?.model.trim() ?? "unknown",
    cores: cores.length,
    memory_bytes: totalmem(),
  };
}

function benchText(machine: Machine, r: BenchResult): string {
  const memory = `${fixed(machine.memory_bytes / 1e9, 0)} GB`;
  const { node, system, processor, cores } = machine;
  return [
    ...wrap(`Node ${node}, ${system}, ${processor}, ${cores} cores, ${memory}`),
    ...wrap(
      `compact, rules, udds: ${grouped(r.steps)} steps of 10 ms; ${r.run_ms.runs} runs after ${WARM_UP} to warm up`,
    ),
    "",
    ...columns(timeRows(r), "lrrrl"),
    ...section("studies", [...optimumLines(r.optimum), ...studyLines(r.studies)]),
    ...section("memory", [
      `log of wltc-class3b: ${grouped(r.log_bytes_wltc)} bytes`,
      ...wrap(
        `heap: ${fixed(r.heap_bytes_per_step, 1)} bytes a step (growth over windows of 2,000 steps without a collection, median)`,
      ),
    ]),
    ...section("check", checkLines(r)),
    "",
  ].join("\n");
}

function timeRows(r: BenchResult): string[][] {
  const row = (label: string, times: Times, more = ""): string[] => [
    label,
    fixed(times.median, 1),
    fixed(times.min, 1),
    fixed(times.p90, 1),
    more,
  ];
  const perStep = (ns: number): string => `${fixed(ns, 0)} ns a step`;
  return [
    ["ms", "median", "least", "p90", ""],
    row("run", r.run_ms, perStep(r.run_ns_per_step)),
    row("run, gridded engine map", r.gridded_ms, perStep(r.gridded_ns_per_step)),
    row("charge balance", r.balance_ms, `${r.balance_runs} runs`),
    row("limits", r.limits_ms),
    row("optimum", r.optimum.optimum_ms, "201 charges, 60 points, on/off"),
    row("equivalent consumption", r.optimum.equivalent_ms),
    row(
      "own strategy",
      r.studies.own_ms,
      `${fixed(r.studies.own_added_ms_per_1000_s, 0)} ms added to 1,000 s`,
    ),
    row("start of the command line", r.start_ms, `${r.start_ms.runs} starts`),
  ];
}

const verdict = (good: boolean, target: string): string => `${good ? "within" : "NOT within"} ${target}`;

function optimumLines({ optimum_ms, equivalent_over_rules: ratio, ...found }: OptimumTimes): string[] {
  const { optimum, equivalent } = OPTIMUM_TARGETS;
  return [
    `an optimum takes ${fixed(optimum_ms.median, 0)} ms: ${verdict(optimum_ms.median <= optimum, `${optimum} ms`)}; ` +
      `${fixed(found.l_per_100km, 3)} L/100 km, grid error ${percent(found.grid_error_share, 2)}`,
    `equivalent consumption takes ${fixed(ratio, 1)} rules runs: ${verdict(ratio <= equivalent, `${equivalent}`)}`,
  ];
}

function studyLines({ own_added_ms_per_1000_s: own, sweep }: StudyTimes): string[] {
  const { jobs, threads, one_thread_ms: one, all_threads_ms: all, efficiency, same } = sweep;
  return [
    `an own strategy adds ${fixed(own, 0)} ms to 1,000 simulated seconds: ${verdict(own <= STUDY_TARGETS.own, `${STUDY_TARGETS.own} ms`)}`,
    ...wrap(
      `sweep of ${jobs} balanced runs: ${grouped(one)} ms on one thread, ${grouped(all)} ms on ${threads}: ` +
        `${percent(efficiency)} of ${threads} times one, ${verdict(efficiency >= STUDY_TARGETS.efficiency, percent(STUDY_TARGETS.efficiency, 0))}; ` +
        `${same ? "the same rows" : "NOT the same rows"}`,
    ),
  ];
}

function checkLines({ check }: BenchResult): string[] {
  return [
    `ledger closes to ${check.closure_relative.toExponential(1)} of the energy turned over`,
    `${fixed(check.l_per_100km_balanced, 3)} L/100 km charge-balanced, gridded map ${percent(check.gridded_difference, 2)} away`,
    check.good ? "as expected" : "NOT as expected",
  ];
}
