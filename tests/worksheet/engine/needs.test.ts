import { describe, expect, test } from 'vitest'
import { JOBS, open } from '../../templates/open.ts'
import { check, given, result, sheetOf } from '../make.ts'

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
    expect(sheet.check(sheet.named('fits')?.id ?? '').needs).toEqual(['a'])
  })

  test('is the result to measure, where it judges a measured value', () => {
    const sheet = sheetOf([
      given('a', '5', { unit: 'mm' }),
      result('twice', '2 * a'),
      check('fits', 'twice <= 9 mm', { needs_measured: ['twice'] }),
    ])
    const { state, needs } = sheet.check(sheet.named('fits')?.id ?? '')
    expect({ state, needs }).toEqual({ state: 'waiting', needs: ['twice'] })
  })

  test.each(JOBS)('in %s is something as soon as it is computed from an empty figure', (job) => {
    const { sheet } = open(job)
    for (const { id, kind, name, value, ...rest } of sheet.cells.flatMap((cell) =>
      cell.kind === 'given' && cell.entry !== 'kit' ? [cell] : [],
    ))
      sheet.apply({ do: 'replace', cell: { ...rest, id, kind, name, value: '' } })
    for (const cell of sheet.cells) {
      if (cell.kind !== 'check' || sheet.checkState(cell.id) !== 'waiting') continue
      const { needs = [] } = sheet.check(cell.id)
      expect(needs.length, cell.name).toBeGreaterThan(0)
      for (const needed of needs) expect(sheet.named(needed), needed).toBeDefined()
    }
  })
})
