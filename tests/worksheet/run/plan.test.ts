import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { tubeChoices } from '../../../src/functions/camera/tube-choices.ts'
import { type Original, planRun, type Rig } from '../../../src/worksheet/run/plan.ts'
import { heightsText, ratioText, timeText } from '../../../src/worksheet/run/plan-text.ts'
import { Reach } from '../../../src/worksheet/run/reach.ts'
import { framesAt, greatestMagnification } from '../../../src/worksheet/run/tiles.ts'

const MM = 1e-3
const PPI = 1 / 25.4e-3
const MINUTE = 60

const SENSOR = { width: 36 * MM, height: 24 * MM }
/** 36 mm of 6000 px. */
const PITCH = 6e-6

const rig = (more: Partial<Rig> = {}): Rig => ({
  sensor: SENSOR,
  pitch: PITCH,
  setupTime: 0,
  breakTime: 0,
  copies: 1,
  ...more,
})

const original = (row: number, width: number, height: number, ppi: number, more: Partial<Original> = {}): Original => ({
  row,
  title: `${row + 1}`,
  width: width * MM,
  height: height * MM,
  thickness: 0,
  sampling: ppi * PPI,
  border: 0,
  overlap: 30 * MM,
  turn: true,
  exposure: '',
  pages: 1,
  frameTime: 0,
  originalTime: 0,
  frameData: 0,
  done: false,
  ...more,
})

const LENS = {
  focal: 55 * MM,
  greatest: 1 / 8,
  gap: 0,
  tubes: [12 * MM, 20 * MM],
  closeups: [] as number[],
  spacing: 0,
  separation: 0,
}

/** Odd lists on odd cameras: small, large, fine and coarse, in up to three exposures, with gaps in what is reached. */
const lists = fc.array(
  fc.record({
    width: fc.integer({ min: 20, max: 900 }),
    height: fc.integer({ min: 20, max: 900 }),
    ppi: fc.constantFrom(100, 200, 300, 400, 600, 1200),
    exposure: fc.constantFrom('matt', 'glossy', 'behind glass'),
    thickness: fc.constantFrom(0, 0, 5, 40),
    pages: fc.integer({ min: 1, max: 3 }),
    done: fc.boolean(),
  }),
  { maxLength: 8 },
)
const rigs = fc.constantFrom<Rig>(
  rig(),
  rig({ lens: LENS }),
  rig({ lens: { ...LENS, greatest: undefined }, column: { offset: 0.04, least: 0.3, most: 1.1 } }),
  rig({ lens: LENS, column: { offset: 0.04, least: 0.25, most: 1.4 } }),
  rig({ lens: { ...LENS, tubes: [36 * MM], closeups: [4, 10], spacing: 8 * MM } }),
)
const asOriginals = (list: readonly { [key: string]: unknown }[]): Original[] =>
  list.map(({ width, height, ppi, thickness, ...more }, row) =>
    original(row, width as number, height as number, ppi as number, { ...more, thickness: (thickness as number) * MM }),
  )

/** The fewest magnifications that together serve all, by trying them all: a fine grid, and whatever else is given. */
function bruteForce(served: readonly number[]): number {
  const all = served.reduce((union, one) => union | one, 0)
  const fewest = new Map([[0, 0]])
  for (let count = 0; ; count++) {
    if (fewest.has(all)) return fewest.get(all) as number
    for (const [mask, at] of [...fewest])
      if (at === count) for (const one of served) if (!fewest.has(mask | one)) fewest.set(mask | one, count + 1)
  }
}

describe('a plan of the run', () => {
  it('has the fewest set-ups there can be with every original in its fewest frames', () => {
    fc.assert(
      fc.property(lists, rigs, (list, one) => {
        const originals = asOriginals(list)
        const plan = planRun(originals, one)
        const unplanned = new Set(plan.unplanned.map(({ row }) => row))
        const reach = new Reach(one.lens)
        const grid = Array.from({ length: 1200 }, (_, i) => 0.004 * 1.005 ** i)
        for (const exposure of new Set(originals.map((each) => each.exposure))) {
          const own = plan.setups.filter((setup) => setup.exposure === exposure)
          const here = originals.filter((each) => each.exposure === exposure && !unplanned.has(each.row))
          const tried = [...grid, ...own.map(({ magnification }) => magnification)].filter(
            (m) => !one.lens || reach.meansFor(m),
          )
          // Judged by what it is, not by the planner's limits: sharp enough, the camera on the column, so many frames.
          const frames = here.map((each) =>
            tried.map((m) => {
              const height = one.column && one.lens && reach.meansFor(m)?.track(m)
              const stands =
                height === undefined ||
                (height + (one.column?.offset ?? 0) + each.thickness <= (one.column?.most ?? 9) * (1 + 1e-9) &&
                  height + (one.column?.offset ?? 0) + each.thickness >= (one.column?.least ?? 0) * (1 - 1e-9))
              if (!stands || m < each.sampling * one.pitch * (1 - 1e-9)) return Number.POSITIVE_INFINITY
              return framesAt(each, one.sensor, m)?.count ?? Number.POSITIVE_INFINITY
            }),
          )
          const fewest = frames.map((counts) => Math.min(...counts))
          const masks = tried.map((_, at) =>
            frames.reduce((mask, counts, i) => (counts[at] === fewest[i] ? mask | (1 << i) : mask), 0),
          )
          expect(own.length).toBe(bruteForce([...new Set(masks)]))
        }
      }),
      { numRuns: 250 },
    )
  })

  it('holds every original once, in a set-up that serves it, or says why it does not', () => {
    fc.assert(
      fc.property(lists, rigs, fc.boolean(), (list, one, left) => {
        const originals = asOriginals(list)
        const plan = planRun(originals, one, { left })
        const rows = [
          ...plan.setups.flatMap((setup) => setup.originals.map((each) => each.original.row)),
          ...plan.unplanned.map(({ row }) => row),
          ...plan.leftOut.map(({ row }) => row),
        ]
        expect(rows.sort((a, b) => a - b)).toEqual(originals.map(({ row }) => row))
        if (left) expect(plan.leftOut.map(({ row }) => row)).toEqual(originals.filter((o) => o.done).map((o) => o.row))
        for (const { why } of plan.unplanned) expect(why).toMatch(/\.$/)
        for (const setup of plan.setups) {
          const { magnification: m, means, exposure } = setup
          if (one.lens) expect(means && m >= means.least * (1 - 1e-9) && m <= means.most * (1 + 1e-9)).toBe(true)
          for (const { original: each, tiles, frames } of setup.originals) {
            expect(each.exposure).toBe(exposure)
            expect(m).toBeGreaterThanOrEqual(each.sampling * one.pitch * (1 - 1e-9))
            const [across, down] = tiles.turned ? [24 * MM, 36 * MM] : [36 * MM, 24 * MM]
            const reached = (count: number, tile: number) => count * (tile / m) - (count - 1) * (each.overlap ?? 0)
            expect(reached(tiles.across, across)).toBeGreaterThanOrEqual(each.width * (1 - 1e-9))
            expect(reached(tiles.down, down)).toBeGreaterThanOrEqual(each.height * (1 - 1e-9))
            expect(frames).toBe(tiles.count * each.pages)
          }
        }
      }),
      { numRuns: 300 },
    )
  })

  it('adds up', () => {
    fc.assert(
      fc.property(lists, fc.boolean(), (list, left) => {
        const originals = asOriginals(list).map((each) => ({
          ...each,
          frameTime: 40,
          originalTime: 90,
          frameData: 1e6,
        }))
        const { setups, total, progress, unplanned } = planRun(
          originals,
          rig({ setupTime: 15 * MINUTE, spell: 3600, breakTime: 600, day: 6 * 3600, copies: 2 }),
          { left },
        )
        const frames = setups.flatMap((s) => s.originals).reduce((sum, o) => sum + o.frames, 0)
        expect(total.frames).toBe(frames)
        expect(total.time).toBe(total.count * 90 + frames * 40)
        expect(total.data).toBe(frames * 2e6)
        expect(total.setupTime).toBe(setups.length * 15 * MINUTE)
        const work = total.time + total.setupTime
        expect(total.breaks).toBe(Math.max(0, Math.ceil(work / 3600) - 1) * 600)
        expect(total.all).toBe(work + total.breaks)
        expect(total.days).toBeCloseTo(total.all / 6 / 3600, 12)
        expect(progress.left.count).toBe(
          originals.filter((o) => !o.done).length - unplanned.filter((o) => !o.done).length,
        )
        if (left) expect(progress.left).toEqual(total)
      }),
    )
  })

  it('goes from the lowest camera to the highest in each exposure, the exposures as listed', () => {
    const { setups } = planRun(
      [
        original(0, 600, 400, 150, { exposure: 'glossy' }),
        original(1, 90, 60, 600, { exposure: 'matt' }),
        original(2, 300, 200, 300, { exposure: 'glossy' }),
        original(3, 600, 400, 150, { exposure: 'matt' }),
      ],
      rig({ lens: { ...LENS, greatest: 1 }, column: { offset: 0.05 } }),
    )
    expect(setups.map(({ exposure }) => exposure)).toEqual(['glossy', 'glossy', 'matt', 'matt'])
    const heights = setups.map((setup) => setup.heights?.least as number)
    expect(heights[0]).toBeLessThan(heights[1] as number)
    expect(heights[2]).toBeLessThan(heights[3] as number)
    // 1:16.667 with 55 mm: 55 (2 + 0.06 + 16.667) + 50 mm.
    expect(heights[1]).toBeCloseTo(0.055 * (2 + 0.06 + 1 / 0.06) + 0.05, 12)
  })

  it('puts what is too large into the set-up of another where its frames stay as few', () => {
    // 1.2 m at 254 ppi asks for 0.06 at 6 µm: frames of 600 × 400 mm, turned 4 × 2 with 30 mm overlap; 0.0625 still does.
    const { setups } = planRun([original(0, 1200, 900, 254), original(1, 576, 380, 254)], rig())
    expect(setups).toHaveLength(1)
    const [whole, parts] = setups[0]?.originals ?? []
    expect(whole).toMatchObject({ original: { row: 1 }, frames: 1 })
    expect(parts).toMatchObject({ original: { row: 0 }, frames: 8, tiled: 'Too large for one frame at 254 ppi.' })
  })

  it('says whether column or lens keeps what would fit one frame from doing so', () => {
    const tiled = (each: Original, one: Rig) => planRun([each], one).setups[0]?.originals[0]?.tiled
    // 600 × 400 mm fits at 0.06, which puts the sensor at 55 (2 + 0.06 + 16.667) = 1030 mm.
    const wide = original(0, 600, 400, 200)
    expect(tiled(wide, rig({ lens: LENS, column: { offset: 0, most: 1.1 } }))).toBeUndefined()
    expect(tiled(wide, rig({ lens: LENS, column: { offset: 0, most: 1 } }))).toMatch(/1:16.7, for which the column is/)
    // 240 × 160 mm fits at 0.15; the lens ends at 0.125, and the shorter tube begins at 0.218.
    const small = original(0, 240, 160, 600)
    const gap = /1:6.67, which none of the lenses and tubes gives; the next magnification is 1:4.58/
    expect(tiled(small, rig({ lens: LENS }))).toMatch(gap)
    expect(tiled(small, rig({ lens: LENS, column: { offset: 0, most: 1 } }))).toMatch(gap)
  })

  it('says what keeps an original out, and with what figures', () => {
    const whyOf = (each: Original, one: Rig): string => planRun([each], one).unplanned[0]?.why ?? ''
    expect(whyOf(original(0, 20, 20, 5000), rig({ lens: LENS }))).toBe(
      '5000 ppi needs 1.18:1; the lens with its tubes and close-up lenses reaches 1:1.41. Lower the sampling, add a tube or a close-up lens, or use another lens.',
    )
    expect(whyOf(original(0, 900, 900, 600, { overlap: 0.2 }), rig())).toContain('overlap of 200 mm is as long')
    expect(whyOf(original(0, 90_000, 90_000, 600, { overlap: 0 }), rig())).toContain('Check its size')
    expect(whyOf(original(0, 90, 60, 600), rig({ lens: LENS, column: { offset: 0, most: 0.2 } }))).toContain(
      'too short',
    )
    expect(whyOf(original(0, 90, 60, 600), rig({ lens: LENS, column: { offset: 0, least: 1 } }))).toContain(
      'lower than',
    )
  })

  it('keeps what was done beside what was planned, and goes by its rate when there is enough of it', () => {
    const list = Array.from({ length: 20 }, (_, row) =>
      original(row, 300, 200, 300, {
        frameTime: 60,
        frameData: 8e6,
        done: row < 6,
        ...(row < 5 ? { actualTime: 90, actualFrames: 2 } : {}),
      }),
    )
    const { progress } = planRun(list, rig({ setupTime: 600 }), { left: true })
    expect(progress.done).toMatchObject({
      count: 6,
      planned: { frames: 6, time: 360 },
      timed: { count: 5, planned: 300, actual: 450 },
      counted: { count: 5, planned: 5, actual: 10 },
    })
    expect(progress.left).toMatchObject({ count: 14, setups: 1, time: 840, all: 1440 })
    expect(progress.expected).toMatchObject({ frames: 28, time: 1260, all: 1860, data: 28 * 8e6 })
    const few = list.map((each) =>
      each.row === 0 ? { ...each, actualTime: undefined, actualFrames: undefined } : each,
    )
    expect(planRun(few, rig()).progress.expected).toBeUndefined()
  })

  it('comes out whatever the figures, and is reported', () => {
    const odd = fc.double({ min: 1e-300, max: 1e300, noNaN: true })
    const list = fc.array(fc.record({ width: odd, height: odd, sampling: odd, overlap: odd, frameTime: odd }), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(list, odd, rigs, (all, pitch, one) => {
        const originals = all.map((each, row) => ({ ...original(row, 1, 1, 1), ...each }))
        const plan = planRun(originals, { ...one, pitch })
        expect(plan.total.count + plan.unplanned.length).toBe(all.length)
        for (const setup of plan.setups) {
          expect(setup.magnification).toBeGreaterThan(0)
          const reported = [ratioText(setup.magnification), heightsText(setup), timeText(setup.time)].join()
          expect(reported).not.toMatch(/NaN|undefined/)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('plans again what is left, with no more set-ups than before', () => {
    fc.assert(
      fc.property(lists, rigs, (list, one) => {
        const originals = asOriginals(list)
        expect(planRun(originals, one, { left: true }).setups.length).toBeLessThanOrEqual(
          planRun(originals, one).setups.length,
        )
      }),
    )
  })
})

describe('what is within reach', () => {
  it('is got by the choice of tubes the sheet’s own function puts first', () => {
    const reach = new Reach({ ...LENS, tubes: [12 * MM, 20 * MM, 36 * MM] })
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1.35, noNaN: true }), (m) => {
        const first = tubeChoices([12 * MM, 20 * MM, 36 * MM], LENS.focal, m, 0, 1 / 8)[0]
        const means = reach.meansFor(m)
        expect(means !== undefined).toBe(first?.covers)
        if (means) expect(means.pieces).toEqual(first?.tubes)
      }),
    )
  })

  it('by a close-up lens has the sensor where the lens formula puts it', () => {
    // A 5 dpt lens on 50 mm at infinity: 1:4, the original 200 mm before it, the sensor 50 mm behind the lens.
    const reach = new Reach({ ...LENS, focal: 0.05, greatest: 0.1, tubes: [], closeups: [5], separation: 0.02 })
    const means = reach.meansFor(0.25)
    expect(means).toMatchObject({ kind: 'close-up', pieces: [5] })
    expect(means?.track(0.25)).toBeCloseTo(0.2 + 0.02 + 0.05, 12)
    // Set to 1:10 the lens sees 550 mm off, 530 from the close-up lens: 1/(5 + 1/0.53), and m = 0.1 + 0.275 − 0.01.
    expect(means?.track(0.365)).toBeCloseTo(1 / (5 + 1 / 0.53) + 0.02 + 0.055, 12)
    // Two thin lenses in contact are one of their powers together.
    const stacked = new Reach({ ...LENS, focal: 0.05, greatest: 0.1, tubes: [], closeups: [2, 3], separation: 0.02 })
    expect(stacked.meansFor(0.3)?.pieces).toEqual([2, 3])
    expect(stacked.meansFor(0.3)?.track(0.3)).toBeCloseTo(means?.track(0.3) as number, 12)
  })
})

describe('frames of an original', () => {
  it('stay as few up to the magnification given, and no further', () => {
    const face = fc.record({
      width: fc.integer({ min: 50, max: 3000 }).map((mm) => mm * MM),
      height: fc.integer({ min: 50, max: 3000 }).map((mm) => mm * MM),
      border: fc.integer({ min: 0, max: 20 }).map((mm) => mm * MM),
      overlap: fc.integer({ min: 0, max: 60 }).map((mm) => mm * MM),
      turn: fc.boolean(),
    })
    fc.assert(
      fc.property(face, fc.double({ min: 0.01, max: 0.3, noNaN: true }), (each, m) => {
        const count = framesAt(each, SENSOR, m)?.count
        if (count === undefined) return
        const most = greatestMagnification(count, each, SENSOR)
        expect(most).toBeGreaterThanOrEqual(m * (1 - 1e-9))
        expect(framesAt(each, SENSOR, most)?.count).toBe(count)
        expect(framesAt(each, SENSOR, most * 1.00001)?.count ?? Number.POSITIVE_INFINITY).toBeGreaterThan(count)
      }),
      { numRuns: 500 },
    )
  })
})
