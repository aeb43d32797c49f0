import { FUNCTION_NAMES } from 'virtual:function-names'
import type { SubjectFile } from '../../functions/index.ts'
import type { Library } from '../../language/index.ts'
import type { Cell } from '../../worksheet/index.ts'
import { functionsOf } from './function-files.ts'

const FILES = Object.keys(FUNCTION_NAMES) as SubjectFile[]
const FILE_OF = new Map(FILES.flatMap((file) => FUNCTION_NAMES[file].split(' ').map((name) => [name, file] as const)))

/** What stands before a bracket. A word of prose among them does no harm. */
const called = (text: string): string[] => text.match(/[A-Za-z_]\w*(?=\s*\()/g) ?? []

const isUnknown = (name: string): boolean => name !== 'when' && !FILE_OF.has(name)

/** The formulas a cell computes by, where a function may be misspelt. */
function formulasOf(cell: Cell): readonly string[] {
  if (cell.kind === 'result') return [cell.formula]
  if (cell.kind === 'check') return [cell.condition]
  return cell.kind === 'table' ? cell.columns.flatMap(({ formula }) => formula ?? []) : []
}

/** The figures under a table’s columns are functions too. */
const feet = (cell: Cell): readonly string[] =>
  cell.kind === 'table' ? cell.columns.flatMap(({ foot = [] }) => foot.map(({ figure }) => figure)) : []

/** The functions these cells call, fetched by subject; all of them where one is misspelt, for the nearest to be named. */
export function libraryFor(cells: readonly Cell[]): Promise<Library> {
  if (called(cells.flatMap(formulasOf).join('\n')).some(isUnknown)) return wholeLibrary()
  // The rows of a table call nothing, and may be many.
  const texts = cells.map((cell) => (cell.kind === 'table' ? { ...cell, rows: [] } : cell))
  const names = [...called(JSON.stringify(texts)), ...cells.flatMap(feet)]
  return functionsOf(names.flatMap((name) => FILE_OF.get(name) ?? []))
}

/** Every function there is: whoever writes a formula may call any. */
export const wholeLibrary = (): Promise<Library> => functionsOf(FILES)
