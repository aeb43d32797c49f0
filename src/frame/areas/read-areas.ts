import * as D from '../../units/index.ts'
import { FrameError, quoted } from '../problem.ts'
import { AREA_KINDS, type Area, type Box, type ChartPatch, type Point } from './area.ts'
import * as words from './words.ts'

/** More areas, patches or fields are a mistake, not a picture. */
const MOST_AREAS = 1000
const MOST_FIELDS = 1000

type Parts = Readonly<Record<string, unknown>>

/** Reads a list of areas from parsed JSON. Throws FrameError with the area and what is wrong with it. */
export function readAreas(data: unknown): Area[] {
  if (!Array.isArray(data)) throw new FrameError(words.notAList)
  if (data.length > MOST_AREAS) throw new FrameError(words.tooMany(data.length, MOST_AREAS))
  const names = new Set<string>()
  return data.map((one: unknown, i) => {
    const area = readArea(one, i)
    if (names.has(area.name)) throw new FrameError(words.sameName(quoted(area.name)))
    names.add(area.name)
    return area
  })
}

function readArea(data: unknown, place: number): Area {
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    throw new FrameError(words.notAnObject(place + 1))
  const parts = data as Parts
  const { name, kind } = parts
  if (typeof name !== 'string' || name.trim() === '') throw new FrameError(words.noName(place + 1))
  const where = words.areaOf(quoted(name))
  switch (kind) {
    case 'patch':
    case 'edge':
      return { kind, name, box: box(parts.box, where) }
    case 'evenness':
      return {
        kind,
        name,
        box: parts.box === undefined || parts.box === null ? undefined : box(parts.box, where),
        columns: fields(parts.columns, 9, 'columns', where),
        rows: fields(parts.rows, 7, 'rows', where),
      }
    case 'rule':
      return { kind, name, ...ends(parts, where), length: length(parts.length, where) }
    case 'line':
      return { kind, name, ...ends(parts, where) }
    case 'square':
      return { kind, name, corners: corners(parts.corners, where), ...size(parts.size, where) }
    case 'chart':
      return { kind, name, patches: patches(parts.patches, where) }
    default:
      throw new FrameError(
        words.unknownKind(where, typeof kind === 'string' ? quoted(kind) : undefined, AREA_KINDS.join(', ')),
      )
  }
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

const numbers = (value: unknown, count: number): value is number[] =>
  Array.isArray(value) && value.length === count && value.every(isNumber)

function box(value: unknown, where: string): Box {
  if (value === undefined || value === null) throw new FrameError(words.noBox(where))
  if (!numbers(value, 4)) throw new FrameError(words.boxOfFour(where))
  const [x, y, w, h] = value as unknown as Box
  if (!(w > 0 && h > 0)) throw new FrameError(words.boxNotAboveZero(where, w, h))
  return [x, y, w, h]
}

function point(value: unknown, what: string, where: string): Point {
  if (!numbers(value, 2)) throw new FrameError(words.notTwoNumbers(what, where))
  return [value[0] as number, value[1] as number]
}

function ends(parts: Parts, where: string): { from: Point; to: Point } {
  const [from, to] = [point(parts.from, '"from"', where), point(parts.to, '"to"', where)]
  if (from[0] === to[0] && from[1] === to[1]) throw new FrameError(words.marksTogether(where))
  return { from, to }
}

function corners(value: unknown, where: string): [Point, Point, Point, Point] {
  if (!Array.isArray(value) || value.length !== 4)
    throw new FrameError(words.fourCorners(where, Array.isArray(value) ? value.length : 0))
  return value.map((one, i) => point(one, words.corner(i + 1), where)) as [Point, Point, Point, Point]
}

function fields(value: unknown, usual: number, what: string, where: string): number {
  if (value === undefined || value === null) return usual
  if (!isNumber(value) || !Number.isInteger(value) || value < 1 || value > MOST_FIELDS)
    throw new FrameError(words.fieldCount(what, where, MOST_FIELDS))
  return value
}

function length(value: unknown, where: string): number {
  const say = (why: string): FrameError => new FrameError(words.length(where, why))
  if (typeof value !== 'string') throw say(value === undefined ? words.missing : words.notText)
  return reading(value, say, () => D.readQuantity(value))
}

function size(value: unknown, where: string): { width: number; height: number } {
  const say = (why: string): FrameError => new FrameError(words.size(where, why))
  if (typeof value !== 'string') throw say(value === undefined ? words.missing : words.notText)
  let sides: D.SizeReading | undefined
  const width = reading(value, say, () => {
    sides = D.readSize(value)
    return sides.width
  })
  return { width, height: reading(value, say, () => (sides as D.SizeReading).height) }
}

/** A length above zero, m. */
function reading(text: string, say: (why: string) => FrameError, read: () => D.Reading): number {
  let found: D.Reading
  try {
    found = read()
  } catch (error) {
    if (!(error instanceof D.ReadError)) throw error
    throw say(words.unread(quoted(text), error.message.replace(/[.;]$/, '')))
  }
  if (found.dimension !== D.LENGTH)
    throw say(words.notALength(quoted(text), found.dimension === D.NONE ? undefined : D.aKind(found.dimension)))
  if (!(found.value > 0)) throw say(words.notAboveZero(quoted(text)))
  return found.value
}

function patches(value: unknown, where: string): ChartPatch[] {
  if (!Array.isArray(value) || value.length === 0) throw new FrameError(words.noPatches(where))
  if (value.length > MOST_AREAS) throw new FrameError(words.tooManyPatches(where, value.length, MOST_AREAS))
  return value.map((one: unknown, i) => {
    if (typeof one !== 'object' || one === null) throw new FrameError(words.patchNotAnObject(i + 1, where))
    const { name, box: place, lab } = one as Parts
    if (typeof name !== 'string' || name.trim() === '') throw new FrameError(words.patchNoName(i + 1, where))
    const which = words.patchOf(quoted(name), where)
    if (!numbers(lab, 3)) throw new FrameError(words.noReference(which))
    const [L, a, b] = lab as [number, number, number]
    if (L < 0 || L > 150 || Math.max(Math.abs(a), Math.abs(b)) > 300)
      throw new FrameError(words.referenceNotLab(which, L, a, b))
    return { name, box: box(place, which), lab: [L, a, b] }
  })
}
