import { count } from '../../units/plural.ts'

export const openWords = {
  sections: 'Sections',
  /** What a sheet with several set-ups has before the later ones. */
  firstSetUp: 'First set-up',
  done: (done: number, of: number): string => `${count(done)} of ${count(of)}`,
}
