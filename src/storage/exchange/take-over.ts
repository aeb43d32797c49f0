import { canTake, holdSame, type Place, placesOf } from '../../worksheet/analysis/places.ts'
import { asMade, without } from '../../worksheet/kinds/filled-in.ts'
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

const byKey = (cell: Cell): Map<string, Place> => new Map(placesOf(cell).map((place) => [place.key, place]))

/** Whether a cell was made otherwise: areas that a picture was measured with come with the picture. */
function differsElsewhere(ours: Cell, theirs: Cell): boolean {
  const come = theirs.kind === 'frame' && theirs.picture !== undefined && canTake(ours, theirs) ? ['areas'] : []
  return !isSame(without(asMade(ours), come), without(asMade(theirs), come))
}

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
    if (differsElsewhere(ours, theirs)) others++
    if (!canTake(ours, theirs)) continue
    const old = earlier.get(theirs.id)
    const ourPlaces = byKey(ours)
    const oldPlaces = old?.kind === theirs.kind ? byKey(old) : undefined
    for (const place of placesOf(theirs)) {
      const { key, label, text } = place
      const [now, was] = [ourPlaces.get(key), oldPlaces?.get(key)]
      // A step with another text is another step; a row that is not here is one that was added.
      if ((!now && theirs.kind === 'steps') || holdSame(now, place)) continue
      if (oldPlaces && holdSame(was, place)) stays++
      else
        differences.push({
          key: `${theirs.id} ${key}`,
          label,
          here: now?.text ?? '',
          there: text,
          before: oldPlaces && (was?.text ?? ''),
          isClash: oldPlaces !== undefined && !holdSame(was, now),
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
    if (!from || !canTake(cell, from)) return cell
    return placesOf(from)
      .filter(({ key }) => keys.has(`${cell.id} ${key}`))
      .reduce((into, place) => place.take(into, from), cell)
  })
  return { ...here, cells }
}
