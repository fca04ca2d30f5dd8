import { at } from "../../shared/at.ts";

/** Samples first … last, both included. */
interface Run {
  readonly first: number;
  readonly last: number;
}

/** Runs that fit together once strays between them are left out. */
interface Chain {
  readonly runs: Run[];
  size: number;
  last: number;
}

/**
 * Finds samples that cannot be right because the way to them is impossible: the list is cut wherever two neighbours
 * exclude each other, and short runs between such cuts are set aside when the rest fits together without them, or when
 * they stand at an end (a receiver that starts cold gives such).
 * @param count of samples
 * @param possible whether sample j may follow sample i
 * @param stray runs of fewer samples than this may be set aside
 * @returns 1 for each sample to believe
 */
export function believable(
  count: number,
  possible: (i: number, j: number) => boolean,
  stray: number,
): Uint8Array {
  const chains: Chain[] = [];
  for (const run of runsOf(count, possible)) join(chains, run, possible, stray);
  const good = new Uint8Array(count);
  for (const chain of withoutEnds(chains, stray)) {
    for (const { first, last } of chain.runs) good.fill(1, first, last + 1);
  }
  return good;
}

/**
 * Adds a run: to a chain it fits on, the strays behind that chain being dropped, or else as a chain of its own. What is
 * dropped must be less than what it is dropped for: two wrong stretches may well agree.
 */
function join(chains: Chain[], run: Run, possible: (i: number, j: number) => boolean, stray: number): void {
  const size = run.last - run.first + 1;
  let dropped = 0;
  for (let k = chains.length - 1; k >= 0; k -= 1) {
    const chain = at(chains, k);
    if (dropped <= chain.size && possible(chain.last, run.first)) {
      chains.length = k + 1;
      chain.runs.push(run);
      chain.size += size;
      chain.last = run.last;
      return;
    }
    if (chain.size >= stray) break;
    dropped += chain.size;
  }
  chains.push({ runs: [run], size, last: run.last });
}

function runsOf(count: number, possible: (i: number, j: number) => boolean): Run[] {
  const runs: Run[] = [];
  let first = 0;
  for (let i = 1; i <= count; i += 1) {
    if (i < count && possible(i - 1, i)) continue;
    runs.push({ first, last: i - 1 });
    first = i;
  }
  return runs;
}

function withoutEnds(chains: readonly Chain[], stray: number): Chain[] {
  const longest = chains.reduce((most, chain) => Math.max(most, chain.size), 0);
  const goes = (chain: Chain | undefined): boolean =>
    chain !== undefined && chain.size < stray && chain.size < longest;
  const left = [...chains];
  while (left.length > 1 && goes(left[0])) left.shift();
  while (left.length > 1 && goes(left[left.length - 1])) left.pop();
  return left;
}
