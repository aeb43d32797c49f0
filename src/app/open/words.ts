import { count, plural } from '../../units/plural.ts'
import type { CheckOutcome } from '../../worksheet/index.ts'

export const openWords = {
  sections: 'Sections',
  /** What a sheet with several set-ups has before the later ones. */
  firstSetUp: 'First set-up',
  /** How many cells are in a state: `1 fail`, `9 waiting`. */
  state: (state: CheckOutcome['state'], n: number): string =>
    state === 'error' ? plural(n, 'error') : `${count(n)} ${state}`,
  done: (done: number, of: number): string => `${count(done)} of ${count(of)}`,
}
