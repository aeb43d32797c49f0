import type { CheckState } from '../../cells/shared/check-sign.ts'

type Counts = Readonly<Record<Exclude<CheckState, 'error'>, number>> & { readonly errors?: number }

const WORST_FIRST: readonly CheckState[] = ['error', 'fail', 'marginal', 'waiting', 'pass']

/** The states that checks are in and how many are in each, the worst first. */
export const stateCounts = (counts: Counts): readonly (readonly [CheckState, number])[] =>
  WORST_FIRST.map((state) => [state, state === 'error' ? (counts.errors ?? 0) : counts[state]] as const).filter(
    ([, n]) => n > 0,
  )
