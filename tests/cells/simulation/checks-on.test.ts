import { expect, it } from 'vitest'
import { checksOn } from '../../../src/cells/simulation/checks-on.ts'
import { check, given, result, sheetOf } from '../../worksheet/make.ts'

it('the checks on a result use it directly or through others, wherever they are in the sheet', () => {
  const sheet = sheetOf([
    check('through', 'third < 1 m'),
    check('other', 'length > 0 m'),
    result('third', 'double / 6'),
    given('length', '600 mm', { unit: 'mm' }),
    result('double', '2 * length', { unit: 'mm' }),
    check('direct', 'double < 1 m'),
  ])
  expect(checksOn(sheet, 'double').map(({ name }) => name)).toEqual(['through', 'direct'])
})
