import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import * as D from '../../src/units/index.ts'
import { allMarks, asSet, asShown, readDisplayUnit, showFigure, showQuantity } from '../../src/units/index.ts'
import { signedStops } from '../../src/units/stops.ts'
import './ratio-matcher.ts'

describe('a figure', () => {
  test.each([
    [0, '0'],
    [-0, '0'],
    [1, '1'],
    [0.5, '0.5'],
    [12.04, '12.0'],
    [5.657, '5.66'],
    [9.996, '10.0'],
    [99.97, '100'],
    [857.4, '857'],
    [1234.5, '1235'],
    [12345.6, '12 346'],
    [123456789, '123 456 789'],
    [0.1 + 0.2, '0.3'],
    [0.00012345, '0.000123'],
    [0.000012345, '1.23e-5'],
    [0.00009995, '0.000100'],
    [999_999_999.7, '1.00e9'],
    [1e9, '1e9'],
    [1234567890, '1.23e9'],
    [-3.5, '−3.5'],
    [Number.POSITIVE_INFINITY, '∞'],
    [Number.NEGATIVE_INFINITY, '−∞'],
  ])('%d is shown as %s', (value, shown) => {
    expect(showFigure(value)).toBe(shown.replaceAll(' ', '\u202f'))
  })

  test.each([
    [1.5, 2, '1.50'],
    [-0.001, 2, '0.00'],
    [12.345, 0, '12'],
    [12345.6, 1, '12 345.6'],
  ])('%d with %d decimals is shown as %s', (value, decimals, shown) => {
    expect(showFigure(value, decimals)).toBe(shown.replaceAll(' ', '\u202f'))
  })
})

describe('zero, which has no size of its own, takes an everyday unit', () => {
  test.each([
    ['LENGTH', '0 mm'],
    ['AREA', '0 cm²'],
    ['TIME', '0 s'],
    ['MASS', '0 kg'],
    ['ANGLE', '0°'],
    ['LIGHT_DOSE', '0 lx h'],
    ['SAMPLING', '0 ppi'],
    ['RECIPROCAL_LENGTH', '0 dpt'],
    ['DATA', '0 MB'],
    ['DATA_RATE', '0 MB/s'],
    ['ENERGY', '0 J'],
    ['POWER', '0 W'],
    ['STOP', '0 stop'],
    ['NONE', '0'],
  ] as const)('%s: %s', (dimension, text) => {
    expect(showQuantity(0, D[dimension]).text).toBe(text)
  })

  test('a declared unit still goes first', () => {
    expect(showQuantity(0, D.TIME, { unit: readDisplayUnit('h') }).text).toBe('0 h')
    expect(showQuantity(0, D.NONE, { unit: readDisplayUnit('%') }).text).toBe('0 %')
  })
})

test('a figure that is no number says so', () => {
  expect(showFigure(Number.NaN)).toBe('not a number')
})

describe('a quantity without a declared unit takes the one its size suggests', () => {
  test.each([
    [12, D.LENGTH, '12 m'],
    [0.6, D.LENGTH, '600 mm'],
    [0, D.LENGTH, '0 mm'],
    [5e-6, D.LENGTH, '5 µm'],
    [550e-9, D.LENGTH, '0.55 µm'],
    [55e-9, D.LENGTH, '55 nm'],
    [-0.6, D.LENGTH, '−600 mm'],
    [0.25, D.AREA, '0.25 m²'],
    [90, D.TIME, '90 s'],
    [7200, D.TIME, '2 h'],
    [0.004, D.TIME, '4 ms'],
    [Math.PI / 6, D.ANGLE, '30°'],
    [180000, D.LIGHT_DOSE, '50 lx h'],
    [300 / 0.0254, D.SAMPLING, '300 ppi'],
    [4e-6, D.PIXEL_PITCH, '4 µm/px'],
    [2, D.RECIPROCAL_LENGTH, '2 dpt'],
    [-131e-6, D.RECIPROCAL_TEMPERATURE, '−131 mired'],
    [2.4e9, D.DATA, '300 MB'],
    [500, D.ILLUMINANCE, '500 lx'],
    [120, D.LUMINANCE, '120 cd/m²'],
    [1.5, D.STOP, '1.5 stop'],
    [4 / 3, D.STOP, '1.33 stop'],
    [10.01, D.STOP, '10.01 stop'],
    [0.1234, D.STOP, '0.12 stop'],
    [0.096, D.STOP, '0.10 stop'],
    [0.000347, D.STOP, '0.00 stop'],
    [-0.004, D.STOP, '0.00 stop'],
    [0, D.STOP, '0 stop'],
    [6000, D.PIXEL, '6000 px'],
    [0.25, D.NONE, '0.25'],
    [2, D.LENGTH.over(D.TIME.times(D.MASS)), '2 m/(kg s)'],
    [Number.NaN, D.LENGTH, 'not a number m'],
    [2, D.LENGTH.power(0.5), '2 m^0.5'],
    [2, D.LENGTH.power(0.5).times(D.TIME), '2 m^0.5 s'],
    [2, D.LENGTH.power(-0.5), '2 1/m^0.5'],
    [2, D.LENGTH.over(D.TIME.power(0.5).times(D.MASS)), '2 m/(kg s^0.5)'],
    [2, D.MASS.times(D.LENGTH), '2 m kg'],
    [2, D.LENGTH.times(D.MASS).power(-1), '2 1/(m kg)'],
  ])('%d SI', (value, dimension, text) => {
    expect(showQuantity(value, dimension).text).toBe(text)
  })
})

describe('a quantity in its declared unit', () => {
  test.each([
    [0.6, D.LENGTH, 'cm', '60 cm'],
    [0.00001234, D.LENGTH, 'cm', '0.00123 cm'],
    [0.4567, D.TIME, 's', '0.457 s'],
    [296.15, D.TEMPERATURE, '°C', '23 °C'],
    [0.25, D.NONE, '%', '25 %'],
    [5.657, D.NONE, 'f/', 'f/5.66'],
    [0.25, D.NONE, '1:', '1:4'],
    [2, D.NONE, '1:', '2:1'],
    [1, D.NONE, ' 1: ', '1:1'],
    [1 / 128, D.TIME, '1/ s', '1/128 s'],
    [0.4, D.TIME, '1/ s', '1/2.5 s'],
    [2, D.TIME, '1/ s', '2 s'],
  ])('%d SI', (value, dimension, unit, text) => {
    expect(showQuantity(value, dimension, { unit: readDisplayUnit(unit) }).text).toBe(text)
  })

  test('comes apart into figure and unit, to be set on the unit', () => {
    expect(showQuantity(0.857, D.LENGTH, { unit: readDisplayUnit('mm') })).toEqual({
      figure: '857',
      unit: 'mm',
      text: '857 mm',
    })
  })

  test('has the nearest mark beside it where it is set on a marked scale', () => {
    expect(showQuantity(6, D.NONE, { unit: readDisplayUnit('f/') }).mark).toBe('f/6.3')
    expect(showQuantity(0.0085, D.TIME, { unit: readDisplayUnit('1/ s') }).mark).toBe('1/125 s')
    expect(showQuantity(0.25, D.NONE, { unit: readDisplayUnit('1:') }).mark).toBeUndefined()
  })
})

describe('what is set on the equipment', () => {
  const shownAs = (value: number, unit: string) =>
    showQuantity(value, unit === 'f/' ? D.NONE : D.TIME, { unit: readDisplayUnit(unit) })

  test.each([
    ['f/', 'aperture', 0.8, 80],
    ['1/ s', 'time', 1e-4, 60],
  ] as const)('is a mark first, the exact figure second, in %s', (unit, scale, least, most) => {
    const marks = new Set(allMarks(scale).map(({ text }) => text))
    fc.assert(
      fc.property(fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }), (exponent) => {
        const shown = shownAs(Math.exp(exponent), unit)
        const set = asSet(shown)
        if (shown.mark === undefined) {
          expect(set).toEqual(shown)
          return
        }
        expect(marks).toContain(set.text)
        expect([set.figure, set.unit].join(' ').trim()).toBe(set.text)
        expect(set.exactly).toBe(shown.text === set.text ? undefined : shown.text)
      }),
    )
  })

  test('is as it is where nothing is marked', () => {
    expect(asSet(showQuantity(0.857, D.LENGTH))).toEqual(showQuantity(0.857, D.LENGTH))
  })
})

describe('figures follow the tolerance', () => {
  test.each([
    [0.6, 0.002, 'mm', '600 ± 2 mm'],
    [0.6, 0.0012, 'mm', '600.0 ± 1.2 mm'],
    [0.6, 0.00034, 'mm', '600.0 ± 0.3 mm'],
    [0.6123, 0.05, 'mm', '612 ± 50 mm'],
    [0.6, 0, 'mm', '600 mm'],
    [0.6, 0.01, 'm', '0.60 ± 0.01 m'],
  ])('%d m ± %d m in %s is %s', (value, tolerance, unit, text) => {
    expect(showQuantity(value, D.LENGTH, { unit: readDisplayUnit(unit), tolerance }).text).toBe(text)
  })

  test('and are in per cent behind a notation of its own', () => {
    expect(showQuantity(0.25, D.NONE, { unit: readDisplayUnit('1:'), tolerance: 0.0025 }).text).toBe('1:4 ± 1 %')
    expect(showQuantity(8, D.NONE, { unit: readDisplayUnit('f/'), tolerance: 0.4 }).text).toBe('f/8 ± 5 %')
    expect(showQuantity(0.008, D.TIME, { unit: readDisplayUnit('1/ s'), tolerance: 0.0004 }).text).toBe('1/125 s ± 5 %')
  })
})

describe('stops', () => {
  test('are shown to a hundredth, whatever their size', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 60, noNaN: true }), (stops) => {
        const figure = showQuantity(stops, D.STOP).figure.replace('−', '-')
        expect(figure).toMatch(/^-?\d+(\.\d{1,2})?$/)
        expect(Math.abs(Number(figure) - stops)).toBeLessThanOrEqual(0.005 + 1e-9)
      }),
    )
  })
  test('have limits to a hundredth, and none that are smaller', () => {
    expect(showQuantity(1.234, D.STOP, { tolerance: 0.052 }).text).toBe('1.23 ± 0.05 stop')
    expect(showQuantity(1.234, D.STOP, { tolerance: 0.3 }).text).toBe('1.2 ± 0.3 stop')
    expect(showQuantity(0.096, D.STOP, { tolerance: 0.001 }).text).toBe('0.10 stop')
  })
})

test.each([
  [0.023, '+0.02'],
  [-0.06, '−0.06'],
  [-0.001, '0.00'],
  [1 / 3, '+0.33'],
])('a signed difference of %d stops', (stops, text) => expect(signedStops(stops)).toBe(text))

describe('at the borders of a notation', () => {
  const NOTATIONS = { 'f/': 'f-number', '1:': 'ratio', '1/s': 'shutter' } as const
  const shown = (value: number, unit: keyof typeof NOTATIONS, tolerance?: number) => {
    const dimension = unit === '1/s' ? D.TIME : D.NONE
    return showQuantity(value, dimension, {
      unit: { dimension, factor: 1, offset: 0, symbol: '', notation: NOTATIONS[unit] },
      tolerance,
    })
  }

  test('a ratio is of one to something up to life size, and something to one beyond', () => {
    expect(['1:1', '1:4', '4:1'].map((text, i) => [text, shown([1, 0.25, 4][i] as number, '1:').text])).toEqual([
      ['1:1', '1:1'],
      ['1:4', '1:4'],
      ['4:1', '4:1'],
    ])
    expect([0, -0.5, Number.POSITIVE_INFINITY].map((value) => shown(value, '1:').text)).toEqual(['0', '−0.5', '∞'])
  })

  test('a time is a fraction below 0.45 s, and has the mark nearest to it', () => {
    expect(shown(0.449, '1/s')).toMatchObject({ figure: '1/2.23', unit: 's', text: '1/2.23 s' })
    expect(shown(0.45, '1/s')).toMatchObject({ figure: '0.45', text: '0.45 s' })
    expect(shown(0.008, '1/s')).toMatchObject({ figure: '1/125', mark: '1/125 s' })
    expect(shown(0, '1/s')).toEqual({ figure: '0', unit: 's', text: '0 s' })
    expect(shown(-1, '1/s').text).toBe('−1 s')
  })

  test('off the scale there is no mark', () => {
    expect(shown(500, 'f/')).toEqual({ figure: 'f/500', unit: '', text: 'f/500' })
    expect(shown(5.66, 'f/')).toEqual({ figure: 'f/5.66', unit: '', text: 'f/5.66', mark: 'f/5.6' })
  })

  test('limits are in per cent of the figure, and none where there are none', () => {
    expect(shown(4, 'f/', 0.2)).toMatchObject({ figure: 'f/4 ± 5 %', unit: '', text: 'f/4 ± 5 %' })
    expect(shown(0.25, '1:', 0).text).toBe('1:4')
    expect(shown(0, '1:', 0.1).text).toBe('0')
    expect(shown(-0.5, '1:', 0.1).text).toBe('−0.5 ± 20 %')
    expect(showQuantity(1, D.LENGTH, { tolerance: 0 }).text).toBe('1000 mm')
    expect(showQuantity(0.6, D.LENGTH, { unit: readDisplayUnit('mm'), tolerance: 0.002 }).text).toBe('600 ± 2 mm')
  })
})

describe('what was typed is shown with all its digits', () => {
  const typed = (value: number, dimension: D.Dimension, unit: string, tolerance?: number) =>
    showQuantity(value, dimension, { unit: readDisplayUnit(unit), tolerance, typed: true })

  test.each<[string, number, D.Dimension, string, number?]>([
    ['420.0123 mm', 0.4200123, D.LENGTH, 'mm'],
    ['12 345.678 mm', 12.345678, D.LENGTH, 'mm'],
    ['600 mm', 0.6, D.LENGTH, 'mm'],
    ['0.00012 mm', 1.2e-7, D.LENGTH, 'mm'],
    // A figure with no end was converted: six digits say enough, eleven may have been typed.
    ['8.46667 mm', 0.0254 / 3, D.LENGTH, 'mm'],
    ['1.2345678901', 1.2345678901, D.NONE, ''],
    ['1.23457', 1.23456789012, D.NONE, ''],
    ['1.234 stop', 1.234, D.STOP, 'stop'],
    ['600.25 ± 0.50 mm', 0.60025, D.LENGTH, 'mm', 0.0005],
    ['600.0 ± 0.2 mm', 0.6, D.LENGTH, 'mm', 0.0002],
    ['600.00 ± 0.25 mm', 0.6, D.LENGTH, 'mm', 0.00025],
    ['f/5.6', 5.6, D.NONE, 'f/'],
    ['f/8 ± 5 %', 8, D.NONE, 'f/', 0.4],
    ['1:13.157', 1 / 13.157, D.NONE, '1:'],
    ['0', 0, D.NONE, '1:'],
    ['−2', -2, D.NONE, '1:'],
    ['1/125 s', 0.008, D.TIME, '1/ s'],
    ['0.3 s', 0.3, D.TIME, '1/ s'],
    ['1/4 s', 0.25, D.TIME, '1/ s'],
    ['1/2.5 s', 0.4, D.TIME, '1/ s'],
    ['0.55 s', 0.55, D.TIME, '1/ s'],
  ])('%s', (text, value, dimension, unit, tolerance) => {
    expect(typed(value, dimension, unit, tolerance).text).toBe(text.replace(/(\d) (?=\d{3}\b)/g, '$1\u202f'))
  })

  test('and with no mark beside it, unless it is the mark itself', () => {
    expect(typed(6, D.NONE, 'f/').mark).toBeUndefined()
    expect(typed(8, D.NONE, 'f/').mark).toBe('f/8')
    expect(showQuantity(6, D.NONE, { unit: readDisplayUnit('f/') }).mark).toBe('f/6.3')
  })

  test('so that it reads as the same value', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9_999_999 }), fc.integer({ min: -4, max: 4 }), (digits, power) => {
        const value = Number(`${digits}e${power}`)
        const { text } = typed(value, D.LENGTH, 'm')
        expect(D.readQuantity(text).value).toBeCloseToRatio(value, 1e-11)
        expect(D.readQuantity(typed(-value, D.LENGTH, 'm').text).value).toBeCloseToRatio(-value, 1e-11)
      }),
    )
  })
})

test('a mark goes in the place of the figure, apart from its unit', () => {
  expect(asSet({ figure: '0.0085', unit: 's', text: '1/118 s', mark: '1/125 s' })).toEqual({
    figure: '1/125',
    unit: 's',
    text: '1/125 s',
    exactly: '1/118 s',
  })
  expect(asSet({ figure: 'f/6', unit: '', text: 'f/6', mark: 'f/6.3' })).toEqual({
    figure: 'f/6.3',
    unit: '',
    text: 'f/6.3',
    exactly: 'f/6',
  })
  const marked = { figure: 'f/8', unit: '', text: 'f/8', mark: 'f/8' }
  expect(asSet(marked)).toBe(marked)
})

test('a sign that is encoded twice is one unit', () => {
  const pairs = [
    ['\u03bcm', 'µm'],
    ['\u2126', 'Ω'],
    ['\u212a', 'K'],
    ['\u2103', '°C'],
    ['k\u2126', 'kΩ'],
  ] as const
  expect(pairs.map(([odd]) => D.findUnit(odd)?.symbol)).toEqual(pairs.map(([, symbol]) => symbol))
})

test.each([
  ['-40 °', '−40°'],
  ['-.5 stop', '−.5 stop'],
  ['40 °', '40°'],
  ['-3 °C', '−3 °C'],
  ['1e-6', '1e-6'],
  ['f/0.5', 'f/0.5'],
  ['5 - 3', '5 - 3'],
  ['type-2', 'type-2'],
])('%s, as it was typed, is shown as %s', (typed, shown) => {
  expect(asShown(typed)).toBe(shown)
})

test('a figure typed from a keyboard is shown as the same figure computed', () => {
  const units = ['°', 'mm', '%', 'stop', 'EV'].map((symbol) => readDisplayUnit(symbol))
  fc.assert(
    fc.property(fc.integer({ min: -9999, max: 9999 }), fc.constantFrom(...units), (figure, unit) => {
      const { text } = showQuantity(figure * unit.factor + unit.offset, unit.dimension, { unit, typed: true })
      expect(asShown(`${figure} ${unit.symbol}`)).toBe(text)
    }),
  )
})
