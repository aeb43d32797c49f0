import fc from 'fast-check'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawRange } from '../../src/drawings/range/range-plot.ts'
import { rangeTable } from '../../src/worksheet/analysis/range-table.ts'
import type { Range } from '../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../worksheet/make.ts'
import { clashes, pathsOf, texts } from './reading.ts'

// Drawings spend little time on a result that is slow to compute; a busy machine makes none of these slow.
beforeEach(() => {
  vi.spyOn(performance, 'now').mockReturnValue(0)
  return () => vi.restoreAllMocks()
})

const SHEET = sheetOf([
  given('focal', '60 mm', { unit: 'mm', label: 'Focal length of the lens as it is focused' }),
  given('magnification', '1:4', { unit: '1:', label: 'Magnification' }),
  given('aperture', 'f/8', { unit: 'f/', label: 'Aperture' }),
  given('none', '0', { label: 'Nothing' }),
  result('extension', 'focal * magnification', { unit: 'mm', label: 'Extension' }),
  result('distance', 'focal * (1 + 1 / magnification)', {
    unit: 'mm',
    label: 'From the original to the front principal plane',
  }),
  result('effective', 'aperture * (1 + magnification)', { unit: 'f/', label: 'Aperture at work' }),
  result('inverse', '18000 [mm^2] / focal', { unit: 'mm', label: 'The longer the lens, the less of it there is' }),
  result('steep', '(aperture / 4)^12', { label: 'A steep one' }),
  result('broken', '1 / (focal - 100 mm)', { label: 'Broken' }),
  result('word', 'when(focal > 50 mm, "long", "short")', { label: 'In a word' }),
  result('measured', 'focal * 2', { measured: '1 m', label: 'Measured' }),
])

const RANGES: Readonly<Record<string, Partial<Range>>> = {
  'one result': { of: 'focal', from: '20', to: '120', count: 5, results: ['extension'] },
  'three results': { of: 'focal', from: '20', to: '120', results: ['extension', 'inverse', 'effective'] },
  'marked apertures': { of: 'aperture', from: 'f/4', to: 'f/22', by: 'marks', results: ['effective', 'steep'] },
  'one marked aperture': { of: 'aperture', from: 'f/4', to: 'f/22', by: 'marks', results: ['effective'] },
  stops: { of: 'focal', from: '10', to: '160', by: 'stops', results: ['extension'] },
  'a ratio': { of: 'magnification', from: '1:2', to: '1:20', results: ['distance'] },
  'a broken line': { of: 'focal', from: '50', to: '150', count: 2, results: ['broken', 'extension'] },
  'no figures': { of: 'focal', from: '20', to: '120', results: ['word'] },
  'a measured result': { of: 'focal', from: '20', to: '120', results: ['measured', 'extension'] },
  'one value': { of: 'focal', from: '60', to: '60', count: 1, results: ['extension'] },
  'two hundred values': { of: 'focal', from: '20', to: '120', count: 199, results: ['extension'] },
  'nothing changes': { of: 'none', from: '0', to: '1', results: ['extension'] },
}

const tableOf = (name: string) =>
  rangeTable(SHEET, { kind: 'range', id: 'r', results: [], ...(RANGES[name] as Partial<Range>) } as Range)
const draw = (name: string, width = 340): Drawing => drawRange(tableOf(name), { width })

describe('a range plot', () => {
  test('is a straight line for what is proportional, the points where the axes say', () => {
    const drawing = draw('one result', 480)
    const points = pathsOf(drawing, 'followed').flat()
    const [first, last] = [points[0] as { x: number; y: number }, points.at(-1) as { x: number; y: number }]
    expect(points.length).toBeGreaterThan(6)
    for (const { x, y } of points)
      expect(y).toBeCloseTo(first.y + ((last.y - first.y) * (x - first.x)) / (last.x - first.x), 1)
    // Read off the axes' own figures: 20 mm gives 5 mm, 120 mm gives 30 mm.
    const tick = (text: string) => texts(drawing).find((one) => one.as.includes('tick-text') && one.text === text)?.box
    const middle = (box: { left: number; right: number } | undefined) => box && (box.left + box.right) / 2
    expect(middle(tick('20'))).toBeCloseTo(first.x, 0)
    expect(middle(tick('120'))).toBeCloseTo(last.x, 0)
  })

  test('of an oscillating result is a smooth curve, not straight lines between few points', () => {
    const sheet = sheetOf([given('focal', '60 mm', { unit: 'mm' }), result('wave', 'sin(focal * 2 [rad/mm])')])
    const table = rangeTable(sheet, {
      kind: 'range',
      id: 'r',
      of: 'focal',
      from: '20',
      to: '120',
      results: ['wave'],
    } as Range)
    const points = pathsOf(drawRange(table, { width: 480 }), 'followed').flat()
    const [from, to] = [points[0] as { x: number }, points.at(-1) as { x: number }]
    const period = ((to.x - from.x) * Math.PI) / 100
    // 32 periods: each of them with enough places that its crest is met to within two parts in a hundred.
    const perPeriod = points.filter(({ x }) => x >= from.x + period && x < from.x + 2 * period).length
    expect(1 - Math.cos(Math.PI / perPeriod)).toBeLessThan(0.02)
  })

  test('marks the present value and says it, on every plot', () => {
    // Where there is no room for three scales, one plot is above the other.
    const drawing = draw('three results', 240)
    expect(pathsOf(drawing, 'set', 'present')).toHaveLength(3)
    expect(texts(drawing).map(({ text }) => text)).toContain('now 60 mm')
    expect(texts(drawing).map(({ text }) => text)).toContain('Extension, now 15 mm')
  })

  test('has several results in one plot, each on the scale that is named', () => {
    const drawing = draw('three results', 620)
    expect(pathsOf(drawing, 'set', 'present')).toHaveLength(1)
    const said = texts(drawing).map(({ text }) => text)
    expect(said).toContain('Extension, now 15 mm: left scale')
    expect(said.join()).toMatch(/less of it there is, now 300 mm: right scale/)
    expect(said.join()).toMatch(/Aperture at work, now f\/10: outer right scale/)
    // The first point of the extension, read off the left scale: 20 mm at 1:4 gives 5 mm.
    const ticks = texts(drawing).filter(({ as }) => as.includes('tick-text'))
    const middle = ({ top, bottom }: { top: number; bottom: number }) => (top + bottom) / 2
    const right = Math.min(...ticks.map(({ box }) => box.right))
    const scale = ticks.filter(({ box }) => Math.abs(box.right - right) < 0.5)
    const [low, high] = [scale[0], scale.at(-1)] as [(typeof ticks)[0], (typeof ticks)[0]]
    const share = (5 - Number(low.text)) / (Number(high.text) - Number(low.text))
    const [run] = pathsOf(drawing, 'thick', 'followed')
    expect(run?.[0]?.y).toBeCloseTo(middle(low.box) + share * (middle(high.box) - middle(low.box)), -1)
  })

  test('puts results whose lines would be one line in plots of their own', () => {
    const sheet = sheetOf([given('a', '1 mm', { unit: 'mm' }), result('b', '2 * a'), result('c', '200 * a / 1 s')])
    const range = { kind: 'range', id: 'r', of: 'a', from: '1', to: '5', results: ['b', 'c'] } as Range
    expect(pathsOf(drawRange(rangeTable(sheet, range), { width: 600 }), 'set', 'present')).toHaveLength(2)
  })

  test('shares a scale among results in one unit that are comparable in size', () => {
    const sheet = sheetOf([
      given('focal', '60 mm', { unit: 'mm' }),
      result('near', 'focal * 4', { unit: 'mm' }),
      result('far', 'focal * 5', { unit: 'mm' }),
      result('small', 'focal / 100', { unit: 'mm' }),
    ])
    const of = (results: string[]) =>
      texts(
        drawRange(rangeTable(sheet, { kind: 'range', id: 'r', of: 'focal', from: '20', to: '120', results } as Range), {
          width: 500,
        }),
      )
        .map(({ text }) => text)
        .join()
    expect(of(['near', 'far'])).not.toContain('scale')
    expect(of(['near', 'far', 'small'])).toContain('far, now 300 mm: left scale')
    expect(of(['near', 'far', 'small'])).toContain('small, now 0.6 mm: right scale')
  })

  test('of any oscillation has no chord where the curve is elsewhere, whatever its period', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), fc.integer({ min: 0, max: 6 }), (periods, phase) => {
        const sheet = sheetOf([
          given('focal', '60 mm', { unit: 'mm' }),
          result('wave', `sin(focal * ${(2 * Math.PI * periods) / 100} [rad/mm] + ${phase} rad)`),
        ])
        const table = rangeTable(sheet, {
          kind: 'range',
          id: 'r',
          of: 'focal',
          from: '20',
          to: '120',
          results: ['wave'],
        } as Range)
        const points = pathsOf(drawRange(table, { width: 480 }), 'followed').flat()
        // The mean of |sin| is 2/π; by straight lines between too few points it would be less.
        const [top, bottom] = [Math.min(...points.map(({ y }) => y)), Math.max(...points.map(({ y }) => y))]
        const height = (y: number) => Math.abs((2 * (y - top)) / (bottom - top) - 1)
        const area = points.slice(1).reduce((sum, { x, y }, at) => {
          const before = points[at] as { x: number; y: number }
          return sum + ((x - before.x) * (height(y) + height(before.y))) / 2
        }, 0)
        const width = (points.at(-1) as { x: number }).x - (points[0] as { x: number }).x
        expect(area / width).toBeGreaterThan(2 / Math.PI - 0.1)
        expect(area / width).toBeLessThan(2 / Math.PI + 0.1)
      }),
      { numRuns: 40 },
    )
  })

  test('puts apertures a stop apart at equal distances', () => {
    const points = pathsOf(draw('one marked aperture', 480), 'thin')
      .filter((run) => run.length === 5)
      .map(([top]) => top as { x: number })
    const { values } = tableOf('one marked aperture')
    const at = (mark: string) => (points[values.findIndex(({ text }) => text === mark)] as { x: number }).x
    expect(at('f/8') - at('f/4')).toBeCloseTo(at('f/16') - at('f/8'), 1)
  })

  test('breaks the line where there is no figure, and says so', () => {
    const drawing = draw('a broken line')
    expect(drawing.omissions.join()).toContain('Broken has no figure at 1 of 3 values')
    expect(drawing.table?.rows.map((row) => row[1])).toContain('–')
  })

  test('says of what has no figures, or was measured, that it is not followed', () => {
    expect(draw('no figures').omissions.join()).toContain('In a word is not plotted')
    expect(draw('no figures').description).not.toBe('')
    expect(draw('a measured result').omissions.join()).toContain('Measured was measured')
  })

  test('gives its figures in words and in a table', () => {
    const { description, table } = draw('one result')
    expect(description).toContain('from 20 mm to 120 mm, at 6 values: Extension from 5 mm to 30 mm.')
    expect(table?.rows).toHaveLength(6)
    expect(table?.rows[2]).toEqual(['60 mm (now)', '15 mm'])
  })

  test.each(Object.keys(RANGES))('%s: no lettering is crossed at any width', (name) => {
    for (const width of [240, 300, 340, 460, 620]) {
      const drawing = draw(name, width)
      expect([width, clashes(drawing)]).toEqual([width, []])
      expect(drawing.height).toBeGreaterThan(0)
      expect(JSON.stringify(drawing.node)).not.toMatch(/NaN|Infinity|null/)
    }
  })
})
