import { html, nothing, type TemplateResult } from 'lit'
import { live } from 'lit/directives/live.js'
import { splitSize } from '../../units/read-size.ts'
import type { EntryParts } from '../shared/entry-parts.ts'
import { fullKeyboard } from '../shared/typing-aids.ts'
import './hold-row.ts'
import { touchWords as words } from './words.ts'

/** The sign before a field, which need not be typed: the notation of its unit. */
const PREFIXES: ReadonlyMap<string, string> = new Map([
  ['f/', 'f/'],
  ['1/ s', '1/'],
  ['1:', '1:'],
])

/** A side of a size with more characters than this takes all of its box, so that it is seen whole. */
const LONG_SIDE = 4

interface NumberBox {
  readonly id?: string
  readonly label?: string
  readonly value: string
  readonly isFull?: boolean
  readonly put: (value: string, box: HTMLInputElement) => void
}

function box({ bad, described }: EntryParts, { id, label, value, isFull, put }: NumberBox): TemplateResult {
  return html`
    <input
      id=${id ?? nothing}
      class="field entry ${isFull ? 'full' : ''}"
      type="text"
      inputmode=${fullKeyboard.get() ? 'text' : 'decimal'}
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      aria-label=${label ?? nothing}
      aria-describedby=${described}
      aria-invalid=${bad}
      .value=${live(value)}
      @input=${({ target }: Event) => put((target as HTMLInputElement).value, target as HTMLInputElement)}
    >
  `
}

/** The sides of a size as typed; undefined where the text does not have two. */
export function sidesOf(value: string): readonly [string, string] | undefined {
  if (value.trim() === '') return ['', '']
  const sides = splitSize(value)
  return sides && splitSize(sides[1]) === undefined ? sides : undefined
}

/** The text of a size typed in two boxes. */
export const sizeText = (width: string, height: string): string =>
  width.trim() === '' && height.trim() === '' ? '' : `${width} × ${height}`

/** What two boxes hold after something was typed into the first: a whole size fills both. */
export function widthTyped(text: string, height: string): readonly [string, string] {
  const sides = splitSize(text)
  return sides ? [sides[0], sides[1] || height] : [text, height]
}

const isFigure = (text: string): boolean => /^\s*[\d.,]+\s*$/.test(text)

/** What is shown after the sign before a field; undefined where the text has another form and is shown whole. */
export function withoutPrefix(value: string, prefix: string): string | undefined {
  const text = value.trimStart()
  if (text === '') return ''
  const rest = text.toLowerCase().startsWith(prefix) ? text.slice(prefix.length) : undefined
  return rest !== undefined && isFigure(rest) ? rest : undefined
}

/** The value typed after the sign before a field: a figure takes the sign, anything else is taken as it is typed. */
export const withPrefix = (typed: string, prefix: string): string => (isFigure(typed) ? `${prefix}${typed}` : typed)

function sizeBoxes(parts: EntryParts, [width, height]: readonly [string, string]): TemplateResult {
  const { label, put } = parts
  const isHalf = (width === '') !== (height === '')
  // What lacks a side is not wrong yet; while it is typed its row says nothing of it.
  const sides = isHalf ? { ...parts, bad: false } : parts
  const isFull = Math.max(width.trim().length, height.trim().length) > LONG_SIDE
  return html`
    <div class="pair ${isHalf ? 'half' : ''}" role="group" aria-label=${label}>
      ${box(sides, {
        id: 'entry',
        label: words.width(label),
        value: width,
        isFull,
        put: (text, { parentElement }) => {
          put(sizeText(...widthTyped(text, height)))
          // The sign between the sides leads on to the second.
          if (splitSize(text)) parentElement?.querySelector<HTMLInputElement>('input:last-of-type')?.select()
        },
      })}
      <span aria-hidden="true">×</span>
      ${box(sides, {
        label: words.height(label),
        value: height,
        isFull,
        put: (text) => put(sizeText(width, splitSize(text)?.join('') ?? text)),
      })}
    </div>
  `
}

/** The field of a figure on a touch screen, with the keys for numbers: a size has two boxes, f/ and 1/ are before the field. */
export function touchField(parts: EntryParts): TemplateResult | undefined {
  const { entry, cell, put } = parts
  const sides = entry === 'size' ? sidesOf(cell.value) : undefined
  if (sides) return sizeBoxes(parts, sides)
  if (entry !== 'quantity') return undefined
  const prefix = PREFIXES.get(cell.unit?.trim() ?? '')
  if (prefix === undefined) return box(parts, { id: 'entry', value: cell.value, put })
  const figure = withoutPrefix(cell.value, prefix)
  return html`
    <div class="prefixed">
      <span aria-hidden="true">${figure === undefined ? '' : prefix}</span>
      ${box(parts, {
        id: 'entry',
        value: figure ?? cell.value,
        put: (text) => put(withPrefix(text, prefix)),
      })}
    </div>
  `
}
