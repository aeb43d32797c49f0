import { expect, test } from 'vitest'
import type { Change } from '../../../src/worksheet/index.ts'
import { check, given, notifiedBy, result, sheetOf } from '../make.ts'

const suggestion = (changes: readonly Change[]): string | undefined => {
  const sheet = sheetOf([given('width', '1 mm'), given('depth', '1 mm'), result('twice', '2 * widht')])
  for (const change of changes) {
    sheet.apply(change)
    sheet.outcome('twice')
  }
  const outcome = sheet.outcome('twice')
  return outcome.state === 'error' ? outcome.diagnostics[0]?.fixes?.[0]?.insert : undefined
}

test('the name suggested for a misspelt one follows what names there are', () => {
  expect(suggestion([])).toBe('width')
  expect(suggestion([{ do: 'add', cell: given('widhts', '1 mm'), at: 0 }])).toBe('widhts')
  expect(
    suggestion([
      { do: 'rename', id: 'width', name: 'breadth' },
      { do: 'rename', id: 'depth', name: 'width' },
    ]),
  ).toBe('width')
  expect(suggestion([{ do: 'remove', id: 'width' }])).not.toBe('width')
})

test('fixes follow the kinds of quantity of cells a formula does not name', () => {
  const sheet = sheetOf([given('width', '60 mm'), given('span', '2 s'), result('sum', 'width + ?')])
  const fixes = (): string[] => {
    const outcome = sheet.outcome('sum')
    return outcome.state === 'error' ? outcome.diagnostics.flatMap((one) => one.fixes.map(({ insert }) => insert)) : []
  }
  expect(fixes()).toEqual(['width'])
  const retype = () => sheet.apply({ do: 'replace', cell: given('span', '3 mm') })
  expect(notifiedBy(sheet, retype)).toEqual(['span', 'sum'])
  expect(fixes()).toEqual(['width', 'span'])
})

test('a figure in a message is looked for anew when a name or a kind of quantity is another', () => {
  const sheet = sheetOf([
    given('a', '3 mm'),
    given('b', '2 mm'),
    check('k', 'b < 1 m', { passes: '{2 * a}; {3 * widht}; {b + a}; {c + b}' }),
  ])
  const said = () => sheet.check('k').message
  expect(said()).toBe('6 mm; —; 5 mm; —')
  sheet.apply({ do: 'add', cell: given('widht', '5 mm'), at: 0 })
  expect(said()).toBe('6 mm; 15 mm; 5 mm; —')
  sheet.apply({ do: 'replace', cell: given('a', '3 s') })
  expect(said()).toBe('6 s; 15 mm; —; —')
  sheet.apply({ do: 'replace', cell: given('a', '') })
  expect(said()).toBe('—; 15 mm; —; —')
  sheet.apply({ do: 'replace', cell: given('a', '4 mm') })
  expect(said()).toBe('8 mm; 15 mm; 6 mm; —')
  sheet.apply({ do: 'remove', id: 'widht' })
  expect(said()).toBe('8 mm; —; 6 mm; —')
})
