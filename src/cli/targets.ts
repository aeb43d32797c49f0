import { adviseTarget } from '../worksheet/advice/advise.ts'
import { adviceWords } from '../worksheet/advice/words.ts'
import type { Sheet } from '../worksheet/index.ts'
import type { Result } from '../worksheet/schema/document.ts'
import { type PlanReport, planReport } from './advice.ts'
import type { NamedText } from './input.ts'
import { InputError } from './input-error.ts'
import { placesOf } from './read-worksheet.ts'
import * as words from './words.ts'

export interface TargetReport {
  /** Plans by the name of the result that they bring to its target, the best first. */
  readonly targets: Readonly<Record<string, readonly PlanReport[]>>
  /** Why a result has none. */
  readonly no_target: Readonly<Record<string, string>>
}

/** Suggestions that bring results to a value, as `compute --target` prints them. Throws InputError. */
export function targetReport(sheet: Sheet, asked: readonly NamedText[], path: string): TargetReport {
  const targets: Record<string, readonly PlanReport[]> = Object.create(null)
  const reasons: Record<string, string> = Object.create(null)
  for (const { name, text } of asked) {
    const cell = resultNamed(sheet, name, path)
    if (text.trim() === '') throw new InputError(words.target(name, words.targetMissing))
    const reason = whyNot(sheet, cell, name)
    const { plans, error } = reason === undefined ? adviseTarget(sheet, cell.id, text) : { plans: [] }
    if (error !== undefined) throw new InputError(words.target(name, error))
    if (plans.length > 0) targets[cell.name] = plans.map((plan) => planReport(sheet, plan))
    else reasons[cell.name] = reason ?? adviceWords.noneGives
  }
  return { targets, no_target: reasons }
}

function resultNamed(sheet: Sheet, name: string, path: string): Result {
  const setUps = (sheet.worksheet.setups ?? []).map((one) => one.name)
  const [at] = placesOf(sheet.cells, name, setUps)
  const cell = at === undefined ? undefined : sheet.cells[at]
  if (cell?.kind === 'given') throw new InputError(words.target(name, words.aGiven(cell.name)))
  if (cell?.kind !== 'result') throw new InputError(words.target(name, words.noResult(path)))
  return cell
}

/** Why nothing can bring a result to a value as the sheet is; undefined where something may. Throws InputError. */
function whyNot(sheet: Sheet, { id }: Result, name: string): string | undefined {
  const outcome = sheet.outcome(id)
  if (outcome.state === 'waiting') return words.targetNeeds(words.needs(outcome.on))
  if (outcome.state === 'error') return words.targetInError(outcome.diagnostics[0]?.message ?? '')
  if (outcome.type.kind !== 'number') throw new InputError(words.target(name, words.noPlainFigure))
  return outcome.measured ? words.targetMeasured : undefined
}
