import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { applyFix, checkFormula, isLevel, level, number, type Scope } from '../../src/language/index.ts'
import { LENGTH, NONE, STOP, TEMPERATURE } from '../../src/units/index.ts'
import { computed } from './make.ts'

/** One cell of each kind. */
const KINDS = {
  ev: level(STOP),
  stops: number(STOP),
  celsius: level(TEMPERATURE),
  kelvin: number(TEMPERATURE),
  n: number(NONE),
  width: number(LENGTH),
} as const
type Kind = keyof typeof KINDS

const scope: Scope = {
  library: LIBRARY,
  typeOf: (name) => (Object.hasOwn(KINDS, name) ? KINDS[name as Kind] : undefined),
  names: () => Object.keys(KINDS),
}

/** `level`, `difference` or another kind of quantity; `refused` where it is an error. */
function kindOf(text: string, inScope = scope): string {
  const { root } = checkFormula(text, inScope)
  if (!root) return 'refused'
  if (root.type.kind !== 'number') return root.type.kind
  return isLevel(root.type) ? 'level' : 'difference'
}

/**
 * Every operator between every two kinds. After the distinction of IEC 80000-15 (from memory): two levels have a
 * difference and no sum. A row gives +, −, ×, ÷, < of a left and a right operand; `-` is refused.
 */
const TABLE: readonly (readonly [Kind, Kind, string, string, string, string, string])[] = [
  ['ev', 'ev', '-', 'difference', '-', '-', 'yes or no'],
  ['ev', 'stops', 'level', 'level', '-', '-', '-'],
  ['stops', 'ev', 'level', '-', '-', '-', '-'],
  ['stops', 'stops', 'difference', 'difference', 'difference', 'difference', 'yes or no'],
  ['ev', 'n', '-', '-', '-', '-', '-'],
  ['n', 'ev', '-', '-', '-', '-', '-'],
  ['stops', 'n', '-', '-', 'difference', 'difference', '-'],
  ['n', 'stops', '-', '-', 'difference', 'difference', '-'],
  ['ev', 'width', '-', '-', '-', '-', '-'],
  ['width', 'ev', '-', '-', '-', '-', '-'],
  ['celsius', 'celsius', '-', 'difference', 'difference', 'difference', 'yes or no'],
  ['celsius', 'kelvin', 'level', 'level', 'difference', 'difference', 'yes or no'],
  ['kelvin', 'celsius', 'level', 'level', 'difference', 'difference', 'yes or no'],
  ['kelvin', 'kelvin', 'difference', 'difference', 'difference', 'difference', 'yes or no'],
  ['celsius', 'n', '-', '-', 'difference', 'difference', '-'],
  ['n', 'celsius', '-', '-', 'difference', 'difference', '-'],
]
const SIGNS = ['+', '-', '*', '/', '<'] as const

describe('levels and differences:', () => {
  test.each(TABLE)('%s with %s', (left, right, ...expected) => {
    const found = SIGNS.map((sign) => kindOf(`${left} ${sign} ${right}`))
    expect(found).toEqual(expected.map((kind) => (kind === '-' ? 'refused' : kind)))
  })

  test.each([
    ['-ev', 'refused'],
    ['-(2 EV)', 'level'],
    ['-stops', 'difference'],
    ['ev^2', 'refused'],
    ['{ev, ev}', 'list'],
    ['{ev, stops}', 'refused'],
    ['when(n > 1, ev, ev)', 'level'],
    ['when(n > 1, ev, stops)', 'refused'],
    ['ev = ev', 'yes or no'],
    ['ev = stops', 'refused'],
    ['mean(ev, 12 EV)', 'level'],
    ['mean({ev, 12 EV})', 'level'],
    ['min(ev, 12 EV)', 'level'],
    ['max({ev, 12 EV})', 'level'],
    ['median({ev, 12 EV})', 'level'],
    ['clamp(ev, 2 EV, 3 EV)', 'level'],
    ['mean(ev, stops)', 'refused'],
    ['sum({ev, ev})', 'refused'],
    ['sum({stops, stops})', 'difference'],
    ['abs(ev - 12 EV)', 'difference'],
    ['abs(ev)', 'refused'],
    ['drift(ev, ev)', 'difference'],
    ['evenness_stops({ev, ev})', 'difference'],
    ['time_for(ev, f/8, 100)', 'difference'],
    ['time_for(stops, f/8, 100)', 'refused'],
    ['shift_time(1/60 s, ev)', 'refused'],
    ['shift_time(1/60 s, stops)', 'difference'],
    ['exposure_value(f/8, 1/60 s) - ev', 'difference'],
    ['2^(ev / 1 EV)', 'difference'],
  ])('%s is %s', (text, kind) => {
    expect(kindOf(text)).toBe(kind)
  })

  test.each([
    ['12 EV - 3 stop', 9],
    ['12 EV + 1/3 stop', 12 + 1 / 3],
    ['13 EV - 10 EV', 3],
    ['mean(12 EV, 13 EV)', 12.5],
    ['max({12 EV, 13 EV})', 13],
  ])('%s is %d', (text, value) => {
    expect(computed(text).value).toBeCloseTo(value, 12)
  })

  test('a level is shown in EV, a difference in stops', () => {
    expect(computed('12 EV - 3 stop').shown).toBe('9 EV')
    expect(computed('13 EV - 10 EV').shown).toBe('3 stop')
  })

  test.each([
    '13 EV + 13 EV',
    'ev + ev',
    'ev * 2',
    '2 * 12 EV',
    '3 stop - ev',
    'ev > stops',
    '{ev, stops}',
    'abs(ev)',
    'time_for(stops, f/8, 100)',
    'shift_time(1/60 s, 1 EV)',
    'sum({12 EV, 13 EV})',
  ])('%s is refused with a formula that is right, and computed with a warning in a sheet of version 1', (text) => {
    const [error] = checkFormula(text, scope).diagnostics
    expect(error?.severity).toBe('error')
    expect(error?.fixes.length).toBeGreaterThan(0)
    for (const fix of error?.fixes ?? []) expect(kindOf(applyFix(text, fix)), applyFix(text, fix)).not.toBe('refused')
    const lenient = checkFormula(text, { ...scope, lenientLevels: true })
    expect(lenient.root).toBeDefined()
    expect(lenient.diagnostics.map(({ severity }) => severity)).toContain('warning')
  })
})
