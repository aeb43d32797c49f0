import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { deltaE94, deltaE2000 } from '../../../src/functions/acceptance/colour-difference.ts'
import {
  bradford,
  inverse,
  type Lab,
  lightness,
  luminanceOf,
  multiply,
  tristimulus,
} from '../../../src/functions/acceptance/colour-space.ts'
import { correlatedColourTemperature } from '../../../src/functions/acceptance/colour-temperature.ts'
import { labFromRgb, RGB_SPACES, srgbLinear, toTristimulus } from '../../../src/functions/acceptance/rgb-spaces.ts'
import { advice, call } from '../call.ts'

const lab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -100, max: 100, noNaN: true }),
  b: fc.double({ min: -100, max: 100, noNaN: true }),
})

describe('colour differences', () => {
  it('do not depend on which colour comes first', () => {
    fc.assert(
      fc.property(lab, lab, fc.boolean(), (one, other, weighted) => {
        expect(deltaE2000(one, other, weighted)).toBeCloseTo(deltaE2000(other, one, weighted), 7)
      }),
      { seed: 3 },
    )
  })

  it('without lightness weighting are those with S_L taken out of the lightness term alone', () => {
    fc.assert(
      fc.property(lab, lab, (one, other) => {
        const middle = ((one.L + other.L) / 2 - 50) ** 2
        const S_L = 1 + (0.015 * middle) / Math.sqrt(20 + middle)
        const difference = (one.L - other.L) ** 2
        const expected = deltaE2000(one, other) ** 2 - difference / S_L ** 2 + difference
        expect(deltaE2000(one, other, false) ** 2).toBeCloseTo(expected, 5)
      }),
      { seed: 4 },
    )
  })

  it('of greys without weighting are plain differences of L*', () => {
    expect(call('delta_e_2000', 90, 0, 0, 93, 0, 0, false)).toBeCloseTo(3, 12)
    expect(call('delta_e_2000', 90, 0, 0, 93, 0, 0)).toBeLessThan(2)
    expect(call('delta_e_76', 90, 1, 2, 93, 1, -2)).toBe(5)
  })
})

describe('Lab of sRGB', () => {
  // The primaries of IEC 61966-2-1 and the white points, in XYZ, by the chromaticities written out.
  const primaries = [
    [0.64, 0.33],
    [0.3, 0.6],
    [0.15, 0.06],
  ] as const
  const D65 = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329] as const
  // ICC.1: the white of the profile connection space.
  const D50 = [0.9642, 1, 0.8249] as const
  const BRADFORD = [
    [0.8951, 0.2664, -0.1614],
    [-0.7502, 1.7135, 0.0367],
    [0.0389, -0.0685, 1.0296],
  ] as const
  type Triple = readonly [number, number, number]
  const times = (m: readonly Triple[], v: Triple): Triple =>
    m.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as unknown as Triple
  const determinant = ([a, b, c]: readonly [Triple, Triple, Triple]) =>
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])
  /** Solves m x = v by Cramer’s rule. */
  const solve = (m: readonly [Triple, Triple, Triple], v: Triple): Triple =>
    [0, 1, 2].map(
      (k) =>
        determinant(
          m.map((row, i) => row.map((part, j) => (j === k ? (v[i] as number) : part))) as unknown as [
            Triple,
            Triple,
            Triple,
          ],
        ) / determinant(m),
    ) as unknown as Triple

  function byHand(r: number, g: number, b: number, white: Triple): Lab {
    const columns = primaries.map(([x, y]) => [x / y, 1, (1 - x - y) / y] as const)
    const rows = [0, 1, 2].map((i) => columns.map((column) => column[i])) as unknown as [Triple, Triple, Triple]
    const scale = solve(rows, D65)
    const linear = [r, g, b].map(srgbLinear).map((value, i) => value * (scale[i] as number)) as unknown as Triple
    const xyz = times(rows, linear)
    const [from, to] = [times(BRADFORD, D65), times(BRADFORD, white)]
    const cone = times(BRADFORD, xyz).map((value, i) => (value * (to[i] as number)) / (from[i] as number))
    const adapted = solve(BRADFORD as unknown as [Triple, Triple, Triple], cone as unknown as Triple)
    const f = adapted.map((value, i) => (lightness(value / (white[i] as number)) + 16) / 116) as unknown as Triple
    return { L: 116 * f[1] - 16, a: 500 * (f[0] - f[1]), b: 200 * (f[1] - f[2]) }
  }

  it('agrees with primaries, Bradford and the cube root written out', () => {
    for (const [r, g, b] of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0.2, 0.5, 0.8],
      [0.9, 0.85, 0.8],
    ] as const)
      for (const [name, white] of [
        ['D50', D50],
        ['D65', D65],
      ] as const) {
        const expected = byHand(r, g, b, white)
        const found = labFromRgb([r, g, b], 'sRGB', name)
        for (const part of ['L', 'a', 'b'] as const) expect(Math.abs(found[part] - expected[part])).toBeLessThan(2e-3)
      }
  })

  it('has no hue for a grey, under either white', () => {
    for (const white of ['D50', 'D65'] as const) {
      const { a, b } = labFromRgb([0.37, 0.37, 0.37], 'sRGB', white)
      expect(Math.hypot(a, b)).toBeLessThan(1e-3)
    }
  })

  it('turns L* to luminance and back', () => {
    for (const L of [0, 5, 8, 8.1, 50, 100]) expect(lightness(luminanceOf(L))).toBeCloseTo(L, 10)
  })
})

describe('encodings', () => {
  it('have the luminances and decoding exponent that their standards print', () => {
    // Adobe RGB (1998), ROMM RGB and sRGB as an open data set quotes them, to the digits printed.
    expect(Math.abs(toTristimulus(RGB_SPACES['Adobe RGB (1998)'])[1][1] - 0.62736)).toBeLessThan(5e-6)
    expect(toTristimulus(RGB_SPACES['ROMM RGB'])[1].map((Y) => Y.toFixed(4))).toEqual(['0.2880', '0.7119', '0.0001'])
    expect(toTristimulus(RGB_SPACES.sRGB)[1].map((Y) => Y.toFixed(4))).toEqual(['0.2126', '0.7152', '0.0722'])
    expect(RGB_SPACES['eciRGB v2'].green.x).toBe(0.209905660377358)
    expect(Math.log(RGB_SPACES['Adobe RGB (1998)'].decode(0.5)) / Math.log(0.5)).toBeCloseTo(563 / 256, 12)
  })

  it('put white at L* 100 without hue, and agree about every grey of equal luminance', () => {
    for (const encoding of Object.keys(RGB_SPACES) as (keyof typeof RGB_SPACES)[]) {
      const white = labFromRgb([1, 1, 1], encoding, 'D50')
      expect([white.L - 100, white.a, white.b].every((part) => Math.abs(part) < 1e-9)).toBe(true)
      const grey = labFromRgb([0.4, 0.4, 0.4], encoding, 'D50')
      expect(Math.hypot(grey.a, grey.b)).toBeLessThan(1e-9)
      expect(grey.L).toBeCloseTo(lightness(RGB_SPACES[encoding].decode(0.4)), 9)
    }
  })

  it('decode steadily upward from 0 to 1', () => {
    for (const { decode } of Object.values(RGB_SPACES)) {
      const decoded = Array.from({ length: 101 }, (_, i) => decode(i / 100))
      expect(decoded[0]).toBeCloseTo(0, 12)
      expect(decoded[100]).toBeCloseTo(1, 12)
      decoded.slice(1).forEach((value, i) => {
        expect(value).toBeGreaterThan(decoded[i] as number)
      })
    }
  })

  it('adapt by the Bradford matrix that an open data set prints to eight places', () => {
    const printed = [
      [1.04792979, 0.02294687, -0.05019227],
      [undefined, undefined, -0.0170738],
      [-0.00924304, undefined, 0.75187428],
    ]
    const matrix = bradford([0.95045593, 1, 1.08905775], [0.96429568, 1, 0.8251046])
    for (const [i, row] of printed.entries())
      for (const [j, value] of row.entries())
        if (value !== undefined) expect(Math.abs((matrix[i]?.[j] as number) - value)).toBeLessThanOrEqual(5.01e-9)
  })

  it('adapt back by the inverse', () => {
    const [one, other] = [tristimulus({ x: 0.45, y: 0.41 }), tristimulus({ x: 0.3, y: 0.32 })]
    const round = multiply(bradford(other, one), bradford(one, other))
    for (const [i, row] of round.entries())
      for (const [j, value] of row.entries()) expect(value).toBeCloseTo(i === j ? 1 : 0, 12)
    expect(multiply(inverse(round), round)[0][0]).toBeCloseTo(1, 12)
  })
})

describe('CIE94', () => {
  it('of two greys is their difference in lightness', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (L1, L2) => {
          const [one, other] = [
            { L: L1, a: 0, b: 0 },
            { L: L2, a: 0, b: 0 },
          ]
          expect(deltaE94(one, other)).toBeCloseTo(Math.abs(L1 - L2), 9)
          expect(deltaE94(one, other, true)).toBeCloseTo(Math.abs(L1 - L2) / 2, 9)
        },
      ),
      { seed: 9 },
    )
  })
})

describe('colour temperature', () => {
  // Points on the CIE daylight locus have the temperature that names them (CIE 15, equations of the D series).
  it.each([4000, 5000, 6500, 7500])('of daylight at %i K is within 0.1 %% of it', (kelvin) => {
    const t = 1e3 / kelvin
    const x =
      kelvin <= 7000
        ? 0.244063 + 0.09911 * t + 2.9678 * t ** 2 - 4.607 * t ** 3
        : 0.23704 + 0.24748 * t + 1.9018 * t ** 2 - 2.0064 * t ** 3
    const y = -3 * x ** 2 + 2.87 * x - 0.275
    expect(Math.abs(correlatedColourTemperature(x, y) / kelvin - 1)).toBeLessThan(1e-3)
  })

  it('falls as the light gets redder', () => {
    const found = [0.29, 0.32, 0.35, 0.4, 0.45].map((x) =>
      correlatedColourTemperature(x, -3 * x ** 2 + 2.87 * x - 0.275),
    )
    expect([...found].sort((a, b) => b - a)).toEqual(found)
  })

  it('refuses what is no near-white light', () => {
    expect(() => correlatedColourTemperature(0.3, 0.6)).toThrow('0.05')
    expect(() => correlatedColourTemperature(0.7, 0.3)).toThrow(/Planckian|1000 K/)
  })
})

describe('the grey card', () => {
  it('read in each encoding gives the same light', () => {
    const share = 0.18
    const codes = {
      sRGB: 255 * (1.055 * share ** (1 / 2.4) - 0.055),
      'gamma 1.8': 255 * share ** (1 / 1.8),
      'gamma 2.2': 255 * share ** (1 / 2.2),
      'L*': (255 * (116 * Math.cbrt(share) - 16)) / 100,
      linear: 255 * share,
    }
    for (const [encoding, code] of Object.entries(codes))
      expect(call('linear_from_code', code, 255, encoding)).toBeCloseTo(share, 10)
  })

  it('is made neutral by the gains', () => {
    const [red, green, blue] = call<number[]>('white_balance_gains', 0.11, 0.2, 0.17) as [number, number, number]
    expect([red * 0.11, green * 0.2, blue * 0.17].every((value) => Math.abs(value - 0.2) < 1e-12)).toBe(true)
  })

  it('too light shows in stops and in L*, and a clipped one is warned of', () => {
    const offset = call<{ shift: number; lightness: number }>('grey_offset', 0.25, 0.18)
    expect(2 ** offset.shift * 0.18).toBeCloseTo(0.25, 12)
    expect(offset.lightness).toBeCloseTo(116 * (Math.cbrt(0.25) - Math.cbrt(0.18)), 12)
    expect(advice('grey_offset', 1, 0.18)).toContain('clipped')
  })
})

describe('samples', () => {
  it('have a mean and percentiles', () => {
    expect(call('sample_mean', [1, 2, 6])).toBeCloseTo(3, 12)
    expect(call('percentile', [9, 1, 5, 3, 7], 0.25)).toBe(3)
    expect(call('percentile', [9, 1], 0)).toBe(1)
    expect(call('percentile', [9, 1], 1)).toBe(9)
    expect(call('percentile', [4], 0.9)).toBe(4)
    expect(() => call('sample_mean', [])).toThrow('empty')
    expect(call('drift', 50.2, 51)).toBeCloseTo(-0.8, 12)
  })

  it('are as many as find a fault with the confidence asked, and no more', () => {
    const choose = (n: number, k: number): number => {
      let value = 1
      for (let i = 0; i < k; i++) value = (value * (n - i)) / (i + 1)
      return value
    }
    for (const [lot, bad, confidence] of [
      [40, 3, 0.9],
      [40, 20, 0.99],
      [7, 7, 0.5],
      [25, 1, 0.95],
    ] as const) {
      let n = 0
      while (1 - choose(lot - bad, n) / choose(lot, n) < confidence - 1e-12) n++
      expect(call('inspect_count', lot, bad, confidence)).toBe(n)
    }
    expect(call('inspect_count', 340, 4, 0.95)).toBe(179)
    // To be certain, all but the others' number and one more.
    expect(call('inspect_count', 340, 4, 1)).toBe(337)
    expect(call('inspect_count', 10_000_000, 1000, 0.95)).toBeGreaterThan(29_000)
  })
})
