import { drawTree } from '../../cells/shared/draw-tree.ts'
import type { Node as Drawn } from '../../drawings/canvas/tree.ts'
import type { Sheet } from '../../worksheet/index.ts'
import { type Drawers, drawersOf, type JobSheetOptions, jobSheetWith } from './job-sheet.ts'
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

/** Lays a sheet out for paper, hidden on the screen. Gives a function that removes it. */
function layOut(sheet: Sheet, options: JobSheetOptions, drawers: Drawers): () => void {
  const { title, job } = sheet.worksheet
  const article = built(jobSheetWith(sheet, options, drawers))
  const style = new CSSStyleSheet()
  style.replaceSync(PAPER_STYLE + IN_PLACE_OF_THE_PAGE + pageStyle(title, job))
  document.adoptedStyleSheets.push(style)
  document.body.append(article)
  return () => {
    article.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style)
    clear = undefined
  }
}

let clear: (() => void) | undefined

/** Lays a sheet out until it is printed; without waiting, so that a print begun from the browser's menu has it. */
export function layOutForPrint(sheet: Sheet, options: JobSheetOptions, drawers: Drawers): void {
  if (clear) return
  clear = layOut(sheet, options, drawers)
  addEventListener('afterprint', () => clear?.(), { once: true })
}

/** Opens the browser's own print dialogue with the sheet as a job sheet. */
export async function printSheet(sheet: Sheet, options: JobSheetOptions): Promise<void> {
  const drawers = await drawersOf(sheet)
  clear?.()
  layOutForPrint(sheet, options, drawers)
  await document.fonts.ready
  print()
}
