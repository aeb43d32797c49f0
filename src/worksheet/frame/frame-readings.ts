import {
  list,
  number,
  PLAIN_NUMBER,
  type RecordType,
  type RecordValue,
  record,
  TEXT,
  type Type,
  type Value,
} from '../../language/index.ts'
import { ANGLE, LENGTH, PIXEL, SAMPLING, STOP, TIME } from '../../units/index.ts'
import type { GivenReading } from '../document/read-given.ts'
import type { Frame } from '../schema/document.ts'
import { type SeriesEntry, secondsOf } from './frame-series.ts'
import * as words from './words.ts'

/** A part of a reading as the language has it. */
interface Part {
  readonly type: Type
  /** What it is called among the saved readings, where that is another name. */
  readonly from?: string
  /** What the saved number is multiplied by. */
  readonly scale?: number
}

type Area = NonNullable<Frame['areas']>[number]
type Parts = Readonly<Record<string, Part>>

const RADIANS = Math.PI / 180
const plain: Part = { type: PLAIN_NUMBER }
const numbers: Part = { type: list(PLAIN_NUMBER) }
const angle: Part = { type: number(ANGLE), scale: RADIANS }
const pixels: Part = { type: number(PIXEL) }
const sampling: Part = { type: number(SAMPLING) }

/** What formulas read of each kind of area: `plain_card.light.spread`. */
const AREA_PARTS: Readonly<Record<string, Parts>> = {
  patch: { code: numbers, light: numbers, lab: numbers, noise: plain },
  evenness: {
    light: { type: list(list(PLAIN_NUMBER)) },
    spread: { type: number(STOP) },
    uniformity: plain,
    corner: { type: list(number(STOP)) },
    covers: numbers,
  },
  rule: { sampling, angle },
  square: {
    keystone_across: pixels,
    keystone_down: pixels,
    rotation: angle,
    sampling_across: sampling,
    sampling_down: sampling,
    skew: angle,
  },
  edge: { angle, mtf50: plain, mtf10: plain, efficiency: plain, greatest: plain },
  chart: { delta_e_2000: numbers, mean: plain, percentile_90: plain, worst: plain, worst_name: { type: TEXT } },
  line: { angle, bow: pixels, bow_share: { type: PLAIN_NUMBER, from: 'bow_percent', scale: 0.01 } },
}

const PIXEL_PARTS: Parts = { width: pixels, height: pixels, bits: plain, encoding: { type: TEXT } }
const TAKEN_PARTS: Parts = {
  camera: { type: TEXT },
  lens: { type: TEXT },
  focal: { type: number(LENGTH) },
  aperture: { type: number(PLAIN_NUMBER.dimension, 'f-number') },
  time: { type: number(TIME, 'shutter') },
  iso: plain,
  when: { type: TEXT },
}

/** The keys of a frame’s record besides its areas; no area may have these names. */
export const FRAME_PARTS = ['pixels', 'taken'] as const

/** A frame’s areas, readings and what its camera wrote, as a value of the language. Without a picture it waits. */
export function readFrame({ areas = [], picture, readings = {}, series }: Frame): GivenReading {
  const types: Record<string, Type> = Object.create(null)
  const values: Record<string, Value> = Object.create(null)
  const take = (name: string, what: string, parts: Parts, saved: unknown): void => {
    // An area that has not been measured is an empty record, for which formulas wait. What was not found in one that has
    // been, such as a frequency to which the response never fell, is no part: a formula that reads it says so.
    types[name] = record(what, Object.fromEntries(Object.entries(parts).map(([part, { type }]) => [part, type])))
    values[name] = Object.fromEntries(readParts(parts, saved).map(([part, value]) => [part, value]))
  }
  take('pixels', words.picture, PIXEL_PARTS, picture?.pixels)
  take('taken', words.cameraRecord, TAKEN_PARTS, picture?.taken)
  for (const area of areas) {
    const { name, kind } = area
    const saved = Object.hasOwn(readings, name) ? readings[name] : undefined
    const parts = AREA_PARTS[kind] ?? {}
    take(name, kind, parts, saved && withOwn(area, saved, picture))
    if (series) {
      const [type, value] = overTime(name, parts, series)
      types[name] = record(kind, { ...(types[name] as RecordType).parts, series: type })
      values[name] = { ...(values[name] as RecordValue), series: value }
    }
  }
  if (!picture) return { type: record('frame', types), offers: [] }
  return { type: record('frame', types), value: values, offers: [] }
}

function readParts(parts: Parts, saved: unknown): [string, Value][] {
  if (typeof saved !== 'object' || saved === null) return []
  return Object.entries(parts).flatMap(([name, part]) => {
    const key = part.from ?? name
    const value = Object.hasOwn(saved, key)
      ? savedValue((saved as Record<string, unknown>)[key], part.type, part.scale)
      : undefined
    return value === undefined ? [] : [[name, value] as [string, Value]]
  })
}

/** A saved value of the type; undefined where it is another kind of thing. */
function savedValue(saved: unknown, type: Type, scale = 1): Value | undefined {
  if (type.kind === 'text') return typeof saved === 'string' ? saved : undefined
  if (type.kind === 'number') return typeof saved === 'number' && Number.isFinite(saved) ? saved * scale : undefined
  if (type.kind !== 'list' || !Array.isArray(saved)) return undefined
  const items = saved.map((one) => savedValue(one, type.of, scale))
  return items.every((one) => one !== undefined) ? (items as Value[]) : undefined
}

/**
 * An area’s figures over time, a list a figure: `grey_card.grey.series.light`, with the seconds since the first picture as
 * `time`. Pictures without a time or without a figure are left out; of fewer than two it is empty, and formulas wait.
 */
function overTime(name: string, parts: Parts, series: readonly SeriesEntry[]): [Type, RecordValue] {
  const followed = Object.entries(parts).filter(([, { type }]) => isBrief(type))
  const types = Object.fromEntries(followed.map(([part, { type }]) => [part, list(type)]))
  const type = record('series', { time: list(number(TIME)), ...types })
  const rows = series.flatMap(({ when, readings }) => {
    const seconds = secondsOf(when)
    const figures = readParts(Object.fromEntries(followed), Object.hasOwn(readings, name) ? readings[name] : undefined)
    // A response that never fell so far has no figure; what every picture has is compared.
    return seconds === undefined || figures.length === 0 ? [] : [{ seconds, figures: new Map(figures) }]
  })
  const [first] = rows
  if (!first || rows.length < 2) return [type, {}]
  const common = followed.filter(([part]) => rows.every(({ figures }) => figures.has(part)))
  const lists = common.map(([part]) => [part, rows.map(({ figures }) => figures.get(part) as Value)] as const)
  return [type, Object.fromEntries([['time', rows.map(({ seconds }) => seconds - first.seconds)], ...lists])]
}

/** What is saved of each picture of a series: numbers, and lists of numbers. */
const isBrief = (type: Type): boolean => type.kind === 'number' || (type.kind === 'list' && type.of.kind === 'number')

/** A reading with what follows from its area: of a chart the differences as a list, of evenness the part of the picture. */
function withOwn(area: Area, saved: Readonly<Record<string, unknown>>, picture: Frame['picture']): object {
  if (area.kind === 'chart') return withDifferences(saved)
  if (area.kind !== 'evenness' || !Array.isArray(saved.light)) return saved
  const { width, height } = picture?.pixels ?? { width: 1, height: 1 }
  const [x = 0, y = 0, w = width, h = height] = area.box ?? []
  return { ...saved, covers: [x / width, y / height, w / width, h / height] }
}

/** The patches’ differences as one list, beside the rest of a chart’s reading. */
function withDifferences(saved: Readonly<Record<string, unknown>>): object {
  const patches = Array.isArray(saved.patches) ? saved.patches : []
  return {
    ...saved,
    delta_e_2000: patches.map((patch: unknown) => (patch as { delta_e_2000?: unknown } | null)?.delta_e_2000),
  }
}
