import { describe, expect, test } from 'vitest'
import { functionOutcomeOf, functionSignature } from '../../../src/worksheet/analysis/function-outcome.ts'
import { clippingOf, fitted, readClipping, withFunctions } from '../../../src/worksheet/clipping/clipping.ts'
import type { Cell, FunctionCell, Sheet } from '../../../src/worksheet/index.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const BORDER: FunctionCell = {
  kind: 'function',
  id: 'f',
  name: 'with_border',
  about: 'A length with a border on both sides.',
  arguments: [
    { name: 'width', unit: 'mm' },
    { name: 'border', unit: 'mm' },
  ],
  unit: 'mm',
  formula: 'width + 2 * border',
  examples: [
    { formula: 'with_border(420 mm, 10 mm)', gives: '440 mm' },
    { formula: 'with_border(420 mm, 10 mm)', gives: '441 mm' },
  ],
}
const own = (name: string, formula: string, args: FunctionCell['arguments'] = []): FunctionCell => ({
  kind: 'function',
  id: name,
  name,
  arguments: args,
  formula,
})
const errorOf = (sheet: Sheet, id: string): string => {
  const outcome = sheet.outcome(id)
  return outcome.state === 'error' ? (outcome.diagnostics[0]?.message ?? '') : ''
}
const outcome = (sheet: Sheet, id = 'f') => functionOutcomeOf(sheet.engine, id)

describe('a function of the sheet', () => {
  test('is called in results, checks, tables and by argument names', () => {
    const sheet = sheetOf([
      BORDER,
      given('page', '420', { unit: 'mm' }),
      result('outer', 'with_border(page, border: 1 cm)', { unit: 'mm' }),
      check('fits', 'with_border(page, 10 mm) <= 600 mm'),
      {
        kind: 'table',
        id: 't',
        name: 'pages',
        columns: [
          { name: 'wide', unit: 'mm' },
          { name: 'all', unit: 'mm', formula: 'with_border(wide, 5 mm)' },
          { name: 'half', unit: 'mm', formula: 'wide / 2' },
        ],
        rows: [
          ['100', '', ''],
          ['200', '', ''],
        ],
      },
      result('total', 'sum(pages.all)', { unit: 'mm' }),
    ])
    expect(seen(sheet, 'outer')).toBe('440 mm')
    expect(sheet.check('fits').state).toBe('pass')
    expect(seen(sheet, 'total')).toBe('320 mm')
    sheet.apply({ do: 'replace', cell: { ...BORDER, formula: 'width + 3 * border' } })
    expect(seen(sheet, 'outer')).toBe('450 mm')
    expect(seen(sheet, 'total')).toBe('330 mm')
    sheet.undo()
    expect(seen(sheet, 'outer')).toBe('440 mm')
  })

  test('says which of its examples are right, as exactly as they are written', () => {
    const sheet = sheetOf([
      {
        ...BORDER,
        examples: [
          ...(BORDER.examples ?? []),
          { formula: 'with_border(420.3 mm, 10 mm)', gives: '440 mm' },
          { formula: 'with_border(420.6 mm, 10 mm)', gives: '440 mm' },
          { formula: 'with_border(420 mm)', gives: '440 mm' },
        ],
      },
    ])
    expect(outcome(sheet)?.examples.map(({ passes }) => passes)).toEqual([true, false, true, false, false])
    expect(outcome(sheet)?.examples[1]?.shown).toBe('440 mm')
    expect(outcome(sheet)?.signature).toBe('with_border(width [mm], border [mm]) [mm]')
    expect(functionSignature(own('none', '1'))).toBe('none()')
  })

  test('takes and gives the quantities its units say, and nothing else', () => {
    const sheet = sheetOf([BORDER, result('wrong', 'with_border(3 s, 1 mm)'), result('short', 'with_border(3 mm)')])
    expect(errorOf(sheet, 'wrong')).toMatch(/with_border.*must be a length/)
    expect(errorOf(sheet, 'short')).toMatch(/border/)
    const odd = sheetOf([{ ...BORDER, unit: 's' }, result('r', 'with_border(3 mm, 1 mm)')])
    expect(outcome(odd)?.diagnostics[0]?.message).toMatch(/declares s, a time; the formula gives a length/)
    expect(errorOf(odd, 'r')).toMatch(/There is no function “with_border”/)
  })

  test('may call those above it and never itself, so that none goes on for ever', () => {
    const sheet = sheetOf([
      own('twice', '2 * x', [{ name: 'x' }]),
      own('four_times', 'twice(twice(x))', [{ name: 'x' }]),
      own('endless', 'endless(x)', [{ name: 'x' }]),
      own('early', 'late(x)', [{ name: 'x' }]),
      own('late', 'x', [{ name: 'x' }]),
      result('r', 'four_times(3)'),
    ])
    expect(seen(sheet, 'r')).toBe('12')
    expect(outcome(sheet, 'endless')?.isDefined).toBe(false)
    expect(outcome(sheet, 'early')?.isDefined).toBe(false)
  })

  test.each([
    [own('sqrt', 'x', [{ name: 'x' }]), /There is a function “sqrt” already/],
    [own('when', 'x', [{ name: 'x' }]), /already/],
    [own('a', 'x', [{ name: 'x' }, { name: 'x' }]), /Two arguments/],
    [own('a', '1', [{ name: '2x' }]), /cannot be the name of an argument/],
    [own('a', 'x', [{ name: 'x', unit: 'furlongs' }]), /unit of “x” cannot be read/],
    [own('a', 'page', []), /page/],
    [own('a', '2 mm ± 1 mm', []), /no “±”/],
  ] as const)('that cannot be is said to be so: %o', (cell, message) => {
    const sheet = sheetOf([given('page', '420', { unit: 'mm' }), cell])
    expect(outcome(sheet, cell.id)?.diagnostics[0]?.message).toMatch(message)
    expect(outcome(sheet, cell.id)?.isDefined).toBe(false)
  })

  test('that is wrong leaves its name to another', () => {
    const sheet = sheetOf([
      own('half', 'page', [{ name: 'x' }]),
      { ...own('half', 'x / 2', [{ name: 'x' }]), id: 'second' },
      result('r', 'half(3)'),
    ])
    expect(outcome(sheet, 'half')?.isDefined).toBe(false)
    expect(outcome(sheet, 'second')?.isDefined).toBe(true)
    expect(seen(sheet, 'r')).toBe('1.5')
  })

  test('that is removed, or comes back, is so for what calls it', () => {
    const sheet = sheetOf([own('half', 'x / 2', [{ name: 'x' }]), given('a', '3'), result('r', 'half(a)')])
    expect(seen(sheet, 'r')).toBe('1.5')
    sheet.apply({ do: 'remove', id: 'half' })
    expect(errorOf(sheet, 'r')).toMatch(/There is no function “half”/)
    sheet.undo()
    expect(seen(sheet, 'r')).toBe('1.5')
  })

  test('that refuses its arguments says so where it is called', () => {
    const sheet = sheetOf([own('inverse', '1 / x', [{ name: 'x' }]), result('r', '2 + inverse(0)')])
    expect(errorOf(sheet, 'r')).toBe('In inverse: Division by zero.')
  })

  test('carries limits of error through', () => {
    const sheet = sheetOf([
      own('squared', 'x^2', [{ name: 'x', unit: 'mm' }]),
      given('side', '10 mm ± 1 mm'),
      result('area', 'squared(side)'),
      result('same', 'side^2'),
    ])
    expect(seen(sheet, 'area')).toBe(seen(sheet, 'same'))
  })

  test('is copied with what calls it, and what it calls', () => {
    const cells: Cell[] = [
      own('twice', '2 * x', [{ name: 'x' }]),
      own('four_times', 'twice(twice(x))', [{ name: 'x' }]),
      own('other', 'x', [{ name: 'x' }]),
      result('r', 'four_times(3)'),
    ]
    const copied = withFunctions([cells[3] as Cell], cells)
    expect(copied.map((cell) => (cell as FunctionCell).name)).toEqual(['twice', 'four_times', 'r'])
    let id = 0
    const into = (others: readonly Cell[]): Cell[] =>
      fitted(readClipping(clippingOf(copied)), others, () => `new-${++id}`)
    expect(seen(sheetOf(into([])), `new-${id}`)).toBe('12')
    // Those that are there already stay as they are; others of the same name give way.
    const same = into(cells.slice(0, 2))
    expect(same.map(({ kind }) => kind)).toEqual(['result'])
    const others = [own('twice', '3 * x', [{ name: 'x' }])]
    const beside = sheetOf([...others, ...into(others)])
    expect(seen(beside, `new-${id}`)).toBe('12')
  })

  test('is another where only the unit of an argument differs', () => {
    const there = own('twice', '2 * x', [{ name: 'x' }])
    const pasted = [own('twice', '2 * x', [{ name: 'x', unit: 'mm' }]), result('r', 'twice(3 mm)')]
    const sheet = sheetOf([there, ...fitted(pasted, [there], () => crypto.randomUUID())])
    expect(seen(sheet, sheet.cells.at(-1)?.id ?? '')).toBe('6 mm')
  })
})
