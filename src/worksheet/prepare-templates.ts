import { Precompiler } from '../language/compiling/precompile.ts'
import type { PrecompiledFormulas } from '../language/evaluating/precompiled.ts'
import type { Library } from '../language/index.ts'
import { formulasShown } from './document/message-places.ts'
import { isNamed } from './document/names.ts'
import { Sheet } from './editing/sheet.ts'
import type { Node } from './engine/node.ts'
import { readFrame } from './frame/frame-readings.ts'
import { feedOf } from './run/feed.ts'
import type { Cell, Worksheet } from './schema/document.ts'
import { footerOf } from './table/footer.ts'
import { TABLES } from './table/table-capability.ts'

/** Opens worksheets, computes every outcome as filling them in does, and stores what their formulas compile to. */
export function prepare(worksheets: readonly Worksheet[], library: Library): PrecompiledFormulas {
  const compiler = new Precompiler()
  for (const worksheet of worksheets) {
    const sheet = new Sheet(worksheet, library, { compiler, tables: TABLES, frames: readFrame })
    for (const cell of sheet.cells) lookAt(sheet, cell)
  }
  return compiler.prepared
}

function lookAt(sheet: Sheet, cell: Cell): void {
  if (isNamed(cell)) sheet.outcome(cell.id)
  if (cell.kind === 'check') sheet.check(cell.id)
  if (cell.kind === 'drawing') sheet.drawing(cell.id)
  if (cell.kind === 'run') feedOf(sheet.engine, cell)
  if (cell.kind === 'table') footerOf(sheet.engine, sheet.engine.node(cell.id) as Node)
  // A message that is not shown just now, too.
  for (const formula of formulasShown(cell)) {
    sheet.namesIn(formula)
    sheet.engine.compileShown(formula)
  }
}
