import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawDepth } from '../../src/drawings/depth/depth.ts'
import { DEPTH_OF_FIELD } from '../../src/functions/camera/depth.ts'
import { clashes, pathsOf, texts } from './reading.ts'

type Inputs = Parameters<typeof drawDepth>[0]
const PAGE = { depth: 0.0088, magnification: 1 / 10.5, pitch: 6e-6, aperture: 8, blur: 12e-6 }
const CASES: Readonly<Record<string, Inputs>> = {
  'a page': PAGE,
  'a flat sheet': { ...PAGE, depth: 0.003, magnification: 1 / 13.2 },
  'life size': { depth: 0.002, magnification: 1, pitch: 4e-6, aperture: 11, blur: 8e-6, widest: 2.8, smallest: 22 },
  'set to the best': { ...PAGE, aperture: 5 },
  'no pixel': { depth: 0.0088, magnification: 0.1, aperture: 8 },
  'no depth': { magnification: 0.1, aperture: 8, pitch: 6e-6 },
  'the magnification alone': { magnification: 0.1 },
  'an aperture off the scale': { ...PAGE, aperture: 500 },
  'a great depth': { ...PAGE, depth: 2 },
}
const draw = (inputs: Inputs, width = 340, unit?: string): Drawing => drawDepth(inputs, { width, unit })

const compute = (name: string, ...args: number[]): unknown =>
  (DEPTH_OF_FIELD.find((one) => one.name === name) as unknown as { compute: (...args: number[]) => unknown }).compute(
    ...args,
  )

/** Reads values back off a drawing by its ticks: f/4 and f/16, 1 and 2 on the blur's axis. */
function scales(drawing: Drawing) {
  const ticks = texts(drawing).filter(({ as }) => as.includes('tick-text'))
  const middle = (text: string, low: boolean) => {
    const found = ticks.filter((one) => one.text === text).sort((a, b) => b.box.top - a.box.top)
    const { box } = (low ? found[0] : found.at(-1)) as (typeof ticks)[number]
    return { x: (box.left + box.right) / 2, y: box.bottom - 3.5 - 10.5 / 2 + 1 }
  }
  const [four, sixteen] = [middle('4', true).x, middle('16', true).x]
  const [one, two] = [middle('1', false).y, middle('2', false).y]
  return {
    aperture: (x: number) => 4 * 4 ** ((x - four) / (sixteen - four)),
    blur: (y: number) => 2 ** ((y - one) / (two - one)),
  }
}

describe('the curves', () => {
  const drawing = draw(PAGE, 480)
  const { aperture, blur } = scales(drawing)
  const N = 8
  const at = (as: string) =>
    pathsOf(drawing, as)
      .flat()
      .filter(({ x }) => Math.abs(Math.log2(aperture(x) / N)) < 0.06)

  test('of diffraction is the Airy diameter at the effective aperture', () => {
    for (const { x, y } of pathsOf(drawing, 'diffraction').flat()) {
      const effective = compute('effective_aperture', aperture(x), PAGE.magnification, 1) as number
      expect((blur(y) * PAGE.pitch) / (compute('airy_diameter', effective, 550e-9) as number)).toBeCloseTo(1, 1)
    }
  })

  test('of defocus gives the depth of field its own blur', () => {
    for (const { x, y } of pathsOf(drawing, 'defocus').flat()) {
      const c = blur(y) * PAGE.pitch
      const zone = compute('depth_of_field', aperture(x), c, PAGE.magnification, 0.06, 1) as { total: number }
      expect(zone.total / PAGE.depth).toBeCloseTo(1, 1)
    }
  })

  test('of the sum is their root of squares', () => {
    const [sum] = at('together')
    const N_e = aperture(sum?.x ?? 0) * (1 + PAGE.magnification)
    const parts = [(PAGE.depth * PAGE.magnification ** 2) / (2 * N_e), 2.44 * 550e-9 * N_e, PAGE.pitch]
    expect(blur(sum?.y ?? 0)).toBeCloseTo(Math.hypot(...parts) / PAGE.pitch, 1)
  })

  test('is least at the best aperture', () => {
    const best = compute('best_aperture', PAGE.depth, PAGE.magnification, 1, 550e-9) as number
    const lowest = pathsOf(drawing, 'together')
      .flat()
      .reduce((a, b) => (b.y > a.y ? b : a))
    expect(Math.log2(aperture(lowest.x) / best)).toBeCloseTo(0, 1)
    const [line] = pathsOf(drawing, 'best', 'dashed')
    expect(aperture(line?.[0]?.x ?? 0)).toBeCloseTo(best, 1)
    expect(drawing.description).toContain(`At the best aperture, f/${best.toPrecision(3)}`)
  })

  test('carry a dot at every third-stop mark that lettering leaves free', () => {
    const dots = pathsOf(drawing, 'aperture-mark')
    expect(dots.length).toBeGreaterThan(15)
    expect(drawing.table?.rows.map(([mark]) => mark)).toEqual(expect.arrayContaining(['f/5', 'f/8', 'f/32']))
  })
})

test('the aperture set is marked, with a triangle on the axis', () => {
  const drawing = draw(PAGE, 480)
  const { aperture } = scales(drawing)
  expect(aperture(pathsOf(drawing, 'set', 'thin')[0]?.[0]?.x ?? 0)).toBeCloseTo(8, 1)
  expect(pathsOf(drawing, 'present')).toHaveLength(1)
  expect(texts(drawing).map(({ text }) => text)).toContain('set to f/8')
})

test('figures are in pixels, or in micrometres where so asked or no pixel is known', () => {
  expect(draw(PAGE).description).toMatch(/together 2\.33 px/)
  expect(draw(PAGE, 340, 'µm').description).toMatch(/together 14\.0 µm/)
  expect(draw(CASES['no pixel'] as Inputs).description).toContain('µm')
})

test('the best mark is one the lens has', () => {
  expect(draw({ ...PAGE, widest: 5.6 }).description).toContain('The nearest mark is f/5.6')
})

test('what is lacking is said', () => {
  expect(draw({}).omissions.join()).toContain('the magnification is unknown')
  expect(draw({ magnification: 0.1 }).omissions.join()).toContain('the depth required is unknown')
  expect(draw({ ...PAGE, aperture: -8 }).omissions.join()).toContain('The aperture set is left out')
})

for (const width of [300, 340, 480, 640])
  test.each(Object.entries(CASES))(`the lettering is clear at ${width} px: %s`, (_, inputs) => {
    expect(clashes(draw(inputs, width))).toEqual([])
  })
