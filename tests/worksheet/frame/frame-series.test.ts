import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import {
  briefReadings,
  MOST_IN_SERIES,
  type SeriesEntry,
  secondsOf,
  withEntry,
} from '../../../src/worksheet/frame/frame-series.ts'
import {
  type Cell,
  FORMAT,
  type Frame,
  readDocument,
  Sheet,
  VERSION,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'

const entry = (name: string, when: string | null, green: number, lab = [50, 0, 0]): SeriesEntry => ({
  name,
  digest: name,
  when,
  readings: { grey: { code: [0.5, 0.5, 0.5], light: [green, green, green], lab, noise: 0.3 } },
})
const MORNING = entry('a', '2026-03-04T08:00:00', 0.2)
const NOON = entry('b', '2026-03-04T12:00:00', 0.21)
const EVENING = entry('c', '2026-03-04T16:30:00', 0.19)

const card = (series?: readonly SeriesEntry[]): Frame => ({
  kind: 'frame',
  id: 'f',
  name: 'card',
  areas: [{ kind: 'patch', name: 'grey', box: [0, 0, 9, 9] }],
  picture: {
    name: 'c',
    size: 1,
    digest: 'c',
    pixels: { width: 9, height: 9, bits: 8, channels: 3, encoding: 'sRGB' },
    taken: null,
  },
  readings: EVENING.readings,
  ...(series ? { series: [...series] } : {}),
})
const result = (formula: string): Cell => ({ kind: 'result', id: 'r', name: 'r', formula })
const outcome = (formula: string, cell: Frame) =>
  new Sheet({ format: FORMAT, version: VERSION, title: 'T', cells: [cell, result(formula)] }, LIBRARY).outcome('r')

describe('pictures compared over time', () => {
  it('are in order of time, whatever order they come in, each once', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([MORNING, NOON, EVENING, entry('d', null, 0.2)], { minLength: 4 }),
        fc.boolean(),
        (order, twice) => {
          const series = [...order, ...(twice ? order : [])].reduce<SeriesEntry[]>(withEntry, [])
          expect(series.map(({ name }) => name)).toEqual(['a', 'b', 'c', 'd'])
        },
      ),
    )
  })

  it('are limited in number; the first of all stays, since changes are counted from it', () => {
    const many = Array.from({ length: MOST_IN_SERIES + 30 }, (_, i) =>
      entry(`p${i}`, new Date(Date.UTC(2026, 2, 4, 8, i)).toISOString(), 0.2),
    )
    const series = many.reduce<SeriesEntry[]>(withEntry, [])
    expect(series).toHaveLength(MOST_IN_SERIES)
    expect([series[0]?.name, series.at(-1)?.name]).toEqual(['p0', `p${MOST_IN_SERIES + 29}`])
  })

  it('read an offset where the camera wrote one', () => {
    expect((secondsOf('2026-03-04T08:00:00+02:00') as number) - (secondsOf('2026-03-04T05:00:00') as number)).toBe(3600)
    expect(secondsOf('yesterday')).toBeUndefined()
    expect(secondsOf(null)).toBeUndefined()
  })

  it('save figures only, not a curve or a grid', () => {
    expect(
      briefReadings({
        edge: { mtf50: 0.3, mtf10: null, sfr: Array.from({ length: 51 }, (_, i) => [i / 100, 1]) },
        light: { light: [[1, 0.5]], spread: 1, corner: [0, -1, -1, 0] },
      }),
    ).toEqual({ edge: { mtf50: 0.3 }, light: { spread: 1, corner: [0, -1, -1, 0] } })
  })

  it('are lists in formulas: the change of light in stops, its hourly rate, and of colour', () => {
    const cell = card([MORNING, NOON, EVENING])
    const light = 'light_over_time(card.grey.series.time, card.grey.series.light)'
    expect(outcome('count(card.grey.series.time)', cell)).toMatchObject({ value: 3 })
    expect(outcome('item(card.grey.series.time, 3)', cell)).toMatchObject({ value: 8.5 * 3600 })
    expect(outcome(`${light}.greatest`, cell)).toMatchObject({ value: expect.closeTo(Math.log2(0.19 / 0.2), 12) })
    expect(outcome(`item(${light}.changes, 2)`, cell)).toMatchObject({ value: expect.closeTo(Math.log2(1.05), 12) })
    // The normal equations by hand, hours against stops.
    const [x, y] = [
      [0, 4, 8.5],
      [0, Math.log2(1.05), Math.log2(0.95)],
    ]
    const [n, sx, sy] = [3, 12.5, (y[1] as number) + (y[2] as number)]
    const sxy = x.reduce((sum, value, i) => sum + value * (y[i] as number), 0)
    const sxx = 16 + 8.5 ** 2
    expect(outcome(`${light}.rate * 1 h`, cell)).toMatchObject({
      value: expect.closeTo((n * sxy - sx * sy) / (n * sxx - sx * sx), 12),
    })
    // A pair of Sharma, Wu and Dalal’s test data for CIEDE2000.
    const blue = card([
      entry('a', '2026-03-04T08:00:00', 0.2, [50, 2.6772, -79.7751]),
      entry('b', '2026-03-04T09:00:00', 0.2, [50, 0, -82.7485]),
    ])
    expect(outcome('colour_over_time(card.grey.series.time, card.grey.series.lab).greatest', blue)).toMatchObject({
      value: expect.closeTo(2.0425, 4),
    })
  })

  it('wait for a second one; one without a time or without the area is not counted', () => {
    const formula = 'light_over_time(card.grey.series.time, card.grey.series.light).greatest'
    const other = { ...NOON, readings: { elsewhere: { noise: 1 } } }
    for (const series of [[], [MORNING], [MORNING, entry('d', null, 0.3)], [MORNING, other]])
      expect(outcome(formula, card(series)).state, JSON.stringify(series)).toBe('waiting')
    expect(outcome(formula, card([MORNING, other, EVENING])).state).toBe('value')
    expect(outcome(formula, card()).state).toBe('error')
  })

  it('follow an area under another name, and survive being written and read', () => {
    const cells = [
      card([MORNING, EVENING]),
      result('light_over_time(card.grey.series.time, card.grey.series.light).last'),
    ]
    const sheet = new FullSheet({ format: FORMAT, version: VERSION, title: 'T', cells }, LIBRARY)
    const before = sheet.outcome('r')
    sheet.apply({ do: 'rename area', id: 'f', area: 0, name: 'middle' })
    expect(sheet.outcome('r')).toMatchObject({ value: (before as { value: number }).value })
    const read = readDocument(writeDocument(sheet.worksheet))
    expect((read.cells[0] as Frame).series).toEqual((sheet.cells[0] as Frame).series)
  })
})
