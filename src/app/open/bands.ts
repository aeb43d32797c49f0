import type { WideCell } from '../../cells/shared/cell-view.ts'
import type { Cell, Check, Drawing, Given, Note, Result } from '../../worksheet/index.ts'
import type { Section } from './sections.ts'

/** The cells of a section by their place in its band, each in the order of the sheet. */
export interface Placed {
  readonly section: Section
  readonly givens: readonly Given[]
  readonly fineGivens: readonly Given[]
  readonly notes: readonly Note[]
  /** Notes below what follows, where there is more room. */
  readonly notesFollowing: readonly Note[]
  readonly results: readonly Result[]
  readonly fineResults: readonly Result[]
  readonly checks: readonly Check[]
  /** Cells that take the whole width below, such as tables. */
  readonly wide: readonly WideCell[]
}

/** Sections that share a band of what one gives and what follows from it, with their drawings. */
export interface Band {
  readonly sections: readonly Placed[]
  readonly drawings: readonly Drawing[]
  /** The estimated height of its columns, in pixels. */
  readonly height: number
  /** The same of what one gives, and of what follows. */
  readonly columns: readonly [gives: number, follows: number]
}

/** The kinds that have a place in a column; those of any other kind take the whole width. */
const IN_COLUMNS: Readonly<Record<Exclude<Cell, WideCell>['kind'], true>> = {
  given: true,
  result: true,
  check: true,
  note: true,
  drawing: true,
}

/** Estimated heights in pixels by mouse; they only decide which sections share a band. */
const HEADING = 58
const ROW = 34
const KEYS = 52
const DRAWING = 440
const LINE = 18
const CHARACTERS_A_LINE = 60
/** The tallest band that sections are put together in, which a screen of 900 shows below the head of the sheet. */
const TALLEST = 640

const isGiven = (cell: Cell): cell is Given => cell.kind === 'given'
const isWide = (cell: Cell): cell is WideCell => !Object.hasOwn(IN_COLUMNS, cell.kind)
const isResult = (cell: Cell): cell is Result => cell.kind === 'result'

/** A section with its cells placed in the columns of its band. */
const placed = (section: Section): Placed => ({
  section,
  givens: section.rows.filter(isGiven),
  fineGivens: section.exact.filter(isGiven),
  notes: section.rows.filter((cell): cell is Note => cell.kind === 'note'),
  notesFollowing: [],
  results: section.rows.filter(isResult),
  fineResults: section.exact.filter(isResult),
  checks: section.rows.filter((cell): cell is Check => cell.kind === 'check'),
  wide: section.rows.filter(isWide),
})

const noteHeight = ({ text }: Note): number => (Math.ceil(text.length / CHARACTERS_A_LINE) + 1) * LINE

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0)

/** Around how tall what one gives and what follows are, without notes. */
function heightsOf(all: readonly Placed[]): [gives: number, follows: number] {
  const keys = all.some(({ results }) => results.length > 0) ? KEYS : 0
  return [
    sum(all.map(({ givens }) => givens.length * ROW + (givens.length > 0 ? HEADING : 0))),
    keys + sum(all.map(({ results, checks }) => results.length * ROW + (checks.length > 0 ? ROW : 0))),
  ]
}

/**
 * The sections of a band and its height: each note goes below the column that is shorter by then, in the order of the
 * sheet. What one gives, or what follows, may itself take two columns.
 */
function laidOut(all: readonly Placed[], givesIn = 1, followsIn = 1): Pick<Band, 'sections' | 'height' | 'columns'> {
  let [gives, follows] = heightsOf(all)
  const canFollow = follows > 0
  gives /= givesIn
  follows /= followsIn
  const sections = all.map((one): Placed => {
    const notes: Note[] = []
    const notesFollowing: Note[] = []
    for (const note of one.notes) {
      // Where one gives nothing there is no column for it.
      const isFollowing = canFollow && (one.givens.length === 0 || gives > follows)
      ;(isFollowing ? notesFollowing : notes).push(note)
      if (isFollowing) follows += noteHeight(note) / followsIn
      else gives += noteHeight(note) / givesIn
    }
    return { ...one, notes, notesFollowing }
  })
  return { sections, height: HEADING + Math.max(gives, follows), columns: [gives, follows] }
}

const hasSteps = ({ wide }: Placed): boolean => wide.some(({ kind }) => kind === 'steps')

/** A table, a run or the like shows what its own section gives, so that nothing comes between. */
const isAlone = ({ section, wide }: Placed): boolean =>
  section.heading === undefined || wide.some(({ kind }) => kind !== 'steps')

/** What follows in a band has to be of one set-up: nothing beside a figure says of which. */
const isApart = ({ section: one }: Placed, { section: next }: Placed): boolean =>
  one.heading?.set_up !== next.heading?.set_up

/**
 * The sections in bands: neighbours that fill a column each share one, so that the bands together are as low as they can
 * be. No band of several sections is taller than a screen.
 */
export function bandsOf(sections: readonly Section[]): readonly Band[] {
  const all = sections.map(placed)
  /** The least height of the first sections, and where the last band of them begins. */
  const least: { readonly height: number; readonly from: number }[] = [{ height: 0, from: 0 }]
  for (let to = 1; to <= all.length; to++) {
    let best = { height: Number.POSITIVE_INFINITY, from: to - 1 }
    for (let from = to - 1; from >= 0; from--) {
      const [one, next] = [all[from] as Placed, all[from + 1]]
      const joins = next !== undefined && from + 1 < to
      if (joins && (isAlone(one) || isAlone(next) || hasSteps(one) || isApart(one, next))) break
      const tall = laidOut(all.slice(from, to)).height
      if (joins && tall > TALLEST) break
      const height = (least[from]?.height ?? 0) + tall
      if (height < best.height) best = { height, from }
    }
    least.push(best)
  }
  const bands: Band[] = []
  for (let to = all.length; to > 0; ) {
    const { from } = least[to] as { from: number }
    const own = all.slice(from, to)
    bands.unshift({ ...laidOut(own), drawings: own.flatMap(({ section }) => section.drawings) })
    to = from
  }
  return bands
}

/** A band beside which nothing is drawn: what it is lowest with, what one gives or what follows, takes two columns. */
export function freely({ sections }: Band): readonly [Band, spread: 'two-give' | 'two-follow'] {
  const all = sections.map(({ section }) => placed(section))
  const [giving, following] = [laidOut(all, 2, 1), laidOut(all, 1, 2)]
  const isGiving = giving.height < following.height
  return [{ ...(isGiving ? giving : following), drawings: [] }, isGiving ? 'two-give' : 'two-follow']
}

const drawnHeight = (bands: readonly Band[]): number => sum(bands.map(({ drawings }) => drawings.length * DRAWING))
const textHeight = (bands: readonly Band[]): number => sum(bands.map(({ height }) => height))
const endsSpread = ({ sections }: Band): boolean => sections.some(({ wide }) => wide.length > 0)

/**
 * Bands that share a margin for their drawings: where the drawings of a band are taller than the band, they go on beside
 * the next ones, and begin beside the ones before. What takes the whole width ends a spread.
 */
export function spreadsOf(bands: readonly Band[]): readonly (readonly Band[])[] {
  const spreads: Band[][] = []
  for (const band of bands) {
    const last = spreads.at(-1)
    const before = last?.at(-1)
    if (last && before && !endsSpread(before) && drawnHeight(last) > textHeight(last)) last.push(band)
    else spreads.push([band])
  }
  for (let at = spreads.length - 1; at > 0; at--) {
    const [above, own] = [spreads[at - 1], spreads[at]] as [Band[], Band[]]
    const isFree = drawnHeight(above) === 0 && !endsSpread(above.at(-1) as Band)
    if (isFree && drawnHeight(own) > textHeight(own)) spreads.splice(at - 1, 2, [...above, ...own])
  }
  return spreads
}

/** How many of the drawings of a spread have room in its margin; the others follow in a row below it. */
export function inMargin(bands: readonly Band[], drawings: number): number {
  return Math.min(drawings, Math.max(1, Math.round(textHeight(bands) / DRAWING)))
}

/** Drawings under the two columns of a band, each under the one that is shorter by then. */
export function underColumns(
  { columns }: Band,
  drawings: readonly Cell[],
): readonly [gives: readonly Cell[], follows: readonly Cell[]] {
  const under: [Cell[], Cell[]] = [[], []]
  let [gives, follows] = columns
  for (const drawing of drawings) {
    const isFirst = gives <= follows
    under[isFirst ? 0 : 1].push(drawing)
    if (isFirst) gives += DRAWING
    else follows += DRAWING
  }
  return under
}
