import { LENGTH, NONE, SAMPLING, STOP, showQuantity, TIME } from '../../units/index.ts'
import { notationUnit } from '../../worksheet/document/measured.ts'
import type { AreaKind } from './area-shapes.ts'
import { FIGURE_NAMES, frameWords as words } from './words.ts'

/** A figure of a reading in words: what it is, and the figure with its unit. */
export type ReadingLine = readonly [what: string, figure: string]

/** A figure with so many decimals, and a true minus. */
export const digits = (value: number, places: number): string => {
  const text = value.toFixed(places)
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace('-', '−')
}
/** Figures separated by commas; nothing for what is not a list. */
export const list = (values: unknown, show: (value: number) => string): string =>
  Array.isArray(values) ? values.map((value) => show(value as number)).join(', ') : ''

const stops = (value: number): string => showQuantity(value, STOP).text
const ppi = (value: number): string => showQuantity(value, SAMPLING).text
const degrees = (value: number): string => `${digits(value, 2)}°`
const pixels = (value: number): string => `${digits(value, 1)} px`
const percent = (value: number): string => `${digits(value * 100, 1)} %`

/** How each figure is shown, in the order of showing. Those that are not listed are not shown as text. */
const SHOWN: Readonly<Record<AreaKind, Readonly<Record<string, (value: never) => string>>>> = {
  patch: {
    code: (values: readonly number[]) => list(values, (value) => digits(value, 4)),
    light: (values: readonly number[]) => list(values, (value) => digits(value, 4)),
    lab: (values: readonly number[]) => list(values, (value) => digits(value, 2)),
    noise: (value: number) => digits(value, 2),
  },
  evenness: {
    spread: stops,
    uniformity: percent,
    corner: (values: readonly number[]) => list(values, (value) => digits(value, 2)),
  },
  rule: { sampling: ppi, angle: degrees },
  square: {
    keystone_across: pixels,
    keystone_down: pixels,
    rotation: degrees,
    sampling_across: ppi,
    sampling_down: ppi,
    skew: degrees,
  },
  edge: {
    mtf50: (value: number) => `${digits(value, 3)} cycles/px`,
    mtf10: (value: number) => `${digits(value, 3)} cycles/px`,
    efficiency: percent,
    greatest: (value: number) => digits(value, 2),
    angle: degrees,
  },
  chart: {
    mean: (value: number) => digits(value, 2),
    percentile_90: (value: number) => digits(value, 2),
    worst: (value: number) => digits(value, 2),
  },
  line: { bow: pixels, bow_percent: (value: number) => `${digits(value, 3)} %`, angle: degrees },
}

/** The figures of a reading, legible. */
export function readingLines(kind: AreaKind, reading: Readonly<Record<string, unknown>> | undefined): ReadingLine[] {
  if (!reading) return []
  const lines = Object.entries(SHOWN[kind]).flatMap(([part, show]) => {
    const value = Object.hasOwn(reading, part) ? reading[part] : undefined
    if (value === undefined || value === null) return []
    const worst = part === 'worst' && typeof reading.worst_name === 'string' ? `, ${reading.worst_name}` : ''
    return [[FIGURE_NAMES[part] ?? part, `${(show as (value: unknown) => string)(value)}${worst}`] as const]
  })
  return kind === 'evenness' && typeof reading.spread === 'number' ? [...lines, gainLine(reading.spread)] : lines
}

/** What a correction by this frame does: the dimmest field is raised by the whole spread, its photon noise by the root of that. */
function gainLine(spread: number): ReadingLine {
  const gain = 2 ** spread
  return [words.gain, words.gainUpTo(digits(gain, 2), digits(Math.sqrt(gain), 2))]
}

/** What the camera wrote, as one line. */
export function takenLine(taken: Readonly<Record<string, unknown>> | null | undefined): string {
  if (!taken) return ''
  const figure = (part: string, show: (value: number) => string): string[] =>
    typeof taken[part] === 'number' ? [show(taken[part])] : []
  const text = (part: string): string[] => (typeof taken[part] === 'string' ? [taken[part]] : [])
  return [
    ...text('camera'),
    ...text('lens'),
    ...figure('focal', (value) => showQuantity(value, LENGTH).text),
    ...figure('aperture', (value) => showQuantity(value, NONE, { unit: notationUnit(NONE, 'f-number') }).text),
    ...figure('time', (value) => showQuantity(value, TIME, { unit: notationUnit(TIME, 'shutter') }).text),
    ...figure('iso', (value) => `ISO ${value}`),
    ...text('when').map((when) => when.replace('T', ' ')),
  ].join(', ')
}
