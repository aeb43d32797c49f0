import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Canvas } from '../../../src/drawings/canvas/canvas.ts'
import { apertureAxis, drawAxes, linearAxis, logAxis, plotted } from '../../../src/drawings/plots/axes.ts'
import { clashes, texts } from '../reading.ts'

const named = (axis: { ticks: readonly { text?: string }[] }) => axis.ticks.flatMap(({ text }) => text ?? [])

describe('an axis of equal steps', () => {
  test('ends on whole ones and places values evenly', () => {
    const axis = linearAxis([0.3, 9.7], [0, 400], 'Depth, mm')
    expect([axis.from, axis.to]).toEqual([0, 10])
    expect(axis.place(2.5)).toBeCloseTo(100, 9)
    expect(axis.at(0.25)).toBeCloseTo(2.5, 9)
  })
  test('of one value is round it', () => {
    const axis = linearAxis([5, 5], [0, 400], '')
    expect(axis.from).toBeLessThan(5)
    expect(axis.to).toBeGreaterThan(5)
  })
  test('accepts values that are not numbers', () => {
    expect(Number.isFinite(linearAxis([Number.NaN, Number.POSITIVE_INFINITY], [0, 400], '').place(1))).toBe(true)
  })
  test('has ticks between any two doubles, the smallest included', () => {
    const ends = fc.tuple(fc.double(), fc.double())
    fc.assert(
      fc.property(fc.oneof(ends, fc.constantFrom([0, 5e-324] as const, [-5e-324, 5e-324] as const)), ([from, to]) => {
        for (const axis of [
          linearAxis([from, to], [0, 400], ''),
          logAxis([from, to], [0, 400], ''),
          apertureAxis([from, to], [0, 400], ''),
        ]) {
          expect(axis.to).toBeGreaterThan(axis.from)
          expect(axis.ticks.length).toBeLessThan(1_000)
          for (const { value } of axis.ticks) expect(Number.isFinite(axis.place(value))).toBe(true)
        }
      }),
    )
  })
})

describe('an axis of equal factors', () => {
  test('names 1, 2 and 5', () => {
    expect(named(logAxis([0.4, 30], [300, 0], 'Blur, px'))).toEqual(['0.5', '1', '2', '5', '10', '20'])
  })
  test('gives a factor the same way everywhere', () => {
    const axis = logAxis([0.4, 30], [300, 0], '')
    expect(axis.place(1) - axis.place(2)).toBeCloseTo(axis.place(10) - axis.place(20), 9)
  })
})

describe('an axis of apertures', () => {
  const axis = apertureAxis([2.8, 22], [0, 300], 'Aperture, f/')
  test('names the full stops as they are engraved', () => {
    expect(named(axis)).toEqual(['2.8', '4', '5.6', '8', '11', '16', '22'])
  })
  test('has two marks between, third-stops apart', () => {
    const places = axis.ticks.map(({ value }) => axis.place(value))
    const steps = places.slice(1).map((at, which) => at - (places[which] as number))
    expect(axis.ticks).toHaveLength(19)
    for (const step of steps) expect(step).toBeCloseTo(steps[0] as number, 6)
  })
  test('puts a stop the same way apart everywhere', () => {
    expect(axis.place(4 * Math.SQRT2) - axis.place(4)).toBeCloseTo(axis.place(16) - axis.place(16 / Math.SQRT2), 9)
  })
})

test.each([120, 200, 300, 600])('figures never touch: %i px', (width) => {
  const sheet = new Canvas(width)
  const x = apertureAxis([0.5, 128], [50, width - 10], 'Aperture, f/')
  const y = linearAxis([0, 100_000], [90, 30], 'Light, lx')
  drawAxes(
    sheet,
    { box: { left: 50, right: width - 10, top: 30, bottom: 90 }, x, y },
    {
      left: 0,
      right: width,
      top: 0,
      bottom: 140,
    },
  )
  const drawing = { node: sheet.node(140, '', ''), title: '', description: '', omissions: [], width, height: 140 }
  expect(clashes(drawing)).toEqual([])
  expect(texts(drawing).filter(({ as }) => as.includes('tick-text')).length).toBeGreaterThanOrEqual(2)
})

test('a curve is broken where it leaves the plot', () => {
  const box = { left: 0, right: 100, top: 0, bottom: 100 }
  const plot = { box, x: linearAxis([0, 10], [0, 100], ''), y: linearAxis([0, 10], [100, 0], '') }
  const runs = plotted(plot, (value) => 5 + 8 * Math.cos(value))
  expect(runs.length).toBeGreaterThan(1)
  for (const { x, y } of runs.flat()) {
    expect(y).toBeGreaterThanOrEqual(-0.01)
    expect(y).toBeLessThanOrEqual(100.01)
    expect(y).toBeCloseTo(100 - 10 * (5 + 8 * Math.cos(x / 10)), 6)
  }
})
