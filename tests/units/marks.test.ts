import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { allMarks, exactBehind, type MarkedScale, nearestMark } from '../../src/units/index.ts'

/** How many stops one value of a scale is from another; an f-number's square is what doubles. */
const stopsBetween = (scale: MarkedScale, a: number, b: number): number =>
  Math.abs(Math.log2(a / b)) * (scale === 'aperture' ? 2 : 1)

/**
 * The whole stops as the standards' tables have them, each with its exact value: ISO 517 (f-numbers), ISO 516
 * (exposure times), ISO 5800 and ISO 12232 (speeds).
 */
const WHOLE_STOPS: Readonly<Record<MarkedScale, readonly (readonly [nominal: number, exact: number])[]>> = {
  aperture: [
    [0.5, 1 / 2],
    [0.7, Math.SQRT1_2],
    [1, 1],
    [1.4, Math.SQRT2],
    [2, 2],
    [2.8, 2 * Math.SQRT2],
    [4, 4],
    [5.6, 4 * Math.SQRT2],
    [8, 8],
    [11, 8 * Math.SQRT2],
    [16, 16],
    [22, 16 * Math.SQRT2],
    [32, 32],
    [45, 32 * Math.SQRT2],
    [64, 64],
    [90, 64 * Math.SQRT2],
    [128, 128],
  ],
  time: [
    [60, 64],
    [30, 32],
    [15, 16],
    [8, 8],
    [4, 4],
    [2, 2],
    [1, 1],
    [1 / 2, 1 / 2],
    [1 / 4, 1 / 4],
    [1 / 8, 1 / 8],
    [1 / 15, 1 / 16],
    [1 / 30, 1 / 32],
    [1 / 60, 1 / 64],
    [1 / 125, 1 / 128],
    [1 / 250, 1 / 256],
    [1 / 500, 1 / 512],
    [1 / 1000, 1 / 1024],
    [1 / 2000, 1 / 2048],
    [1 / 4000, 1 / 4096],
    [1 / 8000, 1 / 8192],
  ],
  speed: [
    [25, 25],
    [50, 50],
    [100, 100],
    [200, 200],
    [400, 400],
    [800, 800],
    [1600, 1600],
    [3200, 3200],
    [6400, 6400],
    [12800, 12800],
  ],
}

const SCALES: readonly MarkedScale[] = ['aperture', 'time', 'speed']

for (const scale of SCALES)
  describe(`the marks of ${scale}`, () => {
    const marks = allMarks(scale)

    test('have at each whole stop the exact value of the standard, both ways', () => {
      for (const [nominal, exact] of WHOLE_STOPS[scale]) {
        expect(exactBehind(scale, nominal), `${nominal}`).toBeCloseTo(exact, 12)
        expect(nearestMark(scale, exact)?.nominal).toBeCloseTo(nominal, 12)
      }
    })

    test('are a third of a stop apart exactly, all the way', () => {
      for (const [i, mark] of marks.entries())
        if (i > 0) expect(stopsBetween(scale, mark.exact, (marks[i - 1] as typeof mark).exact)).toBeCloseTo(1 / 3, 9)
    })

    test('run one way without a figure twice', () => {
      const nominals = marks.map(({ nominal }) => nominal)
      expect(new Set(nominals).size).toBe(nominals.length)
      expect([...nominals].sort((a, b) => (scale === 'time' ? b - a : a - b))).toEqual(nominals)
    })

    test('are each within a tenth of a stop of the exact value, but f/1.2', () => {
      const far = marks.filter(({ nominal, exact }) => stopsBetween(scale, nominal, exact) > 0.1)
      // The mark between 1.1 and 1.4 is 1.26 exactly, and is engraved 1.2 all the same.
      expect(far.map(({ text }) => text)).toEqual(scale === 'aperture' ? ['f/1.2'] : [])
    })

    test('are each the nearest mark to themselves and to their exact value', () => {
      for (const mark of marks) {
        expect(nearestMark(scale, mark.nominal)).toEqual(mark)
        expect(nearestMark(scale, mark.exact)).toEqual(mark)
        expect(exactBehind(scale, mark.nominal)).toBe(mark.exact)
      }
    })

    test('never leave a value on the scale more than half a third from its mark', () => {
      const [first, last] = [marks[0]?.exact as number, marks.at(-1)?.exact as number]
      fc.assert(
        fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (part) => {
          const value = first * (last / first) ** part
          const mark = nearestMark(scale, value)
          expect(mark).toBeDefined()
          expect(stopsBetween(scale, value, mark?.exact as number)).toBeLessThanOrEqual(1 / 6 + 1e-9)
        }),
      )
    })

    test('end: past half a third beyond, nothing is marked', () => {
      const ends = [marks[0]?.exact as number, marks.at(-1)?.exact as number]
      const step = 2 ** (scale === 'aperture' ? 1 / 10 : 1 / 5)
      for (const [value, end] of [
        [Math.min(...ends) / step, Math.min(...ends)],
        [Math.max(...ends) * step, Math.max(...ends)],
      ] as const) {
        expect(nearestMark(scale, value)).toBeUndefined()
        expect(nearestMark(scale, end)).toBeDefined()
      }
    })

    test('do not answer to what is no positive number', () => {
      for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
        expect(nearestMark(scale, value)).toBeUndefined()
        expect(exactBehind(scale, value)).toBeUndefined()
      }
    })
  })

test('marks are written as on the equipment', () => {
  expect(nearestMark('aperture', 5.657)?.text).toBe('f/5.6')
  expect(nearestMark('time', 1 / 128)?.text).toBe('1/125 s')
  expect(nearestMark('time', 0.4)?.text).toBe('1/2.5 s')
  expect(nearestMark('time', 0.63)?.text).toBe('0.6 s')
  expect(nearestMark('time', 2)?.text).toBe('2 s')
  expect(nearestMark('speed', 100)?.text).toBe('ISO 100')
})
