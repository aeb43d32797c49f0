import { expect, test } from 'vitest'
import { given, result, seen, sheetOf } from '../make.ts'

const LINKS = 20_000
const chain = [given('c0', '1 mm'), ...Array.from({ length: LINKS - 1 }, (_, i) => result(`c${i + 1}`, `c${i} + 1 mm`))]

test('a chain of 20,000 cells computes, waits, fails and heals from end to end', () => {
  const sheet = sheetOf(chain)
  const last = `c${LINKS - 1}`
  expect(sheet.outcome(last)).toMatchObject({ state: 'value', shown: { text: '20 m' } })
  sheet.apply({ do: 'replace', cell: given('c0', '') })
  expect(seen(sheet, last)).toBe('waits for c0')
  sheet.apply({ do: 'replace', cell: given('c0', '1 mm x') })
  expect(seen(sheet, last)).toContain('“c0”')
  expect(sheet.checkSummary.errors).toBe(1)
  expect(sheet.cells.every((cell) => sheet.outcome(cell.id).state === 'error')).toBe(true)
  sheet.apply({ do: 'replace', cell: given('c0', '2 mm') })
  expect(sheet.outcome(last)).toMatchObject({ state: 'value', shown: { text: '20.0 m' } })
})

test('a chain written upside down computes the same', () => {
  expect(seen(sheetOf(chain.slice(0, 5000).reverse()), 'c4999')).toBe('5000 mm')
})

test('sums that each wait for one given more name some of them', () => {
  const cells = Array.from({ length: 3000 }, (_, i) => [
    given(`g${i}`, '', { unit: 'mm' }),
    result(`s${i}`, i === 0 ? 'g0' : `s${i - 1} + g${i}`),
  ]).flat()
  const sheet = sheetOf(cells)
  const outcome = sheet.outcome('s2999')
  expect(outcome.state === 'waiting' && outcome.on.slice(0, 3)).toEqual(['g0', 'g1', 'g2'])
})

test('a given that 10,000 cells name may go and come back', () => {
  const users = Array.from({ length: 10_000 }, (_, i) => result(`user_${i}`, `given_width * ${i}`))
  const sheet = sheetOf([given('given_width', '1 mm'), ...users])
  sheet.apply({ do: 'remove', id: 'given_width' })
  expect(seen(sheet, 'user_7')).toContain('There is no cell named “given_width”')
  sheet.undo()
  expect(seen(sheet, 'user_7')).toBe('7 mm')
})

test('a cycle of thousands is shown in a few names', () => {
  const size = 20_000
  const sheet = sheetOf(Array.from({ length: size }, (_, i) => result(`c${i}`, `c${(i + size - 1) % size} + 1 mm`)))
  expect(seen(sheet, 'c100')).toMatch(/cycle: c100 → c99 → .* → c93 → … → c100\./)
  expect(seen(sheet, 'c3')).toMatch(/cycle: c3 → c2 → c1 → c0 → c19999 → .* → … → c3\./)
  expect(sheet.checkSummary.errors).toBe(size)
})
