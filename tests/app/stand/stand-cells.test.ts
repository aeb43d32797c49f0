import { expect, test } from 'vitest'
import { resultsBySection, standCells, whereRepeated } from '../../../src/app/stand/stand-cells.ts'
import type { Cell, Result } from '../../../src/worksheet/index.ts'
import { check, given, result } from '../../worksheet/make.ts'

const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const cells: Cell[] = [
  result('first', '1 mm'),
  heading('Frame'),
  given('width', '', { stand: true }),
  given('height', ''),
  result('far', '1 m', { stand: true, label: 'Distance' }),
  result('seldom', '1', { more_exact: true }),
  heading('Light'),
  result('lamp', '1 m', { stand: true, label: 'Distance' }),
  check('even', '1 < 2', { stand: true }),
  check('other', '1 < 2'),
  { kind: 'steps', id: 's', steps: [{ text: 'Go' }] },
]
const ids = (some: readonly Cell[]): string[] => some.map(({ id }) => id)

test('at the stand there is what is marked, and every list of steps', () => {
  const { results, givens, checks, steps } = standCells(cells)
  expect([ids(results), ids(givens), ids(checks), ids(steps)]).toEqual([['far', 'lamp'], ['width'], ['even'], ['s']])
})

test('where nothing is marked the results of one section can be chosen', () => {
  expect(resultsBySection(cells).map(({ title, results }) => [title, ids(results)])).toEqual([
    ['', ['first']],
    ['Frame', ['far']],
    ['Light', ['lamp']],
  ])
})

test('two of one label are distinguished by their sections', () => {
  const { results } = standCells(cells)
  expect([...whereRepeated(cells, results)]).toEqual([
    ['far', 'Frame'],
    ['lamp', 'Light'],
  ])
  expect(whereRepeated(cells, [results[0] as Result]).size).toBe(0)
})
