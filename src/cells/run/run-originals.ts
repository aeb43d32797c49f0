import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Original, Planned } from '../../worksheet/run/plan.ts'
import { heightText, tilesText } from '../../worksheet/run/plan-text.ts'
import * as planWords from '../../worksheet/run/words.ts'
import { runWords } from './words.ts'

/** Ticks an original; undefined if the table has no column for ticks. */
export type Tick = ((row: number, done: boolean) => void) | undefined

/** Originals listed at a time, because a set-up may have thousands. */
export const STEP = 200

const millimetres = (length: number): string => `${Math.round(length * 1e3)}`
const sizeOf = ({ width, height }: Original): string => `${millimetres(width)} × ${millimetres(height)} mm`

/** A list of originals to show. */
export interface Listing {
  readonly originals: readonly Planned[]
  /** The number of originals shown. */
  readonly shown: number
  readonly tick: Tick
  /** Remarks about figures that are not understood, by row. */
  readonly remarks: ReadonlyMap<number, string>
  /** Whether their heights on the column differ because their thicknesses do. */
  readonly uneven: boolean
  readonly more: () => void
}

/** What is listed, with line breaks only between its items. */
export const unbroken = (items: readonly string[], separator: string): TemplateResult[] =>
  items.map((item, at) => html`<span class="unbroken">${item}${at < items.length - 1 ? separator : ''}</span> `)

function originalRow({ original, tiles, frames, height }: Planned, { tick, remarks, uneven }: Listing): TemplateResult {
  const parts = tilesText(tiles)
  const more = [
    original.done && !tick ? runWords.done : '',
    parts,
    original.pages > 1 ? runWords.pages(original.pages, planWords.frames(frames)) : '',
    uneven && height !== undefined ? runWords.column(heightText(height)) : '',
    remarks.get(original.row) ?? '',
  ].filter(Boolean)
  const words = html`
    <span class="name">${original.title}${more.length > 0 ? html`<span class="small quiet">${unbroken(more, ';')}</span>` : nothing}</span>
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

/** The first originals of a set-up in order of work. */
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
        ? html`<button type="button" class="word" @click=${more}>${rest > STEP ? runWords.nextOriginals(STEP, rest) : runWords.lastOriginals(rest)}</button>`
        : nothing
    }
  `
}
