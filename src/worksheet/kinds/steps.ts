import { KIND_TITLES } from '../format/words.ts'
import type { Steps } from '../schema/document.ts'
import type { CellKind } from './kind.ts'

export const STEPS: CellKind<Steps> = {
  title: KIND_TITLES.steps,
  computed: undefined,
  fresh: ({ id }) => ({ kind: 'steps', id, steps: [{ text: '' }] }),
  listed: ({ steps }) => steps.flatMap(({ reading, sets = [] }) => (reading === undefined ? sets : [reading, ...sets])),
  renamed: (cell, { one }) => ({
    ...cell,
    steps: cell.steps.map((step) => ({
      ...step,
      ...(step.reading === undefined ? {} : { reading: one(step.reading) }),
      ...(step.sets === undefined ? {} : { sets: step.sets.map(one) }),
    })),
  }),
}
