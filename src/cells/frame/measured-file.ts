import { briefReadings, type SeriesEntry, secondsOf, withEntry } from '../../worksheet/frame/frame-series.ts'
import type { Frame } from '../../worksheet/index.ts'
import type { Opened } from './frame-messages.ts'

/** A file with what was read from it. */
export interface MeasuredFile {
  readonly file: File
  readonly opened: Opened
}

/** What the sheet saves of a picture that was measured. */
export const pictureOf = ({ file, opened }: MeasuredFile): NonNullable<Frame['picture']> => ({
  name: file.name,
  size: file.size,
  digest: opened.digest,
  pixels: { ...opened.pixels },
  taken: opened.taken ? { ...opened.taken } : null,
})

/** The picture as one of several compared over time. */
export const entryOf = ({ file, opened }: MeasuredFile): SeriesEntry => ({
  name: file.name,
  digest: opened.digest,
  when: opened.taken?.when ?? null,
  readings: briefReadings(opened.readings),
})

/** The earliest first, by the time the camera wrote; those without one last. */
export function inOrderOfTime(files: readonly MeasuredFile[]): MeasuredFile[] {
  const at = ({ opened }: MeasuredFile): number => secondsOf(opened.taken?.when) ?? Number.POSITIVE_INFINITY
  return [...files].sort((one, other) => {
    const [first, second] = [at(one), at(other)]
    return first === second ? 0 : first < second ? -1 : 1
  })
}

/** A frame with other readings of the picture that is open, also where it is one of several. */
export function withReadings(cell: Frame, readings: NonNullable<Frame['readings']>): Frame {
  const { picture, series } = cell
  const own = picture && series?.find(({ digest, name }) => digest === picture.digest && name === picture.name)
  if (!own || !series) return { ...cell, readings }
  return { ...cell, readings, series: withEntry(series, { ...own, readings: briefReadings(readings) }) }
}
