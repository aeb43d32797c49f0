import type { Note } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const NOTE: CellKind<Note> = {
  title: 'Note',
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'note', id, text: '' }),
  renamed: (cell) => cell,
}
