import type { Filled } from '../../worksheet/compose/sections.ts'
import type { GivenSource } from '../../worksheet/schema/document.ts'

/** Where answers that have not become a sheet yet are saved in this browser. */
export const SETTING = 'answers'

export interface SavedAnswers {
  readonly kind?: string
  readonly byPhone: boolean
  readonly several: boolean
  readonly job: string
  readonly givens: ReadonlyMap<string, Filled>
}

/** Nothing answered yet. */
export const NO_ANSWERS: SavedAnswers = { job: '', byPhone: false, several: false, givens: new Map() }

/** Answers as plain data. */
export const answersIn = ({ givens, ...rest }: SavedAnswers): unknown => ({ ...rest, givens: [...givens] })

/** Where an answer comes from; a usual value is none. */
const SOURCES: readonly unknown[] = ['typed', 'kit', 'measured'] satisfies GivenSource[]

const isRecord = (data: unknown): data is Record<string, unknown> => typeof data === 'object' && data !== null

function filledFrom(entry: unknown): readonly [string, Filled][] {
  if (!Array.isArray(entry) || typeof entry[0] !== 'string' || !isRecord(entry[1])) return []
  const { value, from, piece } = entry[1]
  if (typeof value !== 'string' || !SOURCES.includes(from)) return []
  const figures = isRecord(piece) ? Object.entries(piece).filter((one) => typeof one[1] === 'string') : []
  const own = figures.length > 0 ? { piece: Object.fromEntries(figures) as Record<string, string> } : {}
  return [[entry[0], { value, from: from as GivenSource, ...own }]]
}

/** Saved answers; what cannot be read of them is left out. */
export function readSaved(data: unknown): SavedAnswers {
  if (!isRecord(data)) return NO_ANSWERS
  const { kind, byPhone, several, job, givens } = data
  return {
    ...(typeof kind === 'string' ? { kind } : {}),
    byPhone: byPhone === true,
    several: several === true,
    job: typeof job === 'string' ? job : '',
    givens: new Map(Array.isArray(givens) ? givens.flatMap(filledFrom) : []),
  }
}
