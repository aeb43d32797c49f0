import { describe, expect, test } from 'vitest'
import { adviseSheet } from '../../../src/worksheet/advice/advise.ts'
import type { Given, Sheet } from '../../../src/worksheet/index.ts'
import { simulate } from '../../../src/worksheet/simulation/simulate.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const glass = (value: string, thickness: string): Sheet =>
  sheetOf([
    given('glazed', value, { entry: 'yes or no' }),
    given('thickness', thickness, { unit: 'mm' }),
    given('size', '', { entry: 'size', unit: 'mm' }),
    given('far', '600 ± 3', { unit: 'mm' }),
    result('nearer', 'when(glazed, thickness / 3, 0 mm)', { unit: 'mm' }),
    result('set', 'far - nearer', { unit: 'mm' }),
    check('thin', 'not glazed or thickness <= 4 mm'),
    check('covered', 'glazed and size.width >= 10 mm or far > 100 mm'),
    check('near', 'set <= 602 mm and (not glazed or thickness > 1 mm)'),
  ])

describe('a branch that is not taken', () => {
  test('may lack its figures: what it would give is not waited for', () => {
    const sheet = glass('no', '')
    expect(seen(sheet, 'nearer')).toBe('0 mm')
    expect(seen(sheet, 'set')).toBe('600 ± 3 mm')
    expect(sheet.check('thin').state).toBe('pass')
    expect(sheet.check('covered').state).toBe('pass')
    // Limits are followed as ever: at 603 mm it fails.
    expect(sheet.check('near')).toMatchObject({ state: 'marginal', hangsOn: ['far'] })
  })

  test('is waited for once it is taken, or while what decides is missing', () => {
    expect(seen(glass('yes', ''), 'nearer')).toBe('waits for thickness')
    expect(glass('yes', '').check('thin').state).toBe('waiting')
    expect(seen(glass('', '3'), 'nearer')).toBe('waits for glazed')
    // Which figures are needed is only known once it is decided.
    expect(seen(glass('', ''), 'nearer')).toBe('waits for glazed')
    expect(glass('', '').check('thin').needs).toEqual(['glazed'])
    expect(seen(glass('yes', '3'), 'nearer')).toBe('1 mm')
    // The branch may be the missing figure itself.
    const itself = sheetOf([
      given('a', 'yes', { entry: 'yes or no' }),
      given('b', '', { unit: 'mm' }),
      result('c', 'when(a, b, 1 mm)'),
    ])
    expect(seen(itself, 'c')).toBe('waits for b')
  })

  test('comes and goes as one types, and what depends on it with it', () => {
    const sheet = glass('no', '')
    const type = (name: string, value: string): void =>
      sheet.apply({ do: 'replace', cell: { ...(sheet.named(name) as Given), value } })
    type('glazed', 'yes')
    expect(seen(sheet, 'set')).toBe('waits for thickness')
    type('thickness', '6')
    expect(seen(sheet, 'set')).toBe('598 ± 3 mm')
    expect(sheet.check('thin').state).toBe('fail')
    type('thickness', '')
    expect(seen(sheet, 'set')).toBe('waits for thickness')
    type('glazed', 'no')
    expect(seen(sheet, 'set')).toBe('600 ± 3 mm')
  })

  test('is simulated and advised on like any other', () => {
    const sheet = glass('no', '')
    const { figures, passes } = simulate(sheet.engine, { seed: 1, tries: 10_000 })
    expect(figures.get('set')?.mean).toBeCloseTo(0.6, 4)
    expect(passes.get('thin')).toBe(1)
    expect(passes.get('near')).toBeGreaterThan(0.7)
    expect(adviseSheet(sheet).checks.size).toBeLessThan(3)
  })

  test('gives no figure to limits that would take it, also where the branches were typed later', () => {
    const sheet = sheetOf([given('a', '1 ± 0.1'), given('b', '', { unit: 'mm' }), result('r', 'a')])
    sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
    const limits = () => {
      const outcome = sheet.outcome('r')
      return outcome.state === 'value' ? outcome.limits : undefined
    }
    expect(limits()?.low).toBeCloseTo(0.9, 9)
    // At 0.9 the branch with `b` would be taken, whose value is not there.
    sheet.apply({ do: 'replace', cell: result('r', 'when(a > 0.95, a, b / 1 mm)') })
    expect(limits()?.nonlinear).toBe(true)
    expect(limits()?.low).toBeCloseTo(0.9, 2)
    // Nor one that was there before.
    sheet.apply({ do: 'replace', cell: given('b', '500', { unit: 'mm' }) })
    expect(limits()?.high).toBeGreaterThan(100)
    sheet.apply({ do: 'replace', cell: given('b', '', { unit: 'mm' }) })
    expect(limits()?.high).toBeCloseTo(1.1, 2)
  })
})
