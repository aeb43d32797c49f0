import { expect, test } from 'vitest'
import type { Change } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

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
