import { adviseSheet } from '../worksheet/advice/advise.ts'
import { offersFor } from '../worksheet/advice/offers.ts'
import type { Plan } from '../worksheet/advice/plan.ts'
import { consequenceText, noPlanText, planText, wholePlanText } from '../worksheet/advice/plan-text.ts'
import type { Sheet } from '../worksheet/index.ts'
import { readParts } from './part-files.ts'
import * as words from './words.ts'

export interface PlanReport {
  /** What `--set` takes: the given's name and the text to type. */
  readonly changes: Readonly<Record<string, string>>
  readonly text: string
  readonly passes: readonly string[]
  readonly breaks: readonly string[]
  /** Readings that are to be taken again after it; only in sheets that store what they were taken under. */
  readonly read_again?: readonly string[]
  /** For a target value: what the result then is, as shown. */
  readonly gives?: string
}

export interface AdviceReport {
  /** Plans by the name of the check they are for, the best first. */
  readonly advice: Readonly<Record<string, readonly PlanReport[]>>
  /** Why a failing check has none. */
  readonly no_advice: Readonly<Record<string, string>>
  /** Parts that would make a failing check pass, by its name. */
  readonly offers: Readonly<Record<string, readonly string[]>>
  /** Checks that fail once such a part is added, by the part; only where some do. */
  readonly offer_fails?: Readonly<Record<string, readonly string[]>>
  /** One plan for the whole sheet. */
  readonly plan?: PlanReport
}

/** Suggestions for every check of a sheet that fails or is marginal, as `compute --advice --json` prints them. */
export function adviceReport(sheet: Sheet): AdviceReport {
  const { checks, plan } = adviseSheet(sheet)
  const advice: Record<string, readonly PlanReport[]> = Object.create(null)
  const reasons: Record<string, string> = Object.create(null)
  for (const [name, { plans, none }] of checks) {
    if (plans.length > 0) advice[name] = plans.map((one) => planReport(sheet, one))
    else if (none) reasons[name] = noPlanText(sheet, none)
  }
  const offers: Record<string, readonly string[]> = Object.create(null)
  const fails: Record<string, readonly string[]> = Object.create(null)
  for (const [name, parts] of offersFor(readParts(), sheet)) {
    offers[name] = parts.map(({ part }) => part)
    for (const offer of parts) if (offer.fails.length > 0) fails[offer.part] = offer.fails
  }
  return {
    advice,
    no_advice: reasons,
    offers,
    ...(Object.keys(fails).length > 0 ? { offer_fails: fails } : {}),
    ...(plan ? { plan: reportOf(plan, wholePlanText(sheet, plan)) } : {}),
  }
}

/** A plan with all it does in one text. */
export const planReport = (sheet: Sheet, plan: Plan): PlanReport =>
  reportOf(plan, [planText(sheet, plan), consequenceText(sheet, plan)].filter((text) => text !== '').join(' '))

const reportOf = ({ changes, passes, breaks, gives, again: { readings } }: Plan, text: string): PlanReport => ({
  changes: Object.fromEntries(changes.map(({ given, text: typed }) => [given, typed])),
  text,
  passes,
  breaks,
  ...(readings.length > 0 ? { read_again: readings } : {}),
  ...(gives === undefined ? {} : { gives }),
})

/** Plans by what they are for, and why some have none, as lines to read. */
export const planLines = (
  plans: Readonly<Record<string, readonly PlanReport[]>>,
  reasons: Readonly<Record<string, string>>,
): string[] => [
  ...Object.entries(plans).flatMap(([name, all]) => all.map(({ text }) => `${name}: ${text}`)),
  ...Object.entries(reasons).map(([name, reason]) => `${name}: ${reason}`),
]

/** The same as lines to read. */
export function adviceLines({ advice, no_advice: reasons, offers, offer_fails: fails, plan }: AdviceReport): string[] {
  return [
    ...(plan ? [plan.text] : []),
    ...planLines(advice, reasons),
    ...Object.entries(offers).map(([name, parts]) => words.passesWithPart(name, parts)),
    ...Object.entries(fails ?? {}).map(([part, checks]) => words.failsWithPart(part, checks)),
  ]
}
