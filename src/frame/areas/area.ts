/** Left, top, width and height in pixels of the picture as shown. */
export type Box = readonly [number, number, number, number]
export type Point = readonly [number, number]

export interface PatchArea {
  readonly kind: 'patch'
  readonly name: string
  readonly box: Box
}

export interface EvennessArea {
  readonly kind: 'evenness'
  readonly name: string
  /** The whole picture where there is none. */
  readonly box: Box | undefined
  readonly columns: number
  readonly rows: number
}

export interface RuleArea {
  readonly kind: 'rule'
  readonly name: string
  readonly from: Point
  readonly to: Point
  /** m. */
  readonly length: number
}

export interface SquareArea {
  readonly kind: 'square'
  readonly name: string
  /** Top left, top right, bottom right, bottom left. */
  readonly corners: readonly [Point, Point, Point, Point]
  /** m. */
  readonly width: number
  readonly height: number
}

export interface EdgeArea {
  readonly kind: 'edge'
  readonly name: string
  readonly box: Box
}

export interface ChartPatch {
  readonly name: string
  readonly box: Box
  readonly lab: readonly [number, number, number]
}

export interface ChartArea {
  readonly kind: 'chart'
  readonly name: string
  readonly patches: readonly ChartPatch[]
}

export interface LineArea {
  readonly kind: 'line'
  readonly name: string
  readonly from: Point
  readonly to: Point
}

/** A place in a picture and what is measured there. */
export type Area = PatchArea | EvennessArea | RuleArea | SquareArea | EdgeArea | ChartArea | LineArea

export const AREA_KINDS = [
  'patch',
  'evenness',
  'rule',
  'square',
  'edge',
  'chart',
  'line',
] as const satisfies readonly Area['kind'][]
