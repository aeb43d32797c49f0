import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Original, Planned } from '../worksheet/run-plan.ts'
import { counted, tilesInWords } from '../worksheet/run-words.ts'

/** What a press on an original does; undefined where no column takes ticks. */
export type Tick = ((row: number, done: boolean) => void) | undefined

/** So many are listed at a time: a set-up may serve thousands. */
export const STEP = 200

const millimetres = (length: number): string => `${Math.round(length * 1e3)}`
const sizeOf = ({ width, height }: Original): string => `${millimetres(width)} × ${millimetres(height)} mm`

function originalRow({ original, tiles, frames }: Planned, tick: Tick, remark: string | undefined): TemplateResult {
  const parts = tilesInWords(tiles)
  const more = [
    parts,
    original.pages > 1 ? `${original.pages} sides or pages, ${counted(frames, 'frame')}` : '',
    remark ?? '',
  ].filter(Boolean)
  const words = html`
    <span class="name">${original.title}${more.map((one) => html` <span class="small quiet">${one}</span>`)}</span>
    <span class="size small">${sizeOf(original)}</span>
  `
  const className = `original ${original.done ? 'is-done' : ''}`
  if (!tick)
    return html`<div class=${className}>${words}${original.done ? html`<span class="unseen">done</span>` : nothing}</div>`
  return html`
    <label class=${className}>
      <input
        type="checkbox"
        data-row=${original.row}
        .checked=${live(original.done)}
        @change=${(event: Event) => tick(original.row, (event.target as HTMLInputElement).checked)}
      >
      ${words}
    </label>
  `
}

/** The originals of a set-up in the order of work, the first so many of them. */
export function originalsList(
  originals: readonly Planned[],
  shown: number,
  tick: Tick,
  remarks: ReadonlyMap<number, string>,
  more: () => void,
): TemplateResult {
  const rest = originals.length - shown
  return html`
    <ul>
      ${repeat(
        originals.slice(0, shown),
        ({ original }) => original.row,
        (one) => html`<li>${originalRow(one, tick, remarks.get(one.original.row))}</li>`,
      )}
    </ul>
    ${
      rest > 0
        ? html`<button type="button" class="word" @click=${more}>${rest > STEP ? `${STEP} more of ${rest}` : `The last ${rest}`}</button>`
        : nothing
    }
  `
}
