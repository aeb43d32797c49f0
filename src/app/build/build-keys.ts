import { isAltLetter } from '../../cells/shared/alt-key.ts'
import { isField } from '../open/is-field.ts'

/** The effect of a key in Build. */
export type BuildKey =
  | 'open or close'
  | 'add below'
  | 'choose below'
  | 'remove'
  | 'move up'
  | 'move down'
  | 'move section up'
  | 'move section down'
  | 'select up'
  | 'select down'
  | 'select all'
  | 'clear selection'
  | 'go up'
  | 'go down'

const LETTERS: readonly (readonly [letter: string, shift: boolean, key: BuildKey])[] = [
  ['o', false, 'open or close'],
  ['n', false, 'add below'],
  ['n', true, 'choose below'],
  ['r', false, 'remove'],
  ['c', false, 'clear selection'],
]

/** The effect of a key event in Build; undefined where the key belongs to the field or the browser. */
export function buildKey(event: KeyboardEvent): BuildKey | undefined {
  const letter = LETTERS.find(([key, shift]) => isAltLetter(event, key, shift))
  if (letter) return letter[2]
  const { altKey, shiftKey, key } = event
  const control = event.ctrlKey || event.metaKey
  if (control) return !altKey && !shiftKey && !isField(event) && key.toLowerCase() === 'a' ? 'select all' : undefined
  const direction = key === 'ArrowUp' ? 'up' : key === 'ArrowDown' ? 'down' : undefined
  if (!direction) return undefined
  if (altKey) return shiftKey ? `move section ${direction}` : `move ${direction}`
  // Within a field the arrows move the caret or choose an option.
  const onRow = (event.composedPath()[0] as Element).classList?.contains('call')
  if (!onRow) return undefined
  return shiftKey ? `select ${direction}` : `go ${direction}`
}
