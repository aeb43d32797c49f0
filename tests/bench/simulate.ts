import { LIBRARY } from '../../src/functions/index.ts'
import { type Cell, FORMAT, Sheet, VERSION } from '../../src/worksheet/index.ts'
import { Draws } from '../../src/worksheet/simulation/draws.ts'
import { simulate } from '../../src/worksheet/simulation/simulate.ts'
import { median } from './measure.ts'

const TRIES = 200_000
const BLOCK = 1024
const GIVENS = ['36 mm ± 0.2 mm', '60 mm ± 0.5 mm', '420 mm ± 1 mm', '900 mm ± 3 mm']
const LIMITS = [0.2e-3, 0.5e-3, 1e-3, 3e-3]
const VALUES = [0.036, 0.06, 0.42, 0.9]
const CELLS = 40

/** Formulas as worksheets have them: a ratio, a distance, a sum of parts, a correction. `p` and `q` are cells before it. */
const FORMULAS: readonly ((p: string, q: string) => string)[] = [
  (p, q) => `${p} * 1.01 + ${q} / 3`,
  (p, q) => `sqrt(${p}^2 + ${q}^2)`,
  (p, q) => `${p} * ${q} / (${p} + ${q})`,
  (p, q) => `${p} - ${q} / 7 + 2 mm`,
]
const BY_HAND: readonly ((p: Float64Array, q: Float64Array, out: Float64Array, n: number) => void)[] = [
  (p, q, out, n) => {
    for (let i = 0; i < n; i++) out[i] = (p[i] as number) * 1.01 + (q[i] as number) / 3
  },
  (p, q, out, n) => {
    for (let i = 0; i < n; i++)
      out[i] = Math.sqrt((p[i] as number) * (p[i] as number) + (q[i] as number) * (q[i] as number))
  },
  (p, q, out, n) => {
    for (let i = 0; i < n; i++) out[i] = ((p[i] as number) * (q[i] as number)) / ((p[i] as number) + (q[i] as number))
  },
  (p, q, out, n) => {
    for (let i = 0; i < n; i++) out[i] = (p[i] as number) - (q[i] as number) / 7 + 0.002
  },
]

/** What is reported of: both ways compute all cells, and take mean, variance and interval of one. */
const LAST = new Set([`c${CELLS - 1}`])

const inputs = (k: number): readonly [number, number] => [k + 3, Math.max(0, (k * 7) % (k + 3))]

function sheet(): Sheet {
  const cells: Cell[] = GIVENS.map((value, k) => ({ kind: 'given', id: `c${k}`, name: `c${k}`, unit: 'mm', value }))
  for (let k = 0; k < CELLS - GIVENS.length; k++) {
    const [p, q] = inputs(k)
    const name = `c${k + GIVENS.length}`
    const formula = (FORMULAS[k % FORMULAS.length] as (typeof FORMULAS)[number])(`c${p}`, `c${q}`)
    cells.push({ kind: 'result', id: name, name, unit: 'mm', formula })
  }
  return new Sheet({ format: FORMAT, version: VERSION, title: '', cells }, LIBRARY)
}

/** The same tries with the same draws, by loops over typed arrays; mean and 95 % interval of the last cell. */
function byHand(): number {
  const columns = Array.from({ length: CELLS }, () => new Float64Array(BLOCK))
  const draws = new Draws(1)
  const last = new Float64Array(TRIES)
  for (let done = 0; done < TRIES; done += BLOCK) {
    const n = Math.min(BLOCK, TRIES - done)
    GIVENS.forEach((_, k) => {
      const column = columns[k] as Float64Array
      column.fill(VALUES[k] as number)
      draws.addTo(column, n, { distribution: 'rectangular', limit: LIMITS[k] as number, coverage: 1 })
    })
    for (let k = 0; k < CELLS - GIVENS.length; k++) {
      const [p, q] = inputs(k)
      const loop = BY_HAND[k % BY_HAND.length] as (typeof BY_HAND)[number]
      loop(columns[p] as Float64Array, columns[q] as Float64Array, columns[k + GIVENS.length] as Float64Array, n)
    }
    last.set((columns[CELLS - 1] as Float64Array).subarray(0, n), done)
  }
  last.sort()
  return last.reduce((sum, value) => sum + value, 0) / TRIES
}

/** The time of one try of a worksheet of 40 cells over that of the same formulas written by hand over typed arrays. */
export function simulation(): number {
  const { engine } = sheet()
  const time = (run: () => number): { ms: number; mean: number } => {
    const started = performance.now()
    const mean = run()
    return { ms: performance.now() - started, mean }
  }
  const ours = (): number =>
    simulate(engine, { tries: TRIES, seed: 1, names: LAST }).figures.get(`c${CELLS - 1}`)?.mean as number
  const rounds = Array.from({ length: 6 }, () => ({ ours: time(ours), byHand: time(byHand) })).slice(1)
  const [first] = rounds
  if (!first || Math.abs(first.ours.mean / first.byHand.mean - 1) > 1e-9)
    throw new Error(`The two ways of simulating differ: ${first?.ours.mean} and ${first?.byHand.mean}.`)
  const ratio = median(rounds.map((round) => round.ours.ms / round.byHand.ms))
  console.log(
    `A simulation of ${CELLS} cells, ${TRIES} tries: ${median(rounds.map((round) => round.ours.ms)).toFixed(0)} ms, ${ratio.toFixed(2)} times the loops over typed arrays (at most 3)`,
  )
  return ratio
}
