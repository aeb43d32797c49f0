import { clip, NONE, ReadError, readQuantity } from '../../units/index.ts'
import * as words from './words.ts'

const USUAL_COVERAGE = 2

export interface Coverage {
  /** How many standard deviations the limits of a normal distribution are. */
  readonly factor: number
  /** Why the text cannot be read. */
  readonly error?: string
}

/** Reads the coverage factor k of a normal distribution: U = k u (JCGM 100:2008, 6.2.1). */
export function readCoverage(text: string | undefined): Coverage {
  if (text === undefined || text.trim() === '') return { factor: USUAL_COVERAGE }
  const unreadable = (why: string): Coverage => ({
    factor: USUAL_COVERAGE,
    error: words.coverage(why),
  })
  try {
    const { value, dimension, notation, tolerance } = readQuantity(text)
    if (dimension !== NONE || notation !== undefined || tolerance !== undefined || !(value > 0))
      return unreadable(words.notAboveZero(clip(text)))
    return { factor: value }
  } catch (error) {
    if (error instanceof ReadError) return unreadable(error.message)
    throw error
  }
}
