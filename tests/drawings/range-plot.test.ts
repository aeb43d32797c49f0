import { describe, expect, test } from 'vitest'
import type { Drawing } from '../../src/drawings/canvas/tree.ts'
import { drawRange } from '../../src/drawings/range/range-plot.ts'
import { rangeTable } from '../../src/worksheet/analysis/range-table.ts'
import type { Range } from '../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../worksheet/make.ts'
import { clashes, pathsOf, texts } from './reading.ts'

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
  result('steep', '(aperture / 4)^12', { label: 'A steep one' }),
  result('broken', '1 / (focal - 100 mm)', { label: 'Broken' }),
  result('word', 'when(focal > 50 mm, "long", "short")', { label: 'In a word' }),
  result('measured', 'focal * 2', { measured: '1 m', label: 'Measured' }),
])

const RANGES: Readonly<Record<string, Partial<Range>>> = {
  'one result': { of: 'focal', from: '20', to: '120', count: 5, results: ['extension'] },
  'three results': { of: 'focal', from: '20', to: '120', results: ['extension', 'distance', 'effective'] },
  'marked apertures': { of: 'aperture', from: 'f/4', to: 'f/22', by: 'marks', results: ['effective', 'steep'] },
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
    const drawing = draw('three results', 480)
    expect(pathsOf(drawing, 'set', 'present')).toHaveLength(3)
    expect(texts(drawing).map(({ text }) => text)).toContain('now 60 mm')
    expect(texts(drawing).map(({ text }) => text)).toContain('Extension, now 15 mm')
  })

  test('puts apertures a stop apart at equal distances', () => {
    const points = pathsOf(draw('marked apertures', 480), 'followed')[0] as readonly { x: number }[]
    const { values } = tableOf('marked apertures')
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
