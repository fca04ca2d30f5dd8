/** Paper that a handout is set for. */
export const PAPERS = ["a4", "letter"] as const;

/** One of them. */
export type Paper = (typeof PAPERS)[number];

const SIZES: Readonly<Record<Paper, string>> = { a4: "A4", letter: "letter" };

/** Colours are those of the app on white paper; each stands beside a word, so that a black print loses nothing. */
const RULES = `
:root { color-scheme: light; --ink: #182024; --ink-2: #465157; --rule: #BAC3C0; --well: #E9EDEA;
  --sun: #96396D; --carrier: #A84A00; --ring: #00609A; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 46rem; padding: 1.5rem; background: #fff; color: var(--ink);
  font: 16px/1.45 "Source Sans 3 Variable", "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", sans-serif;
  font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
h1 { font-size: 28px; line-height: 1.15; margin: 0 0 .3em; }
h2 { font-size: 20px; line-height: 1.2; margin: 1.6em 0 .4em; padding-top: .5em; border-top: 1px solid var(--ink); }
h3 { font-size: 16px; margin: 1.2em 0 .3em; }
p, ul, ol, blockquote, pre { margin: .5em 0; }
blockquote { padding: .1em 0 .1em .9em; border-left: 3px solid var(--ink); }
code { font-family: "Liberation Mono", "Consolas", "Menlo", monospace; font-size: .92em; white-space: pre-wrap; }
pre { padding: .5em .7em; background: var(--well); }
hr { border: 0; border-top: 1px solid var(--rule); }
.sun { color: var(--sun); } .carrier { color: var(--carrier); } .ring { color: var(--ring); }
.tag { display: inline-block; min-width: 1.5em; text-align: center; border: 1px solid var(--ink); border-radius: 50%; }
.who { display: flex; align-items: baseline; gap: 2rem; margin: 0 0 1em; padding-bottom: .6em; border-bottom: 1px solid var(--ink); }
.who b { flex: 1; }
.stage { margin: .7em 0; padding: .5em .7em; background: var(--well); break-inside: avoid; break-after: avoid; }
.before { color: var(--ink-2); font-size: 14px; break-after: avoid; }
.stage svg { display: block; max-width: 100%; height: auto; margin-top: .3em; }
.stage svg text { font-size: 14px; fill: var(--ink); }
.q { margin: .9em 0; padding: .6em .8em; border: 1px solid var(--ink); break-inside: avoid; }
.q .name { float: right; color: var(--ink-2); font-size: 14px; padding-left: 1em; }
.q p { margin: 0 0 .4em; }
.line { display: inline-block; width: 11rem; border-bottom: 1px solid var(--ink); height: 1.7em; }
.tol, .foot, .small { color: var(--ink-2); font-size: 14px; }
.q ol { list-style: none; margin: .3em 0 0; padding: 0; }
.q li { padding: .15em 0; }
.box { display: inline-block; width: .9em; height: .9em; border: 1px solid var(--ink); margin-right: .5em; vertical-align: -.08em; }
table { border-collapse: collapse; width: 100%; font-size: 14px; }
th, td { text-align: left; vertical-align: top; padding: .25em .6em .25em 0; border-bottom: 1px solid var(--rule); }
thead th { border-bottom: 1px solid var(--ink); }
td.n { text-align: right; white-space: nowrap; }
.sheet + .sheet { margin-top: 3rem; border-top: 3px double var(--ink); padding-top: 2rem; }
.foot { margin-top: 1.6em; padding-top: .5em; border-top: 1px solid var(--ink); break-inside: avoid; }
@media print {
  body { max-width: none; padding: 0; font-size: 11pt; }
  h1 { font-size: 20pt; } h2 { font-size: 14pt; } h3 { font-size: 11pt; }
  h1, h2, h3 { break-after: avoid; }
  p, li { orphans: 3; widows: 3; }
  tr { break-inside: avoid; } thead { display: table-header-group; }
  .sheet + .sheet { break-before: page; margin: 0; border: 0; padding: 0; }
  .stage, pre { background: none; border: 1px solid var(--rule); }
}`;

/** A text as a string of CSS. */
const cssString = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:;()'’–-]/gu, " ").slice(0, 90)}"`;

/** Style of a printed document: paper, running foot with title and page number, and the rules of its parts. */
export const printStyle = (paper: Paper, foot: string): string =>
  `@page { size: ${SIZES[paper]}; margin: 18mm 18mm 20mm;
  @bottom-left { content: ${cssString(foot)}; font: 9pt sans-serif; color: #465157; }
  @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; color: #465157; } }
${RULES}`;
