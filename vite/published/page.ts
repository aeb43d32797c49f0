import type { PublishedRow } from '../../src/functions/published/report.ts'
import { plural } from '../../src/units/plural.ts'

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** A text as a string of a style sheet, with every character escaped that could end the string. */
const quoted = (text: string): string =>
  `"${text.replaceAll(/[^\p{L}\p{N} ]/gu, (sign) => `\\${(sign.codePointAt(0) as number).toString(16)} `)}"`

/** The page’s style, in a separate file as the site’s policy requires. On paper the version stands on every page. */
export const validationStyle = (version: string): string => `
body { font: 15px/1.4 system-ui, sans-serif; color: #111; background: #fff; margin: 2rem auto; max-width: 75rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 0.5em; } h2 { font-size: 1.15em; margin: 0; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; } th, td { box-sizing: border-box; text-align: left; vertical-align: top; padding: 0.3em 0.5em; border-bottom: 1px solid #999; }
thead { display: table-header-group; } thead th { border-bottom: 2px solid #111; hyphens: auto; } tr { break-inside: avoid; }
.source { width: 32%; } .figure { width: 12%; } td { overflow-wrap: break-word; } .rounding { width: 8%; }
h2.rest { margin: 2em 0 0; } .function { padding-top: 1.4em; } tr:has(.function) { break-after: avoid; }
code { font-size: 0.85em; overflow-wrap: anywhere; }
@page { margin: 12mm 12mm 15mm; @bottom-left { content: ${quoted(titleOf(version))}; font: 8pt system-ui, sans-serif; } @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt system-ui, sans-serif; } }
@media print { body { font-size: 8pt; margin: 0; padding: 0; max-width: none; } a { color: inherit; text-decoration: none; } }
`

const titleOf = (version: string): string => `Evenfield ${version}: published values`

const row = (one: PublishedRow): string => `
<tr>
<td>${escaped(one.quantity)}<br><code>${escaped(one.formula)}</code></td>
<td>${escaped(one.source)}${one.quoted ? '; as quoted by others' : ''}. ${escaped(one.note ?? '')}</td>
<td>${escaped(one.published)}</td>
<td>${escaped(one.ours)}</td>
<td>${escaped(one.difference)}</td>
<td>${one.agrees ? 'agrees' : '<b>differs</b>'}</td>
</tr>`

const HEADINGS = [
  ['Quantity and formula', ''],
  ['Source', 'source'],
  ['Published', 'figure'],
  ['Computed', 'figure'],
  ['Difference', 'figure'],
  ['Result', 'rounding'],
] as const

/** The rows of a function. All are in one table, so that columns line up and their heads are on every printed page. */
const section = (name: string, rows: readonly PublishedRow[]): string => `
<tbody>
<tr><th class="function" scope="rowgroup" colspan="${HEADINGS.length}"><h2>${escaped(name)}</h2></th></tr>${rows.map(row).join('')}
</tbody>`

interface Checks {
  /** Address of the style, from the page. */
  readonly style: string
  /** Version of the program whose figures these are, and its day. */
  readonly version: string
  /** Every function, and `units`, with the rows that check it. */
  readonly groups: readonly (readonly [name: string, rows: readonly PublishedRow[]])[]
  readonly rows: readonly PublishedRow[]
  /** Functions that no published value checks. */
  readonly unchecked: readonly string[]
}

/** The validation page: every published value beside the computed one, by function, to be read and printed. */
export function validationPage({ style, version, groups, rows, unchecked }: Checks): string {
  const sources = new Set(rows.map(({ source }) => source.slice(0, source.indexOf(' (')))).size
  const disagreeing = rows.filter(({ agrees }) => !agrees).length
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width">
<title>${escaped(titleOf(version))}</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main>
<h1>${escaped(titleOf(version))}</h1>
<p>${plural(rows.length, 'published value')} from ${plural(sources, 'source')}, each compared with what the functions of this version give. ${
    disagreeing === 0
      ? 'All agree within the rounding of the printed figure, or within what is said beside the source.'
      : `${disagreeing} ${disagreeing === 1 ? 'differs' : 'differ'} by more than the rounding of the printed figure and what is said beside the source.`
  } A value that checks several functions is listed under each.</p>
<table>
<thead><tr>${HEADINGS.map(([heading, name]) => `<th scope="col" class="${name}">${heading}</th>`).join('')}</tr></thead>${groups.map(([name, own]) => section(name, own)).join('')}
</table>
<h2 class="rest">Without a published value</h2>
<p>These functions are checked by their derivations and worked examples: ${unchecked.map((name) => `<code>${escaped(name)}</code>`).join(', ')}.</p>
</main>
</body>
</html>
`
}
