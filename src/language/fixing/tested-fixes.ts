import { clip } from '../../units/index.ts'
import { checkUnits, type Stage } from '../checking/check.ts'
import { applyFix, type Diagnostic, type Fix, fix } from '../values/diagnostic.ts'
import type { Scope } from '../values/scope.ts'
import { write } from '../values/words.ts'

/** The most further fixes that one error is followed through. */
const MOST_STEPS = 12
/** The most characters that all tests of one formula's fixes check, so that a long formula is answered at once. */
const MOST_CHARACTERS = 12_000
const MOST_FIXES = 8

/** A text with its errors: how many, and how far from the end the first one starts. */
interface Trial {
  readonly text: string
  readonly reached: Stage
  readonly errors: readonly Diagnostic[]
  readonly warnings: readonly Diagnostic[]
}

class Trials {
  private left = MOST_CHARACTERS

  constructor(private readonly scope: Scope) {}

  /** Undefined once enough has been checked. */
  of(text: string): Trial | undefined {
    this.left -= text.length + 20
    if (this.left < 0) return undefined
    const { diagnostics, reached } = checkUnits(text, this.scope)
    return { text, reached, ...apart(diagnostics) }
  }
}

const apart = (diagnostics: readonly Diagnostic[]) => ({
  errors: diagnostics.filter(({ severity }) => severity === 'error'),
  warnings: diagnostics.filter(({ severity }) => severity === 'warning'),
})

const fromEnd = ({ text, errors }: Trial): number => text.length - Math.min(...errors.map(({ from }) => from))

const STAGES: readonly Stage[] = ['characters', 'grammar', 'units']

/** The check comes further; or as far, and finds fewer errors, or as many of which the first comes later. */
function isBetter(after: Trial, before: Trial): boolean {
  if (after.reached !== before.reached) return STAGES.indexOf(after.reached) > STAGES.indexOf(before.reached)
  if (after.errors.length !== before.errors.length) return after.errors.length < before.errors.length
  return fromEnd(after) < fromEnd(before)
}

/** Applies the first fix that helps to the first error, over and over, until nothing is wrong. */
function followed(start: Trial, trials: Trials): Trial | undefined {
  let now = start
  for (let step = 0; step < MOST_STEPS && now.errors.length > 0; step++) {
    const next = nextOf(now, trials)
    if (!next) return undefined
    now = next
  }
  return now.errors.length === 0 ? now : undefined
}

function nextOf(now: Trial, trials: Trials): Trial | undefined {
  for (const { fixes } of now.errors)
    for (const one of fixes) {
      const after = trials.of(applyFix(now.text, one))
      if (after && isBetter(after, now)) return after
    }
  return undefined
}

/** The fixes of a diagnostic that lead to a formula without errors; where none does, those that lead nearer to one. */
function tested(diagnostic: Diagnostic, before: Trial, trials: Trials): Fix[] {
  const isError = diagnostic.severity === 'error'
  const seen = new Set([before.text])
  const clean: { fix: Fix; warnings: number }[] = []
  const nearer: Fix[] = []
  for (const one of diagnostic.fixes) {
    const after = trials.of(applyFix(before.text, one))
    if (!after || seen.has(after.text)) continue
    seen.add(after.text)
    const isBack = STAGES.indexOf(after.reached) < STAGES.indexOf(before.reached)
    const helps = isError ? isBetter(after, before) : !isBack && after.errors.length <= before.errors.length
    // What breaks the grammar helps only where that is put right too: `f/8(2)` on the way to `f/8 * (2)`.
    const whole = helps || isBack ? followed(after, trials) : undefined
    if (!whole) {
      if (helps) nearer.push(one)
      continue
    }
    const isSettled = isError || !whole.warnings.some(({ message }) => message === diagnostic.message)
    const isNew = whole === after || !seen.has(whole.text)
    seen.add(whole.text)
    if (isSettled && isNew)
      clean.push({
        fix: whole === after ? one : rewrite(before.text, whole.text),
        warnings: whole.warnings.length,
      })
  }
  // A fix that leaves a doubt comes after those that leave none.
  clean.sort((a, b) => a.warnings - b.warnings)
  const best = clean.length > 0 ? clean.map((one) => one.fix) : nearer
  return best.slice(0, MOST_FIXES)
}

/** A fix that writes the whole formula anew. */
const rewrite = (before: string, after: string): Fix => fix(after, 0, before.length, write(clip(after)))

/** The diagnostics of a formula with only those of their fixes that pass the test. */
export function testFixes(
  text: string,
  scope: Scope,
  diagnostics: readonly Diagnostic[],
  reached: Stage,
): Diagnostic[] {
  if (diagnostics.every(({ fixes }) => fixes.length === 0)) return [...diagnostics]
  const trials = new Trials(scope)
  const before: Trial = { text, reached, ...apart(diagnostics) }
  return diagnostics.map((one) => (one.fixes.length === 0 ? one : { ...one, fixes: tested(one, before, trials) }))
}
