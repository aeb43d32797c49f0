import { describe, expect, it, test } from 'vitest'
import { given, originOf, result, seen, sheetOf } from '../make.ts'

describe('cells that go round in a circle', () => {
  it('are named with the way round, each from its own place', () => {
    const sheet = sheetOf([result('a', 'b + 1 mm'), result('b', 'c * 2'), result('c', 'a')])
    expect(seen(sheet, 'a')).toBe('error: These cells go round in a circle: a → b → c → a. Break it in one of them.')
    expect(seen(sheet, 'b')).toContain('b → c → a → b.')
    expect(seen(sheet, 'c')).toContain('c → a → b → c.')
  })

  it('of one cell are named too', () => {
    expect(seen(sheetOf([result('a', 'a + 1')]), 'a')).toContain('circle: a → a.')
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

  it('of thousands are told in a few names', () => {
    const size = 20_000
    const sheet = sheetOf(Array.from({ length: size }, (_, i) => result(`c${i}`, `c${(i + size - 1) % size} + 1 mm`)))
    expect(seen(sheet, 'c100')).toMatch(/circle: c100 → c99 → .* → c93 → … → c100\./)
    expect(seen(sheet, 'c3')).toMatch(/circle: c3 → c2 → c1 → c0 → c19999 → .* → … → c3\./)
    expect(sheet.checkSummary.errors).toBe(size)
  })

  test.each([
    ['in the order of use', ['a', 'b']],
    ['against it', ['b', 'a']],
  ])('closed and opened by an edit, with cells %s, go wrong together and heal together', (_, order) => {
    const cells = [result('a', 'start'), result('b', 'a')]
    const sheet = sheetOf([
      given('start', '1 mm'),
      ...order.map((name) => cells.find((cell) => cell.name === name) as (typeof cells)[0]),
      result('end', 'b'),
    ])
    expect(['a', 'b', 'end'].map((id) => seen(sheet, id))).toEqual(['1 mm', '1 mm', '1 mm'])
    sheet.apply({ do: 'replace', cell: result('a', 'b') })
    expect(seen(sheet, 'a')).toContain('circle')
    expect(seen(sheet, 'b')).toContain('circle')
    expect(seen(sheet, 'end')).toMatch(/Mend the cell «[ab]» first\. These cells go round in a circle/)
    sheet.apply({ do: 'replace', cell: result('a', 'start + 1 mm') })
    expect(['a', 'b', 'end'].map((id) => seen(sheet, id))).toEqual(['2 mm', '2 mm', '2 mm'])
  })

  test.each([
    ['in the order of use', ['a', 'b']],
    ['against it', ['b', 'a']],
  ])('leave no kind of quantity behind from inside the circle, with cells %s', (_, order) => {
    const cells = [result('a', 'b + 1 mm'), result('b', '2 mm')]
    const sheet = sheetOf(order.map((name) => cells.find((cell) => cell.name === name) as (typeof cells)[0]))
    sheet.apply({ do: 'replace', cell: result('b', 'a * 1 s') })
    sheet.apply({ do: 'replace', cell: result('b', '2 [mm s]') })
    expect(seen(sheet, 'a')).toMatch(/error: A length time and a length cannot be added/)
  })

  it('through two ways are told by the shortest', () => {
    const sheet = sheetOf([
      result('a', 'b + d'),
      result('b', 'c'),
      result('c', 'a'),
      result('d', 'a'),
      result('e', 'a + 1 mm'),
    ])
    expect(seen(sheet, 'a')).toContain('circle: a → d → a.')
    expect(seen(sheet, 'c')).toMatch(/circle: a → d → a\./)
    expect(originOf(sheet, 'e')).toBe('a')
  })
})
