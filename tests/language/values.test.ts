import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import {
  applyFix,
  ComputeError,
  checkFormula,
  describeType,
  emptyScope,
  fitsDeclared,
  isLevel,
  level,
  list,
  number,
  numberIn,
  type Parameter,
  PLAIN_NUMBER,
  Refusal,
  record,
  type Scope,
  sameType,
  showTyped,
  showValue,
  TEXT,
  type Type,
  typeName,
  type Value,
  warning,
  withGaps,
  YES_NO,
} from '../../src/language/index.ts'
import { fix } from '../../src/language/values/diagnostic.ts'
import { eachOperator } from '../../src/language/values/each-operators.ts'
import { advised, describeRange, guarded } from '../../src/language/values/guards.ts'
import * as D from '../../src/units/index.ts'
import { readDisplayUnit } from '../../src/units/index.ts'

const LENGTH = number(D.LENGTH)
const SIZE = record('size', { width: LENGTH, height: LENGTH })
const LAMP = record('lamp', { height: LENGTH, on: YES_NO })
const MONEY = record('money', { amount: PLAIN_NUMBER, currency: TEXT })

describe('types', () => {
  const apart: readonly Type[] = [
    PLAIN_NUMBER,
    LENGTH,
    YES_NO,
    TEXT,
    list(LENGTH),
    list(TEXT),
    list(list(LENGTH)),
    SIZE,
    LAMP,
    record('size', { width: LENGTH, depth: LENGTH }),
    record('size', { width: LENGTH }),
    record('size', { width: LENGTH, height: PLAIN_NUMBER }),
  ]

  test('are the same as themselves and as no other', () => {
    for (const [i, a] of apart.entries())
      for (const [j, b] of apart.entries()) expect(sameType(a, b), `${i} and ${j}`).toBe(i === j)
  })

  test('are the same whatever they are written in, and whatever a record is called', () => {
    expect(sameType(number(D.NONE, 'ratio'), number(D.NONE))).toBe(true)
    expect(sameType(record('a', { width: LENGTH }), record('b', { width: LENGTH }))).toBe(true)
    expect(sameType(level(D.STOP), number(D.STOP))).toBe(true)
  })

  test.each([
    [LENGTH, 'a length', 'length'],
    [PLAIN_NUMBER, 'a plain number', 'dimensionless'],
    [level(D.STOP), 'an exposure value', 'stops'],
    [number(D.STOP), 'a number of stops', 'stops'],
    [level(D.TEMPERATURE), 'a temperature', 'temperature'],
    [YES_NO, 'yes or no', 'yes or no'],
    [TEXT, 'text', 'text'],
    [LAMP, 'a lamp', 'lamp'],
    [record('area', {}), 'an area', 'area'],
    [list(PLAIN_NUMBER), 'a list of numbers', 'list of dimensionless'],
    [list(LENGTH), 'a list, each a length', 'list of length'],
    [list(LAMP), 'a list of lamp records', 'list of lamp'],
    [list(YES_NO), 'a list, each yes or no', 'list of yes or no'],
  ] as const)('%o are called %s, and %s by other programs', (type, words, name) => {
    expect([describeType(type), typeName(type)]).toEqual([words, name])
  })

  test('know a level from a difference by the unit that was declared', () => {
    const levels = ['EV', '°C', 'stop', 'K', 'mm', 'f/'].map((unit) => isLevel(numberIn(readDisplayUnit(unit))))
    expect(levels).toEqual([true, true, false, false, false, false])
    expect(isLevel(TEXT)).toBe(false)
    expect(numberIn(readDisplayUnit('f/'))).toEqual(number(D.NONE, 'f-number'))
  })
})

describe('a value is shown', () => {
  const mm = readDisplayUnit('mm')
  const lengths = (count: number): number[] => Array.from({ length: count }, (_, i) => (i + 1) / 1000)
  test.each<[string, Value, Type, string?]>([
    ['yes', true, YES_NO],
    ['no', false, YES_NO],
    ['wide', 'wide', TEXT],
    ['f/8', 8, number(D.NONE, 'f-number')],
    ['1:4', 0.25, number(D.NONE, 'ratio')],
    ['1/125 s', 0.008, number(D.TIME, 'shutter')],
    ['12 EV', 12, level(D.STOP)],
    ['12 stop', 12, number(D.STOP)],
    ['293 K', 293.15, level(D.TEMPERATURE)],
    ['{1 mm, 2 mm}', [0.001, 0.002], list(LENGTH)],
    ['{0.1 cm, 0.2 cm}', [0.001, 0.002], list(LENGTH), 'cm'],
    ['{1 mm, 2 mm}', [0.001, 0.002], list(LENGTH), 's'],
    ['{yes, no}', [true, false], list(YES_NO), 's'],
    ['{(height 1000 mm, on yes)}', [{ height: 1, on: true }], list(LAMP)],
    ['height 1000 mm, on no', { height: 1, on: false }, LAMP],
    ['height 1000 mm, on no', { height: 1, on: false }, LAMP, 'cm'],
    ['height 1000 mm', { height: 1 }, LAMP],
    ['420 × 297 mm', { width: 0.42, height: 0.297 }, SIZE],
    ['42 × 29.7 cm', { width: 0.42, height: 0.297 }, SIZE, 'cm'],
    ['420 × 297 mm', { width: 0.42, height: 0.297 }, SIZE, 's'],
    ['width 420 mm', { width: 0.42 }, SIZE],
    ['height 420 mm', { height: 0.42 }, SIZE],
    // In two units a size is not one figure.
    ['width 12 m, height 297 mm', { width: 12, height: 0.297 }, SIZE],
    ['width yes, height no', { width: true, height: false }, record('ticks', { width: YES_NO, height: YES_NO })],
    ['width 1 mm, height no', { width: 0.001, height: false }, record('odd', { width: LENGTH, height: YES_NO })],
    ['EUR 1350.00', { amount: 1350, currency: 'EUR' }, MONEY],
    ['JPY 1350', { amount: 1350, currency: 'JPY' }, MONEY],
    ['amount 1350, currency eur', { amount: 1350, currency: 'eur' }, MONEY],
    ['amount 1350, currency EURO', { amount: 1350, currency: 'EURO' }, MONEY],
    ['amount 1350', { amount: 1350 }, MONEY],
  ])('as %s', (text, value, type, unit) => {
    expect(showValue(value, type, unit === undefined ? undefined : readDisplayUnit(unit)).text).toBe(text)
  })

  test('in its parts where it has a unit, and as one text where it has none', () => {
    expect(showValue({ width: 0.42, height: 0.297 }, SIZE)).toEqual({
      figure: '420 × 297',
      unit: 'mm',
      text: '420 × 297 mm',
    })
    expect(showValue({ amount: 5, currency: 'EUR' }, MONEY)).toEqual({ figure: '5.00', unit: 'EUR', text: 'EUR 5.00' })
    expect(showValue(true, YES_NO)).toEqual({ figure: 'yes', unit: '', text: 'yes' })
  })

  test('cut short after twelve values of a list, but whole where it was typed', () => {
    expect(showValue(lengths(12), list(LENGTH), mm).text).toMatch(/, 12 mm}$/)
    expect(showValue(lengths(15), list(LENGTH), mm).text).toMatch(/, 12 mm, … 3 more}$/)
    expect(showTyped(lengths(15), list(LENGTH), mm).text).toMatch(/, 15 mm}$/)
  })

  test('with all its digits where it was typed, in a list and in a record too', () => {
    expect(showTyped(0.4200123, LENGTH, mm).text).toBe('420.0123 mm')
    expect(showValue(0.4200123, LENGTH, mm).text).toBe('420 mm')
    expect(showTyped([0.4200123], list(LENGTH), mm).text).toBe('{420.0123 mm}')
    expect(showTyped({ height: 0.4200123 }, LAMP).text).toBe('height 420.0123 mm')
    expect(showTyped({ width: 0.4200123, height: 0.3 }, SIZE).text).toBe('420.0123 × 300 mm')
  })
})

describe('a formula that does not fit the unit its cell declares', () => {
  const CELLS = new Map<string, Type>([
    ['wait', number(D.TIME)],
    ['pause', number(D.TIME)],
    ['title', TEXT],
    ['width', LENGTH],
    ['speed', number(D.VELOCITY)],
    ['area', number(D.AREA)],
    ['light', number(D.ILLUMINANCE)],
    ['lamp', LAMP],
    ['sizes', list(SIZE)],
    ['ev', level(D.STOP)],
    ['stops', number(D.STOP)],
  ])
  const SCOPE: Scope = {
    library: LIBRARY,
    typeOf: (name) => (name === 'broken' ? 'unknown' : CELLS.get(name)),
    names: () => ['broken', ...CELLS.keys()],
  }
  const typeOf = (text: string): Type => checkFormula(text, SCOPE).root?.type as Type
  const misfit = (text: string, unit: string, scope: Scope | undefined = SCOPE) =>
    fitsDeclared(typeOf(text), text, readDisplayUnit(unit), scope)

  test.each([
    ['5', 'mm', ['5 mm']],
    [' -2.50 ', 'mm', ['-2.50 mm']],
    ['5', 'lx h', ['5 [lx h]']],
    ['5', '1/ s', []],
    ['2 * 5', 'mm', []],
    ['lamp', 'mm', ['lamp.height']],
    ['lamp', 's', []],
    ['speed', 'm', ['speed * wait', 'speed * pause']],
    ['speed + speed', 'm', ['(speed + speed) * wait', '(speed + speed) * pause']],
    ['sqrt(area)', 'm²', ['sqrt(area) * width']],
    ['sqrt(sqrt(area^4))', 'mm', ['(sqrt(sqrt(area^4))) / width']],
    ['area', 'mm', ['area / width']],
    ['light', 'lx s', ['light * wait', 'light * pause']],
    ['title', 'mm', []],
    ['width > 1 mm', 'mm', []],
    ['area', 'kg', []],
    ['{width, width}', 'mm²', ['({width, width}) * width']],
    ['ev', 'stop', ['ev - 0 EV']],
    ['ev - 12 EV', 'EV', ['0 EV + (ev - 12 EV)']],
  ])('%s in %s is offered %o', (text, unit, fixes) => {
    const found = misfit(text, unit)
    expect([found?.severity, found?.from, found?.to]).toEqual(['error', 0, text.length])
    const made = (found?.fixes ?? []).map((one) => applyFix(text, one))
    expect(made).toEqual(fixes)
    for (const formula of made) expect(misfit(formula, unit), formula).toBeUndefined()
  })

  test.each([
    ['width', 'cm'],
    ['{width, 1 mm}', 'cm'],
    ['ev', 'EV'],
    ['stops', 'stop'],
    ['ev - 12 EV', 'stop'],
  ])('but %s fits %s', (text, unit) => {
    expect(misfit(text, unit)).toBeUndefined()
  })

  test('distinguishes levels from differences only in a sheet that knows them', () => {
    expect(misfit('ev', 'stop', { ...SCOPE, lenientLevels: true })).toBeUndefined()
    expect(fitsDeclared(level(D.STOP), 'ev', readDisplayUnit('stop'))).toBeUndefined()
  })

  test('says what is missing, in words', () => {
    expect(misfit('speed', 'm')?.message).toBe(
      'The cell declares m, a length; the formula gives a velocity. Multiply by a time.',
    )
    expect(misfit('area', 'mm')?.message).toMatch(/gives an area\. Divide by a length\.$/)
    expect(misfit('area', 'kg')?.message).toMatch(/gives an area\.$/)
    expect(misfit('area', '')?.message).toBe('The cell declares a plain number; the formula gives an area.')
    expect(misfit('ev', 'stop')?.message).toMatch(/declares stop, a difference; .* a level/)
    expect(misfit('ev - 12 EV', 'EV')?.message).toMatch(/declares EV, a level; .* a difference in stops/)
  })

  test('offers at most three cells, of the first four hundred', () => {
    const many = (count: number, at: number): Scope => ({
      ...emptyScope(LIBRARY),
      typeOf: (name) => (Number(name.slice(1)) >= at ? number(D.TIME) : TEXT),
      names: () => Array.from({ length: count }, (_, i) => `c${i + 1}`),
    })
    const offered = (scope: Scope) =>
      fitsDeclared(number(D.VELOCITY), 'x', readDisplayUnit('m'), scope)?.fixes.map(({ insert }) => insert)
    expect(offered(many(9, 1))).toEqual(['x * c1', 'x * c2', 'x * c3'])
    expect(offered(many(500, 400))).toEqual(['x * c400'])
    expect(offered(many(500, 401))).toEqual([])
  })
})

describe('a function’s arguments', () => {
  // As many types as arguments: two more than parameters, for a function that takes any number.
  const called = (parameters: readonly Partial<Parameter>[], more = {}) =>
    guarded(
      {
        name: 'tested',
        parameters: parameters.map((one, i) => ({ name: `x${i + 1}`, type: LENGTH, about: '', ...one })),
        result: LENGTH,
        compute: (...values: Value[]) => values[0] as Value,
        ...more,
      },
      [...parameters, {}, {}].map(({ type }) => (type as Type | undefined) ?? LENGTH),
    )

  test.each([
    [{ above: 1 }, [1.1], [1, 0]],
    [{ least: 1 }, [1, 2], [0.9]],
    [{ below: 1 }, [0.9, -1], [1, 2]],
    [{ most: 1 }, [1, 0], [1.1]],
    [{ whole: true }, [0, -3], [0.5]],
    [{ least: 1, most: 2 }, [1, 2], [0.5, 2.5]],
    [{}, [0, -5], [Number.NaN]],
  ])('of %o take %o and refuse %o', (range, good, bad) => {
    for (const parameters of [[{ range }], [{ range }, {}]]) {
      const call = called(parameters)
      const rest = parameters.slice(1).map(() => 1)
      for (const value of good) expect(call(value, ...rest)).toBe(value)
      for (const value of bad) expect(() => call(value, ...rest), `${value}`).toThrow(ComputeError)
      for (const value of bad)
        expect(() => called([{ range, type: list(LENGTH) }])([good[0] as number, value])).toThrow(ComputeError)
      expect(called([{ range, type: list(LENGTH) }])(good)).toEqual(good)
    }
  })

  test('are looked at one by one, the last parameter’s range for all that follow', () => {
    const call = called([{}, { range: { least: 1 } }], { variadic: true })
    expect(call(0, 1, 2, 3)).toBe(0)
    expect(() => call(0, 1, 2, 0)).toThrow('“x2” must be at least 1000 mm in tested; here it is 0 mm.')
    expect(() => called([{ range: { least: 1 } }], { variadic: true })(1, 0)).toThrow('“x1”')
  })

  test('of a list are refused with the item that is out of range, in its unit', () => {
    const call = called([{ range: { above: 0, below: 2 }, type: list(LENGTH) }])
    expect(() => call([1, -1])).toThrow('“x1” must be above 0 mm and below 2000 mm in tested; here it is −1000 mm.')
    expect(call(['a text'])).toEqual(['a text'])
    expect(() => called([{ range: { least: 1 }, type: PLAIN_NUMBER }])(0)).toThrow(
      'at least 1 in tested; here it is 0.',
    )
  })

  test('of a choice are refused where they are no choice, unless others may be read too', () => {
    const type = TEXT
    const choices = ['wide', 'narrow']
    expect(called([{ type, choices }])('wide')).toBe('wide')
    expect(() => called([{ type, choices }])('odd')).toThrow(
      '“x1” in tested is one of "wide", "narrow"; here it is "odd".',
    )
    expect(called([{ type, choices, open: true }])('odd')).toBe('odd')
  })

  test('that the function refuses are an error of computing; any other error stays what it is', () => {
    for (const parameters of [[{}], [{}, {}]]) {
      const refusing = (error: Error) =>
        called(parameters, {
          compute: () => {
            throw error
          },
        })
      expect(() => refusing(new Refusal('Too near.'))(1, 1)).toThrow(new ComputeError('Too near.'))
      expect(() => refusing(new Refusal('Too near.'))(1, 1)).toThrow(ComputeError)
      expect(() => refusing(new TypeError('a bug'))(1, 1)).toThrow(TypeError)
    }
  })

  test('may call for advice, which is collected once and only while one asks', () => {
    const call = called([{}, {}], { advise: (x: number) => (x > 1 ? 'Take care.' : undefined) })
    expect(call(2, 0)).toBe(2)
    expect(advised(() => call(1, 0))).toEqual([])
    expect(
      advised(() => {
        call(2, 0)
        expect(advised(() => call(3, 0))).toEqual(['Take care.'])
        call(2, 0)
      }),
    ).toEqual(['Take care.'])
    expect(() => advised(() => called([{ range: { least: 9 } }, {}])(1, 0))).toThrow(ComputeError)
    expect(advised(() => called([{}], { advise: () => 'Of one.' })(1))).toEqual(['Of one.'])
  })

  test.each([
    [{ whole: true, least: 1 }, undefined, 'a whole number, at least 1'],
    [{ least: 0, most: 1 }, undefined, 'from 0 to 1'],
    [{ above: 0, below: 2 }, D.LENGTH, 'above 0 mm and below 2000 mm'],
    [{ above: 0, most: 2 }, D.LENGTH, 'above 0 mm, at most 2000 mm'],
    [{ least: 0, below: 2 }, D.LENGTH, 'at least 0 mm, below 2000 mm'],
    [{}, D.LENGTH, ''],
  ])('range %o of %o in words', (range, dimension, words) => {
    expect(describeRange(range, dimension)).toBe(words)
  })
})

describe('signs between lists', () => {
  const plus = eachOperator('+').compute as unknown as (a: Value, b: Value) => Value
  const gapped = (values: number[], rows: number[], of = 3): readonly Value[] => withGaps(values, { rows, of })

  test('work value by value, and with one number', () => {
    expect(plus([1, 2], [10, 20])).toEqual([11, 22])
    expect(plus([1, 2], 10)).toEqual([11, 12])
    expect(plus(10, [1, 2])).toEqual([11, 12])
    expect(() => plus(1, 2)).toThrow(/two numbers/)
    expect(() => plus([1], [1, 2])).toThrow('One of these lists has 1 value and the other 2 values.')
  })

  test('pair the rows of columns with gaps, and the sum has the gaps of both', () => {
    const first = gapped([1, 2], [0, 1])
    const second = gapped([20, 30], [1, 2])
    expect(plus(first, second)).toEqual([22])
    expect(plus(first, [10, 20, 30])).toEqual([11, 22])
    expect(plus([10, 20, 30], second)).toEqual([40, 60])
    expect(plus(plus(first, second), [100, 200, 300])).toEqual([222])
    expect(plus(plus(first, 5), [10, 20, 30])).toEqual([16, 27])
    expect(plus(plus(5, second), [10, 20, 30])).toEqual([45, 65])
    // All rows have a value: an ordinary list.
    expect(plus(gapped([1, 2, 3], [0, 1, 2]), [1, 1, 1])).toEqual([2, 3, 4])
  })

  test('refuse columns of other tables', () => {
    expect(() => plus(gapped([1, 2], [0, 1]), [1, 2])).toThrow(Refusal)
    expect(() => plus([1, 2], gapped([1, 2], [0, 1]))).toThrow(Refusal)
    expect(() => plus(gapped([1, 2], [0, 1]), gapped([1, 2], [0, 1], 4))).toThrow(Refusal)
  })
})

test('a scope without cells has functions alone; a fix is named by what it writes', () => {
  const empty = emptyScope(LIBRARY)
  expect([empty.library, empty.typeOf('x'), [...empty.names()]]).toEqual([LIBRARY, undefined, []])
  expect(fix(' * ', 1, 2)).toEqual({ label: 'Write *', from: 1, to: 2, insert: ' * ' })
  expect(warning('Mind.', 0, 1)).toEqual({ severity: 'warning', message: 'Mind.', from: 0, to: 1, fixes: [] })
})
