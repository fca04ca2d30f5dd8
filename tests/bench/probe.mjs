// What the benchmarks of the page put into it, and what they say of numbers.

/**
 * Runs before the page: times each animation frame's script (its callbacks and what they put off to right after, which
 * is where the page is brought up to date), counts draw calls and triangles, and gathers the tasks over 50 ms. With
 * `probe.leaveOut` the graphics library is asked for all the same things, only its last step, to fill the picture, is left
 * out: then frames come as often as with a graphics card, and our script has the processor to itself.
 */
export const PROBE = `(() => {
  const probe = { frames: [], tasks: [], calls: 0, triangles: 0, leaveOut: false, onDraw: null };
  window.probe = probe;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) probe.tasks.push(duration);
  }).observe({ type: "longtask" });
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (callback) => ask((now) => {
    const began = performance.now();
    let frame = probe.frames.at(-1);
    if (!frame || frame.now !== now) probe.frames.push((frame = { now, script: 0, calls: 0, triangles: 0 }));
    const before = { calls: probe.calls, triangles: probe.triangles };
    callback(now);
    queueMicrotask(() => queueMicrotask(() => queueMicrotask(() => {
      frame.script += performance.now() - began;
      frame.calls += probe.calls - before.calls;
      frame.triangles += probe.triangles - before.triangles;
    })));
  });
  const gl = WebGL2RenderingContext.prototype;
  for (const [name, count, instances] of [
    ["drawArrays", 2, -1], ["drawElements", 1, -1],
    ["drawArraysInstanced", 2, 3], ["drawElementsInstanced", 1, 4], ["drawRangeElements", 3, -1],
  ]) {
    const draw = gl[name];
    gl[name] = function (...args) {
      probe.calls += 1;
      probe.onDraw?.();
      if (args[0] === this.TRIANGLES) probe.triangles += (args[count] / 3) * (instances < 0 ? 1 : args[instances]);
      return probe.leaveOut ? undefined : draw.apply(this, args);
    };
  }
})()`;

const quantile = (sorted, share) =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
/** Median, 95th percentile and most of some values. */
export const spread = (values) => {
  const sorted = [...values].sort((a, b) => a - b);
  return { median: quantile(sorted, 0.5), p95: quantile(sorted, 0.95), most: sorted.at(-1) ?? 0 };
};

/** A value against its target. */
export const verdict = (value, target) => (value <= target ? `within ${target}` : `OVER ${target}`);
