import {
  type Box,
  boxAround,
  crosses,
  grown,
  inside,
  overlap,
  type Point,
  type Segment,
  sides,
  without,
} from './geometry.ts'
import { type Lettering, letteringBox, TEXT_SIZE } from './lettering.ts'
import type { Pixels } from './measures.ts'
import { element, type Node, rounded3 } from './tree.ts'

/** The kinds of line of an engineering drawing. */
export type Stroke = 'thick' | 'emphasis' | 'thin' | 'dashed' | 'chain' | 'dotted' | 'dimension' | 'hatch'

const STROKES: Readonly<Record<Stroke, Readonly<Record<string, string | number>>>> = {
  thick: { 'stroke-width': 1.8 },
  emphasis: { 'stroke-width': 3 },
  thin: { 'stroke-width': 1 },
  dashed: { 'stroke-width': 1, 'stroke-dasharray': '5 3' },
  chain: { 'stroke-width': 0.8, 'stroke-dasharray': '12 3 2 3' },
  dotted: { 'stroke-width': 1, 'stroke-dasharray': '1.5 3' },
  dimension: { 'stroke-width': 0.8 },
  hatch: { 'stroke-width': 0.7, 'stroke-opacity': 0.55 },
}

const pathPoints = (points: readonly Point[]): string =>
  points.map((one) => `${rounded3(one.x)} ${rounded3(one.y)}`).join(' L ')

/** A place for a line of text, with the leader that connects it to what it names. */
export interface TextPlacement {
  readonly lettering: Lettering
  readonly lines?: readonly Segment[]
}

/**
 * The surface of one drawing. It records every line, shape and text in pixels of the view box, so that text is placed
 * where it crosses nothing.
 */
export class Canvas {
  /** Width of the view box in pixels. */
  readonly width: Pixels
  #nodes: Node[] = []
  #lines: Segment[] = []
  #bodies: Box[] = []
  #lettering: Box[] = []

  constructor(width: Pixels) {
    this.width = width
  }

  /** Draws separate strokes as one path. Styles, tests and drag handles find it by its class name. */
  lines(stroke: Stroke, className: string, segments: readonly Segment[]): void {
    if (segments.length === 0) return
    this.#lines.push(...segments)
    this.#path(stroke, className, segments.map((one) => `M ${pathPoints([one.from, one.to])}`).join(' '))
  }

  line(stroke: Stroke, className: string, from: Point, to: Point): void {
    this.lines(stroke, className, [{ from, to }])
  }

  /** Draws a closed shape; lines cut with `around` stop at it. */
  body(stroke: Stroke, className: string, points: readonly Point[], options: { filled?: boolean } = {}): void {
    this.#lines.push(...sides(points))
    this.#bodies.push(boxAround(points))
    this.#path(stroke, className, `M ${pathPoints(points)} Z`, options.filled)
  }

  /** Draws a closed shape that other lines may cross. */
  outline(stroke: Stroke, className: string, points: readonly Point[]): void {
    this.#lines.push(...sides(points))
    this.#path(stroke, className, `M ${pathPoints(points)} Z`)
  }

  /** Draws curves made of short chords as one path, so that the dash pattern continues along each curve. */
  curves(stroke: Stroke, className: string, runs: readonly (readonly Point[])[]): void {
    const drawn = runs.filter((run) => run.length > 1)
    if (drawn.length === 0) return
    for (const run of drawn)
      for (let at = 1; at < run.length; at++) this.#lines.push({ from: run[at - 1] as Point, to: run[at] as Point })
    this.#path(stroke, className, drawn.map((run) => `M ${pathPoints(run)}`).join(' '))
  }

  /** Draws an open curve as short chords, so that text is placed clear of each chord. */
  arc(stroke: Stroke, className: string, points: readonly Point[]): void {
    this.#lines.push(...sides(points).slice(0, -1))
    this.#path(stroke, className, `M ${pathPoints(points)}`)
  }

  /** The parts of a line that lie outside all bodies and texts, with a gap in pixels around them. */
  around(segment: Segment, gap = 3): readonly Segment[] {
    return without(
      segment,
      [...this.#bodies, ...this.#lettering].map((box) => grown(box, gap)),
    )
  }

  /** Keeps text out of a box. */
  reserve(box: Box): void {
    this.#bodies.push(box)
  }

  /** The boxes that hatching must leave free. */
  get occupied(): readonly Box[] {
    return [...this.#bodies.map((box) => grown(box, 1)), ...this.#lettering.map((box) => grown(box, 1))]
  }

  /** The boxes of all texts placed so far. */
  get textBoxes(): readonly Box[] {
    return this.#lettering
  }

  /** Writes in the first free place; false if no place is free. */
  placeText(className: string, places: Iterable<TextPlacement>, within: Box): boolean {
    for (const { lettering, lines = [] } of places) {
      const box = letteringBox(lettering)
      if (!this.#free(box, within)) continue
      if (lines.some((line) => this.#lettering.some((other) => crosses(line, other)))) continue
      if (lines.some((line) => crosses(line, box))) continue
      this.#lettering.push(box)
      this.lines('dimension', className, lines)
      this.#write(className, lettering)
      return true
    }
    return false
  }

  #free(box: Box, within: Box): boolean {
    const wide = grown(box, 1)
    return (
      inside(box, within) &&
      !this.#lettering.some((other) => overlap(wide, other)) &&
      !this.#bodies.some((other) => overlap(wide, other)) &&
      !this.#lines.some((line) => crosses(line, wide))
    )
  }

  #write(className: string, { text, at, anchor, upright, bold }: Lettering): void {
    const turned = upright ? { transform: `rotate(-90 ${rounded3(at.x)} ${rounded3(at.y)})` } : {}
    this.#nodes.push(
      element(
        'text',
        {
          class: `figure-text ${className}`,
          x: at.x,
          y: at.y,
          'text-anchor': anchor,
          'font-size': TEXT_SIZE,
          fill: 'currentColor',
          ...(bold ? { 'font-weight': 'bold' } : {}),
          ...turned,
        },
        text,
      ),
    )
  }

  #path(stroke: Stroke, className: string, d: string, filled = false): void {
    this.#nodes.push(
      element('path', {
        class: `${stroke} ${className}`,
        d,
        fill: filled ? 'currentColor' : 'none',
        stroke: 'currentColor',
        ...STROKES[stroke],
        'vector-effect': 'non-scaling-stroke',
      }),
    )
  }

  /** The finished drawing as an `svg` element, its view box `height` pixels high. */
  node(height: Pixels, title: string, description: string): Node {
    return element(
      'svg',
      { class: 'drawing', viewBox: `0 0 ${rounded3(this.width)} ${rounded3(height)}`, role: 'img' },
      element('title', {}, title),
      element('desc', {}, description),
      ...this.#nodes,
    )
  }
}
