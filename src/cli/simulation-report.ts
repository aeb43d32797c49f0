import { showValue } from '../language/index.ts'
import { declaredUnit, type NamedCell, type Outcome } from '../worksheet/index.ts'
import type { Simulation } from '../worksheet/simulation/simulate.ts'
import * as words from './words.ts'

/** What a simulation adds to the report of a cell: figures of a result in coherent SI, the share in which a check passes. */
export function simulationReport(cell: NamedCell, simulated: Simulation | undefined): object {
  if (!simulated) return {}
  if (cell.kind === 'check') return { passes: simulated.passes.get(cell.name) ?? null }
  if (cell.kind !== 'result') return {}
  const figure = simulated.figures.get(cell.name)
  if (!figure) return { mean: null, sd: null, low95: null, high95: null }
  const { mean, sd, low95, high95 } = figure
  return { mean, sd, low95, high95 }
}

/** The simulation of a result in one line. */
export function simulatedLine(cell: NamedCell, outcome: Outcome, { figures }: Simulation): string[] {
  const figure = figures.get(cell.name)
  if (cell.kind !== 'result' || outcome.state !== 'value' || !figure || figure.sd === 0) return []
  const show = (value: number): string => showValue(value, outcome.type, declaredUnit(cell.unit).unit).text
  const { mean, low95, high95, failed } = figure
  return [words.simulated(show(mean), show(low95), show(high95), failed)]
}

/** The share of tries in which a check passes. */
export function passesLine(check: string, { passes }: Simulation): string[] {
  const share = passes.get(check)
  return share === undefined ? [] : [words.simulatedPasses(Number((100 * share).toPrecision(4)))]
}
