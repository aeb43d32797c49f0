import { expect, test } from 'vitest'
import { sheetsWithoutBackup } from '../../../src/storage/store/last-backup.ts'

const DAY = 24 * 3_600_000
const NOW = 1000 * DAY

test.each([
  ['no sheets, no backup', [], undefined, 0],
  ['a sheet of today', [NOW], undefined, 0],
  ['a sheet of two weeks ago, never backed up', [NOW - 14 * DAY, NOW], undefined, 2],
  ['all older than the backup', [NOW - 30 * DAY], NOW - 20 * DAY, 0],
  ['one changed since an old backup', [NOW - 30 * DAY, NOW], NOW - 20 * DAY, 1],
  ['one changed since a recent backup', [NOW], NOW - DAY, 0],
  ['a clock that was ahead', [NOW + 300 * DAY], undefined, 0],
] as const)('the reminder of the backup: %s', (_, changed, backup, due) => {
  expect(sheetsWithoutBackup(changed, backup, NOW)).toBe(due)
})
