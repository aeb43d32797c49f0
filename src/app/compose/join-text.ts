import { asShown } from '../../units/index.ts'
import type { NameClash, Resolution } from '../../worksheet/compose/join.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { composeWords as words } from './words.ts'

/** A question about a name that both the sheet and the section use. */
export interface Question {
  readonly name: string
  readonly said: string
  /** The possible answers. A single one is announced, not asked. */
  readonly ways: readonly { readonly way: Resolution; readonly said: string }[]
  readonly way: Resolution
  readonly clashes: boolean
  readonly why: string
}

/** Answers to several clashes at once. */
export const resolutionText = [
  ['keep', words.allSame],
  ['both', words.allBoth],
] as const

/** The cells of the sheet that a section uses instead of asking for them again, the givens first. */
export function usedText(meetings: readonly NameClash[]): string {
  const cells = meetings.flatMap(({ way, there }) => (way === 'keep' && there.kind !== 'check' ? [there] : []))
  const used = [...cells.filter(({ kind }) => kind === 'given'), ...cells.filter(({ kind }) => kind !== 'given')]
  return used.length === 0 ? words.usesNothing : words.uses(used.map(labelOf))
}

/** The questions about the names that both use, and what is announced about them. */
export function questionsOf(meetings: readonly NameClash[]): Question[] {
  return meetings.flatMap((meeting): Question[] => {
    const { name, there, way, ways, clashes, why = '', newName } = meeting
    if (!clashes && ways.length < 2) return []
    const question = { name, way, clashes, ways: ways.map((one) => ({ way: one, said: wayOf(one, meeting) })) }
    if (!clashes) return [{ ...question, said: fromGiven(meeting), why: '' }]
    return [
      {
        ...question,
        said: words.nameUsed(labelOf(there), name),
        why: why === '' ? '' : words.cannotMerge(why, newName ?? name),
      },
    ]
  })
}

function fromGiven({ there, coming }: NameClash): string {
  const value = there.kind === 'given' && there.value.trim() !== '' ? written(there.value, there.unit) : ''
  return words.givenIsComputed(labelOf(there), value, labelOf(coming) === labelOf(there) ? '' : labelOf(coming))
}

const written = (value: string, unit = ''): string =>
  asShown(/^[-−\d.,\s]+$/.test(value) && /^[a-zµ°%]/i.test(unit) ? `${value} ${unit}` : value)

function wayOf(way: Resolution, { there, coming, newName }: NameClash): string {
  if (way === 'both') return newName === undefined ? words.keepBoth : words.keepBothAs(newName)
  if (way === 'measured') return words.computeAndMeasure
  if (way === 'computed')
    return there.kind === 'given' && there.value.trim() === '' ? words.compute : words.computeAndDrop
  return there.kind === 'given' && coming.kind === 'result' ? words.keepFilling : words.same
}
