import { describe, expect, it, test } from 'vitest'
import type { Result, ValueOutcome } from '../../../src/worksheet/index.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const lengths = (measured?: string) => [
  given('a', '900 mm'),
  result('height', 'a + 17 mm', { unit: 'mm', ...(measured === undefined ? {} : { measured }) }),
  result('above', 'height - 100 mm', { unit: 'mm' }),
  check('fits', 'height <= 2 m'),
]
const outcome = (sheet: ReturnType<typeof sheetOf>, id: string) => sheet.outcome(id) as ValueOutcome

describe('a measured result', () => {
  it('shows both figures and their difference, and feeds the measured one onward', () => {
    const sheet = sheetOf(lengths('921'))
    expect(outcome(sheet, 'height')).toMatchObject({
      value: expect.closeTo(0.921, 12),
      shown: { text: '921 mm' },
      measured: { computed: { shown: { text: '917 mm' } }, difference: '4 mm over' },
    })
    expect(seen(sheet, 'above')).toBe('821 mm')
  })

  it('feeds the computed one again once it is cleared, and an undo brings it back', () => {
    const sheet = sheetOf(lengths('921 mm'))
    const cell = sheet.cell('height') as Result
    sheet.apply({ do: 'replace', cell: { ...cell, measured: '' } })
    expect(seen(sheet, 'above')).toBe('817 mm')
    sheet.undo()
    expect(seen(sheet, 'above')).toBe('821 mm')
  })

  it('stays as it is while givens change, and its difference follows', () => {
    const sheet = sheetOf(lengths('921 mm'))
    sheet.apply({ do: 'replace', cell: given('a', '910 mm') })
    expect(seen(sheet, 'above')).toBe('821 mm')
    expect(outcome(sheet, 'height').measured?.difference).toBe('6 mm under')
  })

  it('that cannot be read is an error in its own text; the computed value feeds onward', () => {
    for (const text of ['921 mmm', '5 s', 'high']) {
      const sheet = sheetOf(lengths(text))
      expect(outcome(sheet, 'height').measuredAmiss?.message, text).toBeTruthy()
      expect(outcome(sheet, 'height').measured).toBeUndefined()
      expect(seen(sheet, 'above')).toBe('817 mm')
      expect(sheet.check('fits').state).toBe('pass')
    }
  })

  it('is where the formula waits or fails', () => {
    const waits = sheetOf([given('a', '', { unit: 'mm' }), ...lengths('921 mm').slice(1)])
    expect(seen(waits, 'above')).toBe('821 mm')
    expect(outcome(waits, 'height').measured).toEqual({ shown: expect.anything(), difference: '' })
    const fails = sheetOf([given('n', '0'), result('r', '1 / n', { measured: '3' }), result('s', 'r + 1')])
    expect(seen(fails, 's')).toBe('4')
    expect(outcome(fails, 'r').measured).toEqual({ shown: expect.anything(), difference: '' })
  })

  it('brings limits of its own and none of its formula', () => {
    const sheet = sheetOf([
      given('a', '900 mm ± 10 mm'),
      result('height', 'a + 17 mm', { measured: '921 mm ± 2 mm' }),
      result('twice', '2 * height'),
    ])
    sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
    expect(outcome(sheet, 'twice')).toMatchObject({
      tolerance: expect.closeTo(0.004, 9),
      limits: { contributions: [{ name: 'height' }] },
    })
  })

  it('is for quantities alone', () => {
    const sheet = sheetOf([given('a', '1'), result('y', 'a > 0', { measured: 'yes' })])
    expect(outcome(sheet, 'y').measuredAmiss?.message).toMatch(/Only a quantity can be measured/)
  })

  it('keeps the kind of its dependants', () => {
    const sheet = sheetOf([given('n', 'f/8', { unit: 'f/' }), result('m', 'n', { measured: '11' }), result('k', 'm')])
    expect(seen(sheet, 'k')).toBe('f/11')
  })
})

test.each([
  ['lx', '870 lx', '851', '19 lx under, 0.03 stop'],
  ['1:', '1:13', '1:12.87', '1 % over'],
  ['ppi', '320 ppi', '316', '4 ppi under, 1.3 %'],
  ['f/', 'f/8', 'f/11', '0.92 stop smaller'],
  ['1/ s', '1/60 s', '1/30 s', '1 stop longer'],
  ['stop', '1 stop', '1.25 stop', '0.25 stop over'],
  ['mm', '917 mm', '917', 'as computed'],
])('in %s, %s measured as %s is %s', (unit, computed, measured, difference) => {
  const sheet = sheetOf([given('x', computed, { unit }), result('r', 'x', { unit, measured })])
  expect(outcome(sheet, 'r').measured?.difference).toBe(difference)
})
