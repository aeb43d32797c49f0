import type { Checked } from '../checking/check.ts'
import type { TypedNode } from '../checking/typed-tree.ts'
import { explainFailure } from '../evaluating/compiled-formula.ts'
import type { CompileResult, Condition, FormulaCompiler } from '../evaluating/formula-compiler.ts'
import { checkFormula } from '../fixing/check-formula.ts'
import { namesIn } from '../syntax/names-in.ts'
import { parseFormula } from '../syntax/parsed-formula.ts'
import { computable } from './computable.ts'
import { conditionOf } from './condition-split.ts'

/** What a checked formula means. */
export function compileResultOf(checked: Checked, text: string): CompileResult {
  const { root, limits, diagnostics, uses, calls, mayBeInfinite } = checked
  if (!root) return { errors: diagnostics.filter(({ severity }) => severity === 'error'), uses }
  try {
    const meaning = {
      computable: computable(root, mayBeInfinite),
      warnings: diagnostics,
      calls,
      condition: once(() => conditionOf(root, anyResult)),
      ...(limits ? { limits: { of: computable(limits.of, false), relative: limits.relative } } : {}),
    }
    return { meaning, errors: [], uses }
  } catch (error) {
    return { errors: [explainFailure(error, text)], uses }
  }
}

const anyResult = (part: TypedNode) => computable(part, true)

/** A condition is taken apart only where it is looked at. */
function once(make: () => Condition): () => Condition {
  let made: Condition | undefined
  return () => {
    made ??= make()
    return made
  }
}

/** Reads any formula, with the parser and the checker. */
export const FULL_COMPILER: FormulaCompiler = {
  read(text) {
    const parsed = parseFormula(text)
    return {
      mentions: [...new Set(namesIn(parsed).map(({ name }) => name))],
      check: (scope) => compileResultOf(checkFormula(parsed, scope), text),
    }
  },
}
