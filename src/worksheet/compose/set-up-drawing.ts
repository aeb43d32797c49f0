import type { Cell } from '../schema/document.ts'
import { namesInText, withTexts } from './cell-names.ts'
import type { Gathering } from './gather.ts'
import type { PartLibrary, SetUpDrawing } from './part-library.ts'

/** The one drawing of a set-up, with the inputs the sheet has; undefined where it has too few. */
export function setUpDrawing(
  { drawing }: PartLibrary,
  gathering: Gathering,
  names: ReadonlySet<string>,
): Cell | undefined {
  const { title, needs, any, moves } = drawing
  if (!needs.every((name) => names.has(name)) || !any.some((name) => names.has(name))) return undefined
  const { from } = withTexts({ kind: 'drawing', from: drawing.from }, gathering.texts) as unknown as SetUpDrawing
  const inputs = Object.entries(from).filter(([, text]) => namesInText(text).every((name) => names.has(name)))
  const upright = gathering.parts.some(({ id }) => id === 'easel')
  const moved = moves.filter((name) => gathering.asked.has(name))
  return {
    kind: 'drawing',
    id: 'drawing_set_up',
    title,
    drawing: 'set-up',
    from: { ...(upright ? { upright: 'yes' } : {}), ...Object.fromEntries(inputs) },
    ...(moved.length > 0 && names.has('lamps') ? { moves: moved } : {}),
  } as Cell
}
