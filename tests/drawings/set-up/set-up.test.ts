import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { PX_PER_MM } from '../../../src/drawings/canvas/scale.ts'
import type { Drawing } from '../../../src/drawings/canvas/tree.ts'
import { drawSetUp } from '../../../src/drawings/set-up/set-up.ts'
import { clashes, nodes, pathsOf, texts } from '../reading.ts'

const lamp = (x: number, z: number, more: Readonly<Record<string, number>> = {}) => ({
  x,
  y: 0,
  z,
  aim_x: 0,
  aim_y: 0,
  intensity: 1000,
  beam_angle: (120 * Math.PI) / 180,
  ...more,
})

const STAND = {
  original_width: 0.42,
  original_height: 0.297,
  field_width: 0.475,
  field_height: 0.317,
  sensor_to_original: 0.917,
  lens_to_original: 0.857,
  clear_distance: 0.802,
  entrance_distance: 0.857,
  column_height: 1.012,
}
const PAIR = { ...STAND, lamps: [lamp(-0.9, 0.6), lamp(0.9, 0.6)] }
const FOUR = [
  lamp(-0.8, 0.7, { y: 0.4 }),
  lamp(0.8, 0.7, { y: 0.4 }),
  lamp(-0.8, 0.7, { y: -0.4 }),
  lamp(0.8, 0.7, { y: -0.4 }),
]
const SMALL = {
  original_width: 0.02,
  original_height: 0.02,
  field_width: 0.036,
  field_height: 0.024,
  sensor_to_original: 0.42,
  lens_to_original: 0.2,
  clear_distance: 0.15,
}
const LARGE = {
  original_width: 3,
  original_height: 2,
  field_width: 3.2,
  field_height: 2.13,
  sensor_to_original: 5.4,
  lens_to_original: 5.3,
  clear_distance: 5.2,
}

const CASES: Readonly<Record<string, Parameters<typeof drawSetUp>[0]>> = {
  'a sheet on a stand': STAND,
  'two lamps': PAIR,
  'two lamps at 45°': { ...STAND, lamps: [lamp(-0.9, 0.9), lamp(0.9, 0.9)] },
  'four lamps': { ...STAND, lamps: FOUR },
  'two unlike lamps': { ...STAND, lamps: [lamp(-0.6, 0.8, { y: 0.1 }), lamp(1.1, 0.5, { y: -0.2, aim_x: 0.1 })] },
  'one lamp': { ...STAND, lamps: [lamp(-0.7, 0.5)] },
  'a lamp over the camera': { ...STAND, lamps: [lamp(0, 1.4, { y: 0.8 })] },
  'a thick book': { ...STAND, original_thickness: 0.06, lamps: [lamp(-0.7, 0.3), lamp(0.7, 0.3)] },
  'an original of 20 mm at 1:1': SMALL,
  'an original of 20 mm between lamps': { ...SMALL, lamps: [lamp(-0.3, 0.25), lamp(0.3, 0.25)] },
  'an original of 3 m': { ...LARGE, lamps: [lamp(-4, 3.5), lamp(4, 3.5)] },
  'lamps without a camera': {
    original_width: 0.6,
    original_height: 0.45,
    lamps: [lamp(-1.35, 1.35), lamp(1.35, 1.35)],
  },
  'a size alone': { original_width: 0.42, original_height: 0.297 },
  'a lens without a sensor': { original_width: 0.42, field_width: 0.475, lens_to_original: 0.857 },
}

const draw = (inputs: Parameters<typeof drawSetUp>[0], width = 340): Drawing => drawSetUp(inputs, { width, unit: 'mm' })
const ratio = (drawing: Drawing): number => Number(/1:(\d+(\.\d+)?)/.exec(drawing.description)?.[1])
const pxPerMetre = (drawing: Drawing): number => (PX_PER_MM * 1000) / ratio(drawing)

/** The elevation's datum and centre line, in px. */
function origin(drawing: Drawing) {
  const ray = pathsOf(drawing, 'field-rays')
  const left = ray[0]?.[1] as { x: number; y: number }
  const right = ray[1]?.[1] as { x: number; y: number }
  return { x: (left.x + right.x) / 2, y: left.y }
}
/** The shapes of a kind are first in elevation, then in plan. */
const inElevation = <T>(shapes: readonly T[]): T => shapes[0] as T

describe('the scale', () => {
  test.each(Object.entries(CASES).filter(([, inputs]) => inputs.field_width !== undefined))(
    'is exact: %s',
    (_, inputs) => {
      const drawing = draw(inputs)
      const [left, right] = pathsOf(drawing, 'field-rays')
      const drawn = (right?.[1]?.x as number) - (left?.[1]?.x as number)
      expect(drawn / pxPerMetre(drawing)).toBeCloseTo(inputs.field_width as number, 3)
    },
  )

  test('is a round one', () => {
    for (const inputs of Object.values(CASES)) {
      const digits = String(ratio(draw(inputs))).replace(/0+$/, '')
      expect(['1', '1.5', '15', '2', '2.5', '25', '3', '4', '5', '7.5', '75']).toContain(digits)
    }
  })

  test('is said on the drawing with a bar as long as it says', () => {
    const drawing = draw(PAIR)
    expect(texts(drawing).map(({ text }) => text)).toEqual(expect.arrayContaining(['Elevation 1:30', 'Plan 1:30']))
    const bar = inElevation(pathsOf(drawing, 'scale-bar'))
    const length = (bar[1]?.x as number) - (bar[0]?.x as number)
    expect(texts(drawing).find(({ as }) => as.includes('scale-bar'))?.text).toBe('500 mm')
    expect(length / pxPerMetre(drawing)).toBeCloseTo(0.5, 3)
  })

  test('is the one seen where the drawing is shown enlarged', () => {
    const drawing = drawSetUp(PAIR, { width: 340, unit: 'mm', zoom: 1.15 })
    const rays = pathsOf(drawing, 'field-rays')
    const drawn = (rays[1]?.[1]?.x as number) - (rays[0]?.[1]?.x as number)
    expect((drawn * 1.15) / pxPerMetre(drawing)).toBeCloseTo(0.475, 3)
  })

  test('grows with the room', () => {
    expect(ratio(draw(PAIR, 480))).toBeLessThan(ratio(draw(PAIR, 340)))
  })
})

describe('the camera', () => {
  const drawing = draw(STAND)
  const height = (y: number) => (origin(drawing).y - y) / pxPerMetre(drawing)

  test('has its front rim at the clear distance', () => {
    expect(height(inElevation(pathsOf(drawing, 'front-rim'))[0]?.y as number)).toBeCloseTo(0.802, 3)
  })
  test('has its sensor where it is', () => {
    expect(height(inElevation(pathsOf(drawing, 'sensor'))[0]?.y as number)).toBeCloseTo(0.917, 3)
  })
  test('sees the field from the entrance pupil', () => {
    const apart = drawSetUp({ ...STAND, entrance_distance: 0.83 }, { width: 340, unit: 'mm' })
    const apex = inElevation(pathsOf(apart, 'field-rays'))[0]
    expect((origin(apart).y - (apex?.y as number)) / pxPerMetre(apart)).toBeCloseTo(0.83, 3)
    expect(apex?.x).toBeCloseTo(origin(apart).x, 2)
  })
  test('hangs on a column marked at its height above the board', () => {
    const [mark] = pathsOf(drawing, 'column-mark')
    expect(height(mark?.[0]?.y as number)).toBeCloseTo(1.012, 3)
  })
  test('keeps the column’s mark above the board under a thick original', () => {
    const thick = draw({ ...STAND, original_thickness: 0.06 })
    const line = pathsOf(thick, 'dimension-column', 'dimension').find(([a, b]) => a?.x === b?.x)
    expect(Math.abs((line?.[0]?.y as number) - (line?.[1]?.y as number)) / pxPerMetre(thick)).toBeCloseTo(1.012, 3)
  })
})

describe('the lamps', () => {
  const drawing = draw({ ...STAND, lamps: [lamp(-0.9, 0.6, { aim_x: 0.1 }), lamp(0.8, 0.5, { y: 0.2, aim_y: 0.05 })] })
  const { x, y } = origin(drawing)
  const scale = pxPerMetre(drawing)

  test('are placed and aimed in elevation as given', () => {
    const [from, to] = inElevation(pathsOf(drawing, 'aim', 'aim-1'))
    expect(((from?.x as number) - x) / scale).toBeCloseTo(-0.9, 3)
    expect((y - (from?.y as number)) / scale).toBeCloseTo(0.6, 3)
    expect(((to?.x as number) - x) / scale).toBeCloseTo(0.1, 3)
    expect(to?.y).toBeCloseTo(y, 2)
  })

  test('are placed and aimed in plan as given', () => {
    const [from, to] = pathsOf(drawing, 'aim', 'aim-2')[1] as readonly { x: number; y: number }[]
    expect(((from?.x as number) - x) / scale).toBeCloseTo(0.8, 3)
    expect(((to?.y as number) - (from?.y as number)) / scale).toBeCloseTo(0.15, 3)
  })

  test('are turned to their aim: the front is across the aim line', () => {
    const outline = inElevation(pathsOf(drawing, 'lamp', 'lamp-1'))
    const [from, to] = inElevation(pathsOf(drawing, 'aim', 'aim-1')) as readonly { x: number; y: number }[]
    const [a, b] = outline as readonly { x: number; y: number }[]
    const front = { x: (b?.x as number) - (a?.x as number), y: (b?.y as number) - (a?.y as number) }
    const aim = { x: (to?.x as number) - (from?.x as number), y: (to?.y as number) - (from?.y as number) }
    const cosine = (front.x * aim.x + front.y * aim.y) / Math.hypot(front.x, front.y) / Math.hypot(aim.x, aim.y)
    expect(cosine).toBeCloseTo(0, 3)
    expect(((a?.x as number) + (b?.x as number)) / 2).toBeCloseTo(from?.x as number, 2)
  })

  test('spread as wide as their beam', () => {
    const wide = draw({ ...STAND, lamps: [lamp(-0.9, 0.9, { beam_angle: Math.PI / 3 })] })
    const [one, other] = pathsOf(wide, 'beam', 'beam-1')
    const angle = (run: readonly { x: number; y: number }[] | undefined) =>
      Math.atan2((run?.[1]?.y as number) - (run?.[0]?.y as number), (run?.[1]?.x as number) - (run?.[0]?.x as number))
    expect(Math.abs(angle(one) - angle(other))).toBeCloseTo(Math.PI / 3, 2)
  })

  test('have their heights and distances written', () => {
    const figures = texts(drawing).map(({ text }) => text)
    expect(figures).toEqual(expect.arrayContaining(['900 mm', '800 mm', '600 mm', '500 mm']))
    expect(figures.some((text) => /^200( mm)?$/.test(text))).toBe(true)
  })

  test('of a symmetrical pair are dimensioned once', () => {
    const figures = texts(draw(PAIR)).map(({ text }) => text)
    expect(figures.filter((text) => text === '900 mm')).toHaveLength(1)
    expect(figures.filter((text) => text === '600 mm')).toHaveLength(1)
  })

  test('other than a pair carry the numbers the description calls them by', () => {
    expect(texts(drawing).map(({ text }) => text)).toEqual(expect.arrayContaining(['1', '2']))
    expect(drawing.description).toContain('Lamp 2 is 800 mm right of the centre line')
  })

  test('that are behind one another are drawn once in elevation', () => {
    expect(pathsOf(draw({ ...STAND, lamps: FOUR }), 'lamp')).toHaveLength(2 + 4)
  })
})

describe('the mirror zone', () => {
  test('widens as w (1 + z/h)', () => {
    const drawing = draw(PAIR)
    const [low, high] = inElevation(pathsOf(drawing, 'mirror-zone', 'thin')) as readonly { x: number; y: number }[]
    const { x, y } = origin(drawing)
    expect(((low?.x as number) - x) / pxPerMetre(drawing)).toBeCloseTo(0.21, 3)
    expect((y - (high?.y as number)) / pxPerMetre(drawing)).toBeCloseTo(0.6, 3)
    expect(((high?.x as number) - x) / pxPerMetre(drawing)).toBeCloseTo(0.21 * (1 + 0.6 / 0.857), 3)
  })

  test('is as wide as the sheet says where it says so', () => {
    const drawing = draw({ ...PAIR, mirror_zone: 0.4 })
    const [, high] = inElevation(pathsOf(drawing, 'mirror-zone', 'thin')) as readonly { x: number; y: number }[]
    expect(((high?.x as number) - origin(drawing).x) / pxPerMetre(drawing)).toBeCloseTo(0.4, 3)
  })

  test('is hatched within its edges alone', () => {
    const drawing = draw(PAIR)
    const { x, y } = origin(drawing)
    const scale = pxPerMetre(drawing)
    for (const { x: across, y: up } of pathsOf(drawing, 'mirror-zone', 'hatch').flat()) {
      const z = (y - up) / scale
      expect(z).toBeGreaterThan(-0.001)
      expect(z).toBeLessThan(0.601)
      expect(Math.abs(across - x) / scale).toBeLessThan(0.21 * (1 + z / 0.857) + 0.001)
    }
  })
})

test('the 45° line rises as far as it runs', () => {
  const drawing = draw(PAIR)
  const line = pathsOf(drawing, 'line-45').flat()
  const [first, last] = [line[0], line.at(-1)] as readonly { x: number; y: number }[]
  expect((last?.x as number) - (first?.x as number)).toBeCloseTo((first?.y as number) - (last?.y as number), 2)
  expect(texts(drawing).map(({ text }) => text)).toContain('45°')
})

describe('the lettering', () => {
  for (const width of [300, 340, 390, 480, 640]) {
    test.each(Object.entries(CASES))(`clears every line and other lettering at ${width} px: %s`, (_, inputs) => {
      expect(clashes(draw(inputs, width))).toEqual([])
    })
  }

  test.each(Object.entries(CASES))('gives every dimension its figure: %s', (_, inputs) => {
    for (const width of [340, 480]) {
      const drawing = draw(inputs, width)
      const names = (tag: string) =>
        new Set(
          nodes(drawing.node)
            .filter((node) => node.tag === tag)
            .map((node) => /dimension-[a-z]+(-\d+)?/.exec(String(node.attributes.class))?.[0])
            .filter((name) => name !== undefined),
        )
      expect([...names('text')].sort()).toEqual([...names('path')].sort())
    }
  })

  test('is at least 12 px', () => {
    for (const node of nodes(draw(PAIR).node)) {
      if (node.tag === 'text') expect(node.attributes['font-size']).toBeGreaterThanOrEqual(12)
    }
  })

  test('follows the sheet’s units', () => {
    expect(texts(drawSetUp(PAIR, { width: 480, unit: 'in' })).map(({ text }) => text)).toContain('35.4 in')
    expect(texts(drawSetUp(PAIR, { width: 480, unit: 'cm' })).map(({ text }) => text)).toContain('90 cm')
  })
})

describe('the words', () => {
  test('give the figures drawn', () => {
    const { description } = draw(PAIR)
    expect(description).toContain('The original is 420 × 297 mm.')
    expect(description).toContain('The camera covers a field of 475 × 317 mm.')
    expect(description).toContain(
      'Two lamps are 900 mm to either side of the centre line and 600 mm above the original',
    )
    expect(description).toContain('the centres of the lamps clear it by 543 mm')
  })

  test('say when a lamp is in the mirror zone', () => {
    expect(draw({ ...STAND, lamps: [lamp(-0.3, 0.6), lamp(0.3, 0.6)] }).description).toContain('the lamps are in it')
  })
})

describe('what cannot be drawn is said, and the rest is drawn', () => {
  test('nothing given', () => {
    const drawing = draw({})
    expect(drawing.omissions).toHaveLength(1)
    expect(texts(drawing)).toHaveLength(1)
  })
  test('a lamp below the table', () => {
    const drawing = draw({ ...STAND, lamps: [lamp(-0.9, -0.1), lamp(0.9, 0.9)] })
    expect(drawing.omissions).toEqual(['Lamp 1 is not drawn: it is 100 mm below the original.'])
    expect(pathsOf(drawing, 'lamp-2', 'lamp')).toHaveLength(2)
  })
  test('a size of nothing, or less', () => {
    const { omissions } = draw({ ...STAND, original_width: 0, lens_to_original: -0.2 })
    expect(omissions).toContain('The width of the original is not drawn: 0 mm is not above zero.')
    expect(omissions).toContain('The distance from lens to original is not drawn: −200 mm is not above zero.')
  })
  test('a lens behind its sensor', () => {
    expect(draw({ ...STAND, sensor_to_original: 0.5 }).omissions.join()).toContain('drawn incomplete')
  })
  test('something other than a length', () => {
    expect(draw({ ...STAND, clear_distance: 'far' }).omissions).toEqual([
      'The clear distance is not drawn: its value is not a length.',
    ])
  })
})

describe('whatever the numbers', () => {
  const length = fc.oneof(
    fc.double({ min: 0.001, max: 20 }),
    fc.double({ min: 0.05, max: 2, noNaN: true }),
    fc.constantFrom(0, -1, 1e-9, 1e300, Number.NaN, Number.POSITIVE_INFINITY),
  )
  const anyLamp = fc.record({
    x: fc.double({ min: -3, max: 3, noNaN: true }),
    y: fc.double({ min: -2, max: 2, noNaN: true }),
    z: fc.double({ min: -0.2, max: 3, noNaN: true }),
    aim_x: fc.double({ min: -1, max: 1, noNaN: true }),
    aim_y: fc.double({ min: -1, max: 1, noNaN: true }),
    intensity: fc.constant(1000),
    beam_angle: fc.double({ min: 0, max: 4 }),
  })
  const inputs = fc.record(
    {
      original_width: length,
      original_height: length,
      original_thickness: length,
      field_width: length,
      field_height: length,
      sensor_to_original: length,
      lens_to_original: length,
      clear_distance: length,
      column_height: length,
      entrance_distance: length,
      mirror_zone: length,
      lamps: fc.array(anyLamp, { maxLength: 6 }),
    },
    { requiredKeys: [] },
  )
  const options = fc.record({ width: fc.integer({ min: 0, max: 1200 }), unit: fc.constantFrom('mm', 'cm', 'in') })

  test('it draws, with no attribute that is not a number, and no text over a line, another text or the edge', () => {
    fc.assert(
      fc.property(inputs, options, (given, { width, unit }) => {
        const drawing = drawSetUp(given, { width, unit: unit as 'mm' })
        for (const node of nodes(drawing.node)) {
          for (const value of Object.values(node.attributes)) {
            expect(String(value)).not.toMatch(/NaN|Infinity|undefined/)
          }
        }
        expect(clashes(drawing)).toEqual([])
      }),
      { numRuns: 1000 },
    )
  })
})
