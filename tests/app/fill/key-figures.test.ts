import { expect, test } from 'vitest'
import { keyFigures } from '../../../src/app/open/key-figures.ts'
import { check, given, result } from '../../worksheet/make.ts'

const key = (cells: Parameters<typeof keyFigures>[0]) => keyFigures(cells, () => true).map(({ name }) => name)

test('results that are set at the stand and judged come first, then those that are either', () => {
  const cells = [
    given('focal', '60'),
    result('a', 'focal'),
    result('b', 'focal', { stand: true }),
    result('c', 'focal'),
    result('d', 'focal', { stand: true }),
    check('fits', 'c <= 3 and d <= 4', { message: '' }),
  ]
  expect(key(cells)).toEqual(['b', 'd'])
  expect(key(cells.filter((cell) => cell.kind !== 'result' || cell.name !== 'b'))).toEqual(['c', 'd'])
})

test('without checks or marks the first results are shown large; fine adjustments never are', () => {
  expect(key([result('a', '1', { more_exact: true }), result('b', '1'), result('c', '1'), result('d', '1')])).toEqual([
    'b',
    'c',
  ])
})

test('only single numbers are shown large', () => {
  const cells = [result('turned', 'yes', { stand: true }), result('b', '1')]
  expect(keyFigures(cells, ({ name }) => name !== 'turned').map(({ name }) => name)).toEqual(['b'])
})
