import { isAltLetter } from '../../cells/fields/alt-key.ts'
import { isField } from '../../cells/shared/focus.ts'
import type { Addition } from '../common/additions.ts'

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
  | 'go first'
  | 'go last'
  | 'type a line'
  | `add ${Addition}`

const LETTERS: readonly (readonly [letter: string, shift: boolean, key: BuildKey])[] = [
  ['o', false, 'open or close'],
  ['n', false, 'add below'],
  ['n', true, 'choose below'],
  ['r', false, 'remove'],
  ['c', false, 'clear selection'],
]

/** The letters that add a cell of each kind below, where a row of the list has the focus. */
export const ADDING: Readonly<Record<string, Addition>> = {
  g: 'given',
  r: 'result',
  c: 'check',
  n: 'note',
  h: 'section',
  d: 'drawing',
  s: 'steps',
  t: 'table',
  a: 'range',
  v: 'variants',
  u: 'run',
  p: 'frame',
  f: 'function',
}

/** The kind of cell a key adds. */
export const additionOf = (key: BuildKey): Addition | undefined =>
  Object.values(ADDING).find((kind) => key === `add ${kind}`)

const addition = (key: string): BuildKey | undefined =>
  Object.hasOwn(ADDING, key) ? `add ${ADDING[key] as Addition}` : undefined

/** The effect of a key event in Build; undefined where the key belongs to the field or the browser. */
export function buildKey(event: KeyboardEvent): BuildKey | undefined {
  const letter = LETTERS.find(([key, shift]) => isAltLetter(event, key, shift))
  if (letter) return letter[2]
  const { altKey, shiftKey, key } = event
  const control = event.ctrlKey || event.metaKey
  if (control) return !altKey && !shiftKey && !isField(event) && key.toLowerCase() === 'a' ? 'select all' : undefined
  // Within a field the arrows move the caret or choose an option, and letters are typed.
  const onRow = (event.composedPath()[0] as Element).classList?.contains('call')
  const plain = !altKey && !shiftKey
  if (plain && (onRow || isOutsideRows(event))) {
    if (key === 'l') return 'type a line'
    const adds = addition(key)
    if (adds) return adds
  }
  if (plain && onRow && (key === 'Home' || key === 'End')) return key === 'Home' ? 'go first' : 'go last'
  const direction = key === 'ArrowUp' ? 'up' : key === 'ArrowDown' ? 'down' : undefined
  if (!direction) return undefined
  if (altKey) return shiftKey ? `move section ${direction}` : `move ${direction}`
  if (!onRow) return undefined
  return shiftKey ? `select ${direction}` : `go ${direction}`
}

/** Whether an event comes from the list itself, from no row of it and no field. */
const isOutsideRows = (event: KeyboardEvent): boolean =>
  !isField(event) && !event.composedPath().some((one) => (one as Element).localName === 'build-cell')
