import { expect, test } from 'vitest'
import { stepsTable } from '../../../src/app/paper/steps.ts'
import type { Node } from '../../../src/drawings/canvas/tree.ts'
import type { Sheet, Steps } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../../worksheet/make.ts'

const steps: Steps = {
  kind: 'steps',
  id: 's',
  title: 'At the stand',
  steps: [
    { text: 'Level the camera', done: true },
    { text: 'Read the left edge', reading: 'left' },
    { text: 'Read the right edge', reading: 'right' },
    { text: 'Measure the distance', reading: 'distance' },
    { text: 'Read the meter', reading: 'gone' },
  ],
}

const sheet = (more: object = {}): Sheet =>
  sheetOf([
    given('left', '', { unit: 'lx', label: 'Left edge' }),
    given('right', '415', { unit: 'lx' }),
    result('distance', '600 mm', { unit: 'mm', label: 'Distance', ...more }),
    steps,
  ])

const textOf = (node: Node): string =>
  node.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('|')
const all = (node: Node, tag: string): Node[] => [
  ...(node.tag === tag ? [node] : []),
  ...node.children.flatMap((child) => (typeof child === 'string' ? [] : all(child, tag))),
]

test('steps on paper are numbered, with a box each, ticked where they are done', () => {
  const table = stepsTable(sheet(), steps)
  const rows = all(table, 'tr')
  expect(rows.map((row) => textOf(all(row, 'th')[0] as Node).split('|')[0])).toEqual(
    steps.steps.map(({ text }) => text),
  )
  expect(rows.map((row) => textOf(all(row, 'td')[1] as Node))).toEqual(['1', '2', '3', '4', '5'])
  expect(rows.map((row) => all(row, 'rect').length)).toEqual([1, 1, 1, 1, 1])
  expect(rows.map((row) => all(row, 'path').length)).toEqual([1, 0, 0, 0, 0])
  expect(textOf(table)).toContain('1 of 5 done')
})

test('a reading not yet taken is a line to write on, with its unit; one taken is its figure', () => {
  const rows = all(stepsTable(sheet(), steps), 'tr')
  const figures = rows.map((row) =>
    all(row, 'td')
      .slice(2)
      .map((td) => [td.attributes.class, textOf(td)]),
  )
  expect(figures).toEqual([
    [],
    [
      ['figure empty', ''],
      ['unit', 'lx'],
    ],
    [
      ['figure', '415'],
      ['unit', 'lx'],
    ],
    [
      ['figure empty', ''],
      ['unit', 'mm'],
    ],
    [],
  ])
  expect(textOf(rows[1] as Node)).toContain('Left edge')
  expect(textOf(rows[3] as Node)).toContain('Distance, as measured (computed 600 mm)')
  expect(textOf(rows[4] as Node)).toContain('“gone” is no longer in the sheet')
})

test('what was measured is on its line beside what was computed', () => {
  const row = all(stepsTable(sheet({ measured: '604 mm' }), steps), 'tr')[3] as Node
  expect(textOf(all(row, 'th')[0] as Node)).toBe('Measure the distance|Distance, as measured (computed 600 mm)')
  expect(all(row, 'td').slice(2).map(textOf)).toEqual(['604', 'mm'])
})
