import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import { SHELF, type ShelfEntry } from '../templates/templates.ts'

/** A section that may be added by itself, listed as jobs are; its key is the part's name. */
export type SingleSection = ShelfEntry & {
  /** A job or another set-up brings it as well. */
  readonly isBrought: boolean
}

const partsOfJobs = import.meta.glob<readonly string[]>('../../../templates/*.json', { import: 'parts', eager: true })

/** What follows all jobs of its stage. */
const LAST = Number.MAX_SAFE_INTEGER

/** Every part that may be added by itself; a job of the same name, or that is the part alone, stands for it. */
export function singleSections({ parts, roles, setUps }: PartLibrary): readonly SingleSection[] {
  const jobs = Object.values(partsOfJobs)
  const brought = new Set([...jobs.flat(), ...setUps.flatMap((one) => one.parts)])
  const wholeJobs = new Set(jobs.flatMap((list) => (list.length === 1 ? list : [])))
  const titleOf = new Map(roles.map(({ role, title }) => [role, title]))
  return [...parts.values()].flatMap(({ id, role, title, about, offer, stage }): SingleSection[] =>
    wholeJobs.has(id) || SHELF.some((one) => one.answer === offer)
      ? []
      : [
          {
            key: id,
            answer: offer,
            about,
            order: LAST,
            moment: stage,
            words: [title, titleOf.get(role) ?? ''],
            isBrought: brought.has(id),
          },
        ],
  )
}
