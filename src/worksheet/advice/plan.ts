import type { Given } from '../schema/document.ts'

/** How willingly a given is changed: a setting first, then other equipment, then what was agreed with the client. */
export const LEVELS = ['setting', 'kit', 'agreement'] as const
export type Level = (typeof LEVELS)[number]

/** One given with the text that is typed into it. */
export interface PlannedChange {
  /** The given's name. */
  readonly given: string
  /** Its present text, as typed. */
  readonly before: string
  /** What is to be typed: `1100`, `f/11`, `no`; for a piece of kit its name. */
  readonly text: string
}

/** One to four changes that make failing checks pass. It has been typed into a whole copy of the sheet before it is shown. */
export interface Plan {
  readonly changes: readonly PlannedChange[]
  /** The givens as they are to be; a piece of kit comes with its figures. */
  readonly cells: readonly Given[]
  /** The dearest of its changes. */
  readonly level: Level
  /** Names of checks that failed and pass with it, those it was made for first. */
  readonly passes: readonly string[]
  /** Names of checks that are marginal with it and were not before, or that it was made for. */
  readonly marginal: readonly string[]
  /** Names of checks that passed and fail with it. */
  readonly breaks: readonly string[]
  /** Names of readings that are then older than the change, and of the checks that wait until they are taken again. */
  readonly again: { readonly readings: readonly string[]; readonly checks: readonly string[] }
  /** For a target value: what the result is with it, as shown. */
  readonly gives?: string
  /** What it costs by the rules of the trade; the smaller, the better. */
  readonly cost: number
}

/** By how much a check fails, as shown. */
export interface Shortfall {
  readonly is: string
  readonly limit: string
  /** The difference; none where it would say nothing, as between two marks. */
  readonly off?: string
  readonly isOver: boolean
}

/** A fact of a sheet, by its name, with what it is now, as shown. */
export interface Fact {
  readonly name: string
  readonly is: string
}

/** Why no plan was found, in terms of what binds. */
export interface NoPlan {
  /** `not found`: the search ended before it had tried all that may be changed. */
  readonly kind: 'readings' | 'fixed' | 'out of reach' | 'not found'
  /** For readings: the settings to change before they are read again. */
  readonly settings: readonly string[]
  /** How far the nearest plan falls short; undefined where what the check fails by has no figure. */
  readonly short: Shortfall | undefined
  /** The changes that come nearest. */
  readonly nearest: readonly PlannedChange[]
  /** The check that rules the plan out, where it is another one. */
  readonly against: string | undefined
  /** By how much that one then fails, where it has a figure. */
  readonly againstShort?: Shortfall | undefined
  /** What the check depends on that no suggestion changes, the nearest to its condition first. */
  readonly limits: readonly Fact[]
  /** What somebody may decide: a given that is not changed by a setting, and the value that would do. */
  readonly decisions: readonly PlannedChange[]
}

export interface TargetAdvice {
  readonly plans: readonly Plan[]
  /** Why the target cannot be read. */
  readonly error?: string
}

export interface CheckAdvice {
  /** At most three, the best first. */
  readonly plans: readonly Plan[]
  readonly none?: NoPlan
}

/** Advice for a whole sheet. */
export interface SheetAdvice {
  /** By the check's name: every check that fails or is marginal. */
  readonly checks: ReadonlyMap<string, CheckAdvice>
  /** One plan for all failing checks that can be made to pass together. */
  readonly plan?: Plan
}
