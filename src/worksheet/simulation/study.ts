import type { Engine } from '../engine/engine.ts'
import { sourcesOf } from '../engine/tolerance.ts'
import { simulate } from './simulate.ts'
import type { SimulatedFigure } from './tally.ts'

/** How much one cell's limits contribute to the spread of a figure. */
export interface Influence {
  readonly name: string
  /** Of the variance of the figure: the part that this cell has by itself, over the sum of such parts. */
  readonly share: number
}

export interface StudiedFigure extends SimulatedFigure {
  /** The greatest first. */
  readonly influences: readonly Influence[]
}

/** A simulation with what each cell contributes to it. */
export interface Study {
  readonly tries: number
  readonly seed: number
  readonly figures: ReadonlyMap<string, StudiedFigure>
  /** By name of a check, the share of tries in which it passes. */
  readonly passes: ReadonlyMap<string, number>
}

export interface StudyQuestion {
  readonly tries: number
  readonly seed: number
  readonly names: readonly string[]
  /** After so long, ms, it ends with the tries made until then. */
  readonly longest?: number
}

/** The standard deviation of this many tries is within some 2 %, which is enough to rank what contributes. */
const INFLUENCE_TRIES = 2048

/**
 * Simulates the figures of some names, and for each cell with limits the same with that cell alone varied (JCGM 101:2008,
 * Annex B: the standard deviations of these are what each contributes). Reports its progress as a share of the work.
 */
export function study(
  engine: Engine,
  { tries, seed, names: listed, longest = Number.POSITIVE_INFINITY }: StudyQuestion,
  progress: (share: number) => void = () => {},
): Study {
  const names = new Set(listed)
  const sources = [...new Set(sourcesOf(engine).map(({ name }) => name))]
  const alone = sources.length > 1 ? sources : []
  const eachTries = Math.min(tries, INFLUENCE_TRIES)
  const all = tries + alone.length * eachTries
  const started = performance.now()
  const { figures, ...rest } = simulate(engine, {
    tries,
    seed,
    names,
    histogram: true,
    goesOn: (done) => {
      progress(done / all)
      return performance.now() - started < longest
    },
  })
  const variances = new Map<string, Influence[]>()
  alone.forEach((source, i) => {
    const varied = simulate(engine, { tries: eachTries, seed, names, drawn: new Set([source]) })
    for (const [name, { sd }] of varied.figures)
      if (sd > 0) variances.set(name, [...(variances.get(name) ?? []), { name: source, share: sd * sd }])
    progress((tries + (i + 1) * eachTries) / all)
  })
  return {
    ...rest,
    seed,
    figures: new Map(
      [...figures].map(([name, figure]) => [name, { ...figure, influences: shares(variances.get(name)) }]),
    ),
  }
}

function shares(variances: readonly Influence[] = []): Influence[] {
  const sum = variances.reduce((all, { share }) => all + share, 0)
  return variances.map(({ name, share }) => ({ name, share: share / sum })).sort((a, b) => b.share - a.share)
}
