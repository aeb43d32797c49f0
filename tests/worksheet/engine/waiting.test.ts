import { describe, expect, it } from 'vitest'
import type { Cell } from '../../../src/worksheet/index.ts'
import { check, given, originOf, result, seen, sheetOf } from '../make.ts'

describe('a missing given', () => {
  it('makes what needs it wait, naming the givens at the far end', () => {
    const sheet = sheetOf([
      given('width', '', { unit: 'mm' }),
      given('height', '', { unit: 'mm' }),
      given('depth', '3 mm'),
      result('area', 'width * height'),
      result('volume', 'area * depth'),
      check('small', 'volume < 1 m^3'),
    ])
    expect(seen(sheet, 'area')).toBe('waits for width, height')
    expect(seen(sheet, 'volume')).toBe('waits for width, height')
    expect(sheet.check('small')).toMatchObject({ state: 'waiting', message: 'needs width and height.' })
    sheet.apply({ do: 'replace', cell: given('width', '10', { unit: 'mm' }) })
    expect(seen(sheet, 'volume')).toBe('waits for height')
    sheet.apply({ do: 'replace', cell: given('height', '10', { unit: 'mm' }) })
    expect(seen(sheet, 'volume')).toBe('3e-7 m³')
    sheet.apply({ do: 'replace', cell: given('height', '', { unit: 'mm' }) })
    expect(seen(sheet, 'volume')).toBe('waits for height')
  })

  it('without a unit makes what needs it wait too', () => {
    const sheet = sheetOf([given('x', ''), result('y', '2 * x + 1 mm')])
    expect(seen(sheet, 'y')).toBe('waits for x')
    sheet.apply({ do: 'replace', cell: given('x', '3 mm') })
    expect(seen(sheet, 'y')).toBe('7 mm')
    sheet.apply({ do: 'replace', cell: given('x', '3 s') })
    expect(seen(sheet, 'y')).toMatch(/error: A time and a length cannot be added/)
  })

  it('is no longer missing once it is zero', () => {
    const sheet = sheetOf([
      given('x', '', { unit: 'mm' }),
      result('y', 'x + 1 mm'),
      result('z', 'when(y > 0 mm, y, x)'),
    ])
    expect(seen(sheet, 'y')).toBe('waits for x')
    sheet.apply({ do: 'replace', cell: given('x', '0', { unit: 'mm' }) })
    expect([seen(sheet, 'y'), seen(sheet, 'z')]).toEqual(['1 mm', '1 mm'])
    sheet.apply({ do: 'replace', cell: given('x', '', { unit: 'mm' }) })
    expect([seen(sheet, 'y'), seen(sheet, 'z')]).toEqual(['waits for x', 'waits for x'])
  })

  it('does not hide that the units are wrong', () => {
    const sheet = sheetOf([given('x', '', { unit: 'mm' }), result('y', 'x + 1 s')])
    expect(seen(sheet, 'y')).toMatch(/error: A length and a time cannot be added/)
  })

  it('is named itself as waiting for nothing but its own text', () => {
    expect(seen(sheetOf([given('x', '', { unit: 'mm' })]), 'x')).toBe('waits for ')
  })
})

const table = (...rows: string[][]): Cell => ({
  kind: 'table',
  id: 'pages',
  name: 'pages',
  label: 'The pages',
  columns: [{ name: 'wide', unit: 'mm' }],
  rows,
})

describe('a table without rows', () => {
  it('is waited for by what needs some, and by nothing else', () => {
    const sheet = sheetOf([
      table(),
      given('a', '1 mm'),
      result('widest', 'max(pages.wide)'),
      result('all', 'sum(pages.wide) + a'),
      result('wider', 'widest + a'),
      check('fits', 'widest < 1 m'),
    ])
    expect(seen(sheet, 'widest')).toBe('waits for pages')
    expect(seen(sheet, 'wider')).toBe('waits for pages')
    expect(seen(sheet, 'all')).toBe('1 mm')
    expect(sheet.check('fits')).toMatchObject({ state: 'waiting', message: 'needs The pages.', needs: ['pages'] })
    sheet.apply({ do: 'replace', cell: table(['200'], ['300']) })
    expect(seen(sheet, 'wider')).toBe('301 mm')
    sheet.apply({ do: 'replace', cell: table() })
    expect(seen(sheet, 'wider')).toBe('waits for pages')
  })

  it('does not hide what else is wrong', () => {
    const sheet = sheetOf([table(['200']), given('n', '0'), result('share', 'max(pages.wide) / n')])
    expect(seen(sheet, 'share')).toBe('error: Division by zero.')
  })
})

describe('a picture without areas measured', () => {
  it('is waited for', () => {
    const frame: Cell = { kind: 'frame', id: 'card', name: 'card', areas: [{ kind: 'evenness', name: 'light' }] }
    const sheet = sheetOf([
      frame,
      given('n', '2'),
      result('spread', 'card.light.spread'),
      result('more', 'n * card.light.spread'),
    ])
    expect(seen(sheet, 'spread')).toBe('waits for card')
    expect(seen(sheet, 'more')).toBe('waits for card')
  })
})

describe('a formula not yet written', () => {
  it('waits, and makes what needs it wait for it', () => {
    const sheet = sheetOf([result('a', '  '), result('b', 'a + 1 mm'), check('k', '')])
    expect(seen(sheet, 'a')).toBe('waits for ')
    expect(seen(sheet, 'b')).toBe('waits for a')
    expect(sheet.check('k')).toMatchObject({ state: 'waiting', message: 'it has no condition yet.' })
  })
})

describe('an error', () => {
  const cells = [
    given('n', '0'),
    given('missing', '', { unit: 'mm' }),
    result('broken', '5 mm / n'),
    result('next', 'broken + 1 mm'),
    result('last', 'next + missing'),
    result('aside', '2 mm'),
  ]

  it('stays in its cell with its place; what needs it says where it started', () => {
    const sheet = sheetOf(cells)
    expect(sheet.outcome('broken')).toMatchObject({
      state: 'error',
      diagnostics: [{ message: 'Division by zero.', from: 0, to: 8 }],
    })
    expect(seen(sheet, 'next')).toBe('error: Fix “broken” first. Division by zero.')
    expect(originOf(sheet, 'next')).toBe('broken')
    expect(seen(sheet, 'aside')).toBe('2 mm')
  })

  it('outweighs waiting, and is reported where both are', () => {
    expect(originOf(sheetOf(cells), 'last')).toBe('broken')
  })

  it('is said anew by what comes after, once the cell itself is well', () => {
    const sheet = sheetOf([
      given('n', '0'),
      result('share', '6 / n'),
      result('less', 'share - 3'),
      result('last', '1 / less'),
    ])
    const type = (text: string): void => sheet.apply({ do: 'replace', cell: given('n', text) })
    type('2')
    expect(seen(sheet, 'last')).toBe('error: Division by zero.')
    type('0')
    expect(seen(sheet, 'last')).toBe('error: Fix “share” first. Division by zero.')
    expect(originOf(sheet, 'last')).toBe('share')
    type('3')
    expect(seen(sheet, 'last')).toBe('−1')
    sheet.apply({ do: 'remove', id: 'last' })
    sheet.apply({ do: 'add', cell: result('last', 'less'), at: 0 })
    expect(seen(sheet, 'last')).toBe('−1')
  })

  it('is counted once, where it is', () => {
    expect(sheetOf(cells).checkSummary).toMatchObject({ errors: 1 })
  })

  it('in a given says what is wrong with the text, inside the text', () => {
    const sheet = sheetOf([given('w', '5 mx', { unit: 'mm' }), result('y', 'w')])
    expect(sheet.outcome('w')).toMatchObject({
      state: 'error',
      diagnostics: [{ from: 2, to: 4, fixes: [{ insert: '5 mm' }] }],
    })
    expect(originOf(sheet, 'y')).toBe('w')
  })

  it('of a declared unit that does not exist is reported by the cell', () => {
    const sheet = sheetOf([given('w', '5', { unit: 'mx' }), result('y', '5 mm', { unit: 'furlong' })])
    expect(seen(sheet, 'w')).toMatch(/unit of this cell cannot be read/)
    expect(seen(sheet, 'y')).toMatch(/unit of this cell cannot be read/)
  })
})
