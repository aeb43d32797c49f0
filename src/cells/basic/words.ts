import { agree, count, shortList } from '../../units/plural.ts'
import { exactFigure, nearestMark } from '../../units/words.ts'
import { cellWords } from '../shared/words.ts'

/** The words of givens, results, checks and drawings under Fill in. */
export const basicWords = {
  readItAs: (text: string, label: string): string => `Read as ${text}, ${label}`,
  /** Takes an example's figure as typed. */
  use: (text: string): string => `Use ${text}`.trim(),
  useFor: cellWords.useFor,
  yes: 'Yes',
  no: 'No',
  needs: (names: readonly string[]): string =>
    names.length === 1
      ? `Needs ${names[0]}`
      : `Needs ${count(names.length)} ${agree(names.length, 'figure', 'figures')}: ${shortList(names)}`,
  blocked: (label: string): string => `Blocked by an error in ${label}`,
  measure: 'Measure',
  nearestMark,
  exactFigure,
  notComputed: 'Not computed:',
  dragLamps: 'Drag a lamp, or move it with the arrow keys.',
  enlarge: 'Enlarge',
}
