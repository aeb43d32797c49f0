import { freeNameBeside } from '../../worksheet/document/names.ts'
import { FRAME_PARTS } from '../../worksheet/frame/frame-readings.ts'
import type { Frame } from '../../worksheet/index.ts'

export type FrameArea = NonNullable<Frame['areas']>[number]
export type AreaKind = FrameArea['kind']
export type Point = readonly [x: number, y: number]
type Box = readonly [number, number, number, number]

export interface Size {
  readonly width: number
  readonly height: number
}

/** The least side of a box that is dragged, px. */
const LEAST = 2

/** The points by which an area is dragged: corners of a box, ends of a line, corners of an outline. */
export function handlesOf(area: FrameArea): Point[] {
  if (area.corners) return area.corners as unknown as Point[]
  if (area.from && area.to) return [area.from, area.to] as unknown as Point[]
  const box = outlineOf(area)
  return box ? cornersOf(box) : []
}

/** The corners of a box, clockwise from the top left. */
export const cornersOf = ([x, y, w, h]: Box): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

/** The boxes an area measures in: its own, or those of its patches. */
export function boxesOf(area: FrameArea): Box[] {
  if (area.kind === 'chart') return (area.patches ?? []).map(({ box }) => box as unknown as Box)
  return area.box ? [area.box as unknown as Box] : []
}

/** The box around all of an area’s boxes. */
export function outlineOf(area: FrameArea): Box | undefined {
  const boxes = boxesOf(area)
  if (boxes.length === 0) return undefined
  const [left, top] = [Math.min(...boxes.map(([x]) => x)), Math.min(...boxes.map(([, y]) => y))]
  const [right, bottom] = [Math.max(...boxes.map(([x, , w]) => x + w)), Math.max(...boxes.map(([, y, , h]) => y + h))]
  return [left, top, right - left, bottom - top]
}

const clamp = (value: number, most: number): number => Math.min(Math.max(value, 0), most)
/** Half pixels are fine enough for marks, and read well. */
const rounded = (value: number): number => Math.round(value * 2) / 2
const inside = ([x, y]: Point, { width, height }: Size): [number, number] => [
  rounded(clamp(x, width)),
  rounded(clamp(y, height)),
]

/** The area moved as a whole, limited to the picture. */
export function moved(area: FrameArea, dx: number, dy: number, size: Size): FrameArea {
  const points = handlesOf(area)
  if (points.length === 0) return area
  const within = (by: number, values: readonly number[], most: number): number =>
    rounded(Math.min(Math.max(by, -Math.min(...values)), most - Math.max(...values)))
  const [x, y] = [
    within(
      dx,
      points.map(([at]) => at),
      size.width,
    ),
    within(
      dy,
      points.map(([, at]) => at),
      size.height,
    ),
  ]
  const point = (at: readonly number[]): number[] => [(at[0] as number) + x, (at[1] as number) + y]
  const shifted = (box: readonly number[]): number[] => [...point(box), box[2] as number, box[3] as number]
  if (area.corners) return { ...area, corners: area.corners.map(point) }
  if (area.from && area.to) return { ...area, from: point(area.from), to: point(area.to) }
  if (area.kind === 'chart')
    return { ...area, patches: (area.patches ?? []).map((patch) => ({ ...patch, box: shifted(patch.box) })) }
  return area.box ? { ...area, box: shifted(area.box) } : area
}

/** The area with one of its handles at another place. */
export function dragged(area: FrameArea, handle: number, to: Point, size: Size): FrameArea {
  const at = inside(to, size)
  if (area.corners) return { ...area, corners: area.corners.with(handle, at) }
  if (area.from && area.to) return { ...area, [handle === 0 ? 'from' : 'to']: at }
  const box = outlineOf(area)
  if (!box) return area
  const across = cornersOf(box)[(handle + 2) % 4] as Point
  const next: Box = [
    Math.min(at[0], across[0]),
    Math.min(at[1], across[1]),
    Math.max(LEAST, Math.abs(at[0] - across[0])),
    Math.max(LEAST, Math.abs(at[1] - across[1])),
  ]
  if (next[0] + next[2] > size.width || next[1] + next[3] > size.height) return area
  if (area.kind !== 'chart') return { ...area, box: [...next] }
  // The patches keep their places in the outline.
  const scale = (value: number, from: number, by: number, to: number, size: number): number =>
    to + ((value - from) / by) * size
  return {
    ...area,
    patches: (area.patches ?? []).map((patch) => {
      const [x, y, w, h] = patch.box as unknown as Box
      const left = scale(x, box[0], box[2], next[0], next[2])
      const top = scale(y, box[1], box[3], next[1], next[3])
      return { ...patch, box: [left, top, (w / box[2]) * next[2], (h / box[3]) * next[3]] }
    }),
  }
}

/** A new area in the middle of what is seen, a third of it wide. */
export function newArea(kind: AreaKind, areas: readonly FrameArea[], [x, y, w, h]: Box): FrameArea {
  const name = freeNameBeside(NAMES[kind], new Set([...areas.map((area) => area.name), ...FRAME_PARTS]))
  const [left, right] = [rounded(x + w / 3), rounded(x + (2 * w) / 3)]
  const [top, bottom] = [rounded(y + h / 3), rounded(y + (2 * h) / 3)]
  const box = [left, top, Math.max(LEAST, right - left), Math.max(LEAST, bottom - top)]
  switch (kind) {
    case 'rule':
      return { kind, name, from: [left, rounded(y + h / 2)], to: [right, rounded(y + h / 2)], length: '100 mm' }
    case 'line':
      return { kind, name, from: [left, rounded(y + h / 2)], to: [right, rounded(y + h / 2)] }
    case 'square':
      return {
        kind,
        name,
        corners: [
          [left, top],
          [right, top],
          [right, bottom],
          [left, bottom],
        ],
        size: '100 x 100 mm',
      }
    case 'chart':
      return { kind, name, patches: [] }
    case 'evenness':
      return { kind, name, columns: 9, rows: 7 }
    default:
      return { kind, name, box }
  }
}

/** An area with a place on the picture: one that comes with a sheet lies in the middle until it is marked. */
export function withPlace(area: FrameArea, { width, height }: Size): FrameArea {
  const { box, from, to, corners } = newArea(area.kind, [], [0, 0, width, height])
  if (area.kind === 'evenness' || area.kind === 'chart') return area
  if (area.kind === 'rule' || area.kind === 'line')
    return area.from && area.to ? area : { ...area, from: from as number[], to: to as number[] }
  if (area.kind === 'square') return area.corners?.length === 4 ? area : { ...area, corners: corners as number[][] }
  return area.box ? area : { ...area, box: box as number[] }
}

const NAMES: Readonly<Record<AreaKind, string>> = {
  patch: 'patch',
  evenness: 'light',
  rule: 'rule',
  square: 'outline',
  edge: 'edge',
  chart: 'chart',
  line: 'line',
}

/** Patches read from a pasted table: a line each, its name and L*, a*, b*; laid out in rows over a box. */
export function patchesFrom(
  rows: readonly (readonly string[])[],
  [x, y, w, h]: Box,
): NonNullable<FrameArea['patches']> {
  const number = (text: string | undefined): number =>
    Number(
      (text ?? '')
        .trim()
        .replace(',', '.')
        .replace(/^\u2212/, '-') || Number.NaN,
    )
  const read = rows.flatMap((row) => {
    const lab = row.slice(-3).map(number)
    const name = row.slice(0, -3).join(' ').trim()
    return row.length >= 4 && name !== '' && lab.every(Number.isFinite) ? [{ name, lab }] : []
  })
  const columns = Math.ceil(Math.sqrt((read.length * w) / h)) || 1
  const lines = Math.ceil(read.length / columns) || 1
  return read.map(({ name, lab }, i) => ({
    name,
    lab,
    // The middle half of a field, clear of its borders.
    box: [
      x + (w * ((i % columns) + 0.25)) / columns,
      y + (h * (Math.floor(i / columns) + 0.25)) / lines,
      w / columns / 2,
      h / lines / 2,
    ],
  }))
}
