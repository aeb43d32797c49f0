import type { Worksheet } from '../../worksheet/index.ts'
import { UNTITLED_SECTION } from '../common/words.ts'
import type { Section } from '../open/sections.ts'
import { openWords as words } from '../open/words.ts'

/** A stretch of the line: a section, or a whole set-up that one is not in. */
export interface Stretch {
  readonly label: string
  readonly sections: readonly [Section, ...Section[]]
}

const setUpOf = ({ heading }: Section): string => (typeof heading?.set_up === 'string' ? heading.set_up : '')

/** Each section of the set-up that one is in, and each other set-up as one, so that there is room for their names. */
export function stretchesOf(
  sections: readonly Section[],
  setUps: NonNullable<Worksheet['setups']>,
  current: string,
): readonly Stretch[] {
  const here = sections.find(({ id }) => id === current) ?? sections[0]
  return [...new Set(sections.map(setUpOf))].flatMap((setUp): Stretch[] => {
    const own = sections.filter((one) => setUpOf(one) === setUp)
    const title = setUps.find(({ name }) => name === setUp)?.title ?? words.firstSetUp
    if (!here || setUpOf(here) !== setUp) return [{ label: title, sections: own as [Section, ...Section[]] }]
    return own.map((section, at) => {
      const text = section.heading?.text || UNTITLED_SECTION
      const before = `${title}: `
      // The first of them says which set-up it is.
      return { label: at > 0 && text.startsWith(before) ? text.slice(before.length) : text, sections: [section] }
    })
  })
}
