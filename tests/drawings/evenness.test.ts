import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawings/canvas/geometry.ts'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawEvenness } from '../../src/drawings/evenness/evenness.ts'
import { evennessOf, illuminanceAt, type LampNumbers } from '../../src/functions/lamps/light-field.ts'
import { clashes, pathsOf, texts } from './reading.ts'

/** As a plain record, which is what a worksheet feeds. */
type Lamp = Omit<LampNumbers, never>

const lamp = (x: number, z: number, more: Partial<Lamp> = {}): Lamp => ({
  x,
  y: 0,
  z,
  aim_x: 0,
  aim_y: 0,
  intensity: 1000,
  beam_angle: (2 * Math.PI) / 3,
  ...more,
})
const PAIR = [lamp(-0.9, 0.6, { aim_x: 0.1 }), lamp(0.9, 0.6, { aim_x: -0.1 })]
const UNLIKE = [lamp(-0.5, 0.5), lamp(0.6, 0.5, { intensity: 900, y: 0.1, beam_angle: 1.4 })]
const SIZE = { original_width: 0.6, original_height: 0.45 }
const NINE = [870, 862, 851, 866, 880, 869, 848, 860, 855]

type Inputs = Parameters<typeof drawEvenness>[0]
const CASES: Readonly<Record<string, Inputs>> = {
  'a pair': { ...SIZE, lamps: PAIR, limit: 0.1 },
  'a pair and nine readings': { ...SIZE, lamps: PAIR, limit: 0.1, readings: NINE },
  'two unlike lamps': { ...SIZE, lamps: UNLIKE, limit: 0.3, readings: NINE },
  'two unlike lamps and five readings': { ...SIZE, lamps: UNLIKE, readings: [1, 0.9, 1.1, 0.8, 1] },
  'a lamp close by': { original_width: 0.6, original_height: 0.8, lamps: [lamp(0.05, 0.1)], limit: 0.1 },
  'a strip': { original_width: 2, original_height: 0.1, lamps: PAIR, limit: 0.1 },
  'a tall strip': { original_width: 0.1, original_height: 2, lamps: PAIR, limit: 0.1 },
  'one far lamp': { ...SIZE, lamps: [lamp(20, 20)] },
}

const draw = (inputs: Inputs, width = 340, quick = false): Drawing => drawEvenness(inputs, { width, quick })
const mapOf = (drawing: Drawing) => {
  const corners = pathsOf(drawing, 'original')[0] as readonly Point[]
  return { left: corners[0]?.x ?? 0, top: corners[0]?.y ?? 0, right: corners[1]?.x ?? 0, bottom: corners[2]?.y ?? 0 }
}
/** Where a place of the drawing is on the original, in metres from its centre. */
const onOriginal = (drawing: Drawing, { x, y }: Point, width: number, height: number) => {
  const { left, right, top, bottom } = mapOf(drawing)
  return [((x - left) / (right - left) - 0.5) * width, (0.5 - (y - top) / (bottom - top)) * height] as const
}

describe('the isolines', () => {
  const levelled = (lamps: readonly Lamp[], quick: boolean) => {
    const drawing = draw({ ...SIZE, lamps, limit: 0.15 }, 480, quick)
    const { mean, greatest } = evennessOf(lamps, 0.6, 0.45)
    const level = (at: Point) => Math.log2(illuminanceAt(lamps, ...onOriginal(drawing, at, 0.6, 0.45)) / mean)
    return { drawing, level, greatest: Math.log2(greatest / mean) }
  }

  test.each([
    ['a pair', PAIR, false],
    ['a pair, drawn quickly', PAIR, true],
    ['two unlike lamps', UNLIKE, false],
    ['two unlike lamps, drawn quickly', UNLIKE, true],
  ] as const)('are where the light has their level: %s', (_, lamps, quick) => {
    const { drawing, level } = levelled(lamps, quick)
    const step = Number(/a line every ([\d.]+) stop/.exec(drawing.description)?.[1])
    const runs = pathsOf(drawing, 'isoline')
    expect(runs.length).toBeGreaterThan(2)
    for (const run of runs) {
      const levels = run.map(level)
      const whole = Math.round((levels[0] as number) / step) * step
      for (const one of levels) expect(Math.abs(one - whole)).toBeLessThan(quick ? 0.004 : 0.002)
    }
  })

  test('of the limit is the limit below the greatest', () => {
    const { drawing, level, greatest } = levelled(UNLIKE, false)
    const points = pathsOf(drawing, 'limit').flat()
    expect(points.length).toBeGreaterThan(10)
    for (const one of points) expect(level(one)).toBeCloseTo(greatest - 0.15, 2)
  })

  test('have the hatching on their darker side alone', () => {
    const { drawing, level, greatest } = levelled(UNLIKE, false)
    const points = pathsOf(drawing, 'beyond-limit').flat()
    expect(points.length).toBeGreaterThan(20)
    for (const one of points) expect(level(one)).toBeLessThan(greatest - 0.15 + 0.003)
  })

  test('whole below the mean are dashed, above it thin, the mean itself thick', () => {
    const { drawing, level } = levelled(UNLIKE, false)
    for (const one of pathsOf(drawing, 'isoline', 'dashed').flat()) expect(level(one)).toBeLessThan(-0.01)
    for (const one of pathsOf(drawing, 'isoline', 'thin').flat()) expect(level(one)).toBeGreaterThan(0.01)
    for (const one of pathsOf(drawing, 'isoline', 'thick').flat()) expect(level(one)).toBeCloseTo(0, 2)
  })
})

describe('the figures', () => {
  test('are those of field_evenness', () => {
    const { least, greatest, mean, spread } = evennessOf(UNLIKE, 0.6, 0.45)
    const { description } = draw(CASES['two unlike lamps'] as Inputs)
    const figure = (lux: number) =>
      Math.log2(lux / mean)
        .toFixed(2)
        .replace('-', '−')
    expect(description).toContain(`Brightest +${figure(greatest)} stop`)
    expect(description).toContain(`dimmest ${figure(least)} stop`)
    expect(description).toContain(`spread ${spread.toFixed(2)} stop`)
  })

  test('at nine points are those of illuminance_at', () => {
    const drawing = draw({ ...SIZE, lamps: UNLIKE })
    const { mean } = evennessOf(UNLIKE, 0.6, 0.45)
    const upperLeft = Math.log2(illuminanceAt(UNLIKE, -0.3, 0.225) / mean)
    expect(drawing.description).toContain(`upper left +${upperLeft.toFixed(2)}`)
    expect(texts(drawing).filter(({ as }) => as.includes('computed'))).toHaveLength(9)
  })

  test('measured are brought to the mean of those computed', () => {
    const computed = [-0.3, 0, 0.3].flatMap((_, row) =>
      [-0.3, 0, 0.3].map((x) => illuminanceAt(PAIR, x, 0.225 * (1 - row))),
    )
    const { description } = draw({ ...SIZE, lamps: PAIR, readings: computed.map((lux) => lux * 7) })
    const [, first] = /Computed, in reading order: (.*?)\./.exec(description) ?? []
    expect(description).toContain(`adjusted to the same mean: ${first}`)
    expect(description).toMatch(/differ most .* by 0\.00 stop/)
  })

  test('in f-numbers and in EV count as the same light', () => {
    const light = [1, 0.5, 1, 0.5, 1]
    const from = (more: Inputs) => draw({ ...SIZE, lamps: PAIR, ...more }).description
    const expected = from({ readings: light })
    expect(expected).toContain('their spread is 1 stop')
    expect(from({ readings_in_stops: light.map(Math.log2) })).toBe(expected)
    expect(from({ readings_in_apertures: light.map((one) => 8 * Math.sqrt(one)) })).toBe(expected)
  })
})

describe('what cannot be drawn is said', () => {
  test('a lamp below the table is left out, the others are drawn', () => {
    const { omissions, node } = draw({ ...SIZE, lamps: [...PAIR, lamp(0.5, -0.1)] })
    expect(omissions).toEqual(['Lamp 3 is left out: it is 100 mm below the original.'])
    expect(node.children.length).toBeGreaterThan(20)
  })
  test.each([
    ['no size', { lamps: PAIR }, /size of the original/],
    ['no lamp', SIZE, /no usable lamp/],
    ['a size of nothing', { ...SIZE, original_width: 0, lamps: PAIR }, /must be above zero/],
    ['light that misses it', { ...SIZE, lamps: [lamp(3, 0.1, { aim_x: 9 })] }, /none of the lamps lights/],
    ['readings of another number', { ...SIZE, lamps: PAIR, readings: [1, 2, 3] }, /there are 3/],
  ] as const)('%s', (_, inputs, why) => {
    expect(draw(inputs as Inputs).omissions.join()).toMatch(why)
  })
})

for (const width of [300, 340, 480, 640])
  test.each(Object.entries(CASES))(`the lettering is clear at ${width} px: %s`, (_, inputs) => {
    expect(clashes(draw(inputs, width))).toEqual([])
  })
