import { LIBRARY } from '../functions/index.ts'
import { type CheckOutcome, isNamed, type NamedCell, type Outcome, Sheet } from '../worksheet/index.ts'
import { type Simulation, simulate } from '../worksheet/simulation/simulate.ts'
import type { Arguments } from './input.ts'
import { readWorksheet, withSets } from './read-worksheet.ts'
import { type CellReport, printJson, printLines, reportOf } from './report.ts'
import { passesLine, simulatedLine, simulationReport } from './simulation-report.ts'

/** `compute FILE.json`: every cell of a worksheet, and how its checks stand. */
export function compute({ subject, sets, json, simulation }: Arguments): number {
  const sheet = new Sheet(withSets(readWorksheet(subject), sets, subject), LIBRARY)
  // Nobody waits at a key here.
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  const named = sheet.cells.filter(isNamed)
  const outcomes = named.map((cell) => [cell, sheet.outcome(cell.id)] as const)
  const checks = named.filter(({ kind }) => kind === 'check').map((cell) => [cell.name, sheet.check(cell.id)] as const)
  const simulated = simulation && simulate(sheet.engine, simulation)
  if (json)
    printJson({
      cells: cellReports(outcomes, simulated),
      checks: firstOfEach(checks.map(([name, outcome]) => [name, checkWord(outcome)])),
    })
  else
    printLines([
      ...outcomes.flatMap(([cell, outcome]) => [
        ...plainLine(cell, outcome),
        ...(simulated ? simulatedLine(cell, outcome, simulated) : []),
      ]),
      ...checks.flatMap((check) => [checkLine(check), ...(simulated ? passesLine(check[0], simulated) : [])]),
    ])
  const failed =
    outcomes.some(([, { state }]) => state === 'error') ||
    checks.some(([, { state }]) => state !== 'pass' && state !== 'marginal')
  return failed ? 1 : 0
}

function cellReports(
  outcomes: readonly (readonly [NamedCell, Outcome])[],
  simulated: Simulation | undefined,
): Record<string, object> {
  return firstOfEach(
    outcomes.map(([cell, outcome]) => [
      cell.name,
      {
        ...reportOf(outcome, textOf(cell)),
        ...limitsOf(outcome),
        ...simulationReport(cell, simulated),
        state: outcome.state,
      },
    ]),
  )
}

/** What was typed into a cell, or its formula: the text that its error's fixes change. */
const textOf = (cell: NamedCell): string =>
  cell.kind === 'given'
    ? cell.value
    : cell.kind === 'result'
      ? cell.formula
      : cell.kind === 'check'
        ? cell.condition
        : ''

/** Of two cells with one name the first counts; the second is in error and must not hide it. */
function firstOfEach<T>(entries: readonly (readonly [string, T])[]): Record<string, T> {
  const first: Record<string, T> = Object.create(null)
  for (const [name, value] of entries) first[name] ??= value
  return first
}

function limitsOf(outcome: Outcome): { low: number | null; high: number | null } {
  if (outcome.state !== 'value' || typeof outcome.value !== 'number' || outcome.tolerance === undefined)
    return { low: null, high: null }
  if (outcome.limits) return { low: outcome.limits.low, high: outcome.limits.high }
  return { low: outcome.value - outcome.tolerance, high: outcome.value + outcome.tolerance }
}

const checkWord = ({ state }: CheckOutcome): string => (state === 'error' ? 'fail' : state)

function plainLine(cell: NamedCell, outcome: Outcome): string[] {
  if (cell.kind === 'check') return []
  const title = `${cell.label || cell.name} (${cell.name})`
  if (outcome.state === 'value') {
    const { text, mark } = outcome.shown
    const { measured, measuredAmiss } = outcome
    return [
      `${title}: ${measured ? 'measured ' : ''}${text}${mark && mark !== text ? `, marked ${mark}` : ''}`,
      ...(measured?.computed ? [`  by its formula ${measured.computed.shown.text}; ${measured.difference}`] : []),
      ...(measuredAmiss ? [`  not read as measured: ${measuredAmiss.message}`] : []),
      ...outcome.warnings.map(({ message }) => `  caution: ${message}`),
    ]
  }
  if (outcome.state === 'waiting')
    return [`${title}: waits${outcome.on.length > 0 ? ` for ${outcome.on.join(', ')}` : ' to be filled in'}`]
  const report: CellReport = reportOf(outcome, textOf(cell))
  return [`${title}: error: ${report.error?.message}`]
}

const WORDS: Readonly<Record<CheckOutcome['state'], string>> = {
  pass: 'Pass',
  marginal: 'Marginal',
  fail: 'Fail',
  waiting: 'Waiting',
  error: 'In error',
}

const checkLine = ([name, { state, message }]: readonly [string, CheckOutcome]): string =>
  `${WORDS[state]}: ${message || name}`
