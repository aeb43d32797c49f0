import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import { type Cell, DRAWING_KINDS, type Drawing, type DrawingKind, isNamed } from '../../worksheet/index.ts'

/** What may be the input of a drawing, by the name it has as one: `original_width` for a side of the size `original`. */
function texts(cells: readonly Cell[]): Map<string, string> {
  const sides = cells.flatMap((cell) =>
    cell.kind === 'given' && cell.entry === 'size'
      ? ['width', 'height'].map((side) => [`${cell.name}_${side}`, `${cell.name}.${side}`] as const)
      : [],
  )
  return new Map([...sides, ...cells.filter(isNamed).map(({ name }) => [name, name] as const)])
}

/** Whether an input is still required: itself, or one of several. Undefined where the drawing has what it needs of these. */
export function requiredOf(kind: DrawingKind, input: string, from: Drawing['from']): 'required' | 'one of' | undefined {
  const group = DRAWINGS[kind].needs.find((one) => one.includes(input))
  if (!group) return undefined
  if (group.length === 1) return 'required'
  return group.some((one) => from[one] !== undefined) ? undefined : 'one of'
}

/** The first kind of drawing whose needs are all filled from cells of their names; else the set-up. */
export const kindFor = (cells: readonly Cell[]): DrawingKind =>
  DRAWING_KINDS.find((kind) => {
    const found = inputsByName(kind, cells)
    return DRAWINGS[kind].needs.every((group) => group.some((one) => found[one] !== undefined))
  }) ?? 'set-up'

/** The inputs of a new drawing: the cells with the names of the inputs, and the sides of sizes. */
export function inputsByName(kind: DrawingKind, cells: readonly Cell[]): Record<string, string> {
  const found = texts(cells)
  return Object.fromEntries(
    DRAWINGS[kind].inputs.flatMap(({ name }) => {
      const text = found.get(name)
      return text === undefined ? [] : [[name, text]]
    }),
  )
}
