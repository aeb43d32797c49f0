import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { list, number, record, TEXT, type Type, type Value } from '../../src/language/index.ts'
import { LENGTH, NONE, STOP } from '../../src/units/index.ts'
import { type Cells, computed, errorOf, expectRefused, expectSaid } from './make.ts'

const lengths = (values: readonly number[]): readonly [Type, Value] => [list(number(LENGTH)), values]

const cellsWith = (a: readonly number[], b: readonly number[]): Cells =>
  new Map<string, readonly [Type, Value]>([
    ['a', lengths(a)],
    ['b', lengths(b)],
    ['plain', [list(number(NONE)), a]],
    ['x', [number(LENGTH), 0.5]],
    ['words', [list(TEXT), ['one', 'two']]],
    ['steps', [list(number(STOP)), [1, 2]]],
    [
      'table',
      [
        record('table', { width: list(number(LENGTH)), height: list(number(LENGTH)) }),
        { width: a, height: b } as Value,
      ],
    ],
  ])

const some = cellsWith([0.4, 0.6], [0.2, 0.5])
const value = (text: string, cells = some): Value => computed(text, cells).value

describe('arithmetic on whole lists', () => {
  test('is that of each pair of values, and of each value with a number', () => {
    expect(value('table.width * table.height')).toEqual([0.4 * 0.2, 0.6 * 0.5])
    expect(value('a + b')).toEqual([0.4 + 0.2, 0.6 + 0.5])
    expect(value('a / b')).toEqual([0.4 / 0.2, 0.6 / 0.5])
    expect(value('2 * a')).toEqual([0.8, 1.2])
    expect(value('x - a')).toEqual([0.5 - 0.4, 0.5 - 0.6])
    expect(value('-a')).toEqual([-0.4, -0.6])
    expect(value('a^2')).toEqual([0.4 * 0.4, 0.6 * 0.6])
    expect(value('{1 mm, 2 mm} + 1 mm')).toEqual([0.002, 0.003])
    expect(value('sum(table.width * table.height)')).toBeCloseTo(0.38, 12)
    expect(value('greatest(a / b)')).toBe(2)
  })

  test('gives the same as the arithmetic of single values, whatever they are', () => {
    const figures = fc.double({ min: 0.001, max: 1000, noNaN: true })
    fc.assert(
      fc.property(
        fc.array(fc.tuple(figures, figures), { minLength: 1, maxLength: 20 }),
        fc.constantFrom('+', '-', '*', '/'),
        (pairs, sign) => {
          const cells = cellsWith(
            pairs.map(([a]) => a),
            pairs.map(([, b]) => b),
          )
          const one = (a: number, b: number): Value =>
            value(
              `p ${sign} q`,
              new Map<string, readonly [Type, Value]>([
                ['p', [number(LENGTH), a]],
                ['q', [number(LENGTH), b]],
              ]),
            )
          expect(value(`a ${sign} b`, cells)).toEqual(pairs.map(([a, b]) => one(a, b)))
        },
      ),
      { numRuns: 200 },
    )
  })

  test('checks the units of its values', () => {
    expect(errorOf('a + plain', some).message).toMatch(/cannot be added/)
    expect(errorOf('a + steps', some).message).toMatch(/cannot be added/)
    expect(errorOf('words * 2', some).message).toMatch(/a number or a quantity is required/)
  })

  test('refuses lists of different lengths, and a division by zero in one of them', () => {
    expect(() => value('a + b', cellsWith([1, 2, 3], [1, 2]))).toThrow(/3 values and the other 2 values/)
    expect(() => value('a / b', cellsWith([1, 2], [1, 0]))).toThrow(/Division by zero/)
  })

  test('still asks which figure is meant where one number is required', () => {
    expectRefused('sqrt(a)', 'a', ['sqrt(mean(a))', 'sqrt(sum(a))', 'sqrt(max(a))', 'sqrt(min(a))'], some)
  })
})

describe('a list where something else is required:', () => {
  const cells: Cells = new Map<string, readonly [Type, Value]>([
    ['n', [number(NONE), 2]],
    ['width', [number(LENGTH), 1]],
    ['stops', [number(STOP), 1]],
    ['lengths', lengths([1])],
    ['plain', [list(number(NONE)), [1]]],
    ['words', [list(TEXT), ['one']]],
    ['sizes', [list(record('size', { width: number(LENGTH) })), []]],
  ])
  test.each([
    [
      'lengths < 3 mm',
      'lengths',
      '“lengths” has many values, and a comparison has two. Compare its “least(…)” or “greatest(…)”, or compare row by row in a column of the table.',
      ['min(lengths) < 3 mm', 'max(lengths) < 3 mm'],
    ],
    [
      '3 mm >= lengths',
      'lengths',
      '“lengths” has many values, and a comparison has two. Compare its “least(…)” or “greatest(…)”, or compare row by row in a column of the table.',
      ['3 mm >= min(lengths)', '3 mm >= max(lengths)'],
    ],
    [
      'lengths = lengths',
      'lengths',
      '“lengths” has many values, and a comparison has two. Compare its “least(…)” or “greatest(…)”, or compare row by row in a column of the table.',
      [],
    ],
    [
      'words < 3',
      'words',
      '“words” has many values, and a comparison has two. Compare its “least(…)” or “greatest(…)”, or compare row by row in a column of the table.',
      [],
    ],
    ['lengths + stops', 'lengths + stops', 'A length and a number of stops cannot be added.', []],
    ['lengths + 2', 'lengths + 2', 'A length and a plain number cannot be added.', ['lengths + 2 mm']],
    [
      'lengths^n',
      'n',
      'To raise a length, write the exponent as a number, so that the unit of the result is known.',
      [],
    ],
    ['2^lengths', 'lengths', 'An exponent is a plain number; this is a length.', []],
    [
      'lengths^plain',
      'plain',
      'To raise a length, write the exponent as a number, so that the unit of the result is known.',
      [],
    ],
    [
      'width^plain',
      'plain',
      'To raise a length, write the exponent as a number, so that the unit of the result is known.',
      [],
    ],
    ['-words', 'words', 'This is a list, each text; a number or a quantity is required here.', []],
    ['words + 1', 'words', 'This is a list, each text; a number or a quantity is required here.', []],
    ['sizes + 1', 'sizes', 'This is a list of size records; a number or a quantity is required here.', []],
    [
      'lengths and n > 1',
      'lengths',
      'This is a list, each a length; a condition such as “a < b” is required here.',
      [],
    ],
    ['not lengths', 'lengths', 'This is a list, each a length; a condition such as “a < b” is required here.', []],
    [
      'lengths + 5 %',
      'lengths + 5 %',
      '5 % alone is a number. To add that share of a length, multiply.',
      ['lengths * (1 + 5 %)'],
    ],
    [
      'when(n > 1, lengths, width)',
      'width',
      'The two outcomes of “when” differ in kind: a list, each a length and a length.',
      ['when(n > 1, mean(lengths), width)', 'when(n > 1, sum(lengths), width)'],
    ],
    [
      'when(n > 1, lengths, plain)',
      'plain',
      'The two outcomes of “when” differ in kind: a list, each a length and a list of numbers.',
      [],
    ],
    [
      'sqrt(lengths)',
      'lengths',
      '“lengths” has many values, and sqrt takes one. Use one figure of it, or compute it row by row in a column of the table.',
      ['sqrt(mean(lengths))', 'sqrt(sum(lengths))', 'sqrt(max(lengths))', 'sqrt(min(lengths))'],
    ],
    [
      'abs(lengths)',
      'lengths',
      '“lengths” has many values, and abs takes one. Use one figure of it, or compute it row by row in a column of the table.',
      ['abs(mean(lengths))', 'abs(sum(lengths))', 'abs(max(lengths))', 'abs(min(lengths))'],
    ],
    ['sqrt(words)', 'words', '“x” of sqrt (0 or more) must be a number or a quantity; this is a list, each text.', []],
    [
      'item(lengths, lengths)',
      'lengths',
      '“lengths” has many values, and item takes one. Use one figure of it, or compute it row by row in a column of the table.',
      [],
    ],
  ] as const)('%s', (text, at, message, fixes) => {
    expectSaid(text, at, message, fixes, cells)
  })
})
