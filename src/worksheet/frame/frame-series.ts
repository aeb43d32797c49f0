import type { Frame } from '../schema/document.ts'

/** One picture of several that a frame compares over time: what it was called and known by, when it was taken, what was read. */
export type SeriesEntry = NonNullable<Frame['series']>[number]

/** The most pictures that are compared; the earliest after the first go. */
export const MOST_IN_SERIES = 200
/** Longer lists of a reading, such as the curve of an edge, are not saved for each picture. */
const LONGEST = 4

/** A time as the camera wrote it in seconds; one without an offset counts as it is, since a series is from one camera. */
export function secondsOf(when: string | null | undefined): number | undefined {
  if (!when) return undefined
  const seconds = Date.parse(/[Z+]|-\d\d:\d\d$/.test(when.slice(10)) ? when : `${when}Z`) / 1000
  return Number.isFinite(seconds) ? seconds : undefined
}

/** The figures of a reading that are compared over time: numbers, and lists of a few. */
export const briefReadings = (readings: NonNullable<Frame['readings']>): NonNullable<Frame['readings']> =>
  Object.fromEntries(
    Object.entries(readings).map(([area, reading]) => [
      area,
      Object.fromEntries(
        Object.entries(reading).filter(
          ([, value]) =>
            typeof value === 'number' ||
            (Array.isArray(value) && value.length <= LONGEST && value.every((one) => typeof one === 'number')),
        ),
      ),
    ]),
  )

/** The series with an entry put in its place in time; a picture that is in it already is replaced. */
export function withEntry(series: readonly SeriesEntry[], entry: SeriesEntry): SeriesEntry[] {
  const isSame = (one: SeriesEntry): boolean =>
    entry.digest === '' ? one.digest === '' && one.name === entry.name : one.digest === entry.digest
  const order = ({ when }: SeriesEntry): number => secondsOf(when) ?? Number.POSITIVE_INFINITY
  const sorted = [...series.filter((one) => !isSame(one)), entry].sort((one, other) => {
    const [first, second] = [order(one), order(other)]
    if (first !== second) return first < second ? -1 : 1
    return one.name < other.name ? -1 : 1
  })
  return sorted.length > MOST_IN_SERIES ? sorted.toSpliced(1, sorted.length - MOST_IN_SERIES) : sorted
}
