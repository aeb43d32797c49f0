import { describe, expect, test } from 'vitest'
import type { ChartArea } from '../../../src/frame/areas/area.ts'
import { measureChart } from '../../../src/frame/areas/chart.ts'
import { labOf } from '../../../src/frame/colour/light.ts'
import { chartAgain } from '../../../src/frame/find/find-again.ts'
import { findCorners } from '../../../src/frame/find/find-corners.ts'
import type { Corners } from '../../../src/frame/find/four-corners.ts'
import { make } from '../files.ts'
import { type Four, opened } from './drawn.ts'

const [COLUMNS, ROWS] = [6, 4]
/** sRGB codes of a chart of 24 unlike colours. */
const COLOURS = Array.from({ length: COLUMNS * ROWS }, (_, i): readonly [number, number, number] => [
  40 + ((i * 97) % 200),
  40 + ((i * 57 + 30) % 200),
  40 + ((i * 31 + 80) % 200),
])

/** Where a point of the picture lies on the chart, from its upper left to its lower right as 0, 0 to 1, 1: of a parallelogram, by its sides. */
function onChart([a, b, , d]: Four, x: number, y: number): readonly [number, number] {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - a[0], d[1] - a[1]]
  const determinant = ux * vy - vx * uy
  return [((x - a[0]) * vy - (y - a[1]) * vx) / determinant, ((y - a[1]) * ux - (x - a[0]) * uy) / determinant]
}

/** A picture of the chart, white between its patches, on a dark ground. */
const picture = (corners: Four) =>
  make(480, 340, 3, 8, (x, y, channel) => {
    const [u, v] = onChart(corners, x + 0.5, y + 0.5)
    if (u < 0 || u > 1 || v < 0 || v > 1) return 24
    const [i, j] = [Math.floor(u * COLUMNS), Math.floor(v * ROWS)]
    const [s, t] = [u * COLUMNS - i, v * ROWS - j]
    if (s < 0.12 || s > 0.88 || t < 0.12 || t > 0.88) return 235
    return (COLOURS[j * COLUMNS + i] as readonly number[])[channel] as number
  })

const FIRST: Four = [
  [60, 50],
  [360, 50],
  [360, 250],
  [60, 250],
]
/** The chart as marked in the first picture, each patch referenced by what it is there. */
function marked(): ChartArea {
  const lit = opened(picture(FIRST))
  const patches = COLOURS.map((codes, i) => {
    const light = codes.map((code, c) => (lit.light[c] as Float64Array)[code] as number)
    const { L, a, b } = labOf(light as unknown as [number, number, number], lit.matrix)
    return {
      name: `p${i}`,
      box: [60 + 50 * (i % COLUMNS) + 15, 50 + 50 * Math.floor(i / COLUMNS) + 15, 20, 20] as const,
      lab: [L, a, b] as const,
    }
  })
  return { kind: 'chart', name: 'chart', patches }
}

/** The chart turned about its middle and moved, degrees and px. */
function turned(degrees: number, dx: number, dy: number, scale = 1): Four {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180) * scale, Math.sin((degrees * Math.PI) / 180) * scale]
  return FIRST.map(([x, y]) => {
    const [u, v] = [x - 210, y - 150]
    return [240 + dx + u * cos - v * sin, 170 + dy + u * sin + v * cos]
  }) as unknown as Four
}

describe('a chart in another picture', () => {
  test.each([
    ['moved', turned(0, 30, 20)],
    ['turned a little', turned(7, -10, 5)],
    ['smaller', turned(0, 40, -30, 0.6)],
    ['upside down', turned(180, 0, 0)],
    ['on its side', turned(90, 0, 0)],
  ])('is found again %s, its patches with it', (_, corners) => {
    const lit = opened(picture(corners))
    const found = findCorners(lit) ?? expect.unreachable('no corners')
    const again = chartAgain(marked(), FIRST as unknown as Corners, found, lit) ?? expect.unreachable('not found')
    const { worst } = measureChart({ ...marked(), patches: again.patches }, lit)
    expect(worst).toBeLessThan(0.01)
  })

  test('is not given where another card lies there', () => {
    const other = make(480, 340, 3, 8, (x, y) => (x > 90 && x < 390 && y > 70 && y < 270 ? 128 : 24))
    const lit = opened(other)
    const found = findCorners(lit) ?? expect.unreachable('no corners')
    expect(chartAgain(marked(), FIRST as unknown as Corners, found, lit)).toBeUndefined()
  })

  test('is not given turned by half a right angle: no upright box fits', () => {
    const lit = opened(picture(turned(45, 0, 0, 0.5)))
    const found = findCorners(lit)
    if (found) expect(chartAgain(marked(), FIRST as unknown as Corners, found, lit)).toBeUndefined()
  })
})
