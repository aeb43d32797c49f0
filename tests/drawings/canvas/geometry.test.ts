import { describe, expect, test } from 'vitest'
import { crosses, point, shareWithin, without } from '../../../src/drawings/canvas/geometry.ts'
import { hatch } from '../../../src/drawings/canvas/hatch.ts'

const BOX = { left: 10, top: 10, right: 20, bottom: 20 }

describe('a line and a box', () => {
  test('cross where the line passes through', () => {
    expect(crosses({ from: point(0, 15), to: point(30, 15) }, BOX)).toBe(true)
    expect(crosses({ from: point(12, 12), to: point(18, 18) }, BOX)).toBe(true)
  })
  test('do not where it passes by, ends before or runs along a side', () => {
    expect(crosses({ from: point(0, 5), to: point(30, 5) }, BOX)).toBe(false)
    expect(crosses({ from: point(0, 15), to: point(9, 15) }, BOX)).toBe(false)
    expect(crosses({ from: point(0, 25), to: point(15, 21) }, BOX)).toBe(false)
  })
  test('leave the parts outside', () => {
    expect(without({ from: point(0, 15), to: point(30, 15) }, [BOX])).toEqual([
      { from: point(0, 15), to: point(10, 15) },
      { from: point(20, 15), to: point(30, 15) },
    ])
  })
  test('leave nothing of a line within', () => {
    expect(without({ from: point(12, 15), to: point(18, 15) }, [BOX])).toEqual([])
  })
})

test('a line’s share within a shape is found whichever way round the shape is given', () => {
  const shape = [point(0, 0), point(10, 0), point(10, 10), point(0, 10)]
  const line = { from: point(-10, 5), to: point(30, 5) }
  expect(shareWithin(line, shape)).toEqual([0.25, 0.5])
  expect(shareWithin(line, [...shape].reverse())).toEqual([0.25, 0.5])
})

test('hatching keeps its spacing and clear of what it must', () => {
  const square = [point(0, 0), point(100, 0), point(100, 100), point(0, 100)]
  const hole = { left: 40, top: 40, right: 60, bottom: 60 }
  const strokes = hatch(square, { spacing: 10, angle: 0, around: [hole] })
  const levels = [...new Set(strokes.map(({ from }) => Math.round(from.y)))].sort((a, b) => a - b)
  for (const [at, level] of levels.entries()) if (at > 0) expect(level - (levels[at - 1] as number)).toBe(10)
  expect(strokes.some((stroke) => crosses(stroke, hole))).toBe(false)
})
