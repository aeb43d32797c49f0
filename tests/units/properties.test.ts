import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Dimension,
  type DisplayUnit,
  defaultUnit,
  ReadError,
  readDisplayUnit,
  readQuantity,
  readSize,
  readUnit,
  type Shown,
  STOP,
  showQuantity,
  UNITS,
  UnitTextError,
} from '../../src/units/index.ts'

const FIELDS = ['mm', 'in', 's', 'f/', '1:', '1/ s', '%', '°C', 'ppi', 'lx h', '', 'kWh', 'stop', '1/mm'].map(
  readDisplayUnit,
)
const field = fc.option(fc.constantFrom(...FIELDS), { nil: undefined })

/** Text that looks enough like a quantity to get far into the reader. */
const nearQuantity = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...[
          '±',
          '+/-',
          '+',
          '-',
          '−',
          '–',
          '/',
          ':',
          ' ',
          '  ',
          '.',
          ',',
          '^',
          '(',
          ')',
          '[',
          ']',
          '1/',
          'f/',
          'x',
          '×',
        ],
        ...[
          'by',
          '·',
          '*',
          'e',
          'E',
          '²',
          '⁻¹',
          '\u202f',
          '\u00a0',
          '℃',
          'µ',
          '\u03bc',
          '\u212a',
          '%',
          '"',
          "'",
          '\n',
          '\0',
        ],
      ),
      fc.constantFrom(...UNITS.map(({ symbol }) => symbol)),
      fc.nat(2000).map(String),
      fc.double().map(String),
      fc.string({ unit: 'binary', maxLength: 3 }),
    ),
    { maxLength: 14 },
  )
  .map((parts) => parts.join(''))

const anyText = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), nearQuantity)

interface Reported {
  readonly from: number
  readonly to: number
  readonly fix?: string | undefined
}

function expectReported(error: Reported, text: string): void {
  expect(error.from).toBeGreaterThanOrEqual(0)
  expect(error.to).toBeGreaterThanOrEqual(error.from)
  expect(error.to).toBeLessThanOrEqual(text.length)
  expect(error.fix).not.toBe(text)
}

describe('any text whatsoever', () => {
  test('is read as a quantity or refused with its place', () => {
    fc.assert(
      fc.property(anyText, field, (text, unit) => {
        try {
          const { value, dimension, tolerance = 0 } = readQuantity(text, unit)
          expect(Number.isFinite(value)).toBe(true)
          expect(tolerance >= 0 && Number.isFinite(tolerance)).toBe(true)
          if (unit) expect(dimension).toBe(unit.dimension)
        } catch (error) {
          if (!(error instanceof ReadError)) throw error
          expectReported(error, text)
        }
      }),
      { numRuns: 3000 },
    )
  })

  test('is read as a size or refused with its place', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          anyText,
          fc.tuple(anyText, anyText).map((pair) => pair.join(' x ')),
        ),
        field,
        (text, unit) => {
          try {
            const { width, height } = readSize(text, unit)
            expect(width.dimension).toBe(height.dimension)
            if (unit) expect(width.dimension).toBe(unit.dimension)
          } catch (error) {
            if (!(error instanceof ReadError)) throw error
            expectReported(error, text)
          }
        },
      ),
      { numRuns: 3000 },
    )
  })

  test('is read as a unit or refused with its place', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        try {
          const { factor, dimension, symbol } = readUnit(text)
          expect(factor > 0 && Number.isFinite(factor)).toBe(true)
          // How a unit is written is itself a unit, the same one.
          const again = readUnit(symbol)
          expect(again.dimension).toBe(dimension)
          expect(again.symbol).toBe(symbol)
        } catch (error) {
          if (!(error instanceof UnitTextError)) throw error
          expectReported(error, text)
        }
      }),
      { numRuns: 3000 },
    )
  })

  test('of 100,000 characters is answered, whatever it repeats', () => {
    const parts = [
      '1',
      ' ',
      '1 ',
      'm ',
      '1 m + ',
      '1/',
      '(',
      '[',
      '±',
      '+ ',
      '+/',
      '.',
      '1,',
      'm^',
      '\u202f1',
      'x',
      ' x 1',
      'µ',
      '°C',
      'by ',
    ]
    for (const part of parts)
      for (const text of [
        part.repeat(Math.ceil(1e5 / part.length)),
        `1${part.repeat(Math.ceil(1e5 / part.length))}`,
        `600 mm ± ${part.repeat(Math.ceil(1e5 / part.length))}z`,
      ])
        for (const attempt of [() => readQuantity(text), () => readSize(text), () => readUnit(text)]) {
          expect(attempt).toThrow(/longer than|width × height|Nothing/)
        }
  })
})

const mantissa = fc.integer({ min: -999_999, max: 999_999 })
const exponent = fc.integer({ min: -9, max: 6 })
/** Figures of every size a technician meets. */
const figure = fc.tuple(mantissa, exponent).map(([digits, power]) => Number(`${digits}e${power - 3}`))

const UNIT_TEXTS = [
  ...UNITS.map(({ symbol }) => symbol),
  ...['mm', 'µm', 'nm', 'kWh', 'MB', 'GiB', 'cd/m²', 'lx h', 'W/(m² K)', '1/mm', 'µm/px', 'm⁻¹'],
]
const declared: readonly DisplayUnit[] = UNIT_TEXTS.map(readDisplayUnit)

/** Half a unit in the last place of a shown figure, in the unit shown. */
function halfLastPlace(shown: string): number {
  const [, fraction = '', power = '0'] =
    /^[−]?[\d\u202f]+(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(shown.split(' ± ')[0] as string) ?? []
  return 0.5 * 10 ** (Number(power) - fraction.length)
}

const numberIn = ({ figure }: Shown): string => figure.replace(/^f\/|^1:|^1\/|:1$/, '').replace(/ .*/, '')

const withoutZeros = (text: string): string => text.replace(/(\.\d*?)0+(?!\d)/, '$1').replace(/\.(?!\d)/, '')

const matters = (value: number): number => Math.abs(value) * 1e-11

describe('what is shown reads back', () => {
  test('as the same quantity, to half a unit in the last place, in any declared unit', () => {
    fc.assert(
      fc.property(figure, fc.constantFrom(...declared), (number, unit) => {
        const value = number * unit.factor + unit.offset
        const shown = showQuantity(value, unit.dimension, { unit })
        for (const from of [readQuantity(shown.text), readQuantity(shown.text, unit)]) {
          expect(from.dimension).toBe(unit.dimension)
          const off = Math.abs(from.value - value) / unit.factor
          expect(off).toBeLessThanOrEqual(halfLastPlace(shown.figure) + matters(value / unit.factor))
        }
      }),
      { numRuns: 3000 },
    )
  })

  test('and shows as the same figure again, from then on to the letter', () => {
    fc.assert(
      fc.property(figure, fc.constantFrom(...declared), (number, unit) => {
        const first = showQuantity(number * unit.factor + unit.offset, unit.dimension, { unit }).text
        const again = readQuantity(first, unit)
        const second = showQuantity(again.value, again.dimension, { unit }).text
        // 2.495 shows as 2.50, which says that it was rounded; 2.5 itself does not.
        expect(withoutZeros(second)).toBe(withoutZeros(first))
        const third = readQuantity(second, unit)
        expect(showQuantity(third.value, third.dimension, { unit }).text).toBe(second)
      }),
      { numRuns: 3000 },
    )
  })

  test('in the unit its size suggests', () => {
    const dimensions: readonly Dimension[] = [...new Set(declared.map(({ dimension }) => dimension))]
    fc.assert(
      fc.property(figure, fc.constantFrom(...dimensions), (value, dimension) => {
        const shown = showQuantity(value, dimension)
        const again = readQuantity(shown.text)
        expect(again.dimension).toBe(dimension)
        const { factor } = defaultUnit(value, dimension)
        expect(Math.abs(again.value - value)).toBeLessThanOrEqual(factor * halfLastPlace(shown.figure) + matters(value))
      }),
      { numRuns: 3000 },
    )
  })

  test('with its limits, each to half a unit in its last place', () => {
    fc.assert(
      fc.property(
        figure,
        fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
        // Stops are shown to a hundredth, which their own test checks.
        fc.constantFrom(...declared.filter(({ offset, dimension }) => offset === 0 && dimension !== STOP)),
        (number, share, unit) => {
          const tolerance = Math.abs(number) * share
          fc.pre(Math.abs(number) >= 1e-3 && Math.abs(number) < 1e8)
          const shown = showQuantity(number * unit.factor, unit.dimension, { unit, tolerance: tolerance * unit.factor })
          const again = readQuantity(shown.text, unit)
          const [value, limits] = shown.figure.split(' ± ') as [string, string]
          expect(Math.abs(again.value / unit.factor - number)).toBeLessThanOrEqual(
            halfLastPlace(value) + matters(number),
          )
          expect(Math.abs((again.tolerance as number) / unit.factor - tolerance)).toBeLessThanOrEqual(
            halfLastPlace(limits) + matters(number),
          )
          expect(again.tolerance).toBeGreaterThan(0)
        },
      ),
      { numRuns: 2000 },
    )
  })

  test.each(['f/', '1:', '1/ s'])('in the notation %s', (notation) => {
    const unit = readDisplayUnit(notation)
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (power) => {
        const value = 10 ** power
        const shown = showQuantity(value, unit.dimension, { unit })
        const again = readQuantity(shown.text, unit)
        // A figure below the line is as exact as it is shown; turned over, that is a part of the whole.
        const part = halfLastPlace(numberIn(shown)) / Number(numberIn(shown).replace(/\u202f/g, ''))
        expect(Math.abs(again.value / value - 1)).toBeLessThanOrEqual(part * 1.02 + 1e-11)
        expect(withoutZeros(showQuantity(again.value, again.dimension, { unit }).text)).toBe(withoutZeros(shown.text))
      }),
      { numRuns: 1000 },
    )
  })
})

test('a reading does not depend on how many spaces are between its parts', () => {
  fc.assert(
    fc.property(figure, fc.constantFrom(...UNIT_TEXTS), fc.nat(3), fc.nat(3), (number, unit, before, after) => {
      const [tight, loose] = [`${number}${unit}`, `${' '.repeat(before)}${number}${' '.repeat(after)}${unit} `]
      fc.pre(!/^(1|e)/.test(unit))
      expect(readQuantity(loose)).toEqual(readQuantity(tight))
    }),
  )
})
