import { describe, expect, test } from 'vitest'
import { namesInText, namesRead, operand, withTexts } from '../../../src/worksheet/compose/cell-names.ts'
import { cellsNamed, wouldCycle } from '../../../src/worksheet/compose/join-names.ts'
import type { PartCell } from '../../../src/worksheet/compose/part-library.ts'
import { check, given, note, result } from '../make.ts'

const cell = (one: object): PartCell => one as PartCell

describe('the names a part’s cell reads', () => {
  test('are those of its formula, without what is no name of a cell', () => {
    expect(namesInText('when(lit, a + b, a / 2) * pi').toSorted()).toEqual(['a', 'b', 'lit', 'pi'])
    expect(namesInText('when(lit, a + b, a / 2) * pi')).toBe(namesInText('when(lit, a + b, a / 2) * pi'))
    expect(namesInText('when(lit, infinity, a)').toSorted()).toEqual(['a', 'lit'])
    expect(
      namesRead(cell({ kind: 'check', name: 'c', condition: 'a > 2 and not lit', message: '{b} of {a}' })).toSorted(),
    ).toEqual(['a', 'b', 'lit'])
    expect(namesRead(cell({ kind: 'note', text: '{a}' }))).toEqual([])
  })

  test('of a range are what it varies and what it shows', () => {
    expect(namesRead(cell({ kind: 'range', of: 'a', results: ['b', 'c'] }))).toEqual(['a', 'b', 'c'])
    expect(namesRead(cell({ kind: 'range', results: ['b'] }))).toEqual(['b'])
    const sides = {
      kind: 'range',
      of: 'size.width',
      second: { of: 'size.height' },
      values: 'list.width',
      results: ['b'],
    }
    expect(namesRead(cell(sides))).toEqual(['size', 'size', 'list', 'b'])
  })

  test('of a drawing leave out the inputs that may be missing', () => {
    const drawing = { kind: 'drawing', drawing: 'depth', title: '', from: { one: 'a', two: 'b * c' } }
    expect(namesRead(cell(drawing)).toSorted()).toEqual(['a', 'b', 'c'])
    expect(namesRead(cell({ ...drawing, optional: ['two'] }))).toEqual(['a'])
  })

  test('of a table leave out its columns', () => {
    const table = cell({
      kind: 'table',
      name: 't',
      columns: [
        { name: 'width', unit: 'mm' },
        { name: 'area', formula: 'width * tall' },
      ],
      rows: [],
    })
    expect(namesRead(table, new Set(['width']))).toEqual(['tall'])
    const counted = [{ name: 'width', foot: [{ figure: 'count', where: 'width > least' }] }]
    expect(namesRead(cell({ kind: 'table', name: 't', columns: counted, rows: [] }), new Set(['width']))).toEqual([
      'least',
    ])
    const run = cell({ kind: 'run', of: 't', from: { width: 'width + border' } })
    expect(namesRead(run, new Set(['width'])).toSorted()).toEqual(['border', 't'])
    expect(namesRead(run).toSorted()).toEqual(['border', 't', 'width'])
    const plain = cell({ kind: 'result', name: 'r', formula: 'width * 2' })
    expect(namesRead(plain, new Set(['width']))).toEqual(['width'])
  })
})

describe('texts in the place of names', () => {
  const texts = new Map([
    ['a', '(b + c)'],
    ['n', '1'],
  ])
  test.each([
    ['2 * a', '2 * (b + c)'],
    ['a', 'b + c'],
    ['frames * n', 'frames'],
    ['n * frames', '1 * frames'],
    ['x * 1', 'x * 1'],
    ['a * 10', '(b + c) * 10'],
  ])('%s becomes %s', (formula, becomes) => {
    expect(withTexts(cell({ kind: 'result', name: 'r', formula }), texts).formula).toBe(becomes)
  })

  test('stand in conditions and columns too; a cell without them is the same cell', () => {
    expect(withTexts(cell({ kind: 'check', name: 'c', condition: 'x > y * n', message: '' }), texts).condition).toBe(
      'x > y',
    )
    const table = { kind: 'table', name: 't', columns: [{ name: 'w' }, { name: 'm', formula: 'w * n' }], rows: [] }
    expect(withTexts(cell(table), texts).columns).toEqual([{ name: 'w' }, { name: 'm', formula: 'w' }])
    const other = cell({ kind: 'result', name: 'r', formula: 'x + y' })
    expect(withTexts(other, texts)).toBe(other)
    expect(withTexts(cell({ kind: 'result', name: 'r', formula: '2 * a' }), texts)).not.toHaveProperty('id')
  })

  test.each([
    ['a', 'a'],
    ['a.b', 'a.b'],
    ['2.5', '2.5'],
    ['2.5 mm', '2.5 mm'],
    ['a + b', '(a + b)'],
    ['2 mm + a', '(2 mm + a)'],
    ['a + 2 mm', '(a + 2 mm)'],
    ['-a', '(-a)'],
    ['a b', '(a b)'],
  ])('%s as an operand is %s', (text, as) => {
    expect(operand(text)).toBe(as)
  })
})

describe('names among cells', () => {
  test('are those of named cells; of two with one name, the first', () => {
    const [first, second] = [given('a', '1'), { ...given('a', '2'), id: 'other' }]
    expect(
      [...cellsNamed([note('n', 'a'), first, second, result('b', 'a')])].map(([name, { id }]) => [name, id]),
    ).toEqual([
      ['a', 'a'],
      ['b', 'b'],
    ])
  })

  test('would go round where a formula reads, through others, what it computes', () => {
    const cells = cellsNamed([
      result('b', 'c + 1'),
      result('c', 'd * 2'),
      check('ok', 'b > 2'),
      result('loop', 'loop2'),
      result('loop2', 'loop'),
      { kind: 'table', id: 't', name: 't', columns: [{ name: 'x' }, { name: 'y', formula: 'x * e' }], rows: [] },
    ])
    const goesRound = (name: string, formula: string) => wouldCycle(name, formula, cells)
    expect(['a + 1', 'b', 'sum(t.y)', 'ok', '2', 'loop'].map((formula) => goesRound('d', formula))).toEqual([
      false,
      true,
      false,
      true,
      false,
      false,
    ])
    expect(goesRound('e', 'sum(t.y)')).toBe(true)
    expect(goesRound('a', 'a + 1')).toBe(true)
    expect(goesRound('unknown', 'nothing_here')).toBe(false)
  })
})
