import { describe, expect, it } from 'vitest'
import { evennessOf } from '../../../src/functions/lamps/light-field.ts'
import { isAllowed, type Pair, type PairTask, pairLamps } from '../../../src/functions/light/lamp-pair.ts'
import { placePair } from '../../../src/functions/light/place-lamps.ts'

const DEGREE = Math.PI / 180
const task: PairTask = {
  width: 0.6,
  height: 0.45,
  lensHeight: 1.2,
  limit: 0.1,
  beamAngle: 120 * DEGREE,
  lampRadius: 0,
  glossy: true,
  reach: 3,
}

/** The spread of a pair over the whole field, summed point by point without the engine's field. */
function spreadOf(x: number, z: number, aim: number, n: number): number {
  const long = Math.hypot(x - aim, z)
  const from = (px: number, py: number): number => {
    const dx = px - x
    const d = Math.hypot(dx, py, z)
    return (Math.max(0, ((aim - x) * dx + z * z) / long / d) ** n * z) / d ** 3
  }
  let least = Number.POSITIVE_INFINITY
  let greatest = 0
  for (let i = 0; i <= 8; i++)
    for (let j = 0; j <= 4; j++) {
      const px = task.width * (i / 8 - 0.5)
      const py = (task.height / 2) * (j / 4)
      const value = from(px, py) + from(-px, py)
      least = Math.min(least, value)
      greatest = Math.max(greatest, value)
    }
  return Math.log2(greatest / least)
}

/** Every place on a grid, nearest first: the first that serves. */
function bruteForce(limit: number, n: number, radius: number, step: number): { x: number; z: number; aim: number } {
  const places: { x: number; z: number }[] = []
  for (let x = 0.3; x <= 2; x += step)
    for (let z = step; z + radius <= x + 1e-9; z += step)
      if (x - radius >= (task.width / 2) * (1 + z / task.lensHeight)) places.push({ x, z })
  places.sort((a, b) => Math.hypot(a.x, a.z) - Math.hypot(b.x, b.z))
  for (const { x, z } of places)
    for (let aim = -0.3; aim <= 0.3 + 1e-9; aim += 0.02) if (spreadOf(x, z, aim, n) <= limit) return { x, z, aim }
  throw new Error('No place serves.')
}

function holds(pair: Pair, limits: PairTask): void {
  const lamps = pairLamps(pair.x, pair.z, pair.aim_x, limits.beamAngle)
  expect(evennessOf(lamps, limits.width, limits.height).spread).toBeLessThanOrEqual(limits.limit)
  expect(pair.x - limits.lampRadius).toBeGreaterThanOrEqual(
    (limits.width / 2) * (1 + pair.z / limits.lensHeight) - 1e-9,
  )
  expect(pair.z + limits.lampRadius).toBeLessThanOrEqual(pair.x + 1e-9)
  expect(Math.abs(pair.aim_x)).toBeLessThanOrEqual(limits.width / 2 + 1e-12)
  expect(Math.hypot(pair.x, pair.z)).toBeLessThanOrEqual(limits.reach + 1e-9)
}

describe('placing a pair of lamps', () => {
  it('agrees with a search of every place, for soft and narrower beams and for large lamps', () => {
    const cases: readonly (readonly [change: Partial<PairTask>, n: number])[] = [
      [{}, 1],
      [{ beamAngle: 90 * DEGREE }, 2],
      [{ lampRadius: 0.2 }, 1],
      [{ limit: 0.5 }, 1],
    ]
    for (const [change, n] of cases) {
      const limits = { ...task, ...change }
      const found = placePair(limits)
      const step = 0.03
      const best = bruteForce(limits.limit, n, limits.lampRadius, step)
      holds(found, limits)
      expect(found.met).toBe(true)
      // Nothing on the grid is nearer, and the grid has a place within a step of it.
      expect(Math.hypot(found.x, found.z)).toBeLessThanOrEqual(Math.hypot(best.x, best.z) + 1e-3)
      expect(Math.hypot(best.x, best.z) - Math.hypot(found.x, found.z)).toBeLessThan(1.5 * step)
    }
  })

  it('finds the trade’s place for 0.6 × 0.45 m under 1.2 m within 0.1 stop', () => {
    const pair = placePair(task)
    expect(pair.x).toBeCloseTo(1.35, 2)
    expect(pair.z).toBeCloseTo(1.35, 2)
    expect(pair.aim_x).toBeCloseTo(-0.3, 3)
    expect(pair.binding).toBe('evenness and elevation')
  })

  it('says which limit rules it out when no place serves', () => {
    const short = placePair({ ...task, reach: 1 })
    expect(short.met).toBe(false)
    expect(short.binding).toBe('reach')
    expect(short.spread).toBeGreaterThan(0.1)
    expect(Math.hypot(short.x, short.z)).toBeCloseTo(1, 3)
    // So low a camera sees lamps mirrored far out; a matt original would do from here.
    expect(placePair({ ...task, lensHeight: 0.25, reach: 2 }).binding).toContain('mirror zone')
    expect(placePair({ ...task, lensHeight: 0.25, reach: 2, glossy: false }).met).toBe(true)
    expect(placePair({ ...task, reach: 0.2 }).binding).toBe('reach')
  })

  it('gives numbers, whatever is asked', () => {
    for (const change of [
      { limit: 1e-6 },
      { limit: 1e3 },
      { width: 1e-3, height: 10 },
      { width: 10, height: 1e-3, reach: 1 },
      { beamAngle: 1 * DEGREE },
      { beamAngle: 179.9 * DEGREE },
      { lampRadius: 5 },
      { lensHeight: 1e-3 },
    ]) {
      const pair = placePair({ ...task, ...change })
      for (const part of [pair.x, pair.z, pair.aim_x, pair.elevation]) expect(Number.isFinite(part)).toBe(true)
      expect(pair.spread).not.toBeNaN()
    }
  })

  it('gives the same answer each time', () => {
    const first = placePair(task)
    for (let i = 0; i < 5; i++) expect(placePair(task)).toEqual(first)
  })
})

describe('a pair on a lattice', () => {
  const STEP = 0.01
  const isMultiple = (value: number) => Math.abs(value / STEP - Math.round(value / STEP)) < 1e-9
  /** The figure as a sheet shows it, to a millimetre, and as it is typed back. */
  const typed = (metres: number) => Number((metres * 1000).toFixed(0)) / 1000

  it.each([
    [0.6, 0.45, 1.2, 0.1, 0, true],
    [0.42, 0.297, 0.8, 0.1, 0.1, true],
    [1, 0.7, 1.6, 0.15, 0.05, false],
    [0.3, 0.4, 0.7, 0.2, 0, true],
  ] as const)(
    'for %f × %f m stands on it, passes as typed, and is hardly farther',
    (width, height, lensHeight, limit, lampRadius, glossy) => {
      const limits: PairTask = { ...task, width, height, lensHeight, limit, lampRadius, glossy, reach: 5 }
      const free = placePair(limits)
      const pair = placePair({ ...limits, step: STEP })
      expect(free.met).toBe(true)
      expect(pair.met).toBe(true)
      for (const value of [pair.x, pair.z, pair.aim_x]) expect(isMultiple(value)).toBe(true)
      const lamps = pairLamps(typed(pair.x), typed(pair.z), typed(pair.aim_x), limits.beamAngle)
      expect(evennessOf(lamps, width, height).spread).toBeLessThanOrEqual(limit)
      expect(isAllowed(limits, typed(pair.x), typed(pair.z))).toBe(true)
      expect(Math.hypot(pair.x, pair.z) - Math.hypot(free.x, free.z)).toBeLessThan(2 * STEP)
      expect(pair.binding).toBe(free.binding)
    },
  )

  it('has no nearer passing place on the lattice', () => {
    const limits: PairTask = { ...task, step: 0.05 }
    const pair = placePair(limits)
    const distance = Math.hypot(pair.x, pair.z)
    for (let i = 1; i * 0.05 < distance; i++)
      for (let j = 1; j <= i; j++) {
        const [x, z] = [i * 0.05, j * 0.05]
        if (Math.hypot(x, z) >= distance - 1e-9 || !isAllowed(limits, x, z)) continue
        for (let k = -6; k <= 6; k++) {
          const lamps = pairLamps(x, z, k * 0.05, limits.beamAngle)
          expect(evennessOf(lamps, limits.width, limits.height).spread).toBeGreaterThan(limits.limit)
        }
      }
  })

  it('where nothing passes is the same place, rounded, and says so', () => {
    const limits: PairTask = { ...task, reach: 1 }
    const [free, pair] = [placePair(limits), placePair({ ...limits, step: STEP })]
    expect(pair.met).toBe(false)
    expect(pair.binding).toBe(free.binding)
    expect(Math.abs(pair.x - free.x)).toBeLessThanOrEqual(STEP / 2 + 1e-12)
  })
})
