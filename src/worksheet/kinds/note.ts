import { KIND_TITLES } from '../format/words.ts'
import type { Note } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const NOTE: CellKind<Note> = {
  title: KIND_TITLES.note,
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'note', id, text: '' }),
  renamed: (cell) => cell,
}
