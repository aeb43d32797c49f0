import type { Standing } from '../worksheet/index.ts'

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
export function standingInWords({ holds, close, fails, waits, errors }: Standing): string {
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

export const cellsInWords = (n: number): string => counted(n, 'cell', 'cells').toLowerCase()

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
