import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DrawingInputs } from '../../../src/drawings/canvas/drawing-options.ts'
import type { Drawing } from '../../../src/drawings/canvas/tree.ts'
import { drawAnySetUp } from '../../../src/drawings/set-up/any-set-up.ts'
import { drawSetUp } from '../../../src/drawings/set-up/set-up.ts'
import { SQUARENESS } from '../../../src/functions/acceptance/squareness.ts'
import { clashes, nodes, pathsOf, texts } from '../reading.ts'

const lamp = (x: number, z: number, more: object = {}) => ({
  x,
  y: 0,
  z,
  aim_x: 0,
  aim_y: 0,
  intensity: 1000,
  beam_angle: 2,
  ...more,
})
const WALL = {
  upright: true,
  centre_height: 1.4,
  original_width: 0.9,
  original_height: 0.6,
  field_width: 0.98,
  field_height: 0.653,
  sensor_to_original: 1.72,
  lens_to_original: 1.66,
  clear_distance: 1.6,
  entrance_distance: 1.65,
  lamps: [lamp(-1.6, 1.2), lamp(1.6, 1.2)],
}
const EASEL = { ...WALL, lean: 0.2 }
const draw = (inputs: DrawingInputs, width = 417) => drawAnySetUp(inputs, { width, zoom: 1.15 })
const written = (drawing: Drawing) => texts(drawing).map(({ text }) => text)

const perMetre = (drawing: Drawing): number => drawing.handles?.[0]?.pxPerMetre as number
const floorY = (drawing: Drawing): number => pathsOf(drawing, 'floor')[0]?.[0]?.y as number

describe('the view from the side', () => {
  test('has the original’s centre at its height above the floor', () => {
    for (const inputs of [WALL, EASEL]) {
      const drawing = draw(inputs)
      const ys = (pathsOf(drawing, 'original')[0] ?? []).map(({ y }) => y)
      const middle = (Math.min(...ys) + Math.max(...ys)) / 2
      expect((floorY(drawing) - middle) / perMetre(drawing)).toBeCloseTo(1.4, 1)
    }
  })
  test('puts the lens where camera_for_lean puts the camera', () => {
    const record = SQUARENESS.find(({ name }) => name === 'camera_for_lean') as (typeof SQUARENESS)[number]
    const camera = (record.compute as unknown as (...args: number[]) => { height: number; horizontal: number })(
      1.4,
      0.2,
      1.65,
    )
    const drawing = draw(EASEL)
    expect(written(drawing)).toEqual(expect.arrayContaining([`lens ${Math.round(camera.height * 1000)} mm`]))
    expect(drawing.description).toContain(
      `The lens is ${Math.round(camera.height * 1000)} mm above the floor, ${Math.round(camera.horizontal * 1000)} mm horizontally from the centre of the original, its axis tilted 11.5° down.`,
    )
    const across = pathsOf(drawing, 'dimension-distance', 'dimension').filter((run) => run[0]?.y === run[1]?.y)[0]
    expect(((across?.[1]?.x as number) - (across?.[0]?.x as number)) / perMetre(drawing)).toBeCloseTo(
      camera.horizontal,
      2,
    )
  })
  test('says which way it leans', () => {
    expect(written(draw(EASEL))).toContain('leans 11.5° back')
    expect(written(draw({ ...WALL, lean: -0.1 }))).toContain('leans 5.7° forward')
    expect(draw(WALL).description).toContain(
      'The original is 900 × 600 mm and is upright, its centre 1400 mm above the floor.',
    )
  })
})

test('the plan shows lamps across and out from the original', () => {
  const drawing = draw(WALL)
  expect(written(drawing)).toEqual(expect.arrayContaining(['1600 mm', '1200 mm']))
  expect(drawing.description).toContain(
    'Two lamps are 1600 mm to either side of the centre line, 1200 mm out from the original',
  )
})

test('a set-up that is not upright is drawn as on a copy stand', () => {
  const flat = { ...WALL, upright: false }
  expect(drawAnySetUp(flat, { width: 417 })).toEqual({
    ...drawSetUp(flat, { width: 417 }),
    handles: expect.anything(),
  })
})

describe('what cannot be drawn is said, and the rest is drawn', () => {
  test.each([
    [{ centre_height: undefined }, /floor is not drawn/],
    [{ centre_height: -1 }, /must be above zero/],
    [{ lean: 1.5 }, /lean is not drawn/],
    [{ column_height: 1 }, /an upright set-up has none/],
    [{ sensor_to_original: 1 }, /camera is drawn incomplete/],
  ])('%o', (more, why) => {
    const drawing = draw({ ...WALL, ...more })
    expect(drawing.omissions.join()).toMatch(why)
    expect(pathsOf(drawing, 'original').length).toBeGreaterThan(0)
  })
  test('nothing known', () => {
    expect(texts(draw({ upright: true }))).toHaveLength(1)
  })
})

describe('handles', () => {
  test('are where their lamps are, in both views, and know the way back', () => {
    for (const inputs of [WALL, EASEL, { ...WALL, upright: false }]) {
      const drawing = draw({ ...inputs, lamps: [lamp(-1, 1.1, { y: 0.3 }), lamp(1.3, 0.9, { y: -0.2 })] })
      expect(drawing.handles).toHaveLength(4)
      for (const { lamp: number, at, place } of drawing.handles ?? []) {
        const stands = [lamp(-1, 1.1, { y: 0.3 }), lamp(1.3, 0.9, { y: -0.2 })][number - 1] as Record<string, number>
        const found = place(at)
        expect(Object.keys(found)).toHaveLength(2)
        for (const [axis, value] of Object.entries(found)) expect(value).toBeCloseTo(stands[axis] as number, 6)
      }
    }
  })
  test('keep scale and places while a lamp is dragged', () => {
    for (const inputs of [WALL, { ...WALL, upright: false }]) {
      const before = draw(inputs)
      const moved = { ...inputs, lamps: [lamp(-2.9, 1.2), lamp(2.9, 1.2)] }
      const during = drawAnySetUp(moved, { width: 417, zoom: 1.15, layoutFrom: before })
      const after = draw(moved)
      expect(perMetre(during)).toBe(perMetre(before))
      expect(during.height).toBe(before.height)
      expect(perMetre(after)).toBeLessThan(perMetre(before))
      const back = drawAnySetUp(inputs, { width: 417, zoom: 1.15, layoutFrom: during })
      expect(back.handles?.[0]?.at).toEqual(before.handles?.[0]?.at)
    }
  })
})

test.each([240, 296, 340, 417, 480, 800])('texts are clear of lines and each other at %i px', (width) => {
  for (const inputs of [
    WALL,
    EASEL,
    { ...WALL, lean: -0.3 },
    { ...WALL, lamps: [] },
    { ...EASEL, lamps: [lamp(-1, 0.9, { y: 0.5 }), lamp(1, 0.8, { y: -0.4 })] },
  ])
    expect(clashes(draw(inputs, width))).toEqual([])
})

test('whatever the numbers, it draws without a number that is none, and no text over another', () => {
  const length = fc.oneof(
    fc.double({ min: 0.05, max: 3, noNaN: true }),
    fc.constantFrom(0, -1, 1e-9, 1e300, Number.NaN, Number.POSITIVE_INFINITY),
  )
  const anyLamp = fc.record({
    x: fc.double({ min: -3, max: 3, noNaN: true }),
    y: fc.double({ min: -2, max: 2, noNaN: true }),
    z: fc.double({ min: -0.2, max: 3, noNaN: true }),
    aim_x: fc.double({ min: -1, max: 1, noNaN: true }),
    aim_y: fc.double({ min: -1, max: 1, noNaN: true }),
    beam_angle: fc.double({ min: 0, max: 4 }),
  })
  const inputs = fc.record(
    {
      upright: fc.constant(true),
      lean: fc.double({ min: -1.6, max: 1.6 }),
      centre_height: length,
      original_width: length,
      original_height: length,
      field_width: length,
      field_height: length,
      sensor_to_original: length,
      lens_to_original: length,
      clear_distance: length,
      entrance_distance: length,
      mirror_zone: length,
      lamps: fc.array(anyLamp, { maxLength: 5 }),
    },
    { requiredKeys: ['upright'] },
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

test('a plane beyond the original, given by its field, is not called the original and mirrors nothing', () => {
  const backdrop = { upright: true, field_width: 0.98, field_height: 0.653, entrance_distance: 1.65 }
  const drawing = drawAnySetUp({ ...backdrop, lamps: [lamp(-0.5, 0.5), lamp(0.5, 0.5)] } as DrawingInputs, {
    width: 480,
  })
  const said = [
    drawing.description,
    ...texts(drawing).map(({ text }) => text),
    ...(drawing.handles ?? []).map(({ description }) => description),
  ]
  expect(said.filter((text) => /original|mirror/.test(text))).toEqual([])
  expect(drawing.description).toContain('out from the field')
  expect(texts(drawing).some(({ text }) => text.startsWith('lens to field, level '))).toBe(true)
})
