import { afterEach, describe, expect, it, vi } from 'vitest'
import { drawRangeMap } from '../../../src/drawings/range/range-map.ts'
import { drawRange } from '../../../src/drawings/range/range-plot.ts'
import { rangeGrid, rangeTable } from '../../../src/worksheet/analysis/range-table.ts'
import { RangeInputError } from '../../../src/worksheet/analysis/range-values.ts'
import type { Range } from '../../../src/worksheet/index.ts'
import { given, result, seen, sheetOf } from '../make.ts'

const range = (more: Partial<Range>): Range => ({ kind: 'range', id: 'r', results: [], ...more }) as Range

const stand = () =>
  sheetOf([
    given('focal', '60', { unit: 'mm' }),
    given('magnification', '1:4', { unit: '1:' }),
    given('original', '610 x 864', { unit: 'mm', entry: 'size' }),
    given('time', '1/60', { unit: '1/ s' }),
    given('aperture', 'f/8', { unit: 'f/' }),
    result('extension', 'focal * magnification', { unit: 'mm' }),
    result('area', 'original.width * original.height', { unit: 'cm^2' }),
    result('swing', 'sin(focal / 1 mm * 1 rad)'),
    result('stops', 'log2(time / 1 s)'),
  ])

afterEach(() => vi.restoreAllMocks())

describe('a result that takes long to compute', () => {
  /** Each time it is looked at, the clock is so many ms further on. */
  const clockBy = (ms: number) => {
    let clock = 0
    vi.spyOn(performance, 'now').mockImplementation(() => {
      clock += ms
      return clock
    })
  }
  const two = range({ of: 'focal', from: '50', to: '60', count: 10, results: ['extension'] })
  const grid = { ...two, second: { of: 'magnification', from: '1', to: '2', count: 10 } } as Range

  it('is computed over a few values, and refused in words over many', () => {
    clockBy(20)
    expect(rangeTable(stand(), two).followed[0]?.figures).toHaveLength(11)
    expect(() => rangeGrid(stand(), grid)).toThrow(RangeInputError)
    expect(() => rangeGrid(stand(), grid)).toThrow(/^This result takes long to compute: 45 of 121 values took a second/)
  })

  it('has a coarser map, which still has lines', () => {
    const quick = rangeGrid(stand(), grid)
    let computed = 0
    const at = (a: number, b: number) => {
      computed++
      return quick.at(a, b)
    }
    clockBy(7)
    const drawn = drawRangeMap({ ...quick, at }, { width: 400 })
    expect(computed).toBeLessThan(100)
    expect(JSON.stringify(drawn)).toContain('isoline')
  })

  it('over two givens has so many pairs at most', () => {
    const many = { ...grid, count: 60, second: { of: 'magnification', from: '1', to: '2', count: 60 } } as Range
    expect(() => rangeGrid(stand(), many)).toThrow(/3721 pairs of values; at most 2500/)
  })
})

describe('a range over a side of a size', () => {
  const over = range({ of: 'original.width', from: '100', to: '300', count: 2, results: ['area'] })
  it('varies that side alone', () => {
    const { shown, followed, varied, present } = rangeTable(stand(), over)
    expect(shown).toEqual(['100 mm', '200 mm', '300 mm'])
    // 100, 200 and 300 mm by 864 mm.
    expect(followed[0]?.figures).toEqual([864, 1728, 2592].map((one) => expect.closeTo(one, 6)))
    expect(varied.label).toMatch(/, width$/)
    expect(present).toBeCloseTo(610, 9)
  })

  it('fills in a value with the other side as it is', () => {
    const sheet = stand()
    const { filledWith, values } = rangeTable(sheet, over)
    sheet.apply({ do: 'replace', cell: filledWith?.(values[1]?.text ?? '') as never })
    expect(seen(sheet, 'original')).toBe('200 × 864 mm')
  })

  it('asks for a side where a size is named, and for no side of anything else', () => {
    const problem = (of: string): string => {
      try {
        rangeTable(stand(), range({ of, from: '1', to: '2', results: ['area'] }))
      } catch (error) {
        if (error instanceof RangeInputError) return error.message
      }
      return ''
    }
    expect(problem('original')).toMatch(/original\.width/)
    expect(problem('focal.width')).toMatch(/not a size/)
  })
})

describe('a range over two givens', () => {
  const over = range({
    of: 'focal',
    from: '20',
    to: '100',
    count: 4,
    second: { of: 'magnification', from: '1:10', to: '1:2', count: 2 },
    results: ['extension'],
  })

  it('has axes of equal factors where its values are stops apart, or marks that are', () => {
    const byMarks = { of: 'aperture', from: 'f/4', to: 'f/16', by: 'marks' as const }
    const { across, up } = rangeGrid(stand(), range({ ...over, second: byMarks }))
    expect([across.byFactors, up.byFactors]).toEqual([false, true])
    expect(rangeTable(stand(), range({ ...byMarks, results: ['extension'] })).byFactors).toBe(true)
  })

  it('has the result at every pair of values, as the sheet computes it', () => {
    const sheet = stand()
    const grid = rangeGrid(sheet, over)
    expect(grid.across.shown).toHaveLength(5)
    expect(grid.up.shown).toHaveLength(3)
    for (const [row, m] of grid.up.figures.entries())
      for (const [column, focal] of grid.across.figures.entries()) {
        const own = stand()
        own.apply({ do: 'replace', cell: { ...own.cell('focal'), value: `${focal}` } as never })
        own.apply({ do: 'replace', cell: { ...own.cell('magnification'), value: `1:${m}` } as never })
        expect(grid.shown[row]?.[column]).toBe(seen(own, 'extension'))
        expect(grid.at(focal, m)).toBeCloseTo(focal / m, 9)
      }
    expect(seen(sheet, 'extension')).toBe('15 mm')
  })

  it('is drawn as a map with lines and both axes, and the same figures as a table', () => {
    const drawn = drawRangeMap(rangeGrid(stand(), over), { width: 400, title: undefined })
    const text = JSON.stringify(drawn.node)
    expect(text).toMatch(/isoline/)
    expect(text).toMatch(/present/)
    expect(drawn.table?.rows).toHaveLength(3)
    expect(drawn.table?.rows[0]).toHaveLength(6)
    expect(drawn.omissions).toEqual([])
  })

  it('asks for two different givens', () => {
    expect(() => rangeGrid(stand(), { ...over, second: { of: 'focal', from: '1', to: '2' } })).toThrow(/two different/)
  })
})

describe('the plot of a range', () => {
  const textOf = (more: Partial<Range>): string =>
    JSON.stringify(drawRange(rangeTable(stand(), range(more)), { width: 500, title: undefined }).node)

  it('draws a curve that swings through points enough', () => {
    const text = textOf({ of: 'focal', from: '20', to: '60', count: 2, results: ['swing'] })
    const [, path = ''] =
      /"class":"[^"]*followed"[^}]*"d":"([^"]*)"/.exec(text) ?? /"d":"([^"]{800,})"/.exec(text) ?? []
    expect(path.split(' L ').length).toBeGreaterThan(60)
  })

  it('writes the axes in the notation of the quantity', () => {
    expect(textOf({ of: 'time', by: 'marks', results: ['stops'] })).toMatch(/1\/(?:125|60|30)/)
    expect(textOf({ of: 'magnification', from: '1:10', to: '1:2', results: ['extension'] })).toMatch(/1:\d/)
  })
})
