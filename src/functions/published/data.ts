import pairs from '../../../shared/reference/ciede2000-pairs.json'
import care from '../../../shared/reference/published/care.json'
import closeFocus from '../../../shared/reference/published/close-focus.json'
import colour from '../../../shared/reference/published/colour.json'
import depth from '../../../shared/reference/published/depth.json'
import exposure from '../../../shared/reference/published/exposure.json'
import film from '../../../shared/reference/published/film.json'
import grading from '../../../shared/reference/published/grading.json'
import inspection from '../../../shared/reference/published/inspection.json'
import lighting from '../../../shared/reference/published/lighting.json'
import lists from '../../../shared/reference/published/lists.json'
import run from '../../../shared/reference/published/run.json'
import sampling from '../../../shared/reference/published/sampling.json'
import sources from '../../../shared/reference/published/sources.json'
import squareness from '../../../shared/reference/published/squareness.json'
import statistics from '../../../shared/reference/published/statistics.json'
import units from '../../../shared/reference/published/units.json'

/** Where a published value was printed, and where it was read. */
export interface PublishedSource {
  readonly title: string
  readonly by: string
  readonly edition: string
  readonly kind: string
  /** An address, a repository and commit, or a description of the copy that was read. */
  readonly read_at: string
}

/** A figure that somebody else has printed, with the formula that is to give it. */
export interface PublishedValue {
  readonly id: string
  /** What the figure is, in the words of its source. */
  readonly quantity: string
  /** A formula; a name in it is that of a published list. */
  readonly formula: string
  /** For a limit, the formula of a value just beyond it, which must not give `value`. */
  readonly beyond?: string
  /** The figure as printed: `4 1/2`, `.27`, `2.54E-02`. */
  readonly printed: string
  /** The printed figure as a number, in `unit`; of a text, the text. */
  readonly value: number | string
  /** The unit it is printed in; none for a plain number, an f-number, a colour difference or money. */
  readonly unit?: string
  /** The greatest difference, in `unit`, that the printed digits allow, or less. */
  readonly tolerance?: number
  /** A key of `SOURCES`. */
  readonly source: string
  /** Page, table, example or file in the source. */
  readonly place?: string
  /** Read in a quotation of the source, not in the source itself. */
  readonly quoted?: boolean
  /** Why the tolerance is wider than the printed digits allow, or what else to know. */
  readonly note?: string
}

export const SOURCES: Readonly<Record<string, PublishedSource>> = sources

/** Published lists of data, by the name that formulas give them. */
export const LISTS: Readonly<Record<string, readonly number[]>> = lists

/** The pairs of the paper on CIEDE2000: two Lab colours, and their difference to four places. */
const colourPairs: readonly PublishedValue[] = pairs.pairs.map((pair, i) => ({
  id: `sharma-${i + 1}`,
  quantity: `CIEDE2000 difference of pair ${i + 1}`,
  formula: `delta_e_2000(${pair.slice(0, 6).join(', ')})`,
  printed: (pair[6] as number).toFixed(4),
  value: pair[6] as number,
  tolerance: 0.5e-4,
  source: 'sharma',
  place: 'Table 1',
  quoted: true,
}))

/** Every published value, in the order of the validation page. */
export const PUBLISHED: readonly PublishedValue[] = [
  closeFocus,
  sampling,
  depth,
  exposure,
  lighting,
  squareness,
  colour,
  colourPairs,
  statistics,
  grading,
  inspection,
  care,
  run,
  film,
  units,
].flat()
