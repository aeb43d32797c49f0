import { agree, anyOf, listText } from '../../units/plural.ts'

/** Sentences about plans. Figures come in as they are shown, labels as they are written beside the fields. */
export const adviceWords = {
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
  readAgain: (readings: readonly string[], checks: readonly string[]) =>
    `Then measure again: ${listText(readings)}; until then, ${listText(checks)} ${agree(checks.length, 'waits', 'wait')}.`,
  gives: (figure: string) => `It gives ${figure}.`,
  noneGives: 'No suggestion was found that gives this value.',
  readings: (labels: readonly string[]) =>
    labels.length === 0
      ? 'This check judges what you found, and no setting here changes that. Enter it again once it has changed.'
      : `This check uses measured values: change ${anyOf(labels)}, then measure again.`,
  fixed: 'No setting that a suggestion may change has an effect on this check.',
  outOfReach: 'Not within reach.',
  notFound: 'No suggestion was found.',
  over: (off: string, limit: string) => `${off} over its limit of ${limit}`,
  under: (off: string, limit: string) => `${off} short of the ${limit} required`,
  isAgainst: (is: string, limit: string) => `${is}, and its limit is ${limit}`,
  short: (amount: string, changes: string) =>
    changes === '' ? `It is ${amount}.` : `The nearest is ${amount}: ${changes}.`,
  nearest: (changes: string) => `The nearest is to ${changes}.`,
  against: (check: string, amount?: string) =>
    amount === undefined ? `${check} would then fail.` : `${check} would then fail: ${amount}.`,
  ofSetUp: (label: string, setUp: string) => `${label} (${setUp})`,
  inSetUp: (setUp: string, press: string) => `${setUp}: ${press}`,
  fact: (label: string, value: string) => `${label} ${value}`,
  dependsOn: (list: readonly string[]) => `It depends on ${listText(list)}.`,
  limits: (list: readonly string[]) => `What limits it: ${list.join('; ')}.`,
  decisions: (list: readonly string[]) => `It would pass with ${anyOf(list)}.`,
  decisionsOr: (list: readonly string[], agreements: string) => `It would pass with ${anyOf(list)}; or ${agreements}.`,
  itWouldPassIf: (agreements: string) => `It would pass if you ${agreements}.`,
} as const
