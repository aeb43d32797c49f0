import { drawTree } from '../../cells/shared/draw-tree.ts'
import type { Node as Drawn } from '../../drawings/canvas/tree.ts'
import type { Sheet } from '../../worksheet/index.ts'
import { type JobSheetOptions, jobSheet } from './job-sheet.ts'
import { PAPER_STYLE, pageStyle } from './paper-style.ts'

/** The job sheet replaces the page on paper, and is hidden on the screen. */
const IN_PLACE_OF_THE_PAGE = `
body > .job-sheet { display: none; }
@media print {
  html, body { background: #fff !important; }
  body > :not(.job-sheet) { display: none !important; }
  body > .job-sheet { display: block; }
}
`

/** Builds the nodes of a job sheet: no text is ever read as markup. */
function built(node: Drawn): Element {
  if (node.tag === 'svg') return drawTree(node)
  const made = document.createElement(node.tag)
  for (const [name, value] of Object.entries(node.attributes)) made.setAttribute(name, String(value))
  for (const child of node.children) made.append(typeof child === 'string' ? child : built(child))
  return made
}

let clear = (): void => {}

/** Lays a sheet out for paper, hidden on the screen. Gives a function that removes it. */
async function layOut(sheet: Sheet, options: JobSheetOptions): Promise<() => void> {
  const { title, job } = sheet.worksheet
  const article = built(await jobSheet(sheet, options))
  const style = new CSSStyleSheet()
  style.replaceSync(PAPER_STYLE + IN_PLACE_OF_THE_PAGE + pageStyle(title, job))
  document.adoptedStyleSheets.push(style)
  document.body.append(article)
  await document.fonts.ready
  return () => {
    article.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style)
  }
}

/** Opens the browser's own print dialogue with the sheet as a job sheet. */
export async function printSheet(sheet: Sheet, options: JobSheetOptions): Promise<void> {
  clear()
  clear = await layOut(sheet, options)
  addEventListener('afterprint', () => clear(), { once: true })
  print()
}
