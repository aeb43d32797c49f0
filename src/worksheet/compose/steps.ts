import type { Cell } from '../schema/document.ts'
import type { Gathering } from './gather.ts'
import type { PartLibrary } from './part-library.ts'
import { prefixedName, type SetUpName } from './set-ups.ts'
import * as words from './words.ts'

/** A later set-up, with the names it has as the first has them, and those the first has taken the readings of. */
interface StepsOfSetUp extends SetUpName {
  readonly shared: ReadonlySet<string>
  readonly taken: ReadonlySet<string>
}

/**
 * One list of the parts' steps in the order of work. A reading is taken once; a step whose reading the sheet does not
 * have stays as text, unless another part says in its place how it comes about.
 */
export function stepsOf(
  library: PartLibrary,
  { parts, texts }: Pick<Gathering, 'parts' | 'texts'>,
  names: ReadonlySet<string>,
  setUp?: StepsOfSetUp,
): Cell[] {
  const phaseAt = new Map(library.phases.map((phase, at) => [phase, at]))
  const own = (name: string): string => (setUp && !setUp.shared.has(name) ? prefixedName(setUp.prefix, name) : name)
  const said = new Set<string>()
  const taken = new Set<string>()
  const kept = parts
    .flatMap(({ steps }) => steps)
    .flatMap(({ text, phase, reading: of, sets: all = [] }) => {
      const reading = of !== undefined && names.has(own(of)) ? own(of) : undefined
      if (reading === undefined && of !== undefined && (texts.has(of) || setUp?.taken.has(of))) return []
      if (said.has(text) || (reading !== undefined && taken.has(reading))) return []
      said.add(text)
      if (reading !== undefined) taken.add(reading)
      const sets = all.map(own).filter((name) => names.has(name))
      return [{ text, phase, ...(reading === undefined ? {} : { reading }), ...(sets.length > 0 ? { sets } : {}) }]
    })
  if (kept.length === 0) return []
  // Those of one phase stay in the order of parts.
  const steps = kept.toSorted((a, b) => (phaseAt.get(a.phase) ?? 0) - (phaseAt.get(b.phase) ?? 0))
  return [
    {
      kind: 'steps',
      id: setUp ? prefixedName(setUp.prefix, 'steps_work') : 'steps_work',
      title: setUp ? words.inOrderOf(setUp.title) : words.inOrder,
      steps,
    },
  ]
}
