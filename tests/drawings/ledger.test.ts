import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import { drawLedger } from '../../src/drawings/ledger/ledger.ts'
import { clashes, nodes, pathsOf, texts } from './reading.ts'

const INPUTS = {
  start: 10.2,
  stops: [2.32, 0.64, 0, -1.5],
  names: ['surface', 'lens standing out', 'filter', 'flash'],
}
const draw = (inputs: DrawingInputs, width = 417) => drawLedger(inputs, { width })
const written = (inputs: DrawingInputs) => texts(draw(inputs)).map(({ text }) => text)

describe('the steps', () => {
  test('are as long as their stops, to the right for more exposure', () => {
    const steps = pathsOf(draw(INPUTS), 'step')
    const run = (at: number) => (steps[at]?.[1]?.x as number) - (steps[at]?.[0]?.x as number)
    const stop = run(0) / 2.32
    expect(stop).toBeGreaterThan(10)
    expect(run(1) / stop).toBeCloseTo(0.64, 2)
    expect(run(3) / stop).toBeCloseTo(-1.5, 2)
  })
  test('each begin where the one before ended', () => {
    const steps = pathsOf(draw({ ...INPUTS, stops: [1, 2, -1, 0.5] }), 'step')
    for (const at of [1, 2, 3]) expect(steps[at]?.[0]?.x).toBeCloseTo(steps[at - 1]?.[1]?.x as number, 2)
  })
  test('end at the light value to set: the one metered less all the stops', () => {
    expect(written(INPUTS)).toEqual(expect.arrayContaining(['10.2 EV', '8.74 EV', '+2.32', '+0.64', '0', '−1.5']))
  })
  test('are on the axis', () => {
    const drawing = draw(INPUTS)
    const ticks = texts(drawing).filter(({ as }) => as.includes('tick'))
    const [a, b] = ticks as [(typeof ticks)[0], (typeof ticks)[0]]
    const middle = ({ box }: typeof a) => (box.left + box.right) / 2
    const perEv = (middle(b) - middle(a)) / (Number(b.text) - Number(a.text))
    const start = pathsOf(drawing, 'start')[0] as readonly { x: number }[]
    const across = ((start[0]?.x as number) + (start[1]?.x as number)) / 2
    expect(Number(a.text) + (across - middle(a)) / perEv).toBeCloseTo(10.2, 1)
  })
})

test('the words go from the reading to the setting', () => {
  expect(draw(INPUTS).description).toBe(
    'The reading is 10.2 EV. In order; more exposure counts as plus: surface +2.32 to 7.88 EV; ' +
      'lens standing out +0.64 to 7.24 EV; filter 0 to 7.24 EV; flash −1.5 to 8.74 EV. ' +
      '1.46 stops more exposure in total; set 8.74 EV.',
  )
})

describe('what cannot be drawn is said, and the rest is drawn', () => {
  test('no stops', () => {
    expect(draw({ start: 10 }).omissions).toHaveLength(1)
    expect(draw({ start: 10, stops: [] }).omissions).toHaveLength(1)
  })
  test('no reading: stops are counted from zero', () => {
    const drawing = draw({ ...INPUTS, start: undefined })
    expect(drawing.omissions.join()).toMatch(/metered one is unknown/)
    expect(texts(drawing).map(({ text }) => text)).toContain('+1.46')
  })
  test('an entry that is no number', () => {
    const drawing = draw({ ...INPUTS, stops: [1, Number.NaN, 2] })
    expect(drawing.omissions).toEqual(['“lens standing out” is left out: it must be a number of stops.'])
    expect(pathsOf(drawing, 'step')).toHaveLength(2)
  })
  test('no names, too few, or something else', () => {
    expect(written({ ...INPUTS, names: undefined })).toContain('entry 1')
    expect(written({ ...INPUTS, names: ['one'] })).toEqual(expect.arrayContaining(['one', 'entry 2']))
    expect(draw({ ...INPUTS, names: 3 }).omissions.join()).toMatch(/not named/)
  })
})

test.each([240, 296, 340, 417, 480, 800])('names and figures are clear, none missing, at %i px', (width) => {
  const long = ['The surface that was metered, white paper', 'unbreakablylongwordindeedasthismaybe', '', 'x']
  for (const more of [{}, { names: long }, { stops: [0, 0, 0, 0] }, { stops: [20, -30, 0.01, 5], start: -3 }]) {
    const drawing = draw({ ...INPUTS, ...more }, width)
    expect(clashes(drawing)).toEqual([])
    expect(texts(drawing).filter(({ as }) => as.includes('figure'))).toHaveLength(6)
    expect(texts(drawing).filter(({ as }) => as.includes('name')).length).toBeGreaterThanOrEqual(6)
  }
})

test('whatever the numbers, it draws without a number that is none, and no text over another', () => {
  const stops = fc.oneof(fc.double({ min: -10, max: 10, noNaN: true }), fc.constantFrom(0, 1e-9, 1e300, Number.NaN))
  const inputs = fc.record(
    {
      start: fc.oneof(stops, fc.constant('no' as const)),
      stops: fc.oneof(fc.array(stops, { maxLength: 50 }), stops),
      names: fc.array(fc.string({ maxLength: 40 }), { maxLength: 8 }),
    },
    { requiredKeys: [] },
  )
  fc.assert(
    fc.property(inputs, fc.integer({ min: 0, max: 1200 }), (given, width) => {
      const drawing = draw(given as DrawingInputs, width)
      for (const node of nodes(drawing.node))
        for (const value of Object.values(node.attributes)) expect(String(value)).not.toMatch(/NaN|Infinity|undefined/)
      expect(clashes(drawing)).toEqual([])
    }),
    { numRuns: 300 },
  )
})
