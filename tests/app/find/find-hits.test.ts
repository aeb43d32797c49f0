import { expect, test } from 'vitest'
import { findIn } from '../../../src/app/find/find-hits.ts'
import { check, given, note, result, sheetOf } from '../../worksheet/make.ts'

const sheet = sheetOf([
  { kind: 'note', id: 'frame', role: 'heading', text: 'Frame', about: 'how far and how large' },
  given('width', '600', { unit: 'mm', label: 'Width of the original', hint: 'along the spine' }),
  result('gap', 'width * 2', { label: 'Écart', measured: '1204 mm', measure: 'with a rule' }),
  check('fits', 'gap <= 1100 mm', { message: 'It is {gap} long.', passes: 'Good.' }),
  note('n', 'Nothing is touched between\n\nsheets.'),
  {
    kind: 'steps',
    id: 's',
    title: 'In order',
    steps: [{ text: 'Level the camera' }, { text: 'Read', reading: 'width' }],
  },
  {
    kind: 'table',
    id: 'sch',
    name: 'maps',
    columns: [
      { name: 'place', label: 'Shelf', entry: 'text' },
      { name: 'half', formula: 'width / 4' },
    ],
    rows: [
      ['Cupboard', ''],
      ['Upper Tideway', ''],
    ],
  },
])

const found = (words: string): string[] => findIn(sheet, words).map(({ id, place }) => `${id}: ${place}`)

test.each([
  ['original', ['width: label']],
  ['SPINE', ['width: hint']],
  ['1204', ['gap: measured value', 'fits: message']],
  ['width *', ['gap: formula']],
  ['ecart', ['gap: label']],
  ['with a rule', ['gap: how it is measured']],
  ['<= 1100', ['fits: condition']],
  ['between sheets', ['n: text']],
  ['how far', ['frame: text']],
  ['in order', ['s: title']],
  ['level', ['s: step 1']],
  ['tideway', ['sch: row 2']],
  ['shelf', ['sch: column heading']],
  ['/ 4', ['sch: column formula']],
  ['600 mm', ['width: value']],
  ['maps', ['sch: name']],
])('“%s” is found', (words, places) => {
  expect(found(words)).toEqual(places)
})

test('what is computed is found by figure, and each cell once', () => {
  const plain = sheetOf([
    given('a', '2 mm'),
    result('b', 'a * 8', { label: 'Sixteen' }),
    check('c', 'b > 1 mm', { passes: 'It is {b}.' }),
  ])
  expect(findIn(plain, '16 mm')).toEqual([
    { id: 'b', place: 'figure' },
    { id: 'c', place: 'message' },
  ])
})

test('names are found in the order of the sheet, wherever they are used', () => {
  expect(found('width')).toEqual(['width: label', 'gap: formula', 's: reading at step 2', 'sch: column formula'])
})

test('nothing searched finds nothing', () => {
  expect(found('')).toEqual([])
  expect(found('   ')).toEqual([])
  expect(found('no such words')).toEqual([])
})
