import { describe, expect, it, test } from 'vitest'
import { planJoin } from '../../../src/worksheet/compose/join.ts'
import type { Cell, Column, Given } from '../../../src/worksheet/index.ts'
import { check, given, result, sheetOf } from '../make.ts'

/** Why a cell cannot take the place of one of its name; undefined where they join. */
function why(there: Cell, coming: Cell): string | undefined {
  const plan = planJoin(sheetOf([there]), { key: 'k', title: 'T', cells: [coming] }, { freshId: () => 'new' })
  expect(plan.meetings).toHaveLength(1)
  return plan.meetings[0]?.why
}

const table = (...columns: readonly Column[]): Cell => ({
  kind: 'table',
  id: 'x',
  name: 'x',
  columns: [...columns],
  rows: [],
})
const one = (more: Partial<Given>, value = ''): Given => given('x', value, more)

describe('a piece of kit', () => {
  it('joins a piece of the same sort, and no other', () => {
    const kit = (sort: 'lens' | 'camera') => one({ entry: 'kit', sort })
    expect(why(kit('lens'), kit('lens'))).toBeUndefined()
    expect(why(kit('lens'), kit('camera'))).toBe('they are different pieces of kit')
  })

  it('does not join what is no kit', () => {
    const undeclared = 'yours is empty or in error, and the two are declared differently'
    expect(why(one({ entry: 'kit', sort: 'lens' }), one({}))).toBe(undeclared)
    expect(why(one({}), one({ entry: 'kit', sort: 'lens' }))).toBe(undeclared)
  })
})

describe('a choice', () => {
  it('joins one that offers nothing it lacks', () => {
    expect(why(one({ entry: 'choice', options: ['a', 'b'] }), one({ entry: 'choice', options: ['b'] }))).toBeUndefined()
    expect(why(one({ entry: 'choice', options: ['a'] }), one({ entry: 'choice' }))).toBeUndefined()
    expect(why(one({ entry: 'choice' }), one({ entry: 'choice', options: ['a'] }))).toBe('yours has no option “a”')
  })

  it('is judged by its options beside another choice alone', () => {
    expect(why(one({ entry: 'text' }, 'a'), one({ entry: 'choice', options: ['b'] }, 'b'))).toBeUndefined()
    expect(why(one({ entry: 'choice', options: ['a'] }, 'a'), one({ entry: 'text', options: ['b'] }))).toBeUndefined()
  })
})

describe('tables', () => {
  test.each<[string, readonly Column[], readonly Column[], string | undefined]>([
    ['the same column', [{ name: 'a', unit: 'mm' }], [{ name: 'a', unit: 'mm' }], undefined],
    ['a quantity, said or not', [{ name: 'a' }], [{ name: 'a', entry: 'quantity', unit: '' }], undefined],
    ['and the reverse', [{ name: 'a', entry: 'quantity', unit: '' }], [{ name: 'a' }], undefined],
    ['more columns there', [{ name: 'b' }, { name: 'a' }], [{ name: 'a' }], undefined],
    ['a column less', [{ name: 'a' }], [{ name: 'a' }, { name: 'b', label: 'Long' }], 'yours has no column “Long”'],
    ['without a label', [{ name: 'a' }], [{ name: 'b', label: '' }], 'yours has no column “b”'],
    [
      'another unit',
      [{ name: 'a', unit: 'mm' }],
      [{ name: 'a', unit: 'cm' }],
      'the columns “a” are filled in differently',
    ],
    ['no unit', [{ name: 'a' }], [{ name: 'a', unit: 'cm' }], 'the columns “a” are filled in differently'],
    ['another entry', [{ name: 'a' }], [{ name: 'a', entry: 'tick' }], 'the columns “a” are filled in differently'],
    ['the same formula', [{ name: 'a', formula: '2' }], [{ name: 'a', formula: '2', unit: 'mm' }], undefined],
    [
      'another formula',
      [{ name: 'a', formula: '2' }],
      [{ name: 'a', formula: '3' }],
      'the columns “a” are computed differently',
    ],
    [
      'computed there alone',
      [{ name: 'a', formula: '2' }],
      [{ name: 'a' }],
      'the columns “a” are computed differently',
    ],
    ['computed here alone', [{ name: 'a' }], [{ name: 'a', formula: '2' }], 'the columns “a” are computed differently'],
  ])('%s', (_, there, coming, said) => {
    expect(why(table(...there), table(...coming))).toBe(said)
  })
})

describe('cells of two kinds', () => {
  const frame: Cell = { kind: 'frame', id: 'x', name: 'x' }
  test.each<[string, Cell, Cell, string | undefined]>([
    ['a table and a given', table({ name: 'a' }), one({}), 'yours is a table, the other a given'],
    ['a given and a check', one({}), check('x', '1 < 2'), 'yours is a given, the other a check'],
    ['a check and a result', check('x', '1 < 2'), result('x', '1'), 'yours is a check, the other a result'],
    ['pictures', frame, frame, 'each is a picture with readings of its own'],
    ['checks', check('x', '1 < 2'), check('x', '3 < 4'), undefined],
    ['results of one kind', result('x', '1 mm'), result('x', '2 m'), undefined],
    ['results of two kinds', result('x', '1 mm'), result('x', '2 s'), 'yours is a length, the other a time'],
  ])('%s', (_, there, coming, said) => {
    expect(why(there, coming)).toBe(said)
  })
})

describe('a value that is not known', () => {
  const undeclared = 'yours is empty or in error, and the two are declared differently'
  test.each<[string, Cell, Cell, string | undefined]>([
    ['an empty given and one without a unit', one({}), one({ unit: 'mm' }, '3'), undeclared],
    ['two without a unit', one({}), one({ unit: '' }), undefined],
    ['an empty given and a result', one({}), result('x', '2'), undefined],
    ['a result in error and a given', result('x', 'nothing'), one({}), undefined],
    ['a result in error and one with a unit', result('x', 'nothing'), result('x', '2 mm', { unit: 'mm' }), undeclared],
    ['a list and a quantity', one({ entry: 'list' }), one({}), undeclared],
    ['a quantity that is said', one({ entry: 'quantity' }), one({}), undefined],
  ])('%s', (_, there, coming, said) => {
    expect(why(there, coming)).toBe(said)
  })

  it('is known by the unit of an empty field', () => {
    expect(why(one({ unit: 'mm' }), one({ unit: 'm' }, '3'))).toBeUndefined()
    expect(why(one({ unit: 'mm' }), one({ unit: 's' }))).toBe('yours is a length, the other a time')
  })
})
