import { describe, expect, it } from 'vitest'
import { given, originOf, result, seen, sheetOf } from '../make.ts'

describe('a removed cell', () => {
  it('leaves its users saying which name is missing, and heals them when it comes back', () => {
    const sheet = sheetOf([given('width', '5 mm'), result('y', '2 * width'), result('z', 'y')])
    sheet.apply({ do: 'remove', id: 'width' })
    expect(seen(sheet, 'y')).toContain('There is no cell named “width”')
    expect(originOf(sheet, 'z')).toBe('y')
    sheet.apply({ do: 'add', cell: { ...given('width', '7 mm'), id: 'another' }, at: 2 })
    expect(seen(sheet, 'z')).toBe('14 mm')
  })
})

describe('a cell that takes another name', () => {
  it('leaves its users saying which name is missing, and heals those of the new one', () => {
    const sheet = sheetOf([given('width', '5 mm'), result('y', '2 * width'), result('z', 'wide + 1 mm')])
    expect(seen(sheet, 'z')).toContain('There is no cell named “wide”')
    sheet.apply({ do: 'replace', cell: { ...given('wide', '5 mm'), id: 'width' } })
    expect(seen(sheet, 'y')).toContain('There is no cell named “width”')
    expect(seen(sheet, 'z')).toBe('6 mm')
    sheet.undo()
    expect(seen(sheet, 'y')).toBe('10 mm')
    expect(seen(sheet, 'z')).toContain('There is no cell named “wide”')
  })
})

describe('a cell of another kind of quantity', () => {
  it('is checked anew by all below it', () => {
    const sheet = sheetOf([given('x', '2 mm'), result('y', 'x^2'), result('z', 'y / 1 mm', { unit: 'mm' })])
    expect(seen(sheet, 'z')).toBe('4 mm')
    sheet.apply({ do: 'replace', cell: given('x', '2 s') })
    expect(seen(sheet, 'y')).toBe('4 m⁰'.replace(' m⁰', ' s²'))
    expect(seen(sheet, 'z')).toMatch(/The cell declares mm, a length; the formula gives/)
    sheet.apply({ do: 'replace', cell: given('x', '3 mm') })
    expect(seen(sheet, 'z')).toBe('9 mm')
  })

  it('may be put in the place of one of another cell kind, with nothing left of the old', () => {
    const sheet = sheetOf([given('a', '5 mm ± 1 mm'), result('b', 'a')])
    sheet.apply({ do: 'replace', cell: result('a', '') })
    expect(seen(sheet, 'b')).toBe('waits for a')
    sheet.apply({ do: 'replace', cell: result('a', '3 s') })
    expect(seen(sheet, 'a')).toBe('3 s')
    expect(seen(sheet, 'b')).toBe('3 s')
    sheet.apply({ do: 'replace', cell: given('a', '7 mm') })
    expect(seen(sheet, 'b')).toBe('7 mm')
    sheet.apply({ do: 'replace', cell: given('a', '') })
    expect(seen(sheet, 'b')).toBe('waits for a')
  })
})

describe('a given in the place of a result', () => {
  it('has nothing left of its formula, its limits or what was measured', () => {
    for (const before of [
      result('b', 'filter_shift(8) ± 1'),
      result('b', 'filter_shift(8)', { measured: '2 stop ± 1 stop' }),
    ]) {
      const sheet = sheetOf([before, result('c', '2 * b')])
      sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
      sheet.apply({ do: 'replace', cell: given('b', '5 mm') })
      expect(sheet.outcome('b')).toMatchObject({ cautions: [], warnings: [] })
      expect(sheet.outcome('b')).not.toHaveProperty('measured')
      expect(seen(sheet, 'c')).toBe('10 mm')
      expect(sheet.outcome('c')).not.toHaveProperty('limits')
    }
  })
})

describe('a name borne twice', () => {
  it('means the upper cell; the lower says so', () => {
    const sheet = sheetOf([given('x', '1 mm'), { ...given('x', '2 mm'), id: 'second' }, result('y', 'x')])
    expect(seen(sheet, 'y')).toBe('1 mm')
    expect(seen(sheet, 'second')).toContain('Another cell above is already named “x”')
    expect(sheet.checkSummary.errors).toBe(1)
  })

  it('passes on to the other when the upper goes, moves below or takes another name', () => {
    const cells = [given('x', '1 mm'), { ...given('x', '2 mm'), id: 'second' }, result('y', 'x')]
    for (const change of [
      { do: 'remove', id: 'x' },
      { do: 'move', id: 'x', to: 2 },
      { do: 'replace', cell: { ...given('z', '1 mm'), id: 'x' } },
    ] as const) {
      const sheet = sheetOf(cells)
      sheet.apply(change)
      expect(seen(sheet, 'y'), change.do).toBe('2 mm')
      sheet.undo()
      expect(seen(sheet, 'y'), `undone ${change.do}`).toBe('1 mm')
    }
  })
})

describe('names every object has', () => {
  it('are ordinary names of cells and missing ones alike', () => {
    const sheet = sheetOf([
      result('a', 'constructor'),
      result('b', 'toString + hasOwnProperty'),
      result('c', 'valueOf(1)'),
      result('d', '__proto__'),
      result('e', '"x".constructor'),
      given('ok', '5 mm'),
      result('f', 'ok'),
    ])
    for (const id of ['a', 'b', 'c', 'd', 'e']) expect(seen(sheet, id)).toMatch(/^error: (There is no|Only a record)/)
    expect(seen(sheet, 'f')).toBe('5 mm')
    sheet.apply({ do: 'add', cell: given('constructor', '3 mm'), at: 0 })
    expect(seen(sheet, 'a')).toBe('3 mm')
  })
})

describe('a formula that comes to need a cell further down', () => {
  it('follows every later change of it, beside what it needed before', () => {
    const sheet = sheetOf([given('top', '1 mm'), result('sum', 'top'), given('low', '2 mm')])
    sheet.apply({ do: 'replace', cell: result('sum', 'top + low') })
    expect(seen(sheet, 'sum')).toBe('3 mm')
    sheet.apply({ do: 'replace', cell: given('low', '3 mm') })
    expect(seen(sheet, 'sum')).toBe('4 mm')
    sheet.apply({ do: 'replace', cell: given('top', '2 mm') })
    expect(seen(sheet, 'sum')).toBe('5 mm')
  })
})

describe('a formula with an error of its own', () => {
  it('says so, though what it needs is in error too', () => {
    const sheet = sheetOf([result('x', '1 mm + 1 s'), result('y', 'x + nothing'), result('z', 'x')])
    expect(seen(sheet, 'y')).toContain('There is no cell named “nothing”')
    expect(originOf(sheet, 'y')).toBeUndefined()
    expect(originOf(sheet, 'z')).toBe('x')
  })
})
