import type { PublishedRow } from '../../src/functions/published/report.ts'

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')

/** The page’s style, in a separate file as the site’s policy requires. */
export const STYLE = `
body { font: 15px/1.4 system-ui, sans-serif; color: #111; background: #fff; margin: 2rem auto; max-width: 75rem; padding: 0 1rem; }
h1 { font-size: 1.5rem; } h2 { font-size: 1.1rem; margin-top: 2rem; break-after: avoid; }
table { border-collapse: collapse; width: 100%; } th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.6rem; border-bottom: 1px solid #999; }
td.figure { white-space: nowrap; } code { font-size: 0.85em; overflow-wrap: anywhere; } tr { break-inside: avoid; } thead { display: table-header-group; }
@media print { body { font-size: 10px; margin: 0; max-width: none; } }
`

const row = (one: PublishedRow): string => `
<tr>
<td>${escaped(one.quantity)}<br><code>${escaped(one.formula)}</code></td>
<td>${escaped(one.source)}${one.quoted ? '; read in a quotation' : ''}. ${escaped(one.note ?? '')}</td>
<td class="figure">${escaped(one.published)}</td>
<td class="figure">${escaped(one.ours)}</td>
<td class="figure">${escaped(one.difference)}</td>
<td>${one.agrees ? 'agrees' : '<b>differs</b>'}</td>
</tr>`

const HEADINGS = ['Quantity and formula', 'Source', 'Published', 'Ours', 'Difference', 'Within rounding']

const section = (name: string, rows: readonly PublishedRow[]): string => `
<h2 id="${escaped(name)}">${escaped(name)}</h2>
<table>
<thead><tr>${HEADINGS.map((heading) => `<th scope="col">${heading}</th>`).join('')}</tr></thead>
<tbody>${rows.map(row).join('')}</tbody>
</table>`

interface Checks {
  /** Address of the style, from the page. */
  readonly style: string
  /** Version of the program whose figures these are. */
  readonly version: string
  /** Every function, and `units`, with the rows that check it. */
  readonly groups: readonly (readonly [name: string, rows: readonly PublishedRow[]])[]
  readonly rows: readonly PublishedRow[]
  /** Functions that no published value checks. */
  readonly unchecked: readonly string[]
}

/** The validation page: every published value beside ours, by function, to be read and printed. */
export function validationPage({ style, version, groups, rows, unchecked }: Checks): string {
  const sources = new Set(rows.map(({ source }) => source.slice(0, source.indexOf(' (')))).size
  const disagreeing = rows.filter(({ agrees }) => !agrees).length
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width">
<title>Evenfield ${escaped(version)}: published values</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main>
<h1>Evenfield ${escaped(version)}: published values</h1>
<p>${rows.length} published values from ${sources} sources, each compared with what the functions of this version give. ${
    disagreeing === 0
      ? 'All agree within the rounding of the printed figure.'
      : `${disagreeing} differ by more than the printed rounding.`
  } A value that checks several functions is listed under each.</p>
${groups.map(([name, own]) => section(name, own)).join('')}
<h2>Without a published value</h2>
<p>These functions are checked by their derivations and worked examples: ${unchecked.map((name) => `<code>${escaped(name)}</code>`).join(', ')}.</p>
</main>
</body>
</html>
`
}
