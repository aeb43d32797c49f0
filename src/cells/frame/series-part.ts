import { html, nothing, type TemplateResult } from 'lit'
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
  const patches = (cell.areas ?? []).filter(({ kind }) => kind === 'patch')
  return html`
    <div class="scrolled">
      <table class="map" aria-label=${words.overTime}>
        <tr>
          <th scope="col">${words.takenAt}</th>
          <th scope="col">${words.picturesName}</th>
          ${patches.map(({ name }) => html`<th scope="col">${words.change(name)}</th>`)}
          <td></td>
        </tr>
        ${series.map(
          (entry, at) => html`
            <tr>
              <td>${entry.when ? entry.when.replace('T', ' ') : words.noTime}</td>
              <td>${entry.name}</td>
              ${patches.map(({ name }) => html`<td>${changeOf(series, entry, name)}</td>`)}
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

/** The change of a patch’s light since the first picture that has it. */
export function changeOf(series: readonly SeriesEntry[], entry: SeriesEntry, area: string): string {
  const light = ({ readings }: SeriesEntry): number | undefined => {
    const values = Object.hasOwn(readings, area) ? readings[area]?.light : undefined
    const green = Array.isArray(values) ? values[1] : undefined
    return typeof green === 'number' && green > 0 ? green : undefined
  }
  const [first, now] = [series.map(light).find((one) => one !== undefined), light(entry)]
  return first === undefined || now === undefined ? '' : signedStops(Math.log2(now / first))
}
