import { describe, expect, test } from 'vitest'
import { missingNames } from '../../../src/app/open/missing-names.ts'
import type { Check } from '../../../src/worksheet/index.ts'
import { JOBS, open } from '../../templates/open.ts'
import { check, given, result, sheetOf } from '../../worksheet/make.ts'

describe('what a check needs', () => {
  test('is named through the results between, once, and not for a text that is spelled like a name', () => {
    const sheet = sheetOf([
      given('a', '', { unit: 'mm' }),
      given('b', '5', { unit: 'mm' }),
      given('tubes', '', { unit: 'mm' }),
      given('way', 'tubes', { entry: 'choice', options: ['tubes', 'lens'] }),
      result('sum', 'a + b'),
      result('twice', 'sum + a'),
      check('fits', 'way = "tubes" and twice <= 9 mm'),
    ])
    expect(missingNames(sheet, sheet.named('fits') as Check)).toEqual(['a'])
  })

  test.each(JOBS)('in %s is something as soon as it is computed from an empty figure', (job) => {
    const { sheet } = open(job)
    for (const { id, kind, name, value, ...rest } of sheet.cells.flatMap((cell) =>
      cell.kind === 'given' && cell.entry !== 'kit' ? [cell] : [],
    ))
      sheet.apply({ do: 'replace', cell: { ...rest, id, kind, name, value: '' } })
    for (const cell of sheet.cells) {
      if (cell.kind !== 'check' || sheet.outcome(cell.id).state !== 'waiting') continue
      expect(missingNames(sheet, cell).length, cell.name).toBeGreaterThan(0)
      for (const needed of missingNames(sheet, cell)) expect(sheet.named(needed), needed).toBeDefined()
    }
  })
})
