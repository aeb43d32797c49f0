import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import type { Cell, Given, Sheet } from '../../../src/worksheet/index.ts'
import { type Simulation, simulate } from '../../../src/worksheet/simulation/simulate.ts'
import type { SimulatedFigure } from '../../../src/worksheet/simulation/tally.ts'
import { check, given, result, sheetOf } from '../make.ts'

const TRIES = 200_000

function simulated(cells: readonly Cell[], options: { tries?: number; seed?: number } = {}): Simulation {
  return simulate(sheetOf(cells).engine, { tries: TRIES, seed: 1, ...options })
}

const figure = (simulation: Simulation, name: string): SimulatedFigure =>
  simulation.figures.get(name) ?? expect.unreachable(`${name} has no figure`)

/** Four quantities of mean 0 and standard deviation 1. */
const four = (limit: string, more: Partial<Given> = {}): Given[] =>
  ['a', 'b', 'c', 'd'].map((name) => given(name, `0 ± ${limit}`, more))
const SUM = result('sum', 'a + b + c + d')

// JCGM 101:2008, 9.2: the additive model Y = X1 + X2 + X3 + X4.
describe('the additive model of JCGM 101', () => {
  test('9.2.3: of four rectangular quantities the 95 % interval is ±3.88', () => {
    const { mean, sd, low95, high95 } = figure(simulated([...four('1.7320508075688772'), SUM]), 'sum')
    expect(mean).toBeCloseTo(0, 1)
    expect(sd).toBeCloseTo(2, 1)
    expect(low95).toBeCloseTo(-3.88, 1)
    expect(high95).toBeCloseTo(3.88, 1)
  })

  test.each([
    ['1', '1'],
    ['2', undefined],
    ['3', '3'],
  ])('9.2.2: of four normal quantities it is ±3.92, for limits of %s standard deviations', (limit, coverage) => {
    const cells = four(limit, { distribution: 'normal', ...(coverage === undefined ? {} : { coverage }) })
    const { sd, low95, high95 } = figure(simulated([...cells, SUM]), 'sum')
    expect(sd).toBeCloseTo(2, 1)
    expect(low95).toBeCloseTo(-3.92, 1)
    expect(high95).toBeCloseTo(3.92, 1)
  })

  test('9.2.4: of rectangular quantities of which one is ten times as large it is ±17.0, not the ±20.3 of a normal law', () => {
    const cells = [...four('1.7320508075688772').slice(1), given('a', '0 ± 17.320508075688772'), SUM]
    const { sd, low95, high95 } = figure(simulated(cells), 'sum')
    expect(sd).toBeCloseTo(Math.sqrt(103), 1)
    expect(high95).toBeCloseTo(17, 0)
    expect(Math.abs(high95 - 17)).toBeLessThan(0.15)
    expect(Math.abs(low95 + 17)).toBeLessThan(0.15)
  })
})

describe('distributions known in closed form', () => {
  test('a triangular one has a sixth of the squared limit as variance, and 95 % within 1 − √0.05 of it', () => {
    const { sd, low95, high95 } = figure(
      simulated([given('a', '10 ± 1', { distribution: 'triangular' }), result('same', 'a')]),
      'same',
    )
    expect(sd).toBeCloseTo(1 / Math.sqrt(6), 2)
    expect(high95 - 10).toBeCloseTo(1 - Math.sqrt(0.05), 2)
    expect(low95 - 10).toBeCloseTo(-1 + Math.sqrt(0.05), 2)
  })

  test('a product of two rectangular quantities has the product of their second moments', () => {
    const { mean, sd } = figure(simulated([given('a', '2 ± 1'), given('b', '3 ± 1'), result('p', 'a * b')]), 'p')
    // E[a²] E[b²] − E[a]² E[b]², with E[x²] = x̄² + w²/3.
    expect(mean).toBeCloseTo(6, 1)
    expect(sd).toBeCloseTo(Math.sqrt((4 + 1 / 3) * (9 + 1 / 3) - 36), 1)
  })

  test('a reciprocal of a rectangular quantity from 1 to 3 has the mean ln(3)/2 and the quantiles of 1/x', () => {
    const { mean, sd, low95, high95 } = figure(simulated([given('a', '2 ± 1'), result('q', '1 / a')]), 'q')
    expect(mean).toBeCloseTo(Math.log(3) / 2, 2)
    expect(sd).toBeCloseTo(Math.sqrt(1 / 3 - (Math.log(3) / 2) ** 2), 2)
    expect(low95).toBeCloseTo(1 / 2.95, 2)
    expect(high95).toBeCloseTo(1 / 1.05, 2)
  })

  test('a check passes in the share of tries that its distribution gives', () => {
    const { passes } = simulated([
      given('a', '5 mm ± 2 mm'),
      check('quarter', 'a < 4 mm'),
      check('always', 'a < 8 mm'),
      check('never', 'a > 8 mm'),
      check('either', 'a < 4 mm or a > 6 mm'),
      check('neither', 'not (a < 4 mm or a > 6 mm)'),
    ])
    expect(passes.get('quarter')).toBeCloseTo(0.25, 2)
    expect(passes.get('either')).toBeCloseTo(0.5, 2)
    expect(passes.get('neither')).toBeCloseTo(0.5, 2)
    expect([passes.get('always'), passes.get('never')]).toEqual([1, 0])
  })
})

/** A sheet whose cells reach every kind of column: sizes, lists, texts, conditions, functions, a formula’s own limits. */
const MIXED: readonly Cell[] = [
  given('original', '420 x 297 ± 2', { entry: 'size', unit: 'mm' }),
  given('focal', '60 mm ± 1 mm', { distribution: 'triangular' }),
  given('distance', '900 ± 5', { unit: 'mm', distribution: 'normal', coverage: '2' }),
  given('matt', 'yes', { entry: 'yes or no' }),
  result('m', 'focal / (distance - focal)'),
  result('area', 'original.width * original.height'),
  result('longer', 'max(original.width, original.height)'),
  result('side', 'when(original.width > 420 mm, original.width, 420 mm)'),
  result('list', 'sum({original.width, original.height, focal})'),
  result('corner', 'sqrt(original.width^2 + original.height^2)'),
  result('own', 'distance ± 10 mm'),
  result('after', 'own / 2'),
  result('minus', '-focal + distance'),
  check('fits', 'original.width < 421 mm and matt'),
  check('sharp', 'm < 1:14 or not matt'),
]

describe('a try', () => {
  /** Computes a sheet over again with other values, by the engine itself. */
  function computed(sheet: Sheet, values: Readonly<Record<string, string>>, name: string): unknown {
    const trial = sheet.trial(
      sheet.cells.map((cell) =>
        cell.kind === 'given' && values[cell.name] !== undefined
          ? ({ ...cell, value: values[cell.name] as string } as Cell)
          : cell,
      ),
    )
    const outcome = trial.outcome(name)
    return outcome.state === 'value' ? outcome.value : undefined
  }

  it('computes every kind of cell as the engine does', () => {
    // Limits so small that all tries are the value itself, to ten digits.
    fc.assert(
      fc.property(fc.integer({ min: 40, max: 90 }), fc.integer({ min: 300, max: 2000 }), (focal, distance) => {
        const values = {
          focal: `${focal} mm ± 1e-13 mm`,
          distance: `${distance} ± 1e-13`,
          original: `${focal * 5} x 297 ± 1e-13`,
        }
        const sheet = sheetOf(
          MIXED.map((cell) => {
            const text = cell.kind === 'given' ? values[cell.name as keyof typeof values] : undefined
            if (text !== undefined) return { ...cell, value: text } as Cell
            return cell.id === 'own' ? result('own', 'distance ± 1e-13 mm') : cell
          }),
        )
        const { figures, passes } = simulate(sheet.engine, { tries: 3, seed: 7 })
        for (const cell of sheet.cells) {
          if (cell.kind === 'result')
            expect(figures.get(cell.name)?.mean, cell.name).toBeCloseTo(computed(sheet, {}, cell.id) as number, 10)
          if (cell.kind === 'check') expect(passes.get(cell.name)).toBe(computed(sheet, {}, cell.id) ? 1 : 0)
        }
      }),
      { numRuns: 30 },
    )
  })

  it('stays within the worst case that the sheet shows, and is as likely off as it says', () => {
    const sheet = sheetOf(
      MIXED.map((cell) =>
        'distribution' in cell ? { ...cell, distribution: 'rectangular' as const } : cell,
      ) as Cell[],
    )
    sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
    const { figures } = simulate(sheet.engine, { tries: 20_000, seed: 3 })
    for (const name of ['m', 'area', 'corner', 'after', 'minus', 'list']) {
      const outcome = sheet.outcome(name)
      if (outcome.state !== 'value' || !outcome.limits) return expect.unreachable(name)
      const { sd, low95, high95 } = figures.get(name) as SimulatedFigure
      expect(low95, name).toBeGreaterThanOrEqual(outcome.limits.low)
      expect(high95, name).toBeLessThanOrEqual(outcome.limits.high)
      // The sheet adds limits by root sum of squares; a rectangular quantity deviates by its limit over √3.
      expect((sd * Math.sqrt(3)) / outcome.limits.likely, name).toBeCloseTo(1, 1)
    }
  })

  it('that does not compute is counted, and is no pass', () => {
    const simulation = simulated([
      given('a', '1 ± 2'),
      result('root', 'sqrt(a)'),
      result('after', 'root + 1'),
      check('c', 'root < 10'),
    ])
    // One in four draws lies below zero.
    expect(figure(simulation, 'root').failed / TRIES).toBeCloseTo(0.25, 2)
    expect(figure(simulation, 'after').failed).toBe(figure(simulation, 'root').failed)
    expect(simulation.passes.get('c')).toBeCloseTo(0.75, 2)
  })

  it('without limits anywhere gives the values themselves', () => {
    const { figures, passes } = simulated([given('a', '3 mm'), result('b', '2 * a'), check('c', 'b > 1 mm')], {
      tries: 10,
    })
    expect(figures.get('b')).toEqual({ mean: 0.006, sd: 0, low95: 0.006, high95: 0.006, failed: 0 })
    expect(passes.get('c')).toBe(1)
  })

  it('leaves out what waits, is in error, or has no number', () => {
    const { figures, passes } = simulated(
      [
        given('a', '3 ± 1'),
        given('e', ''),
        result('w', 'a + e'),
        result('x', 'a +'),
        result('t', '"text"'),
        check('c', 'w > 1'),
      ],
      { tries: 10 },
    )
    expect([figures.size, passes.size]).toEqual([0, 0])
  })
})

it('gives the same figures for the same seed, others for another, and needs no memory of its tries', () => {
  const sheet = sheetOf(MIXED)
  const run = (seed: number, tries = 30_000) => simulate(sheet.engine, { tries, seed })
  expect(run(5)).toEqual(run(5))
  expect(figure(run(5), 'm').mean).not.toBe(figure(run(6), 'm').mean)
})

test('a measured result varies within the limits of what was measured', () => {
  const { figures } = simulated([
    result('height', '5 mm * 2', { measured: '11 ± 1', unit: 'mm' }),
    result('twice', '2 * height'),
  ])
  expect(figures.get('twice')?.sd).toBeCloseTo(0.002 / Math.sqrt(3), 5)
})

test.each(['two', '0', '-1', '1 ± 0.5', '2 mm'])('a coverage factor of %s is an error, not taken for 2', (coverage) => {
  const outcome = sheetOf([given('a', '1 ± 0.1', { distribution: 'normal', coverage })]).outcome('a')
  expect(outcome).toMatchObject({
    state: 'error',
    diagnostics: [{ message: expect.stringMatching(/^Coverage factor: /) }],
  })
})
