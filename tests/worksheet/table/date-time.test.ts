import { expect, test } from 'vitest'
import { ReadError } from '../../../src/units/index.ts'
import { readDate, readDateTime, readTime } from '../../../src/worksheet/table/date-time.ts'

test.each([readDate, readDateTime, readTime])('a text of megabytes is not a moment', (read) => {
  for (const text of ['\0'.repeat(10_000_000), '1'.repeat(10_000_000), `${'x'.repeat(5_000_000)}T10:30`])
    expect(() => read(text)).toThrow(ReadError)
})

test('a moment has at most 64 characters, so that no pattern runs over a long text', () => {
  const moment = (spaces: number): string => `2026-11-25${' '.repeat(spaces)}10:30`
  expect(readDateTime(moment(49))).toBe('2026-11-25 10:30')
  expect(() => readDateTime(moment(50))).toThrow(ReadError)
})
