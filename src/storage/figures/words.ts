import { andMore } from '../../units/plural.ts'
import { PLAN_HEADS } from '../../worksheet/run/words.ts'

/** The sentences written into a sheet of figures. */
export const FIGURES_WORDS = {
  /** The titles of originals, the first few of them by name. */
  originals: (titles: readonly string[], more: number): string =>
    [...titles, ...(more > 0 ? [andMore(more)] : [])].join('; '),
  notPlanned: 'not planned',
  runNotPlanned: (title: string): string => `${title}: not planned.`,
  inAll: 'total',
  notJudged: (label: string, why: string): string => `${label}: not judged. ${why}`.trim(),
  emptyRange: 'A range that was not filled in.',
  figuresOnly: (day: string) =>
    `These are figures as they were on ${day}, without their formulas. Results, checks and drawings do not change with the givens.`,
} as const

/** The columns of a run’s plan as a table. */
export const RUN_HEADS = [
  PLAN_HEADS.setUp,
  PLAN_HEADS.magnification,
  'Column, or original to sensor',
  PLAN_HEADS.exposure,
  PLAN_HEADS.originals,
  PLAN_HEADS.frames,
  PLAN_HEADS.time,
  'Data',
]
