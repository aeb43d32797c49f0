import { expect, test } from 'vitest'
import { resultsBySection, standChecks } from '../../../src/app/stand/stand-cells.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { check, given, result } from '../../worksheet/make.ts'

const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const cells: Cell[] = [
  result('first', '1 mm'),
  heading('Frame'),
  given('width', '', { stand: true }),
  result('far', '1 m', { stand: true, label: 'Distance' }),
  result('seldom', '1', { more_exact: true }),
  heading('Light'),
  result('lamp', '1 m', { stand: true, label: 'Distance' }),
  check('even', '1 < 2', { stand: true }),
  check('other', '1 < 2'),
]
const ids = (some: readonly Cell[]): string[] => some.map(({ id }) => id)

test('the checks at the stand are those marked for it', () => {
  expect(ids(standChecks(cells))).toEqual(['even'])
})

test('where nothing is marked the results of one section can be chosen', () => {
  expect(resultsBySection(cells).map(({ title, results }) => [title, ids(results)])).toEqual([
    ['', ['first']],
    ['Frame', ['far']],
    ['Light', ['lamp']],
  ])
})
