import { expect, test } from 'vitest'
import { readingText, withMeasured } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

test('a measured value is saved with when and by whom it was read, until it is read again', () => {
  const sheet = sheetOf([given('a', '5', { unit: 'mm' }), result('twice', '2 * a', { unit: 'mm' })])
  const cell = () => {
    const found = sheet.named('twice')
    if (found?.kind !== 'result') throw new Error('no result')
    return found
  }
  expect(readingText(cell())).toBeUndefined()
  const measure = (text: string, by?: string) =>
    sheet.apply(
      { do: 'replace', cell: withMeasured(cell(), text) },
      { when: '2026-11-28T14:02:00', ...(by === undefined ? {} : { by }) },
    )
  measure('11 mm', 'LM')
  expect(readingText(cell())).toBe('measured 28 November 2026, 14:02 by LM')
  measure('12 mm')
  expect(readingText(cell())).toBe('measured 28 November 2026, 14:02')
  measure('')
  expect(readingText(cell())).toBeUndefined()
})
