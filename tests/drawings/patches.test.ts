import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../src/drawings/canvas/drawing-options.ts'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawPatches } from '../../src/drawings/patches/patches.ts'
import { clashes, nodes, pathsOf, texts } from './reading.ts'

const INPUTS = {
  differences: [0.8, 4.5, 1.2, 7.5],
  names: ['white', 'grey', 'red', 'blue'],
  limit: 6,
  mean_limit: 3,
}
const draw = (inputs: DrawingInputs, width = 417) => drawPatches(inputs, { width })
const middle = (drawing: Drawing, ...as: readonly string[]): number => {
  const xs = pathsOf(drawing, ...as).flatMap((run) => run.map(({ x }) => x))
  return (Math.min(...xs) + Math.max(...xs)) / 2
}

describe('each dot', () => {
  test('is as far along its allowance as its difference', () => {
    const drawing = draw(INPUTS)
    const zero = middle(drawing, 'zero')
    const limit = middle(drawing, 'limit')
    INPUTS.differences.forEach((difference, at) => {
      expect((middle(drawing, 'dot', `patch-${at + 1}`) - zero) / (limit - zero)).toBeCloseTo(difference / 6, 2)
    })
    expect((middle(drawing, 'thick', 'mean') - zero) / (limit - zero)).toBeCloseTo(3.5 / 6, 2)
    expect((middle(drawing, 'mean-limit') - zero) / (limit - zero)).toBeCloseTo(0.5, 2)
  })
  test('past its allowance is hollow and square, and its figure says so', () => {
    const drawing = draw(INPUTS)
    const dots = nodes(drawing.node).filter(({ attributes }) => /\bdot\b/.test(String(attributes.class)))
    expect(dots.map(({ attributes }) => attributes.fill)).toEqual([
      'currentColor',
      'currentColor',
      'currentColor',
      'none',
    ])
    expect(texts(drawing).map(({ text }) => text)).toEqual(expect.arrayContaining(['worst over 7.5', 'over 3.5']))
  })
  test('at its allowance is within it', () => {
    expect(texts(draw({ ...INPUTS, differences: [6, 0.1 + 0.2], mean_limit: 0.3 })).map(({ text }) => text)).toContain(
      'worst 6',
    )
  })
  test('far past it is an arrow at the edge', () => {
    const drawing = draw({ ...INPUTS, differences: [1, 400] })
    expect(pathsOf(drawing, 'beyond').length).toBeGreaterThan(0)
    expect(texts(drawing).map(({ text }) => text)).toContain('worst over 400')
  })
})

describe('the order', () => {
  const rows = (inputs: DrawingInputs) =>
    texts(draw(inputs))
      .filter(({ as }) => as.includes('name'))
      .sort((a, b) => a.box.top - b.box.top)
      .map(({ text }) => text)
  test('is the target’s', () => {
    expect(rows(INPUTS)).toEqual(['white', 'grey', 'red', 'blue', 'mean'])
  })
  test('or the worst first', () => {
    expect(rows({ ...INPUTS, sorted: true })).toEqual(['blue', 'grey', 'red', 'white', 'mean'])
  })
  test('is the worst first where there are too many to draw, which is said', () => {
    const drawing = draw({ ...INPUTS, differences: Array.from({ length: 140 }, (_, at) => at / 100), names: undefined })
    expect(texts(drawing).filter(({ as }) => as.includes('name'))).toHaveLength(41)
    expect(drawing.omissions.join()).toContain('100 patches with the smallest differences are not drawn')
    expect(drawing.description).toContain('140 patches')
  })
})

test('the words give every figure', () => {
  expect(draw(INPUTS).description).toBe(
    'The differences of 4 patches from their aims. white 0.8, grey 4.5, red 1.2, blue 7.5. The worst is blue with 7.5. ' +
      'A difference of 6 is allowed; 1 patch has more. The mean is 3.5; 3 is allowed, which it exceeds.',
  )
})

describe('what cannot be drawn is said, and the rest is drawn', () => {
  test('no differences', () => {
    expect(draw({}).omissions).toHaveLength(1)
    expect(texts(draw({ differences: [Number.NaN] }))).toHaveLength(1)
  })
  test('no limits', () => {
    const drawing = draw({ differences: INPUTS.differences })
    expect(pathsOf(drawing, 'dot')).toHaveLength(4)
    expect(pathsOf(drawing, 'limit')).toHaveLength(0)
  })
  test('a limit of nothing', () => {
    expect(draw({ ...INPUTS, limit: 0 }).omissions).toEqual([
      'The difference allowed for a patch is not drawn: it must be above zero.',
    ])
  })
  test('patches that all match', () => {
    expect(draw({ differences: [0, 0] }).description).toContain('The mean is 0.')
  })
})

test.each([240, 296, 340, 417, 480, 800])('names, figures and limits are clear, none missing, at %i px', (width) => {
  const cases = [{}, { limit: 3.1 }, { limit: 3, mean_limit: 3 }, { limit: 0.2, mean_limit: 0.1 }, { mean_limit: 40 }]
  for (const more of cases) {
    const drawing = draw({ ...INPUTS, ...more }, width)
    expect(clashes(drawing)).toEqual([])
    expect(texts(drawing).filter(({ as }) => as.includes('figure'))).toHaveLength(5)
    expect(texts(drawing).filter(({ as }) => as.includes('limit') || as.includes('mean-limit'))).toHaveLength(2)
  }
})

test('whatever the numbers, it draws without a number that is none, and no text over another', () => {
  const one = fc.oneof(fc.double({ min: -1, max: 30, noNaN: true }), fc.constantFrom(0, 1e-9, 1e300, Number.NaN))
  const inputs = fc.record(
    {
      differences: fc.oneof(fc.array(one, { maxLength: 60 }), one),
      names: fc.array(fc.string({ maxLength: 40 }), { maxLength: 8 }),
      limit: one,
      mean_limit: one,
      sorted: fc.boolean(),
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
    { numRuns: 200 },
  )
})
