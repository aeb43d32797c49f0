import { describe, expect, test } from 'vitest'
import { figureOf, withFigures } from '../../../src/worksheet/compose/figures.ts'
import { check, given, result, sheetOf } from '../make.ts'

describe('the figures of a sheet', () => {
  const sheet = sheetOf([
    given('aperture', '8', { unit: 'f/' }),
    given('time', '0.008', { unit: '1/ s' }),
    given('empty', '', { unit: 'mm' }),
    result('size', '2 * 40 mm', { unit: 'mm' }),
    result('waiting', 'empty * 2'),
    result('wrong', 'nothing * 2'),
    check('holds', '1 < 2'),
  ])

  test.each([
    ['aperture', 'f/8'],
    ['time', '1/125 s'],
    ['size', '80 mm'],
    ['empty', undefined],
    ['waiting', undefined],
    ['wrong', undefined],
    ['holds', undefined],
    ['unknown', undefined],
  ])('%s', (name, text) => {
    expect(figureOf(sheet, name)).toBe(text)
  })

  test('stand in a text in the place of their names', () => {
    expect(withFigures('{size} at {aperture}, {empty}{unknown}size {a b}', sheet)).toBe('80 mm at f/8, size {a b}')
  })
})
