import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  findUnit,
  isUnit,
  nearest,
  ReadError,
  type Reading,
  readDisplayUnit,
  readQuantity,
  readSize,
  readUnit,
  showReading,
  UnitTextError,
} from '../../src/units/index.ts'
import './ratio-matcher.ts'

const read = (text: string, field?: string): Reading =>
  readQuantity(text, field === undefined ? undefined : readDisplayUnit(field))

function refusal(attempt: () => unknown): ReadError | UnitTextError {
  try {
    attempt()
  } catch (error) {
    if (error instanceof ReadError || error instanceof UnitTextError) return error
    throw error
  }
  throw new Error('It was read, and should have been refused.')
}

describe('a quantity is read as typed', () => {
  test.each([
    ['600 mm', 0.6],
    ['600mm', 0.6],
    ['  600 mm  ', 0.6],
    ['5,5 mm', 0.0055],
    ['12\u202f346 mm', 12.346],
    ['1e3 mm', 1],
    ['1.5e-3 m', 0.0015],
    ['1.5e−3 m', 0.0015],
    ['−131 mired', -131e-6],
    ['- 5 m', -5],
    ['+2 dpt', 2],
    ['1/125 s', 0.008],
    ['1/2.5 s', 0.4],
    ['1 1/3 stop', 4 / 3],
    ['16 1/2 in', 16.5 * 0.0254],
    ['-1 1/3 stop', -4 / 3],
    ['f/5.6', 5.6],
    ['f 8', 8],
    ['F8', 8],
    ['ƒ/8', 8],
    ['f/5,6', 5.6],
    ['1:4', 0.25],
    ['2 : 1', 2],
    ['5 ft 3 in', 63 * 0.0254],
    ['−5 ft 3 in', -63 * 0.0254],
    ['5 ft - 3 in', 57 * 0.0254],
    ['5 ft 3.5 in', 63.5 * 0.0254],
    ['5 [ft] 3 [in]', 63 * 0.0254],
    ['1\u202f234\u202f567 mm', 1234.567],
    ['-  5 m', -5],
    ['0 ft 3 in', 3 * 0.0254],
    ['5 + 3', 8],
    ['5 - 3', 2],
    ['3 m ^ 2', 3],
    ['2 mm^10', 2e-30],
    ['600 mm + 2 cm', 0.62],
    ['1 h 30 min', 5400],
    ['1°30′', Math.PI / 120],
    ['20 °C', 293.15],
    ['20 ℃', 293.15],
    ['−5 °C', 268.15],
    ['20 °C + 3 K', 296.15],
    ['5600 K', 5600],
    ['300 ppi', 300 / 0.0254],
    ['12 EV', 12],
    ['40 [lp/mm]', 40000],
    ['40 lp/mm', 40000],
    ['50 [lx h]', 180000],
    ['5 1/mm', 5000],
    ['3 m^2', 3],
    ['3 m²', 3],
    ['90 %', 0.9],
  ])('%s', (text, value) => {
    expect(read(text).value).toBeCloseToRatio(value, 1e-14)
  })
})

describe('a bare number takes its field’s unit', () => {
  test.each([
    ['60', 'mm', 0.06],
    ['8', 'f/', 8],
    ['4', '1:', 0.25],
    ['20', '°C', 293.15],
    ['20 + 3', '°C', 296.15],
    ['50', '%', 0.5],
    ['1/125', 's', 0.008],
    ['300 + 20', 'mm', 0.32],
  ])('%s in a field in %s', (text, field, value) => {
    expect(read(text, field).value).toBeCloseToRatio(value, 1e-14)
    expect(read(text, field).dimension).toBe(readDisplayUnit(field).dimension)
  })

  test('and a typed unit goes before the field’s', () => {
    expect(read('6 cm', 'mm').value).toBeCloseToRatio(0.06, 1e-14)
  })

  test('a whole number of seconds offers the shutter time it may have meant', () => {
    expect(read('125', 's').offers).toEqual([{ text: '1/125 s', label: 'a shutter time' }])
    expect(read('125 s', 's').offers).toEqual([])
    expect(read('100 + 25', 's').offers).toEqual([])
    expect(read('1/125', 's').offers).toEqual([])
    expect(read('2', 's').offers).toHaveLength(1)
    for (const [text, field] of [
      ['1', 's'],
      ['125', 'ms'],
      ['125', 'mm'],
      ['125 ± 2 s', 's'],
    ] as const)
      expect(read(text, field).offers, `${text} in ${field}`).toEqual([])
  })

  test('is a shutter time where it is a fraction of a second', () => {
    expect(read('1 / 125', 's').notation).toBe('shutter')
    for (const [text, field] of [
      ['1/4', 'in'],
      ['125', 's'],
      ['3 s', 's'],
    ] as const)
      expect(read(text, field).notation, `${text} in ${field}`).toBeUndefined()
  })

  test('a ratio offers larger than life, and what is offered reads so', () => {
    const [offer] = read('4', '1:').offers
    expect(offer?.text).toBe('4:1')
    expect(read(offer?.text as string, '1:').value).toBe(4)
    for (const text of ['1', '-4', '1:4', 'f/8']) expect(read(text, '1:').offers, text).toEqual([])
  })
})

describe('limits of error', () => {
  test.each([
    ['600 mm ± 2 mm', undefined, 0.6, 0.002],
    ['600 mm +/- 2 mm', undefined, 0.6, 0.002],
    ['600 mm + / - 2 mm', undefined, 0.6, 0.002],
    ['600 mm ± 2', 'in', 0.6, 0.002],
    ['600 ± 2', 'mm', 0.6, 0.002],
    ['600 ± 2 mm', undefined, 0.6, 0.002],
    ['600 ± 2 mm', 'in', 0.6, 0.002],
    ['1e3 mm ± 2', 'in', 1, 0.002],
    ['5 ft 3 in ± 1', 'mm', 63 * 0.0254, 0.0254],
    ['10 Ω ± 2', 'kΩ', 10, 2],
    ['600 mm ± 1 %', undefined, 0.6, 0.006],
    ['600 ± 1 %', 'mm', 0.6, 0.006],
    ['600 ± 5 ‰', undefined, 600, 3],
    ['50 ± 1 %', '%', 0.5, 0.01],
    ['50 % ± 1 %', undefined, 0.5, 0.01],
    ['1:4 ± 1 %', '1:', 0.25, 0.0025],
    ['4 ± 1 %', '1:', 0.25, 0.0025],
    ['f/8 ± 5 %', 'f/', 8, 0.4],
    ['f/8 ± 0.1', 'f/', 8, 0.1],
    ['20 °C ± 2 °C', undefined, 293.15, 2],
    ['20 °C ± 2', 'K', 293.15, 2],
    ['20 °C ± 2 K', undefined, 293.15, 2],
    ['1/125 s ± 1/1000 s', undefined, 0.008, 0.001],
    ['600 mm ± 0', undefined, 0.6, 0],
  ])('%s in a field in %s', (text, field, value, tolerance) => {
    const reading = read(text, field)
    expect(reading.value).toBeCloseToRatio(value, 1e-14)
    expect(reading.tolerance).toBeCloseToRatio(tolerance, 1e-14)
  })

  test.each([
    ['600 mm ± 2 kg', 'The limits are a mass, the value is a length.'],
    ['600 mm ±', 'after “±” are missing'],
    ['600 mm ± %', 'not a number'],
    ['600 mm ± -2 mm', 'below zero'],
    ['600 mm ± 1 mm ± 2 mm', 'after the limits'],
    ['20 °C ± 5 %', 'in K'],
    ['1:4 ± 0.1', 'in per cent'],
    ['± 2 mm', 'not a number'],
  ])('%s is refused: %s', (text, words) => {
    expect(refusal(() => read(text)).message).toContain(words)
  })

  test('of a bare ratio are refused, as 4 ± 0.1 in a field of 1:4 is not 0.25 ± 0.1', () => {
    expect(refusal(() => read('4 ± 0.1', '1:')).message).toContain('per cent')
  })

  test('with a unit the field does not take are refused', () => {
    expect(refusal(() => read('600 ± 2 kg', 'mm')).message).toBe('This is a mass; the field takes a length in mm.')
  })
})

describe('what cannot be read says why and where', () => {
  test.each([
    ['', 'Nothing is filled in here.', ''],
    ['   ', 'Nothing is filled in here.', '   '],
    ['abc', 'is not a number', 'abc'],
    ['5 xyzzyx', 'is not a known unit', 'xyzzyx'],
    ['20 ℃ 5 xyzzyx', 'is not a known unit', 'xyzzyx'],
    ['5 ft 3 kg', 'cannot be added to', '3 kg'],
    ['5 ft 3', 'cannot be added to', '3'],
    ['3 in 5 ft', 'larger unit first', '5 ft'],
    ['5 in 3 in', 'larger unit first', '3 in'],
    ['20 °C - 3 °C', 'in K', '- 3 °C'],
    ['20 °C + 20 °C', 'in K', '+ 20 °C'],
    ['1/0 s', 'divided by zero', '1/0'],
    ['1e999 m', 'too large', '1e999'],
    ['5 m/s/s', 'at most one “/”', 's/s'],
    ['600 mm + 5 – 3', 'long dash', '–'],
    ['+- 2 mm', '“±”', '+-'],
    ['600 mm -+ 2 mm', '“±”', '-+'],
    ['600 mm ±', 'are missing', '±'],
    ['600 mm ± 1 mm ± 2 mm', '“± 2 mm” after the limits', ' ± 2 mm'],
    ['600 mm + abc', '“+ abc” is not a number', '+ abc'],
    ['5 [xyzzyx]', 'is not a known unit', 'xyzzyx'],
    ['600 mm + 5 lx xyzzyx', 'is not a known unit', 'xyzzyx'],
    ['40 mm +.25 mm', 'a zero before', '+.25'],
    ['1.2.3 mm', 'one decimal sign', '1.2.3'],
    ['1:0', 'not a finite number', '1:0'],
  ])('%s', (text, words, span) => {
    const error = refusal(() => read(text))
    expect(error.message).toContain(words)
    expect(text.slice(error.from, error.to)).toBe(span)
  })

  test.each([
    ['8', 'mm', 'f/8', 'This is a plain number; the field takes a length in mm.'],
    ['60', 'mm', '60 kg', 'This is a mass; the field takes a length in mm.'],
    ['8', 'f/', '8 mm', 'This is a length; the field takes a plain number.'],
    ['10', 'µW/lm', '10 kg', 'This is a mass; the field takes a quantity in µW/lm.'],
    ['4 + 1', '1:', '4 + 1', '“+ 1” cannot be added to “4”.'],
  ])('a field takes its own kind: not %s but %s: %s', (_, field, text, message) => {
    expect(refusal(() => read(text, field)).message).toBe(message)
  })
})

describe('what cannot be read is fixed so that it can', () => {
  test.each([
    ['5 m s/kg s^2', '5 m s/(kg s^2)'],
    ['3 1/m s', '3 1/(m s)'],
    ['5 m/s/s', '5 m/(s s)'],
    ['5 W/(m² K) s', '5 W/(m² K s)'],
    ['5 W/℃', '5 W/K'],
    ['5 mn', '5 mm'],
    ['5 MM', '5 mm'],
    ['600 mm ± 2 mn', '600 mm ± 2 mm'],
    ['.5 mm', '0.5 mm'],
    ['-.5 mm', '-0.5 mm'],
    ['600 mm +.25 mm', '600 mm +0.25 mm'],
    ['5. mm', '5 mm'],
    ['-15, mm', '-15 mm'],
    ['5 [mn]', '5 [mm]'],
    ['5 lx hh', '5 lx h'],
    ['1  000 mm', '1000 mm'],
    ['-12,345.67 mm', '-12345.67 mm'],
    ['1,234,567.8 mm', '1234567.8 mm'],
    ['1 000 mm', '1000 mm'],
    ['600 mm ± 1 000 mm', '600 mm ± 1000 mm'],
    ['1,234.5 mm', '1234.5 mm'],
    ['1.234,5 mm', '1234,5 mm'],
    ['1.234.567 mm', '1234567 mm'],
    ['600 mm ± 1,234.5 mm', '600 mm ± 1234.5 mm'],
    ['–5 mm', '-5 mm'],
    ['600 mm +- 2 mm', '600 mm ± 2 mm'],
    ['16.5"', '16.5in'],
  ])('%s becomes %s', (text, fixed) => {
    const error = refusal(() => read(text))
    expect(error.fix).toBe(fixed)
    expect(Number.isFinite(read(fixed).value)).toBe(true)
  })

  test('but not where a fix would be a guess', () => {
    for (const text of ['1.2.3 mm', '1,23,456.7 mm', '1234,567.8 mm', '1,2345.6 mm'])
      expect(refusal(() => read(text)).fix, text).toBeUndefined()
  })
})

describe('a size', () => {
  const size = (text: string, field?: string): number[] => {
    const { width, height } = readSize(text, field === undefined ? undefined : readDisplayUnit(field))
    return [width.value, height.value, ...(width.tolerance === undefined ? [] : [width.tolerance])].map(
      (value) => +value.toPrecision(12),
    )
  }

  test.each([
    ['420 x 297', 'mm', [0.42, 0.297]],
    ['420x297', 'mm', [0.42, 0.297]],
    ['420 X 297', 'mm', [0.42, 0.297]],
    ['420 × 297 mm', 'cm', [0.42, 0.297]],
    ['420 * 297', 'mm', [0.42, 0.297]],
    ['420 mm x 297 mm', undefined, [0.42, 0.297]],
    ['42 cm × 297 mm', 'in', [0.42, 0.297]],
    ['16.5 in x 11.7 in', 'mm', [0.4191, 0.29718]],
    ['16 1/2 x 11 3/4 in', 'mm', [0.4191, 0.29845]],
    ['5 by 7 in', 'mm', [0.127, 0.1778]],
    ['50 cm x 70', 'mm', [0.5, 0.7]],
    ['6000 px x 4000 px', 'px', [6000, 4000]],
    ['6000 × 4000', 'px', [6000, 4000]],
    ['420 × 297 ± 1', 'mm', [0.42, 0.297, 0.001]],
    ['420 × 297 ± 1 mm', 'cm', [0.42, 0.297, 0.001]],
    ['420 ± 2 × 297 ± 1', 'mm', [0.42, 0.297, 0.002]],
    ['59,4 × 42', 'cm', [0.594, 0.42]],
  ])('%s in a field in %s', (text, field, values) => {
    expect(size(text, field)).toEqual(values)
  })

  test.each([
    ['420', 'mm', 'A size is width × height', '420'],
    ['420 by', 'mm', 'Nothing is filled in', ''],
    ['420 x 297 kg', 'mm', 'the field takes a length', '297 kg'],
    ['420 kg x 297', 'mm', 'the field takes a length', '420 kg'],
    ['4O0 x 297', 'mm', 'not a known unit', 'O'],
    ['420 x 297 x 50', 'mm', 'not a known unit', 'x'],
  ])('%s in a field in %s is refused: %s', (text, field, words, span) => {
    const error = refusal(() => size(text, field))
    expect(error.message).toContain(words)
    expect(text.slice(error.from, error.to).trim()).toBe(span)
  })

  test('of two kinds is refused', () => {
    expect(refusal(() => size('420 kg x 297 mm')).message).toBe('The width is a mass, the height a length.')
  })

  test('is fixed as a whole', () => {
    expect(refusal(() => size('4 20 x 297', 'mm')).fix).toBe('420 x 297')
    expect(refusal(() => size('420 x 2 97 mm', 'mm')).fix).toBe('420 x 297 mm')
    expect(refusal(() => size('420 x 297 mn', 'mm')).fix).toBe('420 x 297 mm')
  })
})

describe('a unit’s text', () => {
  test.each([
    ['', 'missing', ''],
    ['m/', 'missing', '/'],
    ['1', 'no number in it', '1'],
    ['1/', 'missing', '/'],
    ['/m', 'cannot start', '/'],
    ['m s/kg s', 'parentheses', 'kg s'],
    ['m/(kg) s', 'parentheses', '(kg) s'],
    ['m/s/s', 'at most one', 's/s'],
    ['m/(s', 'never closed', '('],
    ['(m', 'right after “/”', '('],
    ['m/s (kg)', 'right after “/”', '('],
    ['m/(s (kg', 'right after “/”', '('],
    ['m)', 'has no “(” before it', ')'],
    ['m/()', 'has no “(” before it', ')'],
    ['m/(s))', 'has no “(” before it', ')'],
    ['m ^2 ^3', 'must follow a unit directly', '^3'],
    ['^2', 'must follow a unit directly', '^2'],
    ['m^13', 'whole-number power', '^13'],
    ['m^-13', 'whole-number power', '^-13'],
    ['m^0', 'whole-number power', '^0'],
    ['2 m', 'not part of a unit', '2 m'],
    ['m 2 ', 'not part of a unit', '2'],
    ['1 m', 'no number in it', '1'],
    ['m 1/s', 'no number in it', '1'],
    ['m/1/s', 'no number in it', '1'],
    ['°C/m', 'on its own', '°C/m'],
    ['1/°C', 'on its own', '1/°C'],
    ['m °C', 'on its own', 'm °C'],
    ['°C²', 'on its own', '°C²'],
    ['m · ', 'joins two units', '·'],
    ['· m', 'joins two units', '·'],
    ['m/·s', 'joins two units', '·'],
    ['m/(· s)', 'joins two units', '·'],
    ['m·*s', 'joins two units', '·'],
    ['m·1', 'joins two units', '·'],
    ['m·^2', 'joins two units', '·'],
    ['Qm^12', 'too large', 'Qm^12'],
    ['qm^12', 'too large', 'qm^12'],
    ['m'.repeat(201), 'longer than the 200', 'm'],
    ['__proto__', 'not a known unit', '__proto__'],
    ['constructor', 'not a known unit', 'constructor'],
  ])('“%s” is refused: %s', (text, words, span) => {
    const error = refusal(() => readUnit(text))
    expect(error).toBeInstanceOf(UnitTextError)
    expect(error.message).toContain(words)
    expect(text.slice(error.from, error.to).trim()).toBe(span)
  })

  test('names nothing that an object has by birth', () => {
    for (const name of ['toString', 'constructor', '__proto__', 'hasOwnProperty'])
      expect(findUnit(name)).toBeUndefined()
  })

  test('is written one way', () => {
    expect(readUnit('W / (m^2 * K)').symbol).toBe('W/(m² K)')
    expect(readUnit('um').symbol).toBe('µm')
    expect(readUnit('m^-1').symbol).toBe('m⁻¹')
    expect(readUnit(' 1/ m').symbol).toBe('1/m')
    expect(readUnit('lx·h').symbol).toBe('lx h')
    expect(readUnit('m² · kg/s').symbol).toBe('m² kg/s')
    expect(readUnit('m '.repeat(100)).dimension.exponents[0]).toBe(100)
  })

  test('has fixes that read, whatever is joined to what', () => {
    const part = fc.constantFrom('m', 's', 'kg', '°C', '^2', '⁻¹', '/', '/', '(', ')', '·', ' ', '1', '1/', 'mn', 'lx')
    fc.assert(
      fc.property(fc.array(part, { maxLength: 9 }), (parts) => {
        const text = parts.join('')
        if (isUnit(text)) return
        const { message, from, to, fix } = refusal(() => readUnit(text))
        if (fix === undefined || / known unit/.test(message)) return
        expect(isUnit(text.slice(0, from) + fix + text.slice(to)), `${text} with ${fix} at ${from}`).toBe(true)
      }),
    )
  })
})

describe('the nearest word', () => {
  test.each([
    ['mn', ['m', 'mm', 'min'], 'm'],
    ['mnim', ['min', 'mm'], 'min'],
    ['FOCAL', ['focal', 'field'], 'focal'],
    ['focla', ['focal', 'field'], 'focal'],
    ['x', ['mm'], undefined],
    ['a'.repeat(65), ['a'.repeat(65)], undefined],
  ])('to %s', (word, known, found) => {
    expect(nearest(word, known)).toBe(found)
  })
})

describe('a reading is shown as understood', () => {
  test.each([
    ['5,5', 'mm', '5.5 mm'],
    ['1/125', 's', '1/125 s'],
    ['f/8', 'f/', 'f/8'],
    ['8', 'f/', 'f/8'],
    ['4', '1:', '1:4'],
    ['5 ft 3 in', 'mm', '1600 mm'],
    ['600 ± 2', 'mm', '600 ± 2 mm'],
    ['f/8 ± 5 %', 'f/', 'f/8 ± 5 %'],
  ])('%s in a field in %s', (text, field, shown) => {
    expect(showReading(read(text, field), readDisplayUnit(field))).toBe(shown)
  })
})
