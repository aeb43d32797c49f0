import { LIBRARY } from '../functions/index.ts'
import { asMine, exampleNames, provenanceOf } from '../worksheet/analysis/provenance.ts'
import { shownFigure } from '../worksheet/document/shown-figure.ts'
import type { Measured } from '../worksheet/engine/outcome.ts'
import { type CheckOutcome, isNamed, type NamedCell, type Outcome, Sheet } from '../worksheet/index.ts'
import { type Simulation, simulate } from '../worksheet/simulation/simulate.ts'
import { type AdviceReport, adviceLines, adviceReport, planLines } from './advice.ts'
import type { Arguments } from './input.ts'
import { functionLines, functionReports } from './own-functions.ts'
import { readWorksheet, withSets } from './read-worksheet.ts'
import { type CellReport, printJson, printLines, reportOf } from './report.ts'
import { passesLine, simulatedLine, simulationReport } from './simulation-report.ts'
import { targetReport } from './targets.ts'
import * as words from './words.ts'

/**
 * `compute FILE.json`, or a link in the place of the file: every cell of a worksheet, where its givens come from, and
 * the state of its checks.
 */
export async function compute(args: Arguments): Promise<number> {
  const { subject, sets, json, simulation, asMine: isMine, advice: isAdvised, targets: asked } = args
  const worksheet = withSets(await readWorksheet(subject), sets, subject)
  const sheet = new Sheet(isMine ? asMine(worksheet) : worksheet, LIBRARY)
  // Nobody waits at a key here.
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  const named = sheet.cells.filter(isNamed)
  const examples = exampleNames(sheet)
  const outcomes = named.map((cell) => [cell, sheet.outcome(cell.id)] as const)
  const checks = named.flatMap((cell): readonly Checked[] =>
    cell.kind === 'check' ? [checked(cell, sheet.check(cell.id), examples.get(cell.name) ?? [])] : [],
  )
  const simulated = simulation && simulate(sheet.engine, simulation)
  const advice: AdviceReport | undefined = isAdvised ? adviceReport(sheet) : undefined
  const aimed = asked.length > 0 ? targetReport(sheet, asked, subject) : undefined
  const functions = functionReports(sheet)
  if (json)
    printJson({
      cells: cellReports(outcomes, examples, new Map(checks.map((one) => [one.name, one])), simulated),
      checks: firstOfEach(checks.map(({ name, state }) => [name, state])),
      ...(functions.length > 0 ? { functions: Object.fromEntries(functions) } : {}),
      ...advice,
      ...aimed,
    })
  else
    printLines([
      ...outcomes.flatMap(([cell, outcome]) => [
        ...plainLine(cell, outcome),
        ...(simulated ? simulatedLine(cell, outcome, simulated) : []),
      ]),
      ...checks.flatMap((check) => [checkLine(check), ...(simulated ? passesLine(check.name, simulated) : [])]),
      ...functions.flatMap(functionLines),
      ...(advice ? adviceLines(advice) : []),
      ...(aimed ? planLines(aimed.targets, aimed.no_target) : []),
    ])
  const awaited = new Set(outcomes.flatMap(([, outcome]) => (outcome.state === 'waiting' ? outcome.on : [])))
  const failed =
    functions.some(([, { error, examples }]) => error !== null || examples.some(({ passes }) => !passes)) ||
    outcomes.some(([cell, { state }]) => state === 'error' || (worksheet.parts && isLacking(cell, awaited))) ||
    checks.some(({ state }) => state !== 'pass' && state !== 'marginal')
  return failed ? 1 : 0
}

/** A given that is not filled in and that something in a composed sheet waits for; no piece of kit has to be chosen. */
const isLacking = (cell: NamedCell, awaited: ReadonlySet<string>): boolean =>
  cell.kind === 'given' && cell.entry !== 'kit' && provenanceOf(cell) === 'empty' && awaited.has(cell.name)

type CheckWord = 'pass' | 'marginal' | 'fail' | 'waiting'

interface Checked {
  readonly name: string
  /** What it is called on screen, and its name. */
  readonly title: string
  readonly state: CheckWord
  /** The same, except that an error is not shown as a check that fails. */
  readonly shownAs: CheckOutcome['state']
  /** Its state with the example's figures, where it depends on any. */
  readonly inExample?: CheckWord
  readonly message: string
}

/** A check that depends on an example's figures waits for the user's own. */
function checked(cell: NamedCell, { state: own, message }: CheckOutcome, rests: readonly string[]): Checked {
  const { name } = cell
  const title = titleOf(cell)
  const state = own === 'error' ? 'fail' : own
  if (rests.length === 0) return { name, title, state, shownAs: own, message }
  return {
    name,
    title,
    state: 'waiting',
    shownAs: 'waiting',
    inExample: state,
    message: words.restsOnExample(rests, own, message),
  }
}

const titleOf = ({ label, name }: NamedCell): string => words.titled(label || name, name)

function cellReports(
  outcomes: readonly (readonly [NamedCell, Outcome])[],
  examples: ReadonlyMap<string, readonly string[]>,
  checks: ReadonlyMap<string, Checked>,
  simulated: Simulation | undefined,
): Record<string, object> {
  return firstOfEach(
    outcomes.map(([cell, outcome]) => {
      const check = cell.kind === 'check' ? checks.get(cell.name) : undefined
      return [
        cell.name,
        {
          ...reportOf(outcome, textOf(cell)),
          ...limitsOf(outcome),
          ...simulationReport(cell, simulated),
          ...measuredReport(outcome),
          ...(outcome.state === 'value' && outcome.by !== undefined ? { converted_by: outcome.by } : {}),
          state: outcome.state,
          ...(cell.kind === 'given'
            ? { from: provenanceOf(cell) }
            : { rests_on_example: examples.get(cell.name) ?? [] }),
          ...(check?.inExample ? { in_example: check.inExample } : {}),
        },
      ]
    }),
  )
}

const measuredText = ({ difference, adjust }: Measured): string => (adjust ? `${difference}. ${adjust}` : difference)

/** A measured value beside the one by the formula; nothing where nothing was measured. */
function measuredReport(outcome: Outcome): object {
  if (outcome.state !== 'value') return {}
  const { measured, before } = outcome
  if (!measured) return before ? { measured_before_change_of: before } : {}
  const { computed, contradicts = [] } = measured
  return {
    computed: computed?.value ?? null,
    difference: measuredText(measured),
    measured_before_change_of: before ?? [],
    contradicts,
  }
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

/** If two cells have one name, the first counts; the second is in error and must not hide it. */
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

function plainLine(cell: NamedCell, outcome: Outcome): string[] {
  if (cell.kind === 'check') return []
  const title = titleOf(cell)
  if (outcome.state === 'value') {
    const { text, mark, exactly } = shownFigure(cell, outcome.shown)
    const { measured, measuredAmiss } = outcome
    const said = exactly ? words.exact(text, exactly) : mark ? words.marked(text, mark) : text
    return [
      `${title}: ${measured ? words.measured(said) : said}`,
      ...(outcome.by === undefined
        ? []
        : [`  ${words.convertedBy((cell.kind === 'result' && cell.measured) || textOf(cell), outcome.by)}`]),
      ...(measured?.computed ? [`  ${words.byItsFormula(measured.computed.shown.text, measuredText(measured))}`] : []),
      ...(outcome.before ? [`  ${words.measuredBefore(outcome.before)}`] : []),
      ...(measured?.contradicts ?? []).map((text) => `  ${text}`),
      ...(measuredAmiss ? [`  ${words.notReadAsMeasured(measuredAmiss.message)}`] : []),
      ...outcome.warnings.map(({ message }) => `  ${words.cautionLine(message)}`),
    ]
  }
  if (outcome.state === 'waiting') return [`${title}: ${words.needs(outcome.on)}`]
  const report: CellReport = reportOf(outcome, textOf(cell))
  return [words.errorIn(title, report.error?.message ?? '')]
}

const checkLine = ({ title, shownAs, message }: Checked): string => words.checkLine(title, shownAs, message)
