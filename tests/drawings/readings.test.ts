import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import { drawReadings } from '../../src/drawings/readings/readings.ts'
import { clashes, pathsOf, texts } from './reading.ts'

const LUX = [410, 415, 408, 418, 422, 417, 409, 414, 407]
const SIZE = { original_width: 0.6, original_height: 0.45 }
const draw = (inputs: DrawingInputs, width = 400) => drawReadings(inputs, { width })
const written = (inputs: DrawingInputs, width?: number) => texts(draw(inputs, width)).map(({ text }) => text)

test('each reading is at its place, in reading order from the upper left', () => {
  const found = texts(draw({ readings: LUX, ...SIZE })).filter(({ as }) => as.includes('reading'))
  expect(found.map(({ text }) => Number(text))).toEqual(LUX)
  const [upperLeft, , upperRight] = found as [(typeof found)[0], (typeof found)[0], (typeof found)[0]]
  const lowerLeft = found[6] as (typeof found)[0]
  expect(upperRight.box.left).toBeGreaterThan(upperLeft.box.right)
  expect(lowerLeft.box.top).toBeGreaterThan(upperLeft.box.bottom)
})

test('the original has the proportions of its size', () => {
  const [outline] = pathsOf(draw({ readings: LUX, ...SIZE }), 'original')
  const xs = (outline ?? []).map(({ x }) => x)
  const ys = (outline ?? []).map(({ y }) => y)
  expect((Math.max(...ys) - Math.min(...ys)) / (Math.max(...xs) - Math.min(...xs))).toBeCloseTo(0.75, 2)
})

test('names the brightest and the dimmest, and their spread in stops', () => {
  expect(written({ readings: LUX, ...SIZE })).toEqual(expect.arrayContaining(['brightest 422', 'dimmest 407']))
  // log2(422 / 407) = 0.052.
  expect(draw({ readings: LUX }).description).toContain('Brightest 422, dimmest 407, spread 0.05 stop.')
})

test('a higher f-number is a brighter reading, by the square of the ratio', () => {
  const drawing = draw({ readings_in_apertures: [8, 8, 8 * Math.SQRT2, 8, 5.6568542], ...SIZE })
  expect(drawing.description).toContain('Brightest f/11.3, dimmest f/5.66, spread 2.00 stop')
})

describe('readings that cannot be drawn', () => {
  test.each([
    [{}, /no readings are known/],
    [{ readings: [1, 2, 3] }, /there are 3, but five/],
    [{ readings: [1, 2, 0, 4, 5] }, /number above zero/],
    [{ readings: 'many' }, /number above zero/],
  ])('%o', (inputs, why) => expect(draw(inputs as DrawingInputs).omissions.join()).toMatch(why))
})

test('whatever the readings, size and width, each figure is written once and clear of the others', () => {
  const reading = fc.double({ min: 1, max: 20_000, noNaN: true })
  const side = fc.double({ min: 0.05, max: 3, noNaN: true })
  const list = fc.oneof(
    fc.array(reading, { minLength: 5, maxLength: 5 }),
    fc.array(reading, { minLength: 9, maxLength: 9 }),
  )
  fc.assert(
    fc.property(list, side, side, fc.integer({ min: 300, max: 900 }), (readings, width, height, px) => {
      const drawing = draw({ readings, original_width: width, original_height: height }, px)
      expect(clashes(drawing)).toEqual([])
      if (height / width < 4)
        expect(texts(drawing).filter(({ as }) => as.includes('reading'))).toHaveLength(readings.length)
    }),
  )
})
