import { placesOf } from '../../worksheet/analysis/places.ts'
import { asMade } from '../../worksheet/kinds/filled-in.ts'
import { isSame } from '../../worksheet/schema/content.ts'
import type { Cell, Worksheet } from '../../worksheet/schema/document.ts'
import { withoutPreviews } from './previews.ts'

/** One measurement or tick that a copy has otherwise than the sheet here. */
export interface Difference {
  /** Names the place: the same in both sheets. */
  readonly key: string
  readonly label: string
  readonly here: string
  readonly there: string
  /** As it was when the copy was made; undefined where that is not known. */
  readonly before: string | undefined
  /** It was changed here as well since then. */
  readonly isClash: boolean
}

/** What a copy brings back. */
export interface Homecoming {
  /** What can be taken over. */
  readonly differences: readonly Difference[]
  /** How many measurements and ticks were changed here alone; they stay. */
  readonly stays: number
  /** How many cells differ in something else; they stay as they are here. */
  readonly others: number
}

const byId = (worksheet: Worksheet | undefined): Map<string, Cell> =>
  new Map(worksheet?.cells.map((cell) => [cell.id, cell]))

/** What a copy has otherwise than the sheet here; `before` is the sheet as it was when the copy was made. */
export function homecoming(here: Worksheet, there: Worksheet, before: Worksheet | undefined): Homecoming {
  const differences: Difference[] = []
  const earlier = byId(before)
  const own = byId(withoutPreviews(here))
  const sent = byId(there)
  let stays = 0
  let others = here.cells.filter(({ id }) => !sent.has(id)).length
  for (const theirs of there.cells) {
    const ours = own.get(theirs.id)
    if (ours?.kind !== theirs.kind) {
      others++
      continue
    }
    if (!isSame(asMade(ours), asMade(theirs))) others++
    const old = earlier.get(theirs.id)
    const ourPlaces = new Map(placesOf(ours).map((place) => [place.key, place.text]))
    const oldPlaces =
      old?.kind === theirs.kind ? new Map(placesOf(old).map((place) => [place.key, place.text])) : undefined
    for (const { key, label, text } of placesOf(theirs)) {
      // A step with another text is another step; a row that is not here is one that was added.
      if (!ourPlaces.has(key) && theirs.kind === 'steps') continue
      const now = ourPlaces.get(key) ?? ''
      if (now === text) continue
      const was = oldPlaces && (oldPlaces.get(key) ?? '')
      if (was === text) stays++
      else
        differences.push({
          key: `${theirs.id} ${key}`,
          label,
          here: now,
          there: text,
          before: was,
          isClash: was !== undefined && was !== now,
        })
    }
  }
  return { differences, stays, others }
}

/** The sheet here with the measurements and ticks of a copy in the places chosen by their keys. */
export function takenOver(here: Worksheet, there: Worksheet, keys: ReadonlySet<string>): Worksheet {
  const theirs = byId(there)
  const cells = here.cells.map((cell) => {
    const from = theirs.get(cell.id)
    if (from?.kind !== cell.kind) return cell
    return placesOf(from)
      .filter(({ key }) => keys.has(`${cell.id} ${key}`))
      .reduce((into, place) => place.take(into, from), cell)
  })
  return { ...here, cells }
}
