import { html, nothing, type TemplateResult } from 'lit'
import type { Drawing } from '../../drawings/canvas/tree.ts'
import { NAME_PATTERN } from '../../worksheet/format/format.ts'
import { FRAME_PARTS } from '../../worksheet/frame/frame-readings.ts'
import type { Frame } from '../../worksheet/index.ts'
import { labelled } from '../fields/labelled.ts'
import { drawTree } from '../shared/draw-tree.ts'
import { type FrameArea, patchesFrom, type Size } from './area-shapes.ts'
import { pairsOf, readingDrawing } from './reading-drawings.ts'
import { digits, list, readingLines } from './reading-lines.ts'
import { KIND_NAMES, METHODS, frameWords as words } from './words.ts'

export interface AreaEdits {
  /** The picture is open, so that what is changed is measured. */
  readonly editable: boolean
  /** Why an area could not be measured, by its name. */
  readonly refused: Readonly<Record<string, string>>
  readonly size: Size | undefined
  /** Of the drawings, px. */
  readonly width: number
  readonly change: (at: number, area: FrameArea) => void
  readonly rename: (at: number, name: string) => void
  readonly remove: (at: number) => void
  readonly find: (at: number) => void
}

/** A drawing with what it leaves out. */
export const drawn = (drawing: Drawing | undefined): TemplateResult | typeof nothing =>
  drawing ? html`<div class="whole">${drawTree(drawing.node)}</div>` : nothing

/** Each area with its figures, and while the picture is open with what can be set of it. */
export function areaRows(cell: Frame, edits: AreaEdits): TemplateResult | typeof nothing {
  const areas = cell.areas ?? []
  if (areas.length === 0) return nothing
  return html`<ul class="areas" aria-label=${words.areas}>${areas.map((area, at) => areaRow(cell, area, at, edits))}</ul>`
}

function areaRow(cell: Frame, area: FrameArea, at: number, edits: AreaEdits): TemplateResult {
  const { readings = {} } = cell
  const reading = Object.hasOwn(readings, area.name) ? readings[area.name] : undefined
  const why = Object.hasOwn(edits.refused, area.name) ? edits.refused[area.name] : undefined
  const warnings = Array.isArray(reading?.warnings) ? reading.warnings : []
  return html`
    <li>
      <h4>${words.areaLabel(area.kind, area.name)}</h4>
      ${
        edits.editable
          ? html`<button type="button" class="word small" aria-label=${words.remove(area.name)} @click=${() => edits.remove(at)}>✕</button>`
          : html`<span></span>`
      }
      ${edits.editable ? html`<div class="fields">${fieldsOf(cell, area, at, edits)}</div>` : nothing}
      ${
        edits.editable && (area.kind === 'square' || (area.kind === 'chart' && (area.patches ?? []).length > 0))
          ? html`<button type="button" class="word small whole" @click=${() => edits.find(at)}>${area.kind === 'square' ? words.findCorners : words.findChart(area.outline !== undefined)}</button>`
          : nothing
      }
      ${why ? html`<p class="whole">${words.notMeasured(why)}</p>` : nothing}
      <p class="small quiet whole">${METHODS[area.kind]}</p>
      <dl>
        ${readingLines(area.kind, reading).map(([what, figure]) => html`<dt>${what}</dt><dd>${figure}</dd>`)}
      </dl>
      ${warnings.map((warning) => html`<p class="small whole">${String(warning)}</p>`)}
      ${drawn(readingDrawing(area, reading, edits.width))}
      ${area.kind === 'evenness' && reading ? lightMap(reading) : nothing}
      ${area.kind === 'chart' && reading ? patchTable(area, reading) : nothing}
    </li>
  `
}

function fieldsOf(
  cell: Frame,
  area: FrameArea,
  at: number,
  { change, rename, size }: AreaEdits,
): (TemplateResult | typeof nothing)[] {
  const text = (label: string, value: string, put: (text: string) => void): TemplateResult =>
    labelled({ label, value, put })
  const whole = (label: string, key: 'columns' | 'rows'): TemplateResult =>
    text(label, String(area[key] ?? ''), (typed) => {
      const number = Number(typed)
      if (Number.isInteger(number) && number > 0) change(at, { ...area, [key]: number })
    })
  return [
    text(words.areaName, area.name, (name) => {
      if (isFree(cell, at, name)) rename(at, name)
    }),
    ...(area.kind === 'rule'
      ? [text(words.length, area.length ?? '', (length) => change(at, { ...area, length }))]
      : []),
    ...(area.kind === 'square'
      ? [text(words.size, area.size ?? '', (typed) => change(at, { ...area, size: typed }))]
      : []),
    ...(area.kind === 'evenness' ? [whole(words.columns, 'columns'), whole(words.rows, 'rows')] : []),
    area.kind === 'chart'
      ? labelled({
          label: words.patches,
          value: '',
          lines: 'few',
          put: (table) => {
            const patches = patchesFrom(rowsIn(table), middleOf(size))
            if (patches.length > 0) change(at, { ...area, patches })
          },
        })
      : nothing,
  ]
}

const isFree = ({ areas = [] }: Frame, at: number, name: string): boolean =>
  NAME_PATTERN.test(name) &&
  FRAME_PARTS.every((part) => part !== name) &&
  areas.every((area, i) => i === at || area.name !== name)

const middleOf = (size: Size = { width: 100, height: 100 }) =>
  [size.width / 4, size.height / 4, size.width / 2, size.height / 2] as const

const rowsIn = (table: string): string[][] =>
  table.split('\n').map((line) => (line.split(/\t|;/).length >= 4 ? line.split(/\t|;/) : line.trim().split(/,\s+|\s+/)))

/** The grid of an evenness, each field against the brightest, in stops. */
function lightMap({ light }: Readonly<Record<string, unknown>>): TemplateResult | typeof nothing {
  if (!Array.isArray(light)) return nothing
  const stops = (value: unknown): string => (typeof value === 'number' && value > 0 ? digits(Math.log2(value), 2) : '')
  return html`
    <div class="scrolled">
      <table class="map">
        ${light.map((row: unknown) => html`<tr>${Array.isArray(row) ? row.map((value) => html`<td>${stops(value)}</td>`) : nothing}</tr>`)}
      </table>
    </div>
  `
}

/** Each patch of a chart: as measured, as referenced, and the difference. */
function patchTable(area: FrameArea, reading: Readonly<Record<string, unknown>>): TemplateResult {
  const lab = (values: readonly number[]): string => list(values, (value) => digits(value, 1))
  return html`
    <div class="scrolled">
      <table class="map">
        <tr>${[KIND_NAMES.patch, words.measuredLab, words.referenceLab, words.difference].map((heading) => html`<th scope="col">${heading}</th>`)}</tr>
        ${pairsOf(area, reading).map(
          ({ name, measured, reference, difference }) => html`
            <tr><td>${name}</td><td>${lab(measured)}</td><td>${lab(reference)}</td><td>${digits(difference, 2)}</td></tr>
          `,
        )}
      </table>
    </div>
  `
}
