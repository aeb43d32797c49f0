import { isAltLetter } from '../fields/alt-key.ts'

/** The effect of a key in a table. */
export type Step =
  | { readonly to: 'row'; readonly by: number }
  | { readonly to: 'column'; readonly by: -1 | 1 }
  /** To the next row in its start column; after the last row to a new one. */
  | { readonly to: 'next' }
  | { readonly to: 'end'; readonly of: 'first' | 'last' }
  | { readonly to: 'act'; readonly act: RowAct }

export type RowAct = 'below' | 'up' | 'down' | 'remove' | 'fill' | 'sort'

const ACTS: Readonly<Record<string, RowAct>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
}

const LETTERS: readonly (readonly [letter: string, act: RowAct])[] = [
  ['n', 'below'],
  ['r', 'remove'],
  ['s', 'sort'],
]

const PAGE = 10

/** The effect of a key in a field of a table; undefined if the field handles it. */
export function stepOf(event: KeyboardEvent): Step | undefined {
  const { key, altKey, ctrlKey, metaKey, shiftKey, isComposing } = event
  const field = event.composedPath()[0]
  if (isComposing || metaKey) return undefined
  if (altKey && !ctrlKey && !shiftKey) {
    const act = LETTERS.find(([letter]) => isAltLetter(event, letter))?.[1] ?? ACTS[key]
    return act && { to: 'act', act }
  }
  if (altKey && !ctrlKey && key === 'ArrowDown') return { to: 'act', act: 'fill' }
  if (altKey) return undefined
  if (ctrlKey)
    return key === 'Home' ? { to: 'end', of: 'first' } : key === 'End' ? { to: 'end', of: 'last' } : undefined
  if (shiftKey) return undefined
  if (key === 'Enter') return { to: 'next' }
  if (key === 'PageDown') return { to: 'row', by: PAGE }
  if (key === 'PageUp') return { to: 'row', by: -PAGE }
  // In a list of options the arrow keys choose.
  const chooses = field instanceof HTMLSelectElement
  if (key === 'ArrowDown' && !chooses) return { to: 'row', by: 1 }
  if (key === 'ArrowUp' && !chooses) return { to: 'row', by: -1 }
  if (key === 'ArrowRight' && atEdge(field, 'end')) return { to: 'column', by: 1 }
  if (key === 'ArrowLeft' && atEdge(field, 'start')) return { to: 'column', by: -1 }
  return undefined
}

/** Whether the caret is at an edge of the text; inside a text the arrow keys move the caret. */
function atEdge(field: EventTarget | undefined, edge: 'start' | 'end'): boolean {
  if (!(field instanceof HTMLInputElement) || field.type !== 'text') return true
  const { selectionStart, selectionEnd, value } = field
  if (selectionStart === 0 && selectionEnd === value.length) return true
  return selectionStart === selectionEnd && selectionStart === (edge === 'start' ? 0 : value.length)
}
