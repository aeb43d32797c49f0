import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { paperWords } from './words.ts'

const DRAWN_RULE = '1px solid #999'

/** The style of a job sheet, on paper and as a page: black on white, no cell split between pages. */
export const PAPER_STYLE = `
.job-sheet {
  color: #000;
  background: #fff;
  font-family: "Hyperlegible Next", "Atkinson Hyperlegible Next", "Segoe UI", Arial, Helvetica, sans-serif;
  font-size: 10pt;
  line-height: 1.35;
  font-variant-numeric: tabular-nums;
  overflow-wrap: anywhere;
}
.job-sheet * { box-sizing: border-box; margin: 0; }
.job-sheet h1 { font-size: 17pt; line-height: 1.2; }
.job-sheet h2 { font-size: 12pt; line-height: 1.25; }
.job-sheet header { padding-block-end: 2mm; border-block-end: 2px solid #000; }
.job-sheet dl { display: grid; margin-block-start: 2mm; }
.job-sheet dl > div { display: grid; grid-template-columns: 20mm minmax(0, 1fr); }
.job-sheet dt { color: #333; }
.job-sheet .heading {
  display: flex;
  flex-wrap: wrap;
  align-items: baseline;
  column-gap: 4mm;
  margin-block-start: 5mm;
  padding-block-end: 1mm;
  border-block-end: 1.5px solid #000;
  break-inside: avoid;
  break-after: avoid;
}
.job-sheet table { inline-size: 100%; border-collapse: collapse; table-layout: fixed; }
.job-sheet tbody, .job-sheet tr, .job-sheet .check, .job-sheet .note, .job-sheet figure {
  break-inside: avoid;
}
.job-sheet tbody { border-block-end: ${DRAWN_RULE}; }
.job-sheet th, .job-sheet td { padding-block: 0.9mm; vertical-align: baseline; text-align: start; font-weight: 400; }
.job-sheet th { inline-size: auto; padding-inline-end: 4mm; }
.job-sheet .figure { inline-size: 38mm; text-align: end; }
.job-sheet .unit { inline-size: 20mm; padding-inline-start: 2mm; }
.job-sheet .long { inline-size: 58mm; text-align: end; padding-inline-end: 2mm; }
.job-sheet .result .figure, .job-sheet .result .long { font-weight: 700; }
.job-sheet .empty { border-block-end: 1px solid #000; }
.job-sheet .small { display: block; font-size: 8.5pt; color: #333; }
.job-sheet .working td { padding-block-start: 0; padding-inline-start: 6mm; }
.job-sheet code {
  display: block;
  font-family: "Hyperlegible Mono", "Atkinson Hyperlegible Mono", Consolas, monospace;
  font-size: 8.5pt;
  white-space: pre-wrap;
}
.job-sheet .table { table-layout: auto; font-size: 8.5pt; margin-block-end: 2mm; }
.job-sheet .table.many { font-size: 7pt; }
.job-sheet .table thead th { font-weight: 700; vertical-align: bottom; border-block-end: 1.5px solid #000; }
.job-sheet .table .body { break-inside: auto; border-block-end: 1.5px solid #000; }
.job-sheet .table .body tr { border-block-end: ${DRAWN_RULE}; }
.job-sheet .table th, .job-sheet .table td { padding-inline-end: 2.5mm; overflow-wrap: break-word; }
.job-sheet .table.many th, .job-sheet .table.many td { padding-inline-end: 1.3mm; }
.job-sheet .table .end, .job-sheet .table .body th { text-align: end; }
.job-sheet .table .body :is(.end, th) { white-space: nowrap; }
.job-sheet .table .small { font-size: 0.9em; }
.job-sheet .check {
  display: grid;
  grid-template-columns: auto minmax(0, 1fr);
  column-gap: 3mm;
  align-items: start;
  padding-block: 1.4mm;
  border-block-end: ${DRAWN_RULE};
}
.job-sheet .sign { margin-block-start: 0.4mm; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.job-sheet .columns { padding-block: 2mm 1mm; break-inside: avoid; }
.job-sheet .columns table { table-layout: auto; inline-size: auto; }
.job-sheet .columns :is(td, th) { text-align: end; padding-inline: 0 6mm; }
.job-sheet .columns :is(td, th):first-child { text-align: start; }
.job-sheet .columns thead th { font-size: 0.9em; vertical-align: bottom; }
.job-sheet .run { break-inside: auto; }
.job-sheet .run .setups { inline-size: 100%; margin-block: 2mm; }
.job-sheet .run .setups tbody tr:first-child > * { border-block-start: ${DRAWN_RULE}; }
.job-sheet .run .setups :is(td, th):is(:last-child, .named) { padding-inline-end: 0; }
.job-sheet .run .setups .named { text-align: start; font-size: 8.5pt; padding-block-end: 2mm; }
.job-sheet .steps { padding-block: 2mm 1mm; }
.job-sheet .steps p { break-after: avoid; }
.job-sheet .steps td, .job-sheet .steps th { padding-block: 1.4mm; }
.job-sheet .steps .tick { inline-size: 7mm; }
.job-sheet .steps .tick .sign { margin: 0 0 -0.8mm; }
.job-sheet .steps .number { inline-size: 7mm; }
.job-sheet .note { display: grid; gap: 1mm; padding-block: 1.4mm; max-inline-size: 150mm; }
.job-sheet .note p { white-space: pre-line; }
.job-sheet .note .small { display: inline; }
.job-sheet .caution { margin-block: 1.4mm; padding-block: 0; padding-inline-start: 3mm; border-inline-start: 3px solid #000; }
.job-sheet figure {
  display: grid;
  grid-template-columns: auto minmax(0, 1fr);
  column-gap: 5mm;
  align-items: center;
  margin-block-start: 4mm;
}
.job-sheet figcaption { display: grid; gap: 1mm; }
.job-sheet svg { display: block; max-inline-size: 100%; overflow: visible; }
.job-sheet .origin { font-size: 8pt; color: #333; }
.job-sheet .of-example .figure, .job-sheet .of-example .long { text-decoration: underline; text-decoration-style: dashed; text-decoration-thickness: 0.6pt; text-underline-offset: 2pt; }
.job-sheet.paged { font-size: 8pt; line-height: 1.2; }
.paged .fine { padding-block: 0.6mm; font-size: 7.5pt; border-block-end: ${DRAWN_RULE}; }
.paged header { display: grid; grid-template-columns: minmax(0, 1fr) auto; column-gap: 6mm; }
.paged header h1, .paged header dl { grid-column: 1; }
.paged header dl { margin-block-start: 1mm; align-content: start; }
.paged header .code { display: grid; grid-template-columns: minmax(0, 44mm) auto; grid-column: 2; grid-row: 1 / span 2; margin: 0; text-align: end; }
.paged header .code figcaption { order: -1; }
.paged .flow { columns: 2; column-gap: 7mm; }
.paged .heading { margin-block-start: 2.6mm; padding-block-end: 0.4mm; }
.paged section:first-child > .heading { margin-block-start: 1.4mm; }
.paged .heading + table > tbody:first-child { break-after: avoid; }
.paged h2 { font-size: 10.5pt; }
.paged .small { font-size: 7.5pt; }
.paged th, .paged td { padding-block: 0.4mm; }
.paged th { padding-inline-end: 2mm; }
.paged .figure { inline-size: 24mm; }
.paged .unit { inline-size: 11mm; padding-inline-start: 1.5mm; }
.paged .long { inline-size: 35mm; }
.paged .check { column-gap: 2mm; padding-block: 0.7mm; }
.paged .note { padding-block: 0.7mm; }
.paged .caution { margin-block: 0.8mm; padding-block: 0; }
.paged .steps { padding-block: 1mm 0; }
.paged .steps th, .paged .steps td { padding-block: 0.5mm; }
.paged .steps .tick, .paged .steps .number { inline-size: 5.5mm; }
.paged .steps .figure { inline-size: 17mm; }
.paged .flow figure { grid-template-columns: minmax(0, 1fr); row-gap: 0.6mm; margin-block: 1.6mm; }
.paged .flow figcaption { order: -1; font-weight: 700; }
.paged .flow figcaption .small { font-weight: 400; }
.paged .flow .description { display: none; }
.paged :is(.table, .run, .columns) { column-span: all; }
.job-sheet footer { margin-block-start: 6mm; padding-block-start: 2mm; border-block-start: ${DRAWN_RULE}; font-size: 8.5pt; }
`

/** A text as a string of a style sheet, with every character escaped that could end the string. */
const quoted = (text: string): string =>
  `"${[...text].map((sign) => (/[\p{L}\p{N} ]/u.test(sign) ? sign : `\\${(sign.codePointAt(0) as number).toString(16)} `)).join('')}"`

const LONGEST_FOOT = 90

/** The foot of each page: the title and job, and the page number. */
export function pageStyle(title: string, job = ''): string {
  const text = [title || UNTITLED_SHEET, job.trim()].filter(Boolean).join(', ')
  const foot = text.length > LONGEST_FOOT ? `${text.slice(0, LONGEST_FOOT - 1)}…` : text
  const type = 'font: 8.5pt "Hyperlegible Next", Arial, Helvetica, sans-serif; color: #000;'
  return `
@page {
  margin: 10mm 14mm 13mm;
  @bottom-left { content: ${quoted(foot)}; ${type} inline-size: 75%; text-align: left; }
  @bottom-right { content: ${quoted(paperWords.page)} counter(page) ${quoted(paperWords.pageOf)} counter(pages); ${type} text-align: right; }
}
`
}
