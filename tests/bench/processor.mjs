// Processor time of a page's animation frames, from the browser's own trace: what a frame costs when nothing else takes
// the processor away in the midst of it. The clock of the wall counts that too.

/** Callbacks of one frame follow each other within this, µs. */
const SAME_FRAME = 1000;

/** Events of the thread that drew most frames, in their order. */
function drawingThread(events) {
  const threads = new Map();
  for (const event of events) {
    if (event.ph !== "X" || event.tdur === undefined) continue;
    const key = `${event.pid} ${event.tid}`;
    const thread = threads.get(key) ?? { events: [], frames: 0 };
    thread.events.push(event);
    if (event.name === "FireAnimationFrame") thread.frames += 1;
    threads.set(key, thread);
  }
  const [busiest] = [...threads.values()].sort((a, b) => b.frames - a.frames);
  return (busiest?.events ?? []).sort((a, b) => a.ts - b.ts);
}

/** Processor time of each frame, its callbacks joined, ms. */
function framesOf(events) {
  const frames = [];
  let end = Number.NEGATIVE_INFINITY;
  for (const { name, ts, dur, tdur } of events) {
    if (name !== "FireAnimationFrame") continue;
    if (ts - end > SAME_FRAME) frames.push(0);
    frames[frames.length - 1] += tdur / 1000;
    end = ts + dur;
  }
  return frames;
}

/**
 * Does something and tells what meanwhile each frame's script and each whole task (script, layout, painting) took of the
 * processor, ms.
 */
export async function processorOf(browser, page, act) {
  const categories = ["devtools.timeline", "disabled-by-default-devtools.timeline", "toplevel"];
  await browser.startTracing(page, { categories });
  await act();
  const events = drawingThread(JSON.parse((await browser.stopTracing()).toString()).traceEvents);
  const tasks = events.filter(({ name }) => /RunTask$/.test(name)).map(({ tdur }) => tdur / 1000);
  return { frames: framesOf(events), tasks };
}
