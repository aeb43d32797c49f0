import { basicWords } from '../../cells/basic/words.ts'
import { detailsWords } from '../../cells/details/words.ts'
import { tableWords } from '../../cells/table/words.ts'
import { agree, andMore, count, listText, plural, shortList } from '../../units/plural.ts'
import { overRange } from '../../worksheet/analysis/words.ts'
import { notPlanned, PLAN_HEADS } from '../../worksheet/run/words.ts'
import { examplesText, fineAdjustments, moreResults } from '../common/words.ts'

const MAX_NAMES = 5

export const paperWords = {
  job: 'Job',
  date: 'Date',
  revision: 'Revision',
  checks: 'Checks',
  examples: 'Examples',
  fineAdjustments,
  moreResults,
  inLine: (label: string, figure: string, origin: string): string =>
    `${label} ${figure}${origin ? ` (${origin})` : ''}`,
  /** Nothing where none is. */
  stillExample: (figures: number, tables = 0): string => (figures + tables === 0 ? '' : examplesText(figures, tables)),
  /** Followed by their names. */
  checksPass: (n: number): string => `${plural(n, 'check')} ${agree(n, 'passes', 'pass')}:`,
  caution: 'Caution:',
  opensSheet: 'Opens this sheet in Evenfield.',
  code: 'QR code of a link to this sheet',
  whole: 'The whole sheet, with its formulas.',
  figuresOnly: 'Givens and results only.',
  withoutDrawings: 'Givens and results only; drawings and hints do not fit in a QR code.',
  withoutFine: 'Givens, results and checks only; fine adjustments do not fit in a QR code.',
  madeWith: 'Made with Evenfield. The figures are those of the date above; they are not recomputed.',
  page: 'Page ',
  pageOf: ' of ',
  nearestMark: basicWords.nearestMark,
  exactFigure: basicWords.exactFigure,
  read: 'measured',
  measured: (read: string, computed: string, difference: string): string =>
    [read, computed ? `computed ${computed}` : '', difference].filter(Boolean).join('; '),
  measuredBefore: detailsWords.measuredBefore,
  cautionAbout: (message: string): string => `Caution: ${message}`,
  cannotRead: (why: string): string => `Cannot be read: ${why}`,
  notComputed: (why: string): string => `Not computed: ${why}`,
  needs: (labels: readonly string[]): string => `needs ${shortList(labels, MAX_NAMES)}`,
  about: (labels: readonly string[]): string => `(${listText(labels)})`,
  overRange,
  now: (figure: string): string => `${figure}, now`,
  setupHeads: (withTrack: boolean): readonly string[] => {
    const { setUp, magnification, column, track, exposure, originals, frames, time } = PLAN_HEADS
    return [setUp, magnification, withTrack ? track : column, exposure, originals, frames, time]
  },
  done: 'done',
  originals: (n: number, done: number): string => `${count(n)}${done > 0 ? `, ${count(done)} done` : ''}`,
  more: andMore,
  unplanned: 'Not planned',
  unplannedRow: (title: string, row: number, why: string): string => `${title}, row ${count(row)}: ${why}`,
  remaining: (label: string): string => `${label}: remaining`,
  plannedWithout: (label: string, why: string): string => `Planned without ${label}: ${why}`,
  notPlanned: (why: readonly string[]): string => notPlanned(why.join('; ')),
  noTable: 'no table of originals is chosen',
  notInSheet: (name: string): string => `“${name}” is no longer in the sheet`,
  asMeasured: (label: string, computed: string): string =>
    `${label}, as measured${computed ? ` (computed ${computed})` : ''}`,
  figureAfter: (label: string, figure: string): string => `${label}: ${figure}`,
  leftOut: tableWords.leftOut,
  yes: 'yes',
  formulasNeed: tableWords.formulasNeed,
  footWhere: (figure: string, where: string): string => (where ? `${figure} where ${where}` : figure),
}
