import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { list, number, type Type } from '../../../src/language/index.ts'
import { AREA, LENGTH, NONE } from '../../../src/units/index.ts'
import { call } from '../call.ts'

const resultType = (name: string, ...args: Type[]): Type => {
  const { result } = LIBRARY.get(name) as NonNullable<ReturnType<typeof LIBRARY.get>>
  return typeof result === 'function' ? result(args) : result
}

describe('rounding', () => {
  it('sends a half away from zero on both sides', () => {
    expect([2.5, -2.5, 2.4, -2.4].map((x) => call('round', x))).toEqual([3, -3, 2, -2])
  })

  it('to a step is not led astray by its binary digits', () => {
    expect(call('floor_to', 0.3, 0.1)).toBeCloseTo(0.3, 12)
    expect(call('ceil_to', 0.1 + 0.2, 0.1)).toBeCloseTo(0.3, 12)
    expect(call('ceil_to', 0.31, 0.1)).toBeCloseTo(0.4, 12)
    expect(call('round_to', -0.25, 0.1)).toBeCloseTo(-0.3, 12)
  })

  it('never gives a negative zero', () => {
    for (const zero of [call('round', -0.2), call('ceil', -0.2), call('ceil_to', -0.2, 1), call('sign', -0)])
      expect(Object.is(zero, 0)).toBe(true)
  })
})

describe('kinds', () => {
  it('follow from roots, and stay with values put in order', () => {
    expect(resultType('sqrt', number(AREA))).toEqual(number(LENGTH))
    expect(resultType('cbrt', number(LENGTH.power(3)))).toEqual(number(LENGTH))
    expect(resultType('max', number(LENGTH), number(LENGTH))).toEqual(number(LENGTH))
    expect(resultType('mean', list(number(LENGTH)))).toEqual(number(LENGTH))
    expect(resultType('count', list(number(LENGTH)))).toEqual(number(NONE))
  })
})

describe('lists', () => {
  it('have their middle, their mean and their ends', () => {
    const values = [5, 1, 4, 2]
    expect(call('median', values)).toBe(3)
    expect(call('median', [5, 1, 4])).toBe(4)
    expect(call('mean', values)).toBe(3)
    expect([call('least', values), call('greatest', values), call('sum', values), call('count', values)]).toEqual([
      1, 5, 12, 4,
    ])
    expect(values).toEqual([5, 1, 4, 2])
  })

  it('may be very long', () => {
    const long = Array.from({ length: 300_000 }, (_, i) => i)
    expect(call('greatest', long)).toBe(299_999)
  })

  it('must not be empty where a value is wanted', () => {
    for (const name of ['least', 'greatest', 'mean', 'median']) expect(() => call(name, [])).toThrow('empty')
  })
})

describe('angles', () => {
  it('go round and come back', () => {
    for (const angle of [-1.2, -0.3, 0, 0.7, 1.5]) {
      expect(call('asin', call('sin', angle))).toBeCloseTo(angle, 12)
      expect(call('atan', call('tan', angle))).toBeCloseTo(angle, 12)
      expect(call('atan2', call('sin', angle), call('cos', angle))).toBeCloseTo(angle, 12)
    }
    expect(() => call('tan', Math.PI / 2)).toThrow('right angle')
    expect(() => call('tan', (-3 * Math.PI) / 2)).toThrow('right angle')
  })
})

describe('marks', () => {
  it('mean the exact value behind them', () => {
    expect(call('exact_aperture', 5.6)).toBeCloseTo(4 * Math.SQRT2, 12)
    expect(call('exact_time', 1 / 125)).toBe(1 / 128)
    expect(call('nearest_aperture_mark', call('exact_aperture', 11))).toBe(11)
    expect(call('nearest_time_mark', call('exact_time', 1 / 60))).toBe(1 / 60)
  })

  it('are named where a figure is none', () => {
    expect(() => call('exact_aperture', 6)).toThrow('f/6.3')
    expect(() => call('exact_time', 1 / 128)).toThrow('1/125 s')
    expect(() => call('nearest_aperture_mark', 400)).toThrow('f/128')
  })
})

describe('bounds', () => {
  it('hold a value between them', () => {
    expect([-1, 3, 9].map((x) => call('clamp', x, 0, 5))).toEqual([0, 3, 5])
    expect(() => call('clamp', 1, 5, 0)).toThrow('Swap the two')
  })
})
