import type { Steps } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const STEPS: CellKind<Steps> = {
  title: 'Steps',
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'steps', id, steps: [{ text: '' }] }),
  listed: ({ steps }) => steps.flatMap(({ reading }) => reading ?? []),
  renamed: (cell, { one }) => ({
    ...cell,
    steps: cell.steps.map((step) => (step.reading === undefined ? step : { ...step, reading: one(step.reading) })),
  }),
}
