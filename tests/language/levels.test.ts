import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import {
  applyFix,
  checkFormula,
  isLevel,
  level,
  list,
  number,
  type Scope,
  type Type,
  type Value,
} from '../../src/language/index.ts'
import { LENGTH, NONE, STOP, TEMPERATURE } from '../../src/units/index.ts'
import { type Cells, computed, expectSaid } from './make.ts'

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

  const cells: Cells = new Map<string, readonly [Type, Value]>([
    ...Object.entries(KINDS).map(([name, type]) => [name, [type, 0]] as const),
    ['evs', [list(level(STOP)), []] as const],
  ])
  test.each([
    [
      '-evs',
      '-evs',
      'An exposure value is a level and cannot be negated. Only differences in stops can be.',
      ['-(evs - 0 EV)'],
    ],
    [
      'evs * 2',
      'evs * 2',
      'An exposure value is a level and cannot be multiplied. Only differences in stops can be.',
      ['(evs - 0 EV) * 2'],
    ],
    [
      'evs + evs',
      'evs + evs',
      'Two exposure values cannot be added: each is a level. A difference in stops can be added to one.',
      ['evs + (evs - 0 EV)', 'mean(evs, evs)'],
    ],
    [
      '-ev',
      '-ev',
      'An exposure value is a level and cannot be negated. Only differences in stops can be.',
      ['-(ev - 0 EV)'],
    ],
    [
      'ev + ev',
      'ev + ev',
      'Two exposure values cannot be added: each is a level. A difference in stops can be added to one.',
      ['ev + (ev - 0 EV)', 'mean(ev, ev)'],
    ],
    [
      'ev + 12 EV',
      'ev + 12 EV',
      'Two exposure values cannot be added: each is a level. A difference in stops can be added to one.',
      ['ev + 12 stop', 'mean(ev, 12 EV)'],
    ],
    [
      'celsius + celsius',
      'celsius + celsius',
      'Two temperatures cannot be added. A difference in kelvin can be added to one.',
      ['mean(celsius, celsius)'],
    ],
    [
      'stops - ev',
      'stops - ev',
      'A level cannot be subtracted from a difference. Write the exposure value first.',
      ['ev - stops', 'stops - (ev - 0 EV)', '(0 EV + stops) - ev'],
    ],
    [
      'stops + 1 stop - ev',
      'stops + 1 stop - ev',
      'A level cannot be subtracted from a difference. Write the exposure value first.',
      ['ev - (stops + 1 stop)', 'stops + 1 stop - (ev - 0 EV)', '(0 EV + (stops + 1 stop)) - ev'],
    ],
    [
      '(stops + 1 stop) - ev',
      '(stops + 1 stop) - ev',
      'A level cannot be subtracted from a difference. Write the exposure value first.',
      ['ev - (stops + 1 stop)', '(stops + 1 stop) - (ev - 0 EV)', '(0 EV + (stops + 1 stop)) - ev'],
    ],
    [
      '3 stop - ev',
      '3 stop - ev',
      'A level cannot be subtracted from a difference. Write the exposure value first.',
      ['ev - 3 stop', '3 stop - (ev - 0 EV)', '3 EV - ev'],
    ],
    [
      '3 stops - 12 EV',
      '3 stops - 12 EV',
      'A level cannot be subtracted from a difference. Write the exposure value first.',
      ['12 EV - 3 stops', '3 stops - 12 stop', '3 EV - 12 EV'],
    ],
    [
      'ev * 2',
      'ev * 2',
      'An exposure value is a level and cannot be multiplied. Only differences in stops can be.',
      ['(ev - 0 EV) * 2'],
    ],
    [
      '2 * 12 EV',
      '2 * 12 EV',
      'An exposure value is a level and cannot be multiplied. Only differences in stops can be.',
      ['2 * 12 stop'],
    ],
    [
      'ev / 2',
      'ev / 2',
      'An exposure value is a level and cannot be divided. Only differences in stops can be.',
      ['(ev - 0 EV) / 2'],
    ],
    [
      'ev / 2 EV',
      'ev / 2 EV',
      'An exposure value is a level and cannot be divided. Only differences in stops can be.',
      [],
    ],
    [
      'ev / n',
      'ev / n',
      'An exposure value is a level and cannot be divided. Only differences in stops can be.',
      ['(ev - 0 EV) / n'],
    ],
    [
      'n / ev',
      'n / ev',
      'An exposure value is a level and cannot be divided. Only differences in stops can be.',
      ['n / (ev - 0 EV)'],
    ],
    ['ev / ev', 'ev / ev', 'An exposure value is a level and cannot be divided. Only differences in stops can be.', []],
    [
      'ev^2',
      'ev^2',
      'An exposure value is a level and cannot be raised to a power. Only differences in stops can be.',
      ['(ev - 0 EV)^2'],
    ],
    ['2^ev', 'ev', 'An exponent is a plain number; this is an exposure value.', []],
    [
      'ev > stops',
      'ev > stops',
      'An exposure value and a difference in stops cannot be compared.',
      ['ev > (0 EV + stops)', '(ev - 0 EV) > stops'],
    ],
    [
      'stops > ev',
      'stops > ev',
      'An exposure value and a difference in stops cannot be compared.',
      ['stops > (ev - 0 EV)', '(0 EV + stops) > ev'],
    ],
    [
      'ev < 3 stop',
      'ev < 3 stop',
      'An exposure value and a difference in stops cannot be compared.',
      ['ev < 3 EV', '(ev - 0 EV) < 3 stop'],
    ],
    [
      '3 stop < ev',
      '3 stop < ev',
      'An exposure value and a difference in stops cannot be compared.',
      ['3 stop < (ev - 0 EV)', '3 EV < ev'],
    ],
    [
      '3 stops < ev',
      '3 stops < ev',
      'An exposure value and a difference in stops cannot be compared.',
      ['3 stops < (ev - 0 EV)', '3 EV < ev'],
    ],
    [
      'stops = 12 EV',
      'stops = 12 EV',
      'An exposure value and a difference in stops cannot be compared.',
      ['stops = 12 stop', '(0 EV + stops) = 12 EV'],
    ],
    [
      '12EV = stops',
      '12EV = stops',
      'An exposure value and a difference in stops cannot be compared.',
      ['12EV = (0 EV + stops)', '12 stop = stops'],
    ],
    [
      '{ev, stops}',
      'stops',
      'An exposure value and a difference in stops cannot be values of one list.',
      ['{ev, (0 EV + stops)}', '{(ev - 0 EV), stops}'],
    ],
    [
      '{stops, ev}',
      'ev',
      'An exposure value and a difference in stops cannot be values of one list.',
      ['{stops, (ev - 0 EV)}', '{(0 EV + stops), ev}'],
    ],
    [
      '{ev, width}',
      'width',
      'The values of a list are of one kind: the first is an exposure value, this is a length.',
      [],
    ],
    [
      'when(n > 1, ev, stops)',
      'stops',
      'An exposure value and a difference in stops cannot be outcomes of one choice.',
      ['when(n > 1, ev, (0 EV + stops))', 'when(n > 1, (ev - 0 EV), stops)'],
    ],
    [
      'when(n > 1, stops + stops, ev)',
      'ev',
      'An exposure value and a difference in stops cannot be outcomes of one choice.',
      ['when(n > 1, stops + stops, (ev - 0 EV))', 'when(n > 1, (0 EV + (stops + stops)), ev)'],
    ],
    [
      'mean(ev, stops)',
      'stops',
      'An exposure value and a difference in stops cannot be taken together.',
      ['mean(ev, (0 EV + stops))'],
    ],
    ['abs(ev)', 'ev', '“x” of abs is a difference in stops; this is an exposure value, a level.', ['abs((ev - 0 EV))']],
    [
      'abs(-(12 EV))',
      '-(12 EV)',
      '“x” of abs is a difference in stops; this is an exposure value, a level.',
      ['abs((-(12 EV) - 0 EV))'],
    ],
    [
      'sum({12 EV, 13 EV})',
      '{12 EV, 13 EV}',
      '“list” of sum is a difference in stops; this is an exposure value, a level.',
      ['sum({12 stop, 13 stop})'],
    ],
    [
      'sum({12EV, 13 EV})',
      '{12EV, 13 EV}',
      '“list” of sum is a difference in stops; this is an exposure value, a level.',
      ['sum({12 stop, 13 stop})'],
    ],
    [
      'sum(evs)',
      'evs',
      '“list” of sum is a difference in stops; this is an exposure value, a level.',
      ['sum((evs - 0 EV))'],
    ],
    [
      'time_for(stops, f/8, 100)',
      'stops',
      '“exposure_value” is an exposure value, a level; this is a difference in stops.',
      ['time_for((0 EV + stops), f/8, 100)'],
    ],
    [
      'time_for(3 stop, f/8, 100)',
      '3 stop',
      '“exposure_value” is an exposure value, a level; this is a difference in stops.',
      ['time_for(3 EV, f/8, 100)'],
    ],
    [
      'time_for(3stops, f/8, 100)',
      '3stops',
      '“exposure_value” is an exposure value, a level; this is a difference in stops.',
      ['time_for(3 EV, f/8, 100)'],
    ],
    [
      'time_for(stops + stops, f/8, 100)',
      'stops + stops',
      '“exposure_value” is an exposure value, a level; this is a difference in stops.',
      ['time_for((0 EV + (stops + stops)), f/8, 100)'],
    ],
    [
      'shift_time(1/60 s, 1 EV)',
      '1 EV',
      '“shift” is a difference in stops; this is an exposure value, a level.',
      ['shift_time(1/60 s, 1 stop)'],
    ],
    [
      'shift_time(1/60 s, ev)',
      'ev',
      '“shift” is a difference in stops; this is an exposure value, a level.',
      ['shift_time(1/60 s, (ev - 0 EV))'],
    ],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes, cells)
  })
})
