import { expect, test } from 'vitest'
import { questionsOf, usedText } from '../../../src/app/compose/join-text.ts'
import { planJoin } from '../../../src/worksheet/compose/join.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../../worksheet/make.ts'

const meetings = (sheet: readonly Cell[], coming: readonly Cell[]) =>
  planJoin(sheetOf(sheet), { key: 'k', title: 'T', cells: coming }, { freshId: () => `${Math.random()}` }).meetings

test('the cells a section uses are listed, givens first', () => {
  const own = [
    result('magnification', '1 / 4', { unit: '1:', label: 'Magnification' }),
    given('focal', '60', { unit: 'mm', label: 'Focal length' }),
  ]
  const coming = [given('magnification', '1', { unit: '1:' }), given('focal', '90', { unit: 'mm' })]
  expect(usedText(meetings(own, coming))).toBe('It uses your “Focal length” and “Magnification”.')
  expect(usedText([])).toBe('It shares no figures with your sheet.')
})

test('of many cells, the first are named and the rest are counted', () => {
  const names = Array.from({ length: 10 }, (_, n) => `x${n}`)
  const cells = names.map((name) => given(name, '1 mm'))
  const joined = meetings(cells, cells).map((one) => ({ ...one, way: 'keep' as const }))
  expect(usedText(joined)).toMatch(/“x7” and 2 more\.$/)
})

test('a clash is a question, and one that cannot be merged gives its reason', () => {
  const own = [given('girth', '3 m', { label: 'Girth' }), given('far', '1 s', { label: 'Far' })]
  const [girth, far] = questionsOf(meetings(own, [given('girth', '1 mm'), given('far', '1 mm')]))
  expect(girth).toMatchObject({
    said: '“Girth”: your sheet already has a cell named “girth”.',
    way: 'both',
    ways: [
      { way: 'both', said: 'Keep both: the new one is named “girth_2”' },
      { way: 'keep', said: 'They are the same: use yours' },
    ],
  })
  expect(far?.ways.length).toBe(1)
  expect(far?.why).toBe('They cannot be merged: yours is a time, the other a length. The new one is named “far_2”.')
})

test('a given that the section computes is a question', () => {
  const own = [given('lens_height', '900', { unit: 'mm', label: 'Lens above the sheet' })]
  const [asked] = questionsOf(meetings(own, [result('lens_height', '800 mm', { unit: 'mm', label: 'Lens height' })]))
  expect(asked?.said).toBe(
    '“Lens above the sheet”: you fill it in (now 900 mm); this section computes it, as “Lens height”.',
  )
  expect(asked?.ways.map(({ said }) => said)).toEqual([
    'Compute it, and keep your figure as the measured value',
    'Compute it, and delete your figure',
    'Keep filling it in, without the computed value',
  ])
})
