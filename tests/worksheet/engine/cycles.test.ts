import { describe, expect, it, test } from 'vitest'
import { given, originOf, result, seen, sheetOf } from '../make.ts'

describe('cells in a cycle', () => {
  it('are named with their path, each from its own place', () => {
    const sheet = sheetOf([result('a', 'b + 1 mm'), result('b', 'c * 2'), result('c', 'a')])
    expect(seen(sheet, 'a')).toBe(
      'error: These cells depend on each other in a cycle: a → b → c → a. Break it in one of them.',
    )
    expect(seen(sheet, 'b')).toContain('b → c → a → b.')
    expect(seen(sheet, 'c')).toContain('c → a → b → c.')
  })

  it('of one cell are named too', () => {
    expect(seen(sheetOf([result('a', 'a + 1')]), 'a')).toContain('cycle: a → a.')
  })

  it('of one cell are closed and opened by an edit too', () => {
    const sheet = sheetOf([result('a', '2 mm'), result('b', 'a')])
    sheet.apply({ do: 'replace', cell: result('a', 'a + 1 mm') })
    expect(seen(sheet, 'a')).toContain('cycle: a → a.')
    expect(originOf(sheet, 'b')).toBe('a')
    sheet.apply({ do: 'replace', cell: result('a', '3 mm') })
    expect(seen(sheet, 'b')).toBe('3 mm')
  })

  it('leave the rest of the sheet computing, and are named as the origin by what depends on them', () => {
    const sheet = sheetOf([
      result('a', 'b'),
      result('b', 'a'),
      result('after', 'b + 1 mm'),
      given('x', '5 mm'),
      result('y', '2 * x'),
    ])
    expect(seen(sheet, 'y')).toBe('10 mm')
    expect(originOf(sheet, 'after')).toBe('b')
    expect(originOf(sheet, 'a')).toBeUndefined()
  })

  it('of more than eight are shown in a few names', () => {
    const ring = (size: number) =>
      sheetOf(Array.from({ length: size }, (_, i) => result(`c${i}`, `c${(i + 1) % size} + 1 mm`)))
    expect(seen(ring(8), 'c3')).toContain('cycle: c3 → c4 → c5 → c6 → c7 → c0 → c1 → c2 → c3.')
    expect(seen(ring(9), 'c3')).toContain('cycle: c3 → c4 → c5 → c6 → c7 → c8 → c0 → c1 → … → c3.')
  })

  test.each([
    ['in the order of use', ['a', 'b']],
    ['against it', ['b', 'a']],
  ])('closed and opened by an edit, with cells %s, all become errors and all recover', (_, order) => {
    const cells = [result('a', 'start'), result('b', 'a')]
    const sheet = sheetOf([
      given('start', '1 mm'),
      ...order.map((name) => cells.find((cell) => cell.name === name) as (typeof cells)[0]),
      result('end', 'b'),
    ])
    expect(['a', 'b', 'end'].map((id) => seen(sheet, id))).toEqual(['1 mm', '1 mm', '1 mm'])
    sheet.apply({ do: 'replace', cell: result('a', 'b') })
    expect(seen(sheet, 'a')).toContain('cycle')
    expect(seen(sheet, 'b')).toContain('cycle')
    expect(seen(sheet, 'end')).toMatch(/Fix “[ab]” first\. These cells depend on each other in a cycle/)
    sheet.apply({ do: 'replace', cell: result('a', 'start + 1 mm') })
    expect(['a', 'b', 'end'].map((id) => seen(sheet, id))).toEqual(['2 mm', '2 mm', '2 mm'])
  })

  test.each([
    ['in the order of use', ['a', 'b']],
    ['against it', ['b', 'a']],
  ])('leave no kind of quantity behind from inside the cycle, with cells %s', (_, order) => {
    const cells = [result('a', 'b + 1 mm'), result('b', '2 mm')]
    const sheet = sheetOf(order.map((name) => cells.find((cell) => cell.name === name) as (typeof cells)[0]))
    sheet.apply({ do: 'replace', cell: result('b', 'a * 1 s') })
    sheet.apply({ do: 'replace', cell: result('b', '2 [mm s]') })
    expect(seen(sheet, 'a')).toMatch(/error: A length time and a length cannot be added/)
  })

  it.each(['a', 'between + 1'])(
    'are found where an edit to %s closes one through a cell that was in another',
    (formula) => {
      const cells = (end: string) => [
        result('a', 'end + a'),
        result('round', '6 / round'),
        result('between', 'a * 2'),
        result('end', end),
      ]
      const [edited, fresh] = [sheetOf(cells('round + round')), sheetOf(cells(formula))]
      edited.apply({ do: 'replace', cell: result('end', formula) })
      for (const { id } of fresh.cells) expect(seen(edited, id), id).toBe(seen(fresh, id))
      expect(seen(edited, 'end')).toContain('depend on each other in a cycle')
    },
  )

  it('stay so when what they need is of another kind', () => {
    const sheet = sheetOf([
      given('x', '1 mm'),
      result('a', 'b + x'),
      result('b', 'a'),
      result('after', 'a + x'),
      result('beside', '2 * x'),
    ])
    sheet.apply({ do: 'replace', cell: given('x', '1 s') })
    expect(seen(sheet, 'a')).toContain('cycle: a → b → a.')
    expect(seen(sheet, 'b')).toContain('cycle: b → a → b.')
    expect(seen(sheet, 'after')).toContain('Fix “a” first.')
    expect(seen(sheet, 'beside')).toBe('2 s')
  })

  it('with two paths show the shortest', () => {
    const sheet = sheetOf([
      result('a', 'b + d'),
      result('b', 'c'),
      result('c', 'a'),
      result('d', 'a'),
      result('e', 'a + 1 mm'),
    ])
    expect(seen(sheet, 'a')).toContain('cycle: a → d → a.')
    expect(seen(sheet, 'c')).toMatch(/cycle: a → d → a\./)
    expect(originOf(sheet, 'e')).toBe('a')
  })
})
