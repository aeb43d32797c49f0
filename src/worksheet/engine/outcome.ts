import type { Diagnostic, Type, Value } from '../../language/index.ts'
import type { Offer, Shown } from '../../units/index.ts'

/** What became of a given or a result. */
export type Outcome = ValueOutcome | WaitingOutcome | ErrorOutcome

export interface ValueOutcome {
  readonly state: 'value'
  readonly value: Value
  readonly type: Type
  readonly shown: Shown
  /** Limits of error, in coherent SI: a given's own, or a result's in the worst case. */
  readonly tolerance?: number
  /** Where a result's limits come from, and how far it is likely to be off. */
  readonly limits?: Spread
  /** A result that was measured: its value above is the measured one, which feeds onward. */
  readonly measured?: Measured
  /** Of what was measured or read: the names of figures that changed since. */
  readonly before?: readonly string[]
  /** Why what was typed as measured cannot be read; the computed value then feeds onward. */
  readonly measuredAmiss?: Diagnostic
  /** How what was typed was understood, where that differs from it: `60 mm`. */
  readonly readAs?: string
  /** The meter’s constant a reading of light was converted with: `C = 250`. */
  readonly by?: string
  /** Of a table: the rows that formulas do not see. */
  readonly leftOut?: readonly OmittedRow[]
  /** Other ways a given's text could have been meant. */
  readonly offers: readonly Offer[]
  /** Doubts about the formula, cautions about these figures. */
  readonly warnings: readonly Diagnostic[]
  /** What to mind with the functions used. */
  readonly cautions: readonly string[]
  /** What in them may harm a person or an original. */
  readonly safety: readonly string[]
}

export interface Measured {
  readonly shown: Shown
  /** What it is by the formula, where that computes. */
  readonly computed?: { readonly value: Value; readonly shown: Shown }
  /** `4 mm over`; empty where there is nothing to compare with. */
  readonly difference: string
  /** What to do about it, where the result says: `Lower it by 4 mm`. */
  readonly adjust?: string
  /** Sentences on the other measured values that cannot be right together with it. */
  readonly contradicts?: readonly string[]
}

export interface WaitingOutcome {
  readonly state: 'waiting'
  /** The names of the givens it waits for. */
  readonly on: readonly string[]
}

export interface ErrorOutcome {
  readonly state: 'error'
  readonly diagnostics: readonly Diagnostic[]
  /** The cell the error comes from, where it is another one. */
  readonly origin?: string
}

/** What a check gives. */
export interface CheckOutcome {
  readonly state: 'pass' | 'marginal' | 'fail' | 'waiting' | 'error'
  /** The sentence to show, figures put in. */
  readonly message: string
  readonly diagnostics: readonly Diagnostic[]
  /** Marginal because it passes for the values but not over their limits: the givens it depends on, the greatest first. */
  readonly hangsOn?: readonly string[]
  /** Waiting: the names of the givens to fill in, or of the results to measure. */
  readonly needs?: readonly string[]
  /** What it needs is there, but older than a change of what it depends on. */
  readonly again?: boolean
}

/** What feeds a drawing: a number in coherent SI, yes or no, a text, a list or a record for each formula that computes. */
export interface DrawingOutcome {
  readonly values: Readonly<Record<string, Value>>
  /** The inputs that do not compute (yet), each with why. */
  readonly missing: Readonly<Record<string, string>>
}

/** The number of checks by state, and of cells in error. */
export interface CheckSummary {
  readonly pass: number
  readonly marginal: number
  readonly fail: number
  readonly waiting: number
  readonly errors: number
}

/** What one given adds to the limits of a result. */
export interface Contribution {
  readonly name: string
  /** |∂f/∂x| Δx, in the result's coherent SI. */
  readonly amount: number
}

/** How far a figure may be off for the limits of what it is computed from. */
export interface Spread {
  /** Worst case: every given at the end of its limits that does most. */
  readonly low: number
  readonly high: number
  /** Root sum of squares: how far it is likely to be off. */
  readonly likely: number
  /** The greatest first. */
  readonly contributions: readonly Contribution[]
  /** The figure is not linear in its givens within their limits: the likely spread is only an estimate. */
  readonly nonlinear: boolean
}

/** A row that formulas do not see, and why. */
export interface OmittedRow {
  /** Its place, from 0. */
  readonly row: number
  /** The place of the column it is for. */
  readonly column: number
  readonly message: string
}
