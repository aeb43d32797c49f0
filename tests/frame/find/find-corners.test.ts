import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findCorners } from '../../../src/frame/find/find-corners.ts'
import { projection } from '../../../src/frame/find/projection.ts'
import { make } from '../files.ts'
import { type Four, opened, scene } from './drawn.ts'

const WIDTH = 420
const HEIGHT = 300

/** A rectangle that is turned, moved and seen a little from aside. */
const card = fc
  .record({
    x: fc.double({ min: -20, max: 20, noNaN: true }),
    y: fc.double({ min: -20, max: 20, noNaN: true }),
    wide: fc.double({ min: 120, max: 220, noNaN: true }),
    tall: fc.double({ min: 90, max: 150, noNaN: true }),
    turned: fc.double({ min: -0.35, max: 0.35, noNaN: true }),
    off: fc.array(fc.double({ min: -8, max: 8, noNaN: true }), { minLength: 8, maxLength: 8 }),
  })
  .map(({ x, y, wide, tall, turned, off }): Four => {
    const [cos, sin] = [Math.cos(turned), Math.sin(turned)]
    return [
      [-wide / 2, -tall / 2],
      [wide / 2, -tall / 2],
      [wide / 2, tall / 2],
      [-wide / 2, tall / 2],
    ].map(([u, v], i) => [
      WIDTH / 2 + x + (u as number) * cos - (v as number) * sin + (off[2 * i] as number),
      HEIGHT / 2 + y + (u as number) * sin + (v as number) * cos + (off[2 * i + 1] as number),
    ]) as unknown as Four
  })

/** The greatest distance of points from others, px. */
const apart = (points: readonly (readonly [number, number])[], others: Four): number =>
  Math.max(
    ...points.map(([x, y], i) => Math.hypot(x - (others[i]?.[0] ?? Number.NaN), y - (others[i]?.[1] ?? Number.NaN))),
  )

const flat = (light: number) => () => light

describe('the corners of a card', () => {
  test('are found to a seventh of a pixel: turned, oblique, noisy, unevenly lit, brighter or darker than the ground', () => {
    fc.assert(
      fc.property(card, fc.boolean(), fc.integer({ min: 1, max: 1e6 }), (corners, isBright, seed) => {
        const fall = (x: number, y: number): number => 2 ** ((-0.5 * x) / WIDTH - (0.3 * y) / HEIGHT)
        const [light, ground] = isBright ? [0.7, 0.12] : [0.06, 0.55]
        const made = scene({
          width: WIDTH,
          height: HEIGHT,
          ground: (x, y) => ground * fall(x, y),
          cards: [{ corners, light: (x, y) => light * fall(x, y) }],
          noise: 0.01,
          seed,
        })
        const found = findCorners(opened(made)) ?? expect.unreachable('no corners')
        expect(apart(found, corners)).toBeLessThan(0.15)
      }),
      { numRuns: 6 },
    )
  })

  test('of a chart are its outer ones, whatever lies on it', () => {
    const corners: Four = [
      [80, 60],
      [340, 66],
      [336, 246],
      [84, 240],
    ]
    const on = (x: number, y: number): number =>
      // A grid of patches on a white border, some as dark as the ground.
      x % 40 > 12 && y % 40 > 12 && x > 100 && x < 320 && y > 84 && y < 222
        ? 0.05 + 0.6 * (((Math.floor(x / 40) * 3 + Math.floor(y / 40)) % 7) / 7)
        : 0.8
    const made = scene({ width: WIDTH, height: HEIGHT, ground: flat(0.1), cards: [{ corners, light: on }] })
    const found = findCorners(opened(made)) ?? expect.unreachable('no corners')
    expect(apart(found, corners)).toBeLessThan(0.15)
  })

  test.each<readonly [string, Parameters<typeof scene>[0]['cards']]>([
    ['there is none', []],
    [
      'it reaches out of the picture',
      [
        {
          corners: [
            [-30, 60],
            [200, 60],
            [200, 220],
            [-30, 220],
          ],
          light: flat(0.7),
        },
      ],
    ],
    [
      'there are two alike',
      [
        [30, 60],
        [230, 60],
      ].map(([x, y]) => ({
        corners: [
          [x as number, y as number],
          [(x as number) + 140, y as number],
          [(x as number) + 140, (y as number) + 160],
          [x as number, (y as number) + 160],
        ] as unknown as Four,
        light: flat(0.7),
      })),
    ],
    [
      'it is a triangle',
      [
        {
          corners: [
            [60, 240],
            [200, 50],
            [200, 50.001],
            [350, 240],
          ],
          light: flat(0.7),
        },
      ],
    ],
    [
      'it is hardly brighter than its ground',
      [
        {
          corners: [
            [60, 60],
            [300, 60],
            [300, 220],
            [60, 220],
          ],
          light: flat(0.104),
        },
      ],
    ],
  ])('are not given where %s', (_, cards) => {
    const made = scene({ width: WIDTH, height: HEIGHT, ground: flat(0.1), cards, noise: 0.02 })
    expect(findCorners(opened(made))).toBeUndefined()
  })

  test('are not given of a disc', () => {
    const made = make(WIDTH, HEIGHT, 1, 16, (x, y) => (Math.hypot(x - 210, y - 150) < 100 ? 50000 : 6000))
    expect(findCorners(opened(made))).toBeUndefined()
  })

  test('are not given, and nothing is thrown, for pictures of noise and of one pixel', () => {
    const noise = scene({ width: 120, height: 90, ground: flat(0.5), cards: [], noise: 0.4 })
    expect(findCorners(opened(noise))).toBeUndefined()
    expect(findCorners(opened(make(1, 1, 1, 16, () => 30000)))).toBeUndefined()
  })
})

test('a projection takes corners to corners, and straight lines to straight lines', () => {
  fc.assert(
    fc.property(card, card, (from, to) => {
      const map = projection(from, to)
      expect(apart(from.map(map), to)).toBeLessThan(1e-6)
      // The crossing of the diagonals stays their crossing.
      expect(
        Math.hypot(...(map(crossing(from)).map((value, i) => value - (crossing(to)[i] as number)) as [number, number])),
      ).toBeLessThan(1e-6)
    }),
  )
})

function crossing([a, b, c, d]: Four): readonly [number, number] {
  const [px, py, qx, qy] = [c[0] - a[0], c[1] - a[1], d[0] - b[0], d[1] - b[1]]
  const t = ((b[0] - a[0]) * qy - (b[1] - a[1]) * qx) / (px * qy - py * qx)
  return [a[0] + t * px, a[1] + t * py]
}
