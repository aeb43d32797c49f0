import { html, nothing, type TemplateResult } from 'lit'
import { deltaE2000 } from '../../functions/acceptance/colour-difference.ts'
import { signedStops } from '../../units/stops.ts'
import type { SeriesEntry } from '../../worksheet/frame/frame-series.ts'
import type { Frame } from '../../worksheet/index.ts'
import { ticked } from '../fields/labelled.ts'
import { frameWords as words } from './words.ts'

/** Whether pictures are compared over time, and those that are, each with the change of its light since the first. */
export function seriesPart(cell: Frame, put: (cell: Frame, key: string) => void): TemplateResult {
  const { series } = cell
  const follow = (on: boolean): void => {
    const { series: _, ...rest } = cell
    put(on ? { ...rest, series: [] } : rest, 'follow')
  }
  return html`
    ${ticked(words.follow, series !== undefined, follow)}
    ${series ? html`<p class="small quiet">${words.followHint}</p>` : nothing}
    ${series && series.length > 0 ? seriesTable(cell, series, put) : nothing}
  `
}

function seriesTable(
  cell: Frame,
  series: readonly SeriesEntry[],
  put: (cell: Frame, key: string) => void,
): TemplateResult {
  const columns = changeColumns(cell.areas ?? [], series)
  return html`
    <div class="scrolled">
      <table class="map series" aria-label=${words.overTime}>
        <tr>
          <th scope="col">${words.takenAt}</th>
          <th scope="col">${words.picturesName}</th>
          ${columns.map(({ heading }) => html`<th scope="col">${heading}</th>`)}
          <td></td>
        </tr>
        ${series.map(
          (entry, at) => html`
            <tr>
              <td>${entry.when ? entry.when.replace('T', ' ') : words.noTime}</td>
              <td>${entry.name}</td>
              ${columns.map(({ changeOf }) => html`<td>${changeOf(entry)}</td>`)}
              <td>
                <button
                  type="button"
                  class="word small"
                  aria-label=${words.remove(entry.name)}
                  @click=${() => put({ ...cell, series: series.toSpliced(at, 1) }, 'series')}
                >✕</button>
              </td>
            </tr>
          `,
        )}
      </table>
    </div>
  `
}

/** What is compared over time of the areas: a heading each, and the change of a picture since the first that has it. */
export const changeColumns = (
  areas: NonNullable<Frame['areas']>,
  series: readonly SeriesEntry[],
): readonly { heading: string; changeOf: (entry: SeriesEntry) => string }[] =>
  areas.flatMap(({ kind, name }) =>
    (FOLLOWED[kind] ?? []).map(({ heading, change }) => ({
      heading: heading(name),
      changeOf: (entry: SeriesEntry) => changeIn(series, entry, name, change),
    })),
  )

type Figures = Readonly<Record<string, unknown>>
/** The change from one reading of an area to another, as shown; undefined where a reading lacks the figure. */
type ChangeOf = (first: Figures, now: Figures) => string | undefined

/** What is followed over time of each kind of area. */
const FOLLOWED: Readonly<Partial<Record<string, readonly { heading: (area: string) => string; change: ChangeOf }[]>>> =
  {
    patch: [
      {
        heading: words.change,
        change: (first, now) => {
          const [before, after] = [green(first), green(now)]
          return before && after ? signedStops(Math.log2(after / before)) : undefined
        },
      },
      {
        heading: words.colourChange,
        change: (first, now) => {
          const [before, after] = [labIn(first), labIn(now)]
          return before && after ? deltaE2000(before, after).toFixed(1) : undefined
        },
      },
    ],
    evenness: [
      {
        heading: words.spreadChange,
        change: (first, now) => {
          const [before, after] = [figure(first, 'spread'), figure(now, 'spread')]
          return before !== undefined && after !== undefined ? signedStops(after - before) : undefined
        },
      },
    ],
    edge: [
      {
        heading: words.responseOfFirst,
        change: (first, now) => {
          const [before, after] = [figure(first, 'mtf50'), figure(now, 'mtf50')]
          return before && after !== undefined ? `${Math.round((100 * after) / before)} %` : undefined
        },
      },
    ],
  }

const figure = (reading: Figures, part: string): number | undefined =>
  typeof reading[part] === 'number' ? reading[part] : undefined

const numbersIn = (reading: Figures, part: string): readonly number[] =>
  Array.isArray(reading[part]) && reading[part].every((one) => typeof one === 'number') ? reading[part] : []

const green = (reading: Figures): number | undefined => numbersIn(reading, 'light')[1]

function labIn(reading: Figures): { L: number; a: number; b: number } | undefined {
  const [L, a, b] = numbersIn(reading, 'lab')
  return L !== undefined && a !== undefined && b !== undefined ? { L, a, b } : undefined
}

/** The change of an area’s figure since the first picture that has it. */
function changeIn(series: readonly SeriesEntry[], entry: SeriesEntry, area: string, change: ChangeOf): string {
  const readingIn = ({ readings }: SeriesEntry): Figures =>
    (Object.hasOwn(readings, area) ? readings[area] : undefined) ?? {}
  const first = series.map(readingIn).find((one) => change(one, one) !== undefined)
  return (first && change(first, readingIn(entry))) ?? ''
}
