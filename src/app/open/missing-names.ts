import type { Check, Sheet } from '../../worksheet/index.ts'

/** The names of the givens that the condition of a check still needs. */
export const missingNames = (sheet: Sheet, { condition }: Check): readonly string[] => [
  ...new Set(
    (condition.match(/[A-Za-z_]\w*/g) ?? []).flatMap((name) => {
      const on = sheet.named(name)
      if (on?.kind !== 'given' && on?.kind !== 'result') return []
      const outcome = sheet.outcome(on.id)
      if (outcome.state !== 'waiting') return []
      return on.kind === 'given' ? [name] : outcome.on
    }),
  ),
]
