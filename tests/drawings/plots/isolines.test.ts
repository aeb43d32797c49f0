import { describe, expect, test } from 'vitest'
import { isoline, isolineStep, levelsBetween } from '../../../src/drawings/plots/isolines.ts'

const grid = (side: number, value: (x: number, y: number) => number) => ({
  columns: side,
  rows: side,
  values: Array.from({ length: side * side }, (_, at) =>
    value((at % side) / (side - 1), Math.floor(at / side) / (side - 1)),
  ),
})

describe('an isoline', () => {
  test('of a slope is a straight line from edge to edge, where the slope has that height', () => {
    const [run, ...others] = isoline(
      grid(5, (x) => x),
      0.3,
    )
    expect(others).toEqual([])
    for (const { x } of run ?? []) expect(x).toBeCloseTo(0.3, 9)
    expect([run?.[0]?.y, run?.at(-1)?.y].sort()).toEqual([0, 1])
  })

  test('round a hill is closed', () => {
    const [run, ...others] = isoline(
      grid(41, (x, y) => -Math.hypot(x - 0.5, y - 0.5)),
      -0.3,
    )
    expect(others).toEqual([])
    expect(run?.[0]).toEqual(run?.at(-1))
    for (const { x, y } of run ?? []) expect(Math.hypot(x - 0.5, y - 0.5)).toBeCloseTo(0.3, 2)
  })

  test('round a hollow is closed too', () => {
    const runs = isoline(
      grid(41, (x, y) => Math.hypot(x - 0.5, y - 0.5)),
      0.3,
    )
    expect(runs).toHaveLength(1)
    for (const { x, y } of runs[0] ?? []) expect(Math.hypot(x - 0.5, y - 0.5)).toBeCloseTo(0.3, 2)
  })

  test('never runs along an edge', () => {
    for (const run of isoline(
      grid(21, (x, y) => x + y),
      1,
    ))
      for (const { x, y } of run) expect(x + y).toBeCloseTo(1, 9)
  })

  test('that is nowhere is none', () => {
    expect(
      isoline(
        grid(5, () => 1),
        2,
      ),
    ).toEqual([])
    expect(
      isoline(
        grid(5, () => 1),
        0,
      ),
    ).toEqual([])
  })
})

test('levels are at whole steps within', () => {
  expect(levelsBetween(-0.23, 0.31, 0.1)).toEqual([-0.2, -0.1, 0, 0.1, 0.2, 0.3])
  expect(levelsBetween(0.31, 0.38, 0.1)).toEqual([])
  expect(levelsBetween(-3, 3, 2)).toEqual([-2, 0, 2])
})

test('the step is a tenth of a stop where that makes a fair number of lines', () => {
  expect(isolineStep(0.8)).toBe(0.1)
  expect(isolineStep(0.09)).toBe(0.01)
  expect(isolineStep(6)).toBe(1)
})
