import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DRAWINGS, type InputType } from '../../src/drawings/kinds/registry.ts'
import type { Value } from '../../src/language/index.ts'
import { DRAWING_KINDS } from '../../src/worksheet/index.ts'
import { nodes, texts } from './reading.ts'

const odd = fc.constantFrom(0, -1, 1e-9, 1e300, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY)
const among = (min: number, max: number) =>
  fc.oneof({ weight: 6, arbitrary: fc.double({ min, max, noNaN: true }) }, odd)
const lamp = fc.record(
  {
    x: among(-3, 3),
    y: among(-2, 2),
    z: among(-0.2, 3),
    aim_x: among(-1, 1),
    aim_y: among(-1, 1),
    intensity: among(0, 5000),
    beam_angle: among(0, 4),
  },
  { requiredKeys: ['x', 'z'] },
)

/** A usable value of each type. */
const SAMPLES: Readonly<Record<InputType, unknown>> = {
  length: 0.3,
  stops: 0.3,
  'f-number': 8,
  number: 0.5,
  'pixel pitch': 6e-6,
  lamps: [
    { x: -0.9, y: 0, z: 0.8, aim_x: 0, aim_y: 0, intensity: 1000, beam_angle: 2 },
    { x: 0.9, y: 0, z: 0.8, aim_x: 0, aim_y: 0, intensity: 1000, beam_angle: 2 },
  ],
  'yes or no': true,
  'f-numbers': [8, 8, 11, 8, 8],
  'stops, a list': [1, -0.5, 2],
  lengths: [0.1, 0.2],
  numbers: [410, 415, 408, 418, 422],
  'rows of numbers': [
    [0.8, 0.9, 0.7],
    [0.9, 1, 0.8],
  ],
  records: [],
  angle: 0.01,
  time: 0.2,
  times: [0, 1800, 7200],
  pixels: 4000,
  texts: ['one', 'two', 'three'],
}

/** What may come of a cell's formula for an input of a sort. */
const VALUES: Readonly<Partial<Record<InputType, fc.Arbitrary<unknown>>>> = {
  length: among(0.0005, 3),
  stops: among(0, 3),
  'f-number': among(0.4, 200),
  'pixel pitch': among(1e-6, 2e-5),
  lamps: fc.oneof(lamp, fc.array(fc.oneof(lamp, fc.array(lamp, { maxLength: 2 })), { maxLength: 4 })),
  'yes or no': fc.boolean(),
  time: among(1e-5, 100),
  numbers: fc.oneof(
    fc.array(among(0, 1000), { maxLength: 10 }),
    fc.array(among(1, 1000), { minLength: 9, maxLength: 9 }),
  ),
}
const anything = fc.oneof(among(-10, 1000), fc.boolean(), fc.string(), fc.array(among(-1, 10), { maxLength: 12 }))

describe.each(DRAWING_KINDS)('%s', (kind) => {
  const { title, inputs, load } = DRAWINGS[kind]
  const named = Object.fromEntries(inputs.map(({ name }) => [name, name]))

  test('says what it is and what feeds it', () => {
    expect(title).not.toBe('')
    expect(new Set(inputs.map(({ name }) => name)).size).toBe(inputs.length)
    for (const { label } of inputs) expect(label).toMatch(/^[A-Z]/)
  })

  test('draws something, with its words, from nothing at all', async () => {
    const draw = await load(named)
    const drawing = draw({}, { width: 340, title: 'Mine' })
    expect(drawing.title).toBe('Mine')
    expect(drawing.description).not.toBe('')
    expect(drawing.omissions).not.toEqual([])
    expect(drawing.node.attributes.viewBox).toBe(`0 0 340 ${drawing.height}`)
  })

  test('needs what it is marked to need, and nothing else', async () => {
    const draw = await load(named)
    const { needs } = DRAWINGS[kind]
    const sample = (names: readonly string[]): Record<string, Value> =>
      Object.fromEntries(
        inputs.flatMap(({ name, type }) => (names.includes(name) ? [[name, SAMPLES[type] as Value]] : [])),
      )
    const isEmpty = (names: readonly string[]): boolean =>
      texts(draw(sample(names), { width: 400 })).some(({ text }) => text === 'Nothing to draw yet')
    for (const which of needs.flat()) expect(inputs.map(({ name }) => name)).toContain(which)
    for (const [at, group] of needs.entries()) {
      const others = needs.toSpliced(at, 1).map(([first]) => first as string)
      for (const one of group) expect(isEmpty([...others, one]), one).toBe(false)
      const without = inputs.map(({ name }) => name).filter((name) => !group.includes(name))
      expect(isEmpty(without), `without ${group.join()}`).toBe(true)
    }
  })

  test.each([300, 417, 900])('has text of at least 12 px at %i px', async (width) => {
    const draw = await load(named)
    const given = Object.fromEntries(
      inputs.map(({ name, type }) => [name, name === 'overlap' || name === 'border' ? 0.02 : SAMPLES[type]]),
    )
    const drawing = draw(given as Record<string, Value>, { width })
    expect(drawing.width).toBe(width)
    const sizes = nodes(drawing.node)
      .filter(({ tag }) => tag === 'text')
      .map(({ attributes }) => attributes['font-size'] as number)
    expect(sizes.length).toBeGreaterThan(1)
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(12)
  })

  test('whatever feeds it, draws without a number that is none', async () => {
    const draw = await load(named)
    const fed = fc.record(
      Object.fromEntries(
        inputs.map(({ name, type }) => [
          name,
          fc.oneof({ weight: 9, arbitrary: VALUES[type] ?? anything }, { weight: 1, arbitrary: anything }),
        ]),
      ) as Record<string, fc.Arbitrary<unknown>>,
      { requiredKeys: [] },
    )
    const options = fc.record({ width: fc.integer({ min: 0, max: 1200 }), quick: fc.boolean() })
    fc.assert(
      fc.property(fed, options, (given, { width, quick }) => {
        const drawing = draw(given as Record<string, Value>, { width, quick })
        for (const node of nodes(drawing.node))
          for (const value of Object.values(node.attributes))
            expect(String(value)).not.toMatch(/NaN|Infinity|undefined/)
        for (const { text } of texts(drawing)) expect(text).not.toMatch(/NaN|Infinity|undefined|null/)
        expect(`${drawing.description} ${drawing.omissions.join()}`).not.toMatch(/NaN|Infinity|undefined|null/)
      }),
      { numRuns: 150 },
    )
  }, 60_000)
})
