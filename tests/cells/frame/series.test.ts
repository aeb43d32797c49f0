import { describe, expect, it } from 'vitest'
import { changeColumns } from '../../../src/cells/frame/series-part.ts'
import type { SeriesEntry } from '../../../src/worksheet/frame/frame-series.ts'

const entry = (name: string, readings: SeriesEntry['readings']): SeriesEntry => ({
  name,
  digest: name,
  when: null,
  readings,
})
const AREAS = [
  { kind: 'patch' as const, name: 'grey' },
  { kind: 'evenness' as const, name: 'field' },
  { kind: 'edge' as const, name: 'edge' },
  { kind: 'rule' as const, name: 'rule' },
]
/** The headings, and a row a picture. */
const table = (series: readonly SeriesEntry[]): string[][] => {
  const columns = changeColumns(AREAS, series)
  return [columns.map(({ heading }) => heading), ...series.map((one) => columns.map(({ changeOf }) => changeOf(one)))]
}

describe('pictures compared over time, in the frame', () => {
  it('show the change of light, colour, spread and response since the first', () => {
    const [headings, ...rows] = table([
      entry('a', {
        grey: { light: [0.2, 0.2, 0.2], lab: [50, 2.6772, -79.7751] },
        field: { spread: 0.1 },
        edge: { mtf50: 0.4 },
      }),
      entry('b', {
        grey: { light: [0.3, 0.1, 0.3], lab: [50, 0, -82.7485] },
        field: { spread: 0.35 },
        edge: { mtf50: 0.3 },
      }),
    ])
    expect(headings?.map((heading) => heading.split(',')[0])).toEqual(['grey', 'grey', 'field', 'edge'])
    // ΔE2000 of a pair of Sharma, Wu and Dalal’s test data is 2.0425.
    expect(rows).toEqual([
      ['0.00', '0.0', '0.00', '100 %'],
      ['−1.00', '2.0', '+0.25', '75 %'],
    ])
  })

  it('count from the first picture that has the figure, and leave blank what a picture lacks', () => {
    const [, ...rows] = table([
      entry('a', { field: { spread: 0.2 } }),
      entry('b', { grey: { light: [1, 0.1, 1], lab: [50, 0] }, edge: { mtf50: null } }),
      entry('c', { grey: { light: [1, 0.2, 1] }, field: { spread: 0.1 }, edge: { mtf50: 0.25 } }),
      entry('d', { __proto__: null, grey: { light: 'dark' } } as unknown as SeriesEntry['readings']),
    ])
    expect(rows).toEqual([
      ['', '', '0.00', ''],
      ['0.00', '', '', ''],
      ['+1.00', '', '−0.10', '100 %'],
      ['', '', '', ''],
    ])
  })
})
