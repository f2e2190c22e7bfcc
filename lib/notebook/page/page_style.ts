/** The look of our pages: warm paper, dark ink, one deep green; by night the other way round. */
export const PAGE_STYLE = `
:root {
  color-scheme: light dark;
  --paper: #fbfaf6; --card: #ffffff; --ink: #1c2321; --soft: #55605c; --line: #cfd4cf;
  --mark: #0b5d4e; --mark-ground: #e7f1ed; --warn: #8a3b00; --warn-ground: #fdf1e3;
}
@media screen and (prefers-color-scheme: dark) {
  :root {
    --paper: #141917; --card: #1b211f; --ink: #e5e9e4; --soft: #a7b2ac; --line: #3a443f;
    --mark: #7fd0bb; --mark-ground: #1a2f29; --warn: #f2b779; --warn-ground: #33240f;
  }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0 auto; padding: 1.25rem 1rem 3rem; max-width: 50rem;
  background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.55 system-ui, -apple-system, "Segoe UI", Roboto, "DejaVu Sans", sans-serif;
  overflow-wrap: break-word;
}
a { color: var(--mark); text-underline-offset: .15em; }
a:focus-visible, summary:focus-visible, .scroll:focus-visible {
  outline: 2px solid var(--mark); outline-offset: 2px;
}
h1, h2, h3, h4 { line-height: 1.25; text-wrap: balance; break-after: avoid; }
h1 { font-size: 1.75rem; margin: .4rem 0 1rem; }
h2 { font-size: 1.3rem; margin: 2.2rem 0 .6rem; padding-top: .5rem; border-top: 1px solid var(--line); }
h3 { font-size: 1.1rem; margin: 1.5rem 0 .4rem; }
p { margin: .6rem 0; }
ul, ol { padding-left: 1.4rem; }
li { margin: .25rem 0; }
small, figcaption, caption, .soft { color: var(--soft); font-size: .9rem; }
.home { font-size: .9rem; }
.answer {
  margin: 0 0 1rem; padding: .8rem 1rem; border-left: .4rem solid var(--mark);
  background: var(--mark-ground); font-size: 1.2rem; line-height: 1.4;
}
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; }
.note, .try-next { margin: 1rem 0; padding: .4rem 1rem; border-left: .25rem solid var(--line); }
.caution {
  margin: 1rem 0; padding: .4rem 1rem; border: 2px solid var(--warn);
  background: var(--warn-ground); break-inside: avoid;
}
.caution > p:first-child { color: var(--warn); }
.working { margin: 1rem 0; padding: .2rem 1rem; border: 1px solid var(--line); background: var(--card); }
.working > ol > li { margin: .8rem 0; break-inside: avoid; }
.scroll { overflow-x: auto; margin: 1rem 0; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; font-size: .95rem; line-height: 1.4; }
caption { text-align: left; padding: 0 0 .4rem; caption-side: top; }
th, td { text-align: left; vertical-align: top; padding: .3rem .7rem .3rem 0; border-bottom: 1px solid var(--line); overflow-wrap: normal; }
thead th { vertical-align: bottom; border-bottom: 2px solid var(--ink); }
tbody th { font-weight: 500; }
th.number, td.number { text-align: right; white-space: nowrap; padding-left: .7rem; }
thead th.number { white-space: normal; }
figure { margin: 1rem 0; break-inside: avoid; }
svg { display: block; max-width: 100%; height: auto; }
svg text, svg tspan { white-space: pre; }
.laminate-figure { color: var(--ink); background: var(--card); --figure-ground: var(--card); }
img { max-width: 100%; height: auto; }
figcaption { margin-top: .3rem; }
p.finding { display: none; }
.katex:has(> math[display="block"]) { display: block; overflow-x: auto; overflow-y: hidden; padding: .2rem 0; }
math { font-size: 1.05em; }
math[display="block"] { width: max-content; min-width: 100%; }
pre, code { font-family: ui-monospace, "Cascadia Mono", "DejaVu Sans Mono", Menlo, monospace; font-size: .9em; }
pre { overflow-x: auto; margin: .6rem 0; padding: .6rem .8rem; background: var(--card); border: 1px solid var(--line); line-height: 1.4; }
:not(pre) > code { overflow-wrap: anywhere; }
details.code { margin: .4rem 0; }
details.code summary { color: var(--soft); font-size: .85rem; cursor: pointer; width: max-content; max-width: 100%; }
details.folded { margin: 0 0 1rem; }
details.folded > summary { cursor: pointer; width: max-content; max-width: 100%; padding: .3rem 0; color: var(--mark); }
.live { margin: 1rem 0; padding: .4rem 1rem; border: 1px solid var(--line); }
.live-answer { font-weight: 600; min-height: 3.1em; }
.sliders label { display: grid; grid-template-columns: 12rem minmax(6rem, 1fr) 6rem; gap: .8rem; align-items: center; padding: .2rem 0; }
.sliders input { width: 100%; accent-color: var(--mark); min-height: 1.8rem; }
.sliders input[type="text"], .exercise input { font: inherit; color: inherit; background: var(--card); border: 1px solid var(--soft); padding: .2rem .5rem; }
.sliders output { font-variant-numeric: tabular-nums; }
.exercise, .verdicts { margin: 1rem 0; padding: .4rem 1rem; border-left: .25rem solid var(--mark); }
.exercise form { display: flex; flex-wrap: wrap; gap: .5rem; align-items: end; }
.exercise input { width: 10rem; }
.exercise button, .verdicts button { font: inherit; color: var(--paper); background: var(--mark); border: 0; padding: .3rem .9rem; }
footer { margin-top: 3rem; padding-top: .6rem; border-top: 1px solid var(--line); color: var(--soft); font-size: .9rem; }
.notebooks { list-style: none; padding: 0; }
.notebooks > li { margin: 0 0 1.4rem; }
.notebooks h2 { border: 0; margin: 0 0 .3rem; padding: 0; }
.failed { border-left-color: var(--warn); background: var(--warn-ground); }
.sheet { margin: 1.5rem 0; padding: .2rem 1rem 1rem; border: 1px solid var(--line); background: var(--card); }
.sheet > h2 { margin-top: .8rem; padding-top: 0; border: 0; }
.checklist ul { list-style: none; padding-left: 0; }
.checklist li { padding-left: 1.6em; text-indent: -1.6em; }
@media screen and (max-width: 40rem) {
  .sliders label { grid-template-columns: minmax(0, 1fr) auto; gap: 0 .8rem; }
  .sliders input { grid-row: 2; grid-column: 1 / -1; }
  figure { overflow-x: auto; }
  figure svg { min-width: 30rem; }
  p.finding { display: block; position: sticky; left: 0; font-weight: 600; margin: 0 0 .3rem; }
  p.finding::after { content: " Swipe to see all of the figure."; font-weight: 400; font-size: .9rem; color: var(--soft); }
  p.finding + svg .finding { display: none; }
  figcaption { position: sticky; left: 0; }
  .cards thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .cards, .cards caption, .cards tbody, .cards tr, .cards tbody th, .cards td { display: block; width: 100%; }
  .cards tr { padding: .5rem 0; border-bottom: 1px solid var(--line); }
  .cards tbody th, .cards td, .cards td.number { border: 0; padding: .1rem 0; text-align: left; white-space: normal; }
  .cards tbody th { font-weight: 600; }
  .cards td { display: grid; grid-template-columns: 9.5rem minmax(0, 1fr); column-gap: .7rem; }
  .cards td::before { content: attr(data-label); color: var(--soft); }
}
@media print {
  @page { size: A4; margin: 12mm 14mm; }
  body { max-width: none; padding: 0; font-size: 8.5pt; line-height: 1.33; background: none; }
  nav, .home, details.code, .sliders, .exercise form, .verdicts button { display: none; }
  .answer, .caution { background: none; }
  a { color: inherit; text-decoration: none; }
  .scroll, pre, .katex:has(> math[display="block"]) { overflow: visible; }
  pre { white-space: pre-wrap; }
  h1 { font-size: 16pt; margin: 0 0 .5rem; }
  h2 { font-size: 11pt; margin: .6rem 0 .25rem; padding-top: .2rem; }
  h3 { font-size: 10pt; margin: .6rem 0 .2rem; }
  .answer { font-size: 11pt; margin: 0 0 .5rem; padding: .3rem .7rem; }
  small, figcaption, caption, .soft { font-size: 8pt; }
  p, .scroll, figure, .note, .try-next, .caution, .working, .live, .exercise { margin: .35rem 0; }
  .note, .try-next, .caution, .working, .live { padding: .1rem .7rem; }
  figure svg { width: auto; max-width: 120mm; max-height: 76mm; }
  table { font-size: 8pt; line-height: 1.25; }
  th, td { padding: .1rem .45rem .1rem 0; }
  th.number, td.number { padding-left: .2rem; }
  thead { display: table-header-group; break-after: avoid; }
  tbody tr:first-child { break-before: avoid; }
  caption { break-after: avoid; }
  tr, .answer { break-inside: avoid; }
  li { margin: .1rem 0; }
  .working > ol > li { margin: .4rem 0; }
  .working > ol > li > p { margin: .15rem 0; }
  .working ul, .working ul > li { display: inline; padding: 0; }
  .working ul > li:not(:last-child)::after { content: "; "; }
  .caution > ul, .try-next > ul { margin: .2rem 0; }
  footer { margin-top: .5rem; padding-top: .2rem; font-size: 8pt; }
  body:has(.sheet) > :is(header, nav, footer), body:has(.sheet) main > :not(.sheet) { display: none; }
  .sheet { margin: 0; padding: 0; border: 0; background: none; font-size: 12pt; line-height: 1.3; }
  .sheet table { font-size: 12pt; line-height: 1.25; width: 100%; }
  .sheet figure svg { max-width: 100%; max-height: none; }
  .sheet > h2 { font-size: 17pt; margin: 0 0 .3rem; }
  .sheet caption, .sheet figcaption { color: inherit; font-size: 12pt; font-weight: 600; padding: 0 0 .1rem; break-after: avoid; }
  .sheet th, .sheet td { padding: .22rem .7rem .22rem 0; border-color: #888; }
  .sheet th:last-child, .sheet td:last-child { padding-right: 0; }
  .sheet .scroll, .sheet figure, .sheet .caution, .sheet .checklist, .sheet .note { margin: .55rem 0; }
  .sheet .caution, .sheet .note { padding: .15rem .7rem; border-width: 1.5pt; }
  .sheet .note { border-width: 0 0 0 3pt; }
  .sheet p, .sheet ul { margin: .2rem 0; }
  .sheet li { margin: .12rem 0; }
  .sheet .checklist, .sheet .note { break-inside: avoid; }
  .sheet thead { break-after: avoid; }
  .sheet tbody tr:first-child { break-before: avoid; }
  .sheet-a4 { page: sheet-a4; }
  .sheet-letter { page: sheet-letter; }
}
@page sheet-a4 { size: A4; margin: 12mm 14mm; }
@page sheet-letter { size: letter; margin: 12mm 14mm; }
`.trim();
