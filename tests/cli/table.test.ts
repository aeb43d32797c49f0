import { expect, it } from 'vitest'
import { evenfield, json, worksheet } from './run.ts'

const cells: readonly object[] = [
  {
    kind: 'table',
    id: 's',
    name: 'originals',
    label: 'Originals',
    columns: [
      { name: 'title', entry: 'text' },
      { name: 'width', unit: 'mm' },
      { name: 'bound', entry: 'tick' },
      { name: 'double', formula: '2 * width' },
    ],
    rows: [
      ['Town', '42 cm', 'x', ''],
      ['Coast', '100,5', '', ''],
      ['Hill', 'torn', '', ''],
    ],
  },
  { kind: 'result', id: 'r', name: 'all', formula: 'sum(originals.double)' },
]

it('a table is a record of lists as data, and one line in words', async () => {
  const path = worksheet('table.json', cells)
  expect(json(await evenfield('compute', path, '--json'))).toMatchObject({
    cells: {
      originals: {
        value: {
          count: 2,
          title: ['Town', 'Coast'],
          width: [0.42, 0.1005],
          bound: [true, false],
          double: [0.84, 0.201],
        },
        dimension: 'table',
        shown: '2 of 3 rows',
        error: null,
        state: 'value',
      },
      all: { value: 1.041 },
    },
  })
  const plain = await evenfield('compute', path)
  expect(plain.code).toBe(0)
  expect(plain.out.split('\n').slice(0, 2)).toEqual([
    'Originals (originals): 2 of 3 rows',
    expect.stringMatching(/^ {2}caution: Row 3 is left out\. width: “torn” is not a number\.$/),
  ])
})

it('a table in error ends with 1 and says which column', async () => {
  const ran = await evenfield(
    'compute',
    worksheet('circle.json', [{ ...cells[0], columns: [{ name: 'a', formula: 'a + 1' }], rows: [] }]),
  )
  expect(ran.code).toBe(1)
  expect(ran.out).toMatch(/In the column “a”: These columns depend on each other in a cycle: a → a/)
})
