import * as v from 'valibot'
import { DRAWING_KINDS } from './drawing-kinds.ts'
import { NAME_PATTERN } from './name-pattern.ts'

/** The version this program writes; a higher one opens read-only. */
export const VERSION = 1
export const FORMAT = 'evenfield-worksheet'

const LONGEST_TEXT = 20_000
const MOST_CELLS = 20_000

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT))
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(64))
const name = v.pipe(v.string(), v.regex(NAME_PATTERN, 'A name is a letter, then letters, digits and underscores.'))
const label = v.optional(text)

/** Keys this version does not know are kept in every object, so that a later version's sheet survives a round trip. */
const given = v.looseObject({
  kind: v.literal('given'),
  id,
  name,
  label,
  /** How it is filled in; a quantity where nothing is said. */
  entry: v.optional(v.picklist(['quantity', 'size', 'list', 'choice', 'yes or no', 'text', 'date'])),
  /** The unit it is shown in and a bare number takes: `mm`, `ppi`, `f/`, `1:`, `1/ s`. */
  unit: v.optional(text),
  /** As typed. Empty: not yet filled in. */
  value: text,
  /** What a choice offers; of a quantity or a list, the values there are to choose among: lenses, tubes, speeds. */
  options: v.optional(v.array(text)),
  /** Seldom known: waits under «more exact». */
  more_exact: v.optional(v.boolean()),
  /** Where to find it. */
  hint: v.optional(text),
  /** The allowed range, as typed. */
  least: v.optional(text),
  most: v.optional(text),
  /** Cannot sensibly be changed to make a check hold: the original's size, a reading. */
  fixed: v.optional(v.boolean()),
})

const result = v.looseObject({
  kind: v.literal('result'),
  id,
  name,
  label,
  unit: v.optional(text),
  formula: text,
  /** As measured, as typed: it is reckoned on with in place of the computed value until it is cleared. */
  measured: v.optional(text),
  /** How one measures it. */
  measure: v.optional(text),
  hint: v.optional(text),
  more_exact: v.optional(v.boolean()),
})

const check = v.looseObject({
  kind: v.literal('check'),
  id,
  name,
  label,
  condition: text,
  /** What to say when it fails; `{name}` or `{formula}` in it is replaced by the figure. */
  message: text,
  /** What to say when it holds. */
  holds: v.optional(text),
  /** Held by less than this share of the limit counts as close; `10 %` where nothing is said. */
  margin: v.optional(text),
})

const note = v.looseObject({
  kind: v.literal('note'),
  id,
  text,
  /** Prose where nothing is said; a heading opens a section. */
  role: v.optional(v.picklist(['prose', 'caution', 'heading'])),
  /** Beside a heading: what the section is about. */
  about: v.optional(text),
})

const drawing = v.looseObject({
  kind: v.literal('drawing'),
  id,
  title: v.optional(text),
  drawing: v.picklist(DRAWING_KINDS),
  /** The unit of its figures. */
  unit: v.optional(text),
  /** Which formula feeds each thing drawn. */
  from: v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), text),
  /** The givens that follow when a lamp is dragged: `["lamp_out", "lamp_height"]`. How each moves it is found out. */
  moves: v.optional(v.array(name)),
})

export const CellSchema = v.variant('kind', [given, result, check, note, drawing])

export const WorksheetSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(VERSION)),
  title: v.pipe(v.string(), v.maxLength(500)),
  /** The job in hand: a reference, a client, a scenario. */
  job: v.optional(text),
  cells: v.pipe(v.array(CellSchema), v.maxLength(MOST_CELLS)),
})

export type Worksheet = v.InferOutput<typeof WorksheetSchema>
export type Cell = v.InferOutput<typeof CellSchema>
export type Given = v.InferOutput<typeof given>
export type Result = v.InferOutput<typeof result>
export type Check = v.InferOutput<typeof check>
export type Note = v.InferOutput<typeof note>
export type Drawing = v.InferOutput<typeof drawing>
export type NamedCell = Given | Result | Check
