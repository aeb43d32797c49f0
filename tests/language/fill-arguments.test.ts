import { expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { argumentsByName } from '../../src/language/editor/fill-arguments.ts'
import type { Callable } from '../../src/language/index.ts'
import { checkFormula } from '../../src/language/index.ts'
import { given, result, sheetOf } from '../worksheet/make.ts'

const cells = [
  given('sensor', '53.4 x 40 mm', { entry: 'size' }),
  given('original', '610 x 864 mm', { entry: 'size' }),
  given('border', '10 mm'),
  given('focal', '120 mm'),
  given('aperture', 'f/11'),
  given('blur', '7 px'),
  given('note', 'as agreed', { entry: 'text' }),
  result('fit_magnification', '1:16'),
]
const scope = sheetOf(cells).engine.scope()
const call = (name: string): string | undefined => argumentsByName(LIBRARY.get(name) as Callable, scope)

test.each([
  ['fit_magnification', 'original.width, original.height, sensor.width, sensor.height, border'],
  // The only cell whose name ends like the parameter.
  ['lens_to_original', 'focal, fit_magnification'],
  // A pixel count is no length: what is required and missing is a question mark.
  ['depth_of_field', 'aperture, ?, fit_magnification, focal'],
  // What has a default is filled only by a cell of just its name.
  ['extension_for', 'focal, fit_magnification'],
  ['max', undefined],
])('the arguments of %s', (name, filled) => {
  expect(call(name)).toBe(filled)
})

test('every call that is filled in whole checks without an error', () => {
  for (const record of LIBRARY.values()) {
    const args = argumentsByName(record, scope)
    if (args === undefined || args.includes('?')) continue
    const errors = checkFormula(`${record.name}(${args})`, scope).diagnostics.filter((one) => one.severity === 'error')
    expect(errors, record.name).toEqual([])
  }
})
