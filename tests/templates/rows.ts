import { Filled, readTemplate } from './open.ts'

/** Opens a template with other rows in its table, and other givens, as one would type them. */
export function openRows(
  name: string,
  table: string,
  rows: readonly (readonly string[])[],
  givens: Readonly<Record<string, string>> = {},
): Filled {
  const worksheet = readTemplate(name)
  const left = new Set([table, ...Object.keys(givens)])
  const cells = worksheet.cells.map((cell) => {
    if (cell.kind === 'table' && cell.name === table) {
      left.delete(table)
      const empty = cell.columns.map(() => '')
      return { ...cell, rows: rows.map((row) => [...row, ...empty].slice(0, cell.columns.length)) }
    }
    if (cell.kind !== 'given' || givens[cell.name] === undefined) return cell
    left.delete(cell.name)
    return { ...cell, value: givens[cell.name] as string }
  })
  if (left.size > 0) throw new Error(`${name} has no table or given named ${[...left].join(', ')}.`)
  return new Filled({ ...worksheet, cells })
}
