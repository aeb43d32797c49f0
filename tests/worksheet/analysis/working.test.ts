import { describe, expect, it } from 'vitest'
import { workingOf } from '../../../src/worksheet/analysis/working.ts'
import { check, given, result, sheetOf } from '../make.ts'

describe('the working of a result', () => {
  const sheet = sheetOf([
    given('sensor', '36 x 24', { unit: 'mm', entry: 'size' }),
    given('original', '600 mm', { unit: 'mm' }),
    given('kind', 'print', { entry: 'choice', options: ['print', 'map'] }),
    given('below', '-3 mm', { unit: 'mm' }),
    given('empty', '', { unit: 'mm' }),
    result('m', 'sensor.width / (original + 2 * below)', { unit: '1:' }),
    result('squared', 'original^2 - below'),
    result('which', 'when(kind = "map", 1, 2)'),
    result('waits', 'original + empty'),
    check('fits', 'm <= 1'),
  ])

  it('puts the numbers with their units in, and leads to the cells', () => {
    const working = workingOf(sheet, 'm')
    expect(working?.figures).toBe('36 mm / (600 mm + 2 * (−3 mm))')
    expect(working?.formula).toEqual([
      { text: 'sensor', id: 'sensor' },
      { text: '.width' },
      { text: ' / (' },
      { text: 'original', id: 'original' },
      { text: ' + 2 * ' },
      { text: 'below', id: 'below' },
      { text: ')' },
    ])
  })

  it('brackets what is raised, quotes what is said', () => {
    expect(workingOf(sheet, 'squared')?.figures).toBe('(600 mm)^2 - (−3 mm)')
    expect(workingOf(sheet, 'which')?.figures).toBe('when("print" = "map", 1, 2)')
  })

  it('has no figures while it waits', () => {
    expect(workingOf(sheet, 'waits')).not.toHaveProperty('figures')
  })

  it('tells what it feeds', () => {
    expect(workingOf(sheet, 'm')?.feeds).toEqual(['fits'])
    expect(workingOf(sheet, 'which')?.feeds).toEqual([])
  })
})
