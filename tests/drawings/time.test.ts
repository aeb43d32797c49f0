import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import { drawTime } from '../../src/drawings/time/time.ts'
import { clashes, pathsOf, texts } from './reading.ts'

const draw = (inputs: DrawingInputs, width = 400) => drawTime(inputs, { width })
const middle = ({ box }: { box: { left: number; right: number } }) => (box.left + box.right) / 2
const marks = (inputs: DrawingInputs, width?: number) =>
  texts(draw(inputs, width)).filter(({ as }) => as.includes('mark-text'))
const pointerX = (inputs: DrawingInputs) => pathsOf(draw(inputs), 'pointer')[0]?.[0]?.x as number

describe('the scale', () => {
  // ISO 516: exact times are powers of two, so the marks of 1/4 s and 1/2 s are one stop apart.
  test('has equal distances for equal stops', () => {
    const at = new Map(marks({ time: 0.3 }, 700).map((mark) => [mark.text, middle(mark)]))
    const [quarter, half, one] = [at.get('1/4'), at.get('0.5') ?? at.get('1/2'), at.get('1/8')]
    expect((half as number) - (quarter as number)).toBeCloseTo((quarter as number) - (one as number), 1)
  })
  test('shows the exact time in proportion between its marks', () => {
    const at = new Map(marks({ time: 1 / 4.7 }).map((mark) => [mark.text, middle(mark)]))
    const [slower, faster] = [at.get('1/4') as number, at.get('1/8') as number]
    const expected = faster + ((slower - faster) * Math.log2(1 / 4.7 / (1 / 8))) / Math.log2(1 / 4 / (1 / 8))
    expect(pointerX({ time: 1 / 4.7 })).toBeCloseTo(expected, 1)
  })
  test('says how far the nearest mark is from the exact time', () => {
    // The mark 1/5 is 2^(-7/3) s; log2(2^(-7/3) × 4.7) = −0.10.
    expect(draw({ time: 1 / 4.7 }).description).toContain('The nearest third-stop mark is 1/5 s, −0.10 stop from it')
  })
  test('shows the time that is set and its difference', () => {
    const drawing = draw({ time: 0.25, set_time: 0.5 }, 600)
    expect(texts(drawing).map(({ text }) => text)).toContain('time set: 1/2 s, +1.00 stop')
    expect(pathsOf(drawing, 'set')).toHaveLength(1)
  })
})

test('a time outside the marked ones is shown without marks, and that is said', () => {
  const drawing = draw({ time: 4000 })
  expect(drawing.omissions.join()).toContain('outside the marked times')
  expect(pathsOf(drawing, 'pointer')).toHaveLength(1)
})

test('without a time there is nothing to draw', () => {
  expect(draw({}).omissions.join()).toContain('the exposure time is unknown')
  expect(draw({ time: 0 }).omissions.join()).toContain('must be above zero')
})

test('whatever the times and the width, no text crosses another and the time is written', () => {
  const time = fc.double({ min: 1e-5, max: 1000, noNaN: true })
  fc.assert(
    fc.property(time, fc.option(time, { nil: undefined }), fc.integer({ min: 300, max: 900 }), (one, set, width) => {
      const drawing = draw({ time: one, ...(set === undefined ? {} : { set_time: set }) }, width)
      expect(clashes(drawing)).toEqual([])
      expect(texts(drawing).filter(({ as }) => as.includes('exact'))).toHaveLength(1)
    }),
  )
})
