import type { CheckSummary } from '../../worksheet/index.ts'

const NUMBERS = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
]

const counted = (n: number, one: string, many: string): string => `${NUMBERS[n] ?? n} ${n === 1 ? one : many}`

/** How the checks stand, worst first. */
export function checkSummaryText({ holds, close, fails, waits, errors }: CheckSummary): string {
  const said = [
    errors > 0 ? `${counted(errors, 'cell needs', 'cells need')} mending.` : '',
    fails > 0 ? `${counted(fails, 'check does', 'checks do')} not hold.` : '',
    close > 0 ? `${counted(close, 'check is', 'checks are')} close.` : '',
    waits > 0 ? `${counted(waits, 'check waits', 'checks wait')} for givens.` : '',
  ].filter(Boolean)
  if (said.length > 0) return said.join(' ')
  if (holds === 1) return 'The one check holds.'
  return holds === 0 ? 'No checks yet.' : `All ${(NUMBERS[holds] ?? String(holds)).toLowerCase()} checks hold.`
}

/** How the checks of a section stand that is folded away: `Two checks hold, one is close.` */
export function foldedText({ holds, close, fails, waits, errors }: CheckSummary, rows: number): string {
  const states = [
    [holds, 'holds', 'hold'],
    [close, 'is close', 'are close'],
    [fails, 'does not hold', 'do not hold'],
    [waits, 'waits for givens', 'wait for givens'],
  ] as const
  const told = states
    .filter(([n]) => n > 0)
    .map(([n, one, many], at) => {
      const word = NUMBERS[n] ?? String(n)
      const noun = at > 0 ? '' : n === 1 ? ' check' : ' checks'
      return `${at > 0 ? word.toLowerCase() : word}${noun} ${n === 1 ? one : many}`
    })
  const mending = errors > 0 ? ` ${counted(errors, 'cell needs', 'cells need')} mending.` : ''
  const said = told.length > 0 ? told.join(', ') : `${counted(rows, 'row', 'rows')}, no check`
  return `${said}.${mending}`
}

/** Words in a row: `width, height and depth`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

export const namesText = (n: number): string => counted(n, 'name stands', 'names stand')

export const cellsText = (n: number): string => counted(n, 'cell', 'cells').toLowerCase()

const sameDay = (a: Date, b: Date): boolean => a.toDateString() === b.toDateString()

export const clock = (at: Date): string => at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })

/** When a sheet was last kept, as one would say it today. */
export function when(at: Date, now = new Date()): string {
  const yesterday = new Date(now)
  yesterday.setDate(now.getDate() - 1)
  if (sameDay(at, now)) return `today ${clock(at)}`
  if (sameDay(at, yesterday)) return `yesterday ${clock(at)}`
  return at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })
}
