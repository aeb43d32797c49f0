import { describe, expect, test } from 'vitest'
import type { Cell, Frame } from '../../../src/worksheet/index.ts'
import { asMade, entryFilledAs, filledAs } from '../../../src/worksheet/kinds/filled-in.ts'
import { given, result } from '../make.ts'

const steps = (...list: readonly object[]): Cell => ({ kind: 'steps', id: 's', steps: list as { text: string }[] })
const table: Cell = { kind: 'table', id: 't', name: 't', columns: [{ name: 'x' }], rows: [] }
const pixels = { width: 600, height: 400, bits: 8, channels: 3, encoding: 'sRGB' }
const frame: Frame = { kind: 'frame', id: 'f', name: 'card', areas: [{ kind: 'patch', name: 'grey' }] }
const under = { text: '1', figures: {}, by: 'R.S.' }

describe('a cell is made the same', () => {
  test.each<[string, Cell, object]>([
    [
      'a given filled in',
      given('a', ''),
      { value: '1', from: { kind: 'typed', text: '1' }, piece: {}, measured_under: under },
    ],
    ['a result measured', result('a', '1'), { measured: '1', measured_under: under }],
    ['steps ticked and counted', steps({ text: 'Do' }), { steps: [{ text: 'Do', done: true, taken: 2 }] }],
    ['a table with rows', table, { rows: [['1']], from: { kind: 'example', text: 'x' } }],
    [
      'a picture measured, with its areas in other places',
      frame,
      {
        picture: { name: 'card.tif', size: 9, digest: 'd', pixels, taken: null },
        readings: { grey: { light: 1 } },
        series: [],
        measured_under: under,
        areas: [{ kind: 'patch', name: 'grey', box: [1, 2, 3, 4] }],
      },
    ],
  ])('%s', (_, cell, more) => {
    expect(asMade({ ...cell, ...more } as Cell)).toEqual(asMade(cell))
  })
})

describe('a cell is made otherwise', () => {
  test.each<[string, Cell, object]>([
    ['a given of another unit', given('a', ''), { unit: 'mm' }],
    ['a result of another formula', result('a', '1'), { formula: '2' }],
    ['steps that say something else', steps({ text: 'Do' }), { steps: [{ text: 'Do not', done: true }] }],
    ['a table of other columns', table, { columns: [] }],
    ['a frame with another area', frame, { areas: [{ kind: 'patch', name: 'white' }] }],
    [
      'a drawing fed otherwise',
      { kind: 'drawing', id: 'd', drawing: 'set-up', from: { height: 'a' } },
      { from: { height: 'b' } },
    ],
    ['a range between other ends', { kind: 'range', id: 'r', from: '1', results: [] }, { from: '2' }],
  ])('%s', (_, cell, more) => {
    expect(asMade({ ...cell, ...more } as Cell)).not.toEqual(asMade(cell))
  })
})

test('a cell takes what is filled in in another, and nothing else', () => {
  const from = given('a', '2', { unit: 'cm', measured_under: under })
  expect(filledAs(given('a', '1', { unit: 'mm', piece: { a: '1' } }), from)).toStrictEqual(
    given('a', '2', { unit: 'mm', measured_under: under }),
  )
  expect(entryFilledAs({ text: 'A', taken: 1 }, { text: 'B', taken: 2 }, 'steps', 'steps')).toStrictEqual({
    text: 'A',
    taken: 2,
  })
  expect(filledAs(result('a', '1'), result('a', '2'))).toStrictEqual(result('a', '1'))
})
