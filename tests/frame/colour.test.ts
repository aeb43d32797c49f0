import { converter } from 'culori'
import { encode as encodeJpeg } from 'jpeg-js'
import { describe, expect, it } from 'vitest'
import { named } from '../../src/frame/colour/encoding.ts'
import { frameReport, openFrame, readAreas } from '../../src/frame/index.ts'
import {
  app1,
  app2,
  chrm,
  exifBlock,
  gama,
  iccp,
  type Made,
  make,
  type ProfileParts,
  png,
  profile,
  tiff,
  withSegments,
} from './files.ts'

const flat = (codes: readonly number[], bits: 8 | 16 = 16): Made =>
  make(12, 10, codes.length, bits, (_x, _y, c) => (codes[c] as number) * (2 ** bits - 1))

interface Patch {
  readonly code: number[]
  readonly light: number[]
  readonly lab: number[]
  readonly noise: number
}
const patchOf = (file: Uint8Array): Patch => {
  const report = frameReport(openFrame(file), readAreas([{ kind: 'patch', name: 'p', box: [0, 0, 12, 10] }]))
  return (report as unknown as { areas: { p: Patch } }).areas.p
}
const nameOf = (file: Uint8Array): string => openFrame(file).pixels.encoding

/**
 * Encodings by their published primaries and whites: columns of the D50-adapted matrix as profiles hold them.
 * sRGB, Adobe RGB, ROMM RGB: the profiles registered with the ICC; Display P3 and eciRGB v2: from memory, to four digits.
 */
const SRGB_COLUMNS = [
  [0.43607, 0.22249, 0.01392],
  [0.38515, 0.71687, 0.09708],
  [0.14307, 0.06061, 0.7141],
] as const
const ADOBE_COLUMNS = [
  [0.60974, 0.31111, 0.01947],
  [0.20528, 0.62567, 0.06087],
  [0.14919, 0.06322, 0.74457],
] as const
const ROMM_COLUMNS = [
  [0.79767, 0.28804, 0],
  [0.13519, 0.71188, 0],
  [0.03134, 0.00009, 0.82491],
] as const
const P3_COLUMNS = [
  [0.5151, 0.2412, -0.0011],
  [0.292, 0.6922, 0.0419],
  [0.1571, 0.0666, 0.7841],
] as const
const ECI_COLUMNS = [
  [0.6502, 0.3202, 0],
  [0.178, 0.6021, 0.0678],
  [0.136, 0.0777, 0.7571],
] as const
const SRGB_CURVE = { kind: 3, numbers: [2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045] }
const L_CURVE = {
  table: Array.from({ length: 1024 }, (_, i) => {
    const L = (100 * i) / 1023
    return Math.round(65535 * (L > 8 ? ((L + 16) / 116) ** 3 : (L * 27) / 24389))
  }),
}

const NAMED: Record<string, ProfileParts> = {
  sRGB: { columns: SRGB_COLUMNS, curve: SRGB_CURVE },
  'Adobe RGB (1998)': { columns: ADOBE_COLUMNS, curve: { exponent: 2.19921875 } },
  'ROMM RGB': { columns: ROMM_COLUMNS, curve: { exponent: 1.8 } },
  'Display P3': { columns: P3_COLUMNS, curve: SRGB_CURVE },
  'eciRGB v2': { columns: ECI_COLUMNS, curve: L_CURVE },
  linear: { columns: SRGB_COLUMNS },
}

describe('a profile', () => {
  for (const [name, parts] of Object.entries(NAMED))
    it(`of the numbers of ${name} is called that, whatever it says of itself`, () => {
      const icc = profile({ ...parts, description: name === 'sRGB' ? 'Display P3' : 'sRGB' })
      expect(nameOf(tiff(flat([0.5, 0.4, 0.3]), { fields: [[34675, 7, icc]] }))).toBe(name)
      expect(nameOf(png(flat([0.5, 0.4, 0.3]), { chunks: [iccp(icc)] }))).toBe(name)
      const jpeg = new Uint8Array(encodeJpeg({ width: 8, height: 8, data: new Uint8Array(256).fill(99) }, 95).data)
      expect(nameOf(withSegments(jpeg, [app2(icc)]))).toBe(name)
    })

  it('with numbers of its own is called by its description, and used as it is', () => {
    const columns = [
      [0.5, 0.3, 0.05],
      [0.3, 0.65, 0.1],
      [0.1642, 0.05, 0.6749],
    ] as const
    const file = tiff(flat([0.5, 0.25, 0.75]), {
      fields: [[34675, 7, profile({ columns, curve: { exponent: 2 }, description: 'the bench' })]],
    })
    expect(nameOf(file)).toBe('profile “the bench”')
    const { light, lab } = patchOf(file)
    const expected = [0.5, 0.25, 0.75].map((code) => (Math.round(code * 65535) / 65535) ** 2)
    for (const i of [0, 1, 2]) expect(light[i]).toBeCloseTo(expected[i] as number, 12)
    const [x, y, z] = [0, 1, 2].map((row) =>
      expected.reduce((sum, value, i) => sum + value * (Math.round((columns[i]?.[row] as number) * 65536) / 65536), 0),
    ) as [number, number, number]
    // ISO/CIE 11664-4, with the white of the connection space.
    const f = (t: number): number => Math.cbrt(t)
    expect(lab[0]).toBeCloseTo(116 * f(y) - 16, 9)
    expect(lab[1]).toBeCloseTo(500 * (f(x / 0.9642) - f(y)), 9)
    expect(lab[2]).toBeCloseTo(200 * (f(y) - f(z / 0.8249)), 9)
  })

  it('reads all five parametric curves (ICC.1:2022, 10.18)', () => {
    const [g, a, b, c, d, e, f] = [2, 0.9, 0.1, 0.2, 0.3, 0.05, 0.01] as const
    const curves: [number, number[], (x: number) => number][] = [
      [0, [g], (x) => x ** g],
      [1, [g, a, b], (x) => (a * x + b) ** g],
      [2, [g, 0.8, 0.1, 0.1], (x) => (0.8 * x + 0.1) ** g + 0.1],
      [3, [g, a, b, c, d], (x) => (x >= d ? (a * x + b) ** g : c * x)],
      [4, [g, 0.9, 0.05, c, d, e, f], (x) => (x >= d ? (0.9 * x + 0.05) ** g + e : c * x + f)],
    ]
    for (const [kind, numbers, curve] of curves)
      for (const code of [0.2, 0.6]) {
        const icc = profile({ columns: SRGB_COLUMNS, curve: { kind, numbers } })
        const { light } = patchOf(tiff(flat([code, code, code]), { fields: [[34675, 7, icc]] }))
        expect(light[1], `kind ${kind}`).toBeCloseTo(curve(Math.round(code * 65535) / 65535), 4)
      }
  })

  it('for grey gives one value three times', () => {
    const icc = profile({ space: 'GRAY', curve: { exponent: 2.2 } })
    const file = tiff(flat([0.5]), { fields: [[34675, 7, icc]] })
    expect(openFrame(file).pixels).toMatchObject({ channels: 1, encoding: 'gamma 2.2' })
    const { code, light, lab } = patchOf(file)
    expect(new Set(code).size).toBe(1)
    expect(new Set(light).size).toBe(1)
    expect(light[0]).toBeCloseTo((32768 / 65535) ** (563 / 256), 12)
    expect(lab.slice(1)).toEqual([0, 0])
  })

  it('that cannot be read rightly is refused with what to export', () => {
    const refused =
      (parts: ProfileParts, made = flat([0.5, 0.5, 0.5])): (() => unknown) =>
      () =>
        openFrame(tiff(made, { fields: [[34675, 7, profile(parts)]] }))
    expect(refused({ columns: SRGB_COLUMNS, extra: ['A2B0'] })).toThrow(/LUT.*export the picture with sRGB/)
    expect(refused({ space: 'CMYK' })).toThrow(/CMYK.*export the picture as RGB/)
    expect(refused({ kind: 'prtr', columns: SRGB_COLUMNS })).toThrow(/printer.*export/)
    expect(refused({ connection: 'Lab ', columns: SRGB_COLUMNS })).toThrow(/export/)
    expect(refused({ space: 'GRAY' })).toThrow(/grey.*RGB/)
    expect(refused({})).toThrow(/no primary/)
    expect(() => openFrame(tiff(flat([0.5, 0.5, 0.5]), { fields: [[34675, 7, new Uint8Array(140)]] }))).toThrow(
      /export/,
    )
  })
})

describe('without a profile', () => {
  const made = flat([0.6, 0.4, 0.2])
  const grey = flat([0.5])

  it('a picture is sRGB, as culori computes it, and grey goes by its curve', () => {
    const { code, light, lab, noise } = patchOf(png(made))
    const codes = [0.6, 0.4, 0.2].map((value) => Math.round(value * 65535) / 65535) as [number, number, number]
    for (const i of [0, 1, 2]) expect(code[i]).toBeCloseTo(codes[i] as number, 12)
    // IEC 61966-2-1.
    for (const i of [0, 1, 2]) expect(light[i]).toBeCloseTo((((codes[i] as number) + 0.055) / 1.055) ** 2.4, 12)
    const [r, g, b0] = codes
    const { l, a, b } = converter('lab')({ mode: 'rgb', r, g, b: b0 })
    expect(lab[0]).toBeCloseTo(l, 2)
    expect(lab[1]).toBeCloseTo(a, 1)
    expect(lab[2]).toBeCloseTo(b, 1)
    expect(noise).toBe(0)
    expect(nameOf(png(grey))).toBe('sRGB')
    expect(patchOf(png(grey)).light[0]).toBeCloseTo(0.21404, 4)
  })

  it('the sRGB matrix is that of the profile registered with the ICC', () => {
    const [x, y, z] = SRGB_COLUMNS
    const columns = [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]]
    for (const [i, value] of (named('sRGB').matrix ?? []).flat().entries())
      expect(Math.abs(value - (columns[i] as number))).toBeLessThan(3e-4)
  })

  it('white is L* 100, neutral', () => {
    const { lab } = patchOf(png(flat([1, 1, 1], 8)))
    expect(lab[0]).toBeCloseTo(100, 9)
    expect(lab[1]).toBeCloseTo(0, 9)
    expect(lab[2]).toBeCloseTo(0, 9)
  })

  it('a profile goes before the sRGB chunk, that before gAMA', () => {
    const srgb = ['sRGB', Uint8Array.of(0)] as [string, Uint8Array]
    const icc = iccp(profile({ columns: ADOBE_COLUMNS, curve: { exponent: 2.19921875 } }))
    expect(nameOf(png(made, { chunks: [srgb, icc] }))).toBe('Adobe RGB (1998)')
    expect(nameOf(png(made, { chunks: [gama(1), srgb] }))).toBe('sRGB')
    expect(nameOf(png(made, { chunks: [gama(1)] }))).toBe('linear')
    expect(nameOf(png(grey, { chunks: [gama(1 / 1.8)] }))).toBe('gamma 1.8')
  })

  it('gAMA and cHRM are used and named by their numbers', () => {
    const d65 = [0.3127, 0.329] as const
    const adobe = chrm([d65, [0.64, 0.33], [0.21, 0.71], [0.15, 0.06]])
    expect(nameOf(png(made, { chunks: [gama(1 / 2.2), adobe] }))).toBe('Adobe RGB (1998)')
    const p3 = chrm([d65, [0.68, 0.32], [0.265, 0.69], [0.15, 0.06]])
    expect(nameOf(png(made, { chunks: [p3] }))).toBe('Display P3')
    const { light } = patchOf(png(made, { chunks: [gama(0.5)] }))
    expect(light[1]).toBeCloseTo((Math.round(0.4 * 65535) / 65535) ** 2, 9)
    // Primaries on one line make no colours.
    const line = chrm([d65, [0.1, 0.1], [0.2, 0.2], [0.3, 0.3]])
    expect(openFrame(png(made, { chunks: [line] })).warnings).toHaveLength(1)
  })

  it('the Exif colour space is taken where nothing else says', () => {
    const adobe = exifBlock([[0xa001, 3, [65535]]], [])
    expect(openFrame(png(made, { chunks: [['eXIf', adobe]] })).warnings[0]).toMatch(/uncalibrated/)
    expect(nameOf(png(made, { chunks: [['eXIf', exifBlock([[0xa001, 3, [2]]])]] }))).toBe('Adobe RGB (1998)')
    const jpeg = new Uint8Array(encodeJpeg({ width: 8, height: 8, data: new Uint8Array(256).fill(99) }, 95).data)
    expect(nameOf(withSegments(jpeg, [app1(exifBlock([[0xa001, 3, [2]]]))]))).toBe('Adobe RGB (1998)')
    expect(nameOf(withSegments(jpeg, [app1(exifBlock([[0xa001, 3, [1]]]))]))).toBe('sRGB')
  })
})
