/** Style of a report: the light sheet, set for screen and for A4 or letter. No network, no script. */
export const REPORT_STYLE = `
@page { margin: 16mm 15mm 18mm; @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; color: #465157; } }
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 62rem; padding: 1.5rem; background: #fff; color: #182024;
  font: 16px/1.4 "Source Sans 3 Variable", "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", sans-serif;
  font-variant-numeric: tabular-nums lining-nums; overflow-wrap: anywhere; }
h1 { font-size: 28px; line-height: 1.15; margin: 0 0 .2em; }
h2 { font-size: 20px; margin: 1.6em 0 .4em; padding-top: .4em; border-top: 1px solid #182024; }
h3 { font-size: 16px; margin: 1.2em 0 .3em; }
p { margin: .4em 0; }
.small, .foot { color: #465157; font-size: 14px; }
table { border-collapse: collapse; font-size: 14px; margin: .3em 0; }
table.wide { width: 100%; }
th, td { text-align: left; font-weight: 400; vertical-align: top; padding: .2em 1em .2em 0; border-bottom: 1px solid #DCE2DF; }
thead th { font-weight: 600; border-bottom: 1px solid #182024; }
th[scope=row] { color: #465157; }
.n { text-align: right; white-space: nowrap; padding-left: 1em; padding-right: 0; }
.wide td.n { width: 6rem; padding-right: 1em; }
.pairs td.n { white-space: normal; }
.columns { display: grid; grid-template-columns: repeat(auto-fit, minmax(19rem, 1fr)); gap: 0 2.5rem; }
.columns table { width: 100%; }
svg { display: block; max-width: 100%; height: auto; margin: .4em 0; }
td svg { display: inline-block; margin: 0; }
svg text { font-size: 14px; } svg text:not([fill]) { fill: #182024; }
pre { padding: .6em .8em; background: #E9EDEA; white-space: pre-wrap; font: 14px/1.4 "Liberation Mono", "Consolas", "Menlo", monospace; }
.foot { margin-top: 2em; padding-top: .5em; border-top: 1px solid #182024; }
@media print {
  body { max-width: none; padding: 0; font-size: 10.5pt; }
  table, .small, .foot, pre { font-size: 9pt; }
  h1 { font-size: 19pt; } h2 { font-size: 13pt; } h3 { font-size: 11pt; }
  h1, h2, h3 { break-after: avoid; }
  svg, tr, pre, figure { break-inside: avoid; } thead { display: table-header-group; }
  p { orphans: 3; widows: 3; }
}`;
