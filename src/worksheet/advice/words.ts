import { anyOf, listText } from '../../units/plural.ts'

/** Sentences about plans. Figures come in as they are shown, labels as they are written beside the fields. */
export const WORDS = {
  increase: (label: string, from: string, to: string) => `increase ${label} from ${from} to ${to}`,
  reduce: (label: string, from: string, to: string) => `reduce ${label} from ${from} to ${to}`,
  set: (label: string, to: string) => `set ${label} to ${to}`,
  choosePiece: (label: string, piece: string) => `choose ${piece} as ${label}`,
  otherKit: (label: string, from: string, to: string) =>
    `use other equipment: ${label} of about ${to} instead of ${from}`,
  agree: (label: string, from: string, to: string) => `agree on ${label} ${to} instead of ${from}`,
  wholeSheet: (checks: readonly string[], changes: string) => `To make ${listText(checks)} pass: ${changes}`,
  marginal: (checks: readonly string[]) =>
    checks.length === 1 ? `${checks[0]} is then marginal.` : `${listText(checks)} are then marginal.`,
  breaks: (checks: readonly string[]) =>
    checks.length === 1 ? `${checks[0]} then fails.` : `${listText(checks)} then fail.`,
  readings: (labels: readonly string[]) =>
    labels.length === 0
      ? 'This check is about readings: change what was measured, then measure again.'
      : `This check is about readings: change ${anyOf(labels)}, then measure again.`,
  fixed: 'Nothing that may be changed has an effect on this check.',
  outOfReach: 'Not within reach.',
  short: (percent: string, changes: string) =>
    changes === ''
      ? `It is ${percent} short of its limit.`
      : `The nearest is ${percent} short of its limit: ${changes}.`,
  against: (check: string) => `${check} would then fail.`,
  inSetUp: (setUp: string, press: string) => `${setUp}: ${press}`,
  decision: (label: string, value: string) => `${label} ${value}`,
  decisions: (list: readonly string[]) => `It would pass with ${anyOf(list)}.`,
} as const
