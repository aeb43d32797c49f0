import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameReport, openFrame, readAreas } from '../../src/frame/index.ts'
import { deltaE2000 } from '../../src/functions/acceptance/colour-difference.ts'
import { lightness } from '../../src/functions/acceptance/colour-space.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { gama, type Made, make, png } from './files.ts'

/** A linear picture, so that codes are light. */
const linear = (made: Made): Uint8Array => png(made, { chunks: [gama(1)] })
const grey16 = (width: number, height: number, light: (x: number, y: number) => number): Made =>
  make(width, height, 1, 16, (x, y) => 65535 * light(x, y))

// biome-ignore lint/suspicious/noExplicitAny: the tests read JSON as others do.
const measure = (file: Uint8Array, area: object): any => {
  const report = frameReport(openFrame(file), readAreas([{ name: 'a', ...area }])) as unknown as {
    areas: { a: unknown }
  }
  return JSON.parse(JSON.stringify(report.areas.a))
}

describe('a patch', () => {
  it('holds the pixels whose centres lie in its box: left and top border in, right and bottom out', () => {
    const made = make(10, 8, 1, 16, (x, y) => 1000 * x + 100 * y)
    const mean = (box: number[]): number => measure(linear(made), { kind: 'patch', box }).code[0] * 65535
    expect(mean([2, 3, 2, 1])).toBeCloseTo(2500 + 300, 6)
    expect(mean([2.5, 3.5, 2, 1])).toBeCloseTo(2500 + 300, 6)
    expect(mean([2.51, 3.51, 2, 1])).toBeCloseTo(3500 + 400, 6)
    expect(mean([1.6, 2.4, 1, 1])).toBeCloseTo(2000 + 200, 6)
    // A sum may end beyond the border by its rounding.
    expect(mean([9, 7, 1 + 1e-9, 1])).toBeCloseTo(9000 + 700, 6)
    expect(() => mean([9, 7, 1.001, 1])).toThrow(/extends beyond/)
  })

  it('agrees with a count of the centres for any box', () => {
    const made = make(12, 9, 1, 16, (x, y) => (x * 977 + y * 3571) % 65536)
    const file = linear(made)
    const side = fc.double({ min: 0.02, max: 6, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        side,
        side,
        (x, y, w, h) => {
          const inside: number[] = []
          for (let row = 0; row < 9; row++)
            for (let column = 0; column < 12; column++)
              if (column + 0.5 >= x && column + 0.5 < x + w && row + 0.5 >= y && row + 0.5 < y + h)
                inside.push(made.samples[row * 12 + column] as number)
          if (inside.length === 0) {
            expect(() => measure(file, { kind: 'patch', box: [x, y, w, h] })).toThrow(/centre of no pixel/)
            return
          }
          const mean = inside.reduce((sum, code) => sum + code, 0) / inside.length
          expect(measure(file, { kind: 'patch', box: [x, y, w, h] }).code[0] * 65535).toBeCloseTo(mean, 6)
        },
      ),
    )
  })

  it('gives the mean of the light, not the light of the mean, and the spread of L* of known noise', () => {
    // Half the pixels at 0.25, half at 0.5 of the code, in sRGB.
    const made = make(20, 20, 3, 16, (x) => (x % 2 === 0 ? 0.25 : 0.5) * 65535)
    const { code, light, lab, noise } = measure(png(made), { kind: 'patch', box: [0, 0, 20, 20] })
    const decode = (v: number): number => ((v + 0.055) / 1.055) ** 2.4
    const [dark, bright] = [decode(Math.round(0.25 * 65535) / 65535), decode(Math.round(0.5 * 65535) / 65535)]
    expect(code[0]).toBeCloseTo(0.375, 4)
    expect(light[1]).toBeCloseTo((dark + bright) / 2, 9)
    expect(lab[0]).toBeCloseTo(lightness((dark + bright) / 2), 6)
    // Two equally frequent values spread by half their distance.
    expect(noise).toBeCloseTo((lightness(bright) - lightness(dark)) / 2, 6)
  })

  it('of light with noise of a known spread gives that spread in L*', () => {
    let state = 1
    const random = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return (state + 1) / 4294967297
    }
    const made = grey16(
      200,
      200,
      () => 0.2 + 0.002 * Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random()),
    )
    const { noise } = measure(linear(made), { kind: 'patch', box: [0, 0, 200, 200] })
    // dL*/dY = 116/3 · Y^(−2/3).
    expect(noise).toBeCloseTo(0.002 * (116 / 3) * 0.2 ** (-2 / 3), 2)
  })

  it('of many colours has the means and the spread of its pixels, counted one by one', () => {
    const made = make(61, 47, 3, 16, (x, y, c) => (x * 977 + y * 3571 + c * 7919 + x * y * 31) % 65536)
    const { light, noise } = measure(linear(made), { kind: 'patch', box: [1, 2, 58, 43] })
    const pixels: number[][] = []
    for (let y = 2; y < 45; y++)
      for (let x = 1; x < 59; x++)
        pixels.push(Array.from(made.samples.subarray((y * 61 + x) * 3, (y * 61 + x) * 3 + 3), (code) => code / 65535))
    const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length
    for (const c of [0, 1, 2]) expect(light[c]).toBeCloseTo(meanOf(pixels.map((pixel) => pixel[c] as number)), 12)
    // The middle row of the sRGB matrix adapted to D50, as registered with the ICC.
    const L = pixels.map(([r, g, b]) =>
      lightness(0.222504 * (r as number) + 0.716879 * (g as number) + 0.060617 * (b as number)),
    )
    expect(noise).toBeCloseTo(Math.sqrt(meanOf(L.map((one) => (one - meanOf(L)) ** 2))), 3)
  })

  it('that is clipped or black is measured with a warning', () => {
    const white = make(10, 10, 3, 8, () => 255)
    expect(measure(png(white), { kind: 'patch', box: [0, 0, 10, 10] }).warnings).toHaveLength(1)
    const black = make(10, 10, 3, 8, () => 0)
    const { warnings, lab } = measure(png(black), { kind: 'patch', box: [0, 0, 10, 10] })
    expect(warnings).toHaveLength(1)
    expect(lab).toEqual([0, 0, 0])
    expect(measure(png(make(10, 10, 3, 8, () => 99)), { kind: 'patch', box: [0, 0, 10, 10] })).not.toHaveProperty(
      'warnings',
    )
  })
})

describe('evenness', () => {
  it('gives the exact means of a gradient, field by field', () => {
    // Light rises by a step a column: a field’s mean is the mean of its columns.
    const made = grey16(90, 70, (x) => (100 + 5 * x) / 1000)
    const { light, spread, uniformity, corner } = measure(linear(made), { kind: 'evenness' })
    const fields = Array.from({ length: 9 }, (_, i) => (100 + 5 * (10 * i + 4.5)) / 1000)
    const greatest = fields[8] as number
    expect(light).toHaveLength(7)
    for (const row of light)
      for (const [i, value] of row.entries()) expect(value).toBeCloseTo((fields[i] as number) / greatest, 4)
    expect(spread).toBeCloseTo(Math.log2(greatest / (fields[0] as number)), 3)
    expect(uniformity).toBeCloseTo((fields[0] as number) / (fields.reduce((sum, one) => sum + one, 0) / 9), 4)
    const centre = fields[4] as number
    expect(corner[0]).toBeCloseTo(Math.log2((fields[0] as number) / centre), 3)
    expect(corner[1]).toBeCloseTo(Math.log2(greatest / centre), 3)
    expect(corner[2]).toBeCloseTo(corner[1], 6)
    expect(corner[3]).toBeCloseTo(corner[0], 6)
  })

  it('leaves no strip out where the pixels do not divide: the fields weighted by their pixels give the mean of all', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 7 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 11, max: 40 }),
        (columns, rows, width) => {
          const made = grey16(width, 13, (x, y) => 0.1 + ((x * 37 + y * 11) % 50) / 100)
          const { light } = measure(linear(made), { kind: 'evenness', columns, rows })
          const count = (i: number, size: number, parts: number): number =>
            Math.ceil((size * (i + 1)) / parts - 0.5) - Math.ceil((size * i) / parts - 0.5)
          let [sum, pixels] = [0, 0]
          light.forEach((row: number[], r: number) => {
            row.forEach((value, c) => {
              const n = count(r, 13, rows) * count(c, width, columns)
              sum += value * n
              pixels += n
            })
          })
          expect(pixels).toBe(width * 13)
          const mean = [...made.samples].reduce((total, code) => total + code, 0) / made.samples.length / 65535
          const greatest = mean / (sum / pixels)
          // The scale is that of the brightest field.
          expect(Math.max(...light.flat())).toBe(1)
          expect(greatest).toBeGreaterThan(0.1)
          expect(greatest).toBeLessThan(0.6)
        },
      ),
    )
  })

  it('takes the mean of the middle two or four where there is no middle field', () => {
    const made = grey16(80, 40, (x, y) => (100 + x + 10 * y) / 1000)
    const field = (column: number, row: number, w: number, h: number): number =>
      (100 + w * column + (w - 1) / 2 + 10 * (h * row + (h - 1) / 2)) / 1000
    const { corner } = measure(linear(made), { kind: 'evenness', columns: 4, rows: 2 })
    const centre = [1, 2].flatMap((c) => [0, 1].map((r) => field(c, r, 20, 20))).reduce((sum, one) => sum + one, 0) / 4
    expect(corner[0]).toBeCloseTo(Math.log2(field(0, 0, 20, 20) / centre), 3)
    const three = measure(linear(made), { kind: 'evenness', columns: 4, rows: 1 }).corner
    expect(three[0]).toBeCloseTo(three[3], 9)
  })

  it('refuses a clipped and an entirely black field, and says which', () => {
    const hot = make(90, 70, 1, 8, (x, y) => (x < 10 && y < 10 ? 255 : 100))
    expect(() => measure(png(hot), { kind: 'evenness' })).toThrow(/column 1, row 1 of “a” is clipped.*expose less/)
    const dark = make(90, 70, 1, 8, (x) => (x >= 80 ? 0 : 100))
    expect(() => measure(png(dark), { kind: 'evenness' })).toThrow(/column 9, row 1 of “a” is black/)
  })

  it('takes a single field, and refuses more fields than pixels', () => {
    const made = grey16(20, 10, () => 0.3)
    const one = measure(linear(made), { kind: 'evenness', columns: 1, rows: 1 })
    expect(one).toEqual({ light: [[1]], spread: 0, uniformity: 1, corner: [0, 0, 0, 0] })
    expect(() => measure(linear(made), { kind: 'evenness', columns: 21 })).toThrow(/too small for 21 × 7/)
  })
})

describe('a rule', () => {
  const file = png(make(1000, 800, 1, 8, () => 99))
  const rule = (from: number[], to: number[], length = '100 mm'): { sampling: number; ppi: number; angle: number } =>
    measure(file, { kind: 'rule', from, to, length })

  it('gives sampling and angle, whichever end is first', () => {
    expect(rule([0, 0], [300, 400])).toEqual({ sampling: 5000, ppi: 127, angle: expect.closeTo(53.130102, 6) })
    fc.assert(
      fc.property(
        fc.tuple(...[1000, 800, 1000, 800].map((most) => fc.integer({ min: 0, max: most }))),
        ([x, y, u, v]) => {
          if (x === u && y === v) return
          const [one, other] = [
            rule([x, y] as number[], [u, v] as number[]),
            rule([u, v] as number[], [x, y] as number[]),
          ]
          expect(one).toEqual(other)
          expect(one.angle).toBeGreaterThan(-90)
          expect(one.angle).toBeLessThanOrEqual(90)
        },
      ),
    )
  })

  it('is 90° for an upright one, clockwise positive', () => {
    expect(rule([10, 10], [10, 500]).angle).toBe(90)
    expect(rule([10, 500], [10, 10]).angle).toBe(90)
    expect(rule([500, 10], [10, 10]).angle).toBe(0)
    expect(rule([0, 0], [100, 1]).angle).toBeCloseTo(0.5729, 4)
    expect(rule([0, 0], [254, 0], '1 in')).toEqual({ sampling: 10000, ppi: 254, angle: 0 })
  })
})

describe('a square', () => {
  const file = png(make(1000, 800, 1, 8, () => 99))
  const square = (corners: number[][], size = '200 x 150 mm'): Record<string, number> =>
    measure(file, { kind: 'square', corners, size })

  it('gives nothing off for a true rectangle, wherever it is turned', () => {
    fc.assert(
      fc.property(fc.double({ min: -170, max: 170, noNaN: true }), (degrees) => {
        const turn = (x: number, y: number): number[] => {
          const t = (degrees * Math.PI) / 180
          return [500 + x * Math.cos(t) - y * Math.sin(t), 400 + x * Math.sin(t) + y * Math.cos(t)]
        }
        const found = square([turn(-200, -150), turn(200, -150), turn(200, 150), turn(-200, 150)])
        expect(found.rotation).toBeCloseTo(degrees, 6)
        for (const name of ['keystone_across', 'keystone_down', 'skew']) expect(found[name]).toBeCloseTo(0, 6)
        expect(found.sampling_across).toBeCloseTo(2000, 6)
        expect(found.sampling_down).toBeCloseTo(2000, 6)
      }),
    )
  })

  it('measures a keystone as a homography makes it', () => {
    // A sheet of 200 × 150 mm seen by a camera that looks down by some degrees, by projection.
    for (const degrees of [0.5, 1, 3]) {
      const t = (degrees * Math.PI) / 180
      const seen = (x: number, y: number): [number, number] => {
        const [depth, height] = [1000 + y * Math.sin(t), y * Math.cos(t)]
        return [500 + (2000 * x) / depth, 400 + (2000 * height) / depth]
      }
      const corners = [seen(-100, -75), seen(100, -75), seen(100, 75), seen(-100, 75)] as [number, number][]
      const found = square(corners)
      const [top, bottom] = [2000 * (200 / (1000 - 75 * Math.sin(t))), 2000 * (200 / (1000 + 75 * Math.sin(t)))]
      expect(found.keystone_across).toBeCloseTo(top - bottom, 9)
      expect(found.keystone_down).toBeCloseTo(0, 9)
      expect(found.sampling_across).toBeCloseTo((top + bottom) / 2 / 0.2, 6)
      const lean = Math.atan2(
        (corners[0]?.[0] as number) - (corners[3]?.[0] as number),
        (corners[3]?.[1] as number) - (corners[0]?.[1] as number),
      )
      expect(found.skew).toBeCloseTo(Math.abs((lean * 180) / Math.PI), 6)
      expect(found.rotation).toBeCloseTo(0, 9)
    }
  })

  it('measures skew of a slanted parallelogram', () => {
    const found = square([
      [100, 100],
      [500, 100],
      [500 + 300 * Math.tan(Math.PI / 36), 400],
      [100 + 300 * Math.tan(Math.PI / 36), 400],
    ])
    expect(found.skew).toBeCloseTo(5, 6)
    expect(found.keystone_across).toBeCloseTo(0, 9)
  })

  it('refuses corners that are no outline', () => {
    expect(() =>
      square([
        [0, 0],
        [100, 100],
        [100, 0],
        [0, 100],
      ]),
    ).toThrow(/corners of “a” cross, are in one place/)
    expect(() =>
      square([
        [100, 0],
        [0, 0],
        [0, 100],
        [100, 100],
      ]),
    ).toThrow(/wrong order/)
    expect(() =>
      square([
        [0, 0],
        [0, 0],
        [100, 100],
        [0, 100],
      ]),
    ).toThrow(/corners of “a”/)
  })
})

describe('a chart', () => {
  it('gives the difference of each patch, the language’s own percentile, and the worst by name', () => {
    const codes = [
      [0.8, 0.2, 0.2],
      [0.3, 0.6, 0.2],
      [0.5, 0.5, 0.5],
      [0.1, 0.2, 0.7],
    ]
    const made = make(40, 10, 3, 16, (x, _y, c) => (codes[Math.floor(x / 10)]?.[c] as number) * 65535)
    const references = [
      [45, 55, 35],
      [57, -40, 45],
      [53, 1, -1],
      [20, 20, -60],
    ]
    const patches = references.map((lab, i) => ({ name: `patch ${i + 1}`, box: [10 * i + 1, 1, 8, 8], lab }))
    const found = measure(png(made), { kind: 'chart', patches })
    const differences = found.patches.map((one: { lab: number[]; delta_e_2000: number }, i: number) => {
      const [L, a, b] = one.lab as [number, number, number]
      const [l, m, n] = references[i] as [number, number, number]
      expect(one.delta_e_2000).toBeCloseTo(deltaE2000({ L: l, a: m, b: n }, { L, a, b }), 9)
      return one.delta_e_2000
    })
    expect(found.mean).toBeCloseTo(differences.reduce((sum: number, one: number) => sum + one, 0) / 4, 12)
    const percentile = LIBRARY.get('percentile')?.compute as (values: number[], share: number) => number
    expect(found.percentile_90).toBe(percentile(differences, 0.9))
    expect(found.worst).toBe(Math.max(...differences))
    expect(found.worst_name).toBe(`patch ${differences.indexOf(found.worst) + 1}`)
  })

  it('measures a clipped and a black patch, with warnings that name them', () => {
    const made = make(30, 10, 3, 8, (x) => [255, 0, 120][Math.floor(x / 10)] as number)
    const patches = ['white', 'black', 'grey'].map((name, i) => ({ name, box: [10 * i, 0, 10, 10], lab: [50, 0, 0] }))
    const { warnings, patches: found } = measure(png(made), { kind: 'chart', patches })
    expect(found).toHaveLength(3)
    expect(warnings).toHaveLength(2)
    expect(warnings[0]).toMatch(/white/)
    expect(warnings[1]).toMatch(/black/)
  })
})

describe('a line', () => {
  const ruled = (bow: number, edge: boolean, slope = 0.02): Uint8Array =>
    png(
      make(400, 300, 1, 16, (x, y) => {
        const u = (x + 0.5 - 200) / 180
        const place = 150 + slope * (x + 0.5 - 200) + bow * (1 - u * u)
        const off = y + 0.5 - place
        const share = edge ? 1 / (1 + Math.exp(-2 * off)) : 1 - Math.exp(-(off * off) / 4)
        return 65535 * (0.2 + 0.5 * share)
      }),
      { chunks: [gama(1)] },
    )

  for (const edge of [true, false])
    it(`bows as it was drawn: ${edge ? 'an edge' : 'a ruled line'}`, () => {
      for (const bow of [0, 1, 4]) {
        const marks = { from: [20, 150 - 0.02 * 180], to: [380, 150 + 0.02 * 180] }
        const found = measure(ruled(bow, edge), { kind: 'line', ...marks })
        expect(found.bow).toBeCloseTo(bow, 1)
        expect(found.bow_percent).toBeCloseTo((100 * found.bow) / 300, 9)
        expect(found.angle).toBeCloseTo((Math.atan(0.02) * 180) / Math.PI, 1)
      }
    })

  it('refuses where there is no line, and marks too near each other', () => {
    const flat = png(make(400, 300, 1, 16, () => 30000))
    expect(() => measure(flat, { kind: 'line', from: [20, 150], to: [380, 150] })).toThrow(/no edge or line/)
    expect(() => measure(flat, { kind: 'line', from: [20, 150], to: [30, 150] })).toThrow(/px apart/)
  })
})
