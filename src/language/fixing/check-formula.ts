import { type Checked, checkUnits } from '../checking/check.ts'
import { type ParsedFormula, parsed } from '../syntax/parsed-formula.ts'
import type { Diagnostic } from '../values/diagnostic.ts'
import type { Scope } from '../values/scope.ts'
import { explainHoles } from './holes.ts'
import { testFixes } from './tested-fixes.ts'

/**
 * Checks a formula's grammar and units. Nothing is computed. Every fix that its diagnostics offer has been tested: the
 * whole formula with the fix, checked in the same scope, has no error, or fewer and later ones.
 */
export function checkFormula(formula: string | ParsedFormula, scope: Scope): Checked {
  const read = parsed(formula)
  const checked = checkUnits(read, scope)
  const diagnostics: readonly Diagnostic[] = [...checked.diagnostics, ...explainHoles(read, scope)]
  // Nothing is shown about a draft with an error, so its fixes need no test.
  if (scope.isDraft && !checked.root) return { ...checked, diagnostics }
  return { ...checked, diagnostics: testFixes(read.evened, scope, diagnostics, checked.reached) }
}
