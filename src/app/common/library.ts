import { FUNCTION_NAMES } from 'virtual:function-names'
import type { SubjectFile } from '../../functions/index.ts'
import { functionsOf } from '../../functions/loaders.ts'
import type { Library } from '../../language/index.ts'
import type { Cell } from '../../worksheet/index.ts'
import { kindOf } from '../../worksheet/kinds/index.ts'

const FILES = Object.keys(FUNCTION_NAMES) as SubjectFile[]
const FILE_OF = new Map(FILES.flatMap((file) => FUNCTION_NAMES[file].split(' ').map((name) => [name, file] as const)))

/** The words before an opening bracket. An ordinary word among them does no harm. */
const called = (text: string): string[] => text.match(/[A-Za-z_]\w*(?=\s*\()/g) ?? []

const isUnknown = (name: string): boolean => name !== 'when' && !FILE_OF.has(name)

/** The formulas of a cell in which a function may be misspelt. */
const formulasOf = (cell: Cell): readonly string[] => kindOf(cell).formulas?.(cell) ?? []

/** The functions in the footer of a table’s columns. */
const footerFunctions = (cell: Cell): readonly string[] =>
  cell.kind === 'table' ? cell.columns.flatMap(({ foot = [] }) => foot.map(({ figure }) => figure)) : []

/** The functions these cells call, fetched by subject; all functions where one is misspelt, to suggest the nearest. */
export function libraryFor(cells: readonly Cell[]): Promise<Library> {
  if (called(cells.flatMap(formulasOf).join('\n')).some(isUnknown)) return wholeLibrary()
  // Rows of a table call no functions, and there may be many.
  const texts = cells.map((cell) => (cell.kind === 'table' ? { ...cell, rows: [] } : cell))
  const names = [...called(JSON.stringify(texts)), ...cells.flatMap(footerFunctions)]
  return functionsOf(names.flatMap((name) => FILE_OF.get(name) ?? []))
}

/** Every function, for writing formulas. */
export const wholeLibrary = (): Promise<Library> => functionsOf(FILES)
