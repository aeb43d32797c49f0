import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import type { Sheet } from '../../worksheet/index.ts'
import { escaped, htmlText } from './html-text.ts'
import { type JobSheetOptions, jobSheet } from './job-sheet.ts'
import { PAPER_STYLE, pageStyle } from './paper-style.ts'
import { paperWords } from './words.ts'

/** The page fetches nothing and runs nothing; its style is inside it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

const SCREEN = `
html { background: #c4c4c4; }
body { margin: 0; }
@media screen {
  .job-sheet { max-inline-size: 190mm; margin: 1rem auto; padding: clamp(4mm, 4vw, 12mm); font-size: 1rem; }
  .job-sheet .small, .job-sheet code, .job-sheet footer { font-size: 0.88rem; }
}
@media print { html { background: #fff; } }
@media screen and (max-width: 44rem) {
  .job-sheet figure { grid-template-columns: minmax(0, 1fr); row-gap: 2mm; }
  .job-sheet svg:not(.sign) { block-size: auto; }
}
@media screen and (max-width: 30rem) {
  .job-sheet .figure { inline-size: 28vw; }
  .job-sheet .unit { inline-size: 15vw; }
  .job-sheet .long { inline-size: 43vw; }
  .job-sheet .steps .figure { inline-size: 17vw; }
}
`

/** The sheet as one HTML file that anyone can read: figures and drawings, no script, nothing fetched. */
export async function handOverPage(sheet: Sheet, options: JobSheetOptions): Promise<string> {
  const { title, job } = sheet.worksheet
  const body = htmlText(await jobSheet(sheet, { foot: paperWords.madeWith, ...options }))
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light">
<meta name="referrer" content="no-referrer">
<title>${escaped(title || UNTITLED_SHEET)}</title>
<style>${PAPER_STYLE}${SCREEN}${pageStyle(title, job)}</style>
</head>
<body>
${body}
</body>
</html>
`
}
