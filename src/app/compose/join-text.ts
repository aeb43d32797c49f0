import type { NameClash, Resolution } from '../../worksheet/compose/join.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { listed } from '../common/words.ts'

/** What is asked about a name, in words. */
export interface Question {
  readonly name: string
  readonly said: string
  /** What one may choose; with one alone it is told, not asked. */
  readonly ways: readonly { readonly way: Resolution; readonly said: string }[]
  readonly way: Resolution
  readonly clashes: boolean
  readonly why: string
}

/** All of several clashes at once. */
export const resolutionText = [
  ['keep', 'They are all the same'],
  ['both', 'Keep both of each'],
] as const

const MOST_LISTED = 8

/** What of the sheet a section uses instead of asking for it again, what was filled in first. */
export function usedText(meetings: readonly NameClash[]): string {
  const cells = meetings.flatMap(({ way, there }) => (way === 'keep' && there.kind !== 'check' ? [there] : []))
  const used = [...cells.filter(({ kind }) => kind === 'given'), ...cells.filter(({ kind }) => kind !== 'given')]
  if (used.length === 0) return 'It shares no figure with your sheet.'
  const names = used.slice(0, MOST_LISTED).map((cell) => `«${labelOf(cell)}»`)
  const more = used.length - names.length
  return `It uses your ${more > 0 ? `${names.join(', ')} and ${more} more` : listed(names)}.`
}

/** What is to be asked, or told, about the names that meet. */
export function questionsOf(meetings: readonly NameClash[]): Question[] {
  return meetings.flatMap((meeting): Question[] => {
    const { name, there, way, ways, clashes, why = '', newName } = meeting
    if (!clashes && ways.length < 2) return []
    const told = { name, way, clashes, ways: ways.map((one) => ({ way: one, said: wayOf(one, meeting) })) }
    if (!clashes) return [{ ...told, said: fromGiven(meeting), why: '' }]
    return [
      {
        ...told,
        said: `«${labelOf(there)}»: your sheet has a cell named «${name}» already.`,
        why: why === '' ? '' : `They cannot be one: ${why}. The new one is named «${newName}».`,
      },
    ]
  })
}

function fromGiven({ there, coming }: NameClash): string {
  const value = there.kind === 'given' && there.value.trim() !== '' ? ` as ${written(there.value, there.unit)}` : ''
  return `«${labelOf(there)}»: your sheet asks for it${value === '' ? '' : `, filled in${value}`}; here it is worked out${labelOf(coming) === labelOf(there) ? '' : `, as «${labelOf(coming)}»`}.`
}

const written = (value: string, unit = ''): string =>
  /^[\d.,\s]+$/.test(value) && /^[a-zµ°%]/i.test(unit) ? `${value} ${unit}` : value

function wayOf(way: Resolution, { there, coming, newName }: NameClash): string {
  if (way === 'both') return `Keep both${newName === undefined ? '' : `: the new one is named «${newName}»`}`
  if (way === 'measured') return 'Work it out, and keep what was filled in as measured'
  if (way === 'computed')
    return there.kind === 'given' && there.value.trim() === ''
      ? 'Work it out'
      : 'Work it out, and drop what was filled in'
  return there.kind === 'given' && coming.kind === 'result'
    ? 'Go on filling it in, and leave the working out'
    : 'They are the same: use yours'
}
