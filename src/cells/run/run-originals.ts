import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Original, Planned } from '../../worksheet/run/plan.ts'
import { counted, heightText, tilesText } from '../../worksheet/run/plan-text.ts'

/** What a press on an original does; undefined where no column takes ticks. */
export type Tick = ((row: number, done: boolean) => void) | undefined

/** So many are listed at a time: a set-up may serve thousands. */
export const STEP = 200

const millimetres = (length: number): string => `${Math.round(length * 1e3)}`
const sizeOf = ({ width, height }: Original): string => `${millimetres(width)} × ${millimetres(height)} mm`

/** What is listed, and what is to be said of it. */
export interface Listing {
  readonly originals: readonly Planned[]
  /** How many of them, from the first on. */
  readonly shown: number
  readonly tick: Tick
  /** Of figures noted that cannot be read, by row. */
  readonly remarks: ReadonlyMap<number, string>
  /** They stand at different heights on the column, being of different thickness. */
  readonly uneven: boolean
  readonly more: () => void
}

function originalRow({ original, tiles, frames, height }: Planned, { tick, remarks, uneven }: Listing): TemplateResult {
  const parts = tilesText(tiles)
  const more = [
    original.done && !tick ? 'done' : '',
    parts,
    original.pages > 1 ? `${original.pages} sides or pages, ${counted(frames, 'frame')}` : '',
    uneven && height !== undefined ? `column ${heightText(height)}` : '',
    remarks.get(original.row) ?? '',
  ].filter(Boolean)
  const words = html`
    <span class="name">${original.title}${more.length > 0 ? html`<span class="small quiet">${more.join('; ')}</span>` : nothing}</span>
    <span class="size small">${sizeOf(original)}</span>
  `
  const className = `original ${original.done ? 'is-done' : ''} ${tick ? '' : 'plain'}`
  if (!tick) return html`<div class=${className}>${words}</div>`
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
export function originalsList(listing: Listing): TemplateResult {
  const { originals, shown, more } = listing
  const rest = originals.length - shown
  return html`
    <ul>
      ${repeat(
        originals.slice(0, shown),
        ({ original }) => original.row,
        (one) => html`<li>${originalRow(one, listing)}</li>`,
      )}
    </ul>
    ${
      rest > 0
        ? html`<button type="button" class="word" @click=${more}>${rest > STEP ? `${STEP} more of ${rest}` : `The last ${rest}`}</button>`
        : nothing
    }
  `
}
