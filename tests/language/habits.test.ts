import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { applyFix, checkFormula } from '../../src/language/index.ts'
import '../seed.ts'
import { SCOPE } from './make.ts'

/** Formulas that check, with the kinds of value they have, written without any habit from elsewhere. */
const number = fc.integer({ min: 1, max: 999 }).map((tenths) => String(tenths / 10))
const whole = fc.integer({ min: 2, max: 99 }).map(String)
const length = fc.oneof(
  number.map((figure) => `${figure} mm`),
  fc.constantFrom('width', 'play', 'sensor.width', 'original_width'),
)
const plain: fc.Arbitrary<string> = fc.oneof(
  whole,
  number,
  fc.constantFrom('x', 'm'),
  fc.tuple(length, length).map(([a, b]) => `${a} / ${b}`),
)
const lengths: fc.Arbitrary<string> = fc.oneof(
  length,
  fc.tuple(length, length).map(([a, b]) => `${a} + ${b}`),
  fc.tuple(plain, length).map(([a, b]) => `${a} * ${b}`),
  fc.tuple(length, length).map(([a, b]) => `max(${a}, ${b})`),
  fc.tuple(length, length).map(([a, b]) => `when(x > 2, ${a}, ${b})`),
)

const errorsOf = (text: string) => checkFormula(text, SCOPE).diagnostics.filter(({ severity }) => severity === 'error')

const offered = (text: string, doubtful = false): string[] =>
  checkFormula(text, SCOPE)
    .diagnostics.filter(({ severity }) => (severity === 'warning') === doubtful)
    .flatMap(({ fixes }) => fixes.map((fix) => applyFix(text, fix)))

/** What a habit makes of a formula, beside what was meant. */
type Habit = readonly [name: string, written: fc.Arbitrary<readonly [text: string, meant: string]>]

const both = <T>(of: fc.Arbitrary<T>, write: (value: T) => readonly [string, string]) => of.map(write)

const HABITS: readonly Habit[] = [
  ['a leading =', both(fc.tuple(lengths, fc.constantFrom('=', '= ', ' =')), ([f, sign]) => [sign + f, f])],
  ['a trailing =', both(fc.tuple(lengths, fc.constantFrom('=', ' = ')), ([f, sign]) => [f + sign, f])],
  [
    'a missing bracket at the end',
    both(fc.tuple(length, length), ([a, b]) => [`2 * max(${a}, ${b}`, `2 * max(${a}, ${b})`]),
  ],
  ['two missing brackets', both(length, (a) => [`max(1 mm, (2 * ${a}`, `max(1 mm, (2 * ${a}))`])],
  ['an f-number without its slash', both(fc.tuple(whole, plain), ([n, f]) => [`f${n} * (${f})`, `f/${n} * (${f})`])],
  ['F/8', both(fc.tuple(number, plain), ([n, f]) => [`F/${n} * (${f})`, `f/${n} * (${f})`])],
  [
    'if( with semicolons',
    both(fc.tuple(lengths, lengths), ([a, b]) => [
      `if(x > 2; ${a}; ${b})`,
      `when(x > 2, ${a.replaceAll('; ', ', ')}, ${b})`,
    ]),
  ],
  ['IF( with commas', both(fc.tuple(length, length), ([a, b]) => [`IF(x > 2, ${a}, ${b})`, `when(x > 2, ${a}, ${b})`])],
  ['; between arguments', both(fc.tuple(length, length), ([a, b]) => [`max(${a}; ${b})`, `max(${a}, ${b})`])],
  [
    '; with decimal commas',
    both(fc.tuple(fc.integer({ min: 1, max: 9 }), length), ([n, b]) => [
      `max(${n},5 mm; ${b})`,
      `max(${n}.5 mm, ${b})`,
    ]),
  ],
  [
    'a name and = before it',
    both(fc.tuple(lengths, fc.constantFrom('focal', 'my_length')), ([f, name]) => [`${name}=${f}`, f]),
  ],
  ['a name and := before it', both(lengths, (f) => [`focal := ${f}`, f])],
  ['an argument with =', both(plain, (f) => [`sqrt(x = ${f})`, `sqrt(x: ${f})`])],
  ['√ before brackets', both(plain, (f) => [`√(${f})`, `sqrt(${f})`])],
  ['√ before a number or a name', both(fc.oneof(whole, fc.constantFrom('x', 'width')), (f) => [`√${f}`, `sqrt(${f})`])],
  ['√ after a number', both(fc.tuple(whole, whole), ([a, f]) => [`${a}√${f}`, `${a} * sqrt(${f})`])],
  ['² after a number', both(fc.tuple(number, lengths), ([n, f]) => [`${n}² * (${f})`, `${n}^2 * (${f})`])],
  ['² after a name', both(fc.constantFrom('width', 'x', 'sensor.width'), (name) => [`${name}²`, `${name}^2`])],
  ['³ after a bracket', both(length, (f) => [`(${f})³`, `(${f})^3`])],
  ['2(…)', both(fc.tuple(number, lengths), ([n, f]) => [`${n}(${f})`, `${n} * (${f})`])],
  ['(…)(…)', both(fc.tuple(lengths, lengths), ([a, b]) => [`(${a})(${b})`, `(${a}) * (${b})`])],
  ['a function after a number', both(fc.tuple(number, plain), ([n, f]) => [`${n} sqrt(${f})`, `${n} * sqrt(${f})`])],
  ['pi after a number', both(number, (n) => [`${n} pi`, `${n} * pi`])],
  ['π after a number', both(fc.tuple(number, fc.constantFrom('', ' ')), ([n, gap]) => [`${n}${gap}π`, `${n} * pi`])],
  [
    'curly quotes',
    both(fc.constantFrom('“wide”', '„wide“', '«wide»', '‘wide’', "'wide'"), (q) => [
      `profile = ${q}`,
      'profile = "wide"',
    ]),
  ],
  [
    'micron',
    both(fc.tuple(number, fc.constantFrom('micron', 'microns', 'Micron')), ([n, w]) => [
      `${n} ${w} + width`,
      `${n} µm + width`,
    ]),
  ],
  [
    'ASA',
    both(fc.tuple(whole, fc.constantFrom('ASA', 'ISO', 'asa')), ([n, w]) => [
      `exposure_value(f/8, 1 s, ${n} ${w})`,
      `exposure_value(f/8, 1 s, ${n})`,
    ]),
  ],
  [
    'ISO before its number',
    both(whole, (n) => [`exposure_value(f/8, 1 s, ISO ${n})`, `exposure_value(f/8, 1 s, ${n})`]),
  ],
  ['names of units spelt out', both(number, (n) => [`${n} millimetres + width`, `${n} mm + width`])],
  ['per cent added to a length', both(fc.tuple(length, whole), ([f, n]) => [`${f} + ${n} %`, `${f} * (1 + ${n} %)`])],
  [
    'per cent taken from a sum',
    both(fc.tuple(length, length, whole), ([a, b, n]) => [`${a} + ${b} - ${n} %`, `(${a} + ${b}) * (1 - ${n} %)`]),
  ],
  [
    'a record without its part',
    both(fc.tuple(lengths, fc.constantFrom('width', 'height')), ([f, part]) => [
      `sensor / (${f})`,
      `sensor.${part} / (${f})`,
    ]),
  ],
  ['a record without its part as an argument', both(length, (f) => [`max(${f}, sensor)`, `max(${f}, sensor.width)`])],
  [
    'a date with points',
    both(fc.integer({ min: 13, max: 28 }), (d) => [`profile = ${d}.03.2026`, `profile = "2026-03-${d}"`]),
  ],
  [
    'a date with hyphens',
    both(fc.integer({ min: 10, max: 28 }), (d) => [`profile = 2026-03-${d}`, `profile = "2026-03-${d}"`]),
  ],
  [
    'thousands with an apostrophe',
    both(fc.tuple(fc.integer({ min: 1, max: 999 }), fc.constantFrom("'", '’')), ([n, sign]) => [
      `${n}${sign}000 mm`,
      `${n}000 mm`,
    ]),
  ],
  ['thousands with a space', both(fc.integer({ min: 1, max: 999 }), (n) => [`${n} 000 mm`, `${n}000 mm`])],
  ['spaces in a function’s name', both(length, (f) => [`lens to original(${f}, 1:2)`, `lens_to_original(${f}, 1:2)`])],
  ['spaces in a cell’s name', both(plain, (f) => [`original width * (${f})`, `original_width * (${f})`])],
  [
    'feet and inches',
    both(fc.tuple(whole, fc.integer({ min: 1, max: 11 })), ([a, b]) => [`${a}' ${b}"`, `${a} ft + ${b} in`]),
  ],
  ['an unspaced compound unit', both(number, (n) => [`${n} lx h`, `${n} [lx h]`])],
  ['x for times', both(fc.tuple(number, number), ([a, b]) => [`${a} x ${b}`, `${a} * ${b}`])],
  ['a size', both(fc.tuple(number, number), ([a, b]) => [`(${a} x ${b} mm).width`, `(size(${a} mm, ${b} mm)).width`])],
  ['? and :', both(fc.tuple(length, length), ([a, b]) => [`x > 2 ? ${a} : ${b}`, `when(x > 2, ${a}, ${b})`])],
  ['and( )', both(fc.tuple(whole, whole), ([a, b]) => [`AND(x > ${a}, m < ${b})`, `((x > ${a}) and (m < ${b}))`])],
  ['pow', both(whole, (n) => [`pow(x, ${n})`, `x^${n}`])],
  ['true and false', both(fc.constantFrom('TRUE', 'true'), (word) => [`lit = ${word}`, 'lit = yes'])],
  ['a wide comma', both(fc.tuple(length, length), ([a, b]) => [`max(${a}， ${b})`, `max(${a}, ${b})`])],
  ['a missing factor', both(number, (n) => [`wait + ${n}`, `wait + ${n} s`])],
]

const normal = (text: string): string => text.replace(/\s+/g, ' ').trim()

describe('a habit from elsewhere is answered with the formula meant:', () => {
  test.each(HABITS)('%s', (_, written) => {
    fc.assert(
      fc.property(written, ([text, meant]) => {
        expect(errorsOf(meant), meant).toEqual([])
        const fixes = offered(text).length > 0 ? offered(text) : offered(text, true)
        expect(fixes.map(normal), text).toContain(normal(meant))
        for (const fixed of fixes) expect(errorsOf(fixed), `${text} → ${fixed}`).toEqual([])
      }),
      { numRuns: 40 },
    )
  })
})

test('a fix of any broken formula leads to fewer or later errors', () => {
  const pieces = [
    'width',
    'x',
    'sensor',
    '2',
    '3 mm',
    'f8',
    '(',
    ')',
    '+',
    '*',
    ';',
    ',',
    'max(',
    '²',
    '√',
    '“',
    '=',
    '?',
    ' ',
    '5 %',
    'micron',
  ]
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 8 }), (parts) => {
      const text = parts.join('')
      const before = errorsOf(text)
      for (const fixed of offered(text)) {
        const after = errorsOf(fixed)
        expect(
          after.map(({ message, from }) => [message, fixed.length - from]),
          text,
        ).not.toEqual(before.map(({ message, from }) => [message, text.length - from]))
      }
    }),
    { numRuns: 400 },
  )
})

test.each([
  ['2 pi', '2 ppi'],
  ['5 micron', '5 min'],
  ['100 ASA', '100 A'],
  ["1'000 mm", '1 ft 000 mm'],
  ['lens to original(60 mm, 1:2)', 'lens * to'],
])('%s is never made %s', (text, worse) => {
  for (const fixed of offered(text)) expect(fixed).not.toContain(worse)
  expect(offered(text).length).toBeGreaterThan(0)
})

test('a mismatch by a factor names the factor and the cells that are one', () => {
  const [error] = errorsOf('bright + 50 [lx h]')
  expect(error?.message).toMatch(/× a time|Dividing by a time/)
  expect(offered('bright + 50 [lx h]')).toContain('bright * wait + 50 [lx h]')
})
