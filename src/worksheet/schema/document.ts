import * as v from 'valibot'
import { FORMAT, MAX_CELLS, MAX_COLUMNS, MAX_ROWS, NAME_PATTERN, STAGES, VERSION } from '../format/format.ts'
import { KIT_SORTS } from '../format/kit-sorts.ts'
import { DRAWING_KINDS } from './drawing-kinds.ts'
import { id, label, measuredUnder, name, named, readUnder, stand, text } from './fields.ts'
import { frame } from './frame.ts'
import { steps } from './steps-cell.ts'
import * as words from './words.ts'

// Every object is loose: a key this version does not know stays where it is, so that a later version's sheet survives a
// round trip.

/** How values may be distributed within limits. */
export const DISTRIBUTIONS = ['rectangular', 'normal', 'triangular'] as const
export type Distribution = (typeof DISTRIBUTIONS)[number]

/** Where the value of a given may come from. */
export const GIVEN_SOURCES = ['example', 'usual', 'typed', 'kit', 'measured'] as const
export type GivenSource = (typeof GIVEN_SOURCES)[number]

const MOST_LISTED = 60

/** Whether and how a given may be changed by a suggestion. Figures are in the given's own unit. */
const advice = v.looseObject({
  change: v.picklist(['never', 'freely', 'by kit', 'agree']),
  /** Even steps from `least` to `most`. */
  step: v.optional(v.number()),
  least: v.optional(v.number()),
  most: v.optional(v.number()),
  /** The marks there are: third stops of aperture, exposure times, the given's own options, or a list. */
  marks: v.optional(v.union([v.picklist(['thirds', 'times', 'options']), v.array(v.union([text, v.number()]))])),
  /** A given that always takes the same text: the other lamp. */
  with: v.optional(name),
  /** The largest factor above or below the present value. */
  within: v.optional(v.number()),
  /** How much dearer than other changes of its kind. */
  cost: v.optional(v.number()),
  /** What to do for a greater and for a smaller figure, with `{}` for the figure: `Raise both lamps to {}`. */
  more: v.optional(text),
  less: v.optional(text),
  /** For a choice: the same, with the option in the place of the braces. */
  to: v.optional(text),
  /** For equipment that no setting changes: what would have to be there, with `{}` for the figure: `a column that reaches {}`. */
  otherwise: v.optional(text),
})

const given = v.looseObject({
  kind: v.literal('given'),
  id,
  name,
  label,
  /** How it is filled in; a quantity where nothing is said. */
  entry: v.optional(v.picklist(['quantity', 'size', 'list', 'choice', 'yes or no', 'text', 'date', 'kit'])),
  /** The unit it is shown in and a bare number takes: `mm`, `ppi`, `f/`, `1:`, `1/ s`. */
  unit: v.optional(text),
  /** As typed. Empty: not yet filled in. */
  value: text,
  /** What a choice offers; of a quantity or a list, the values there are to choose among: lenses, tubes, speeds. */
  options: v.optional(v.array(text)),
  /** Seldom changed: it is shown under “Fine adjustments”. */
  more_exact: v.optional(v.boolean()),
  /** Where to find it. */
  hint: v.optional(text),
  /** The allowed range, as typed. */
  least: v.optional(text),
  most: v.optional(text),
  /** It counts something, so a fraction is refused. */
  whole: v.optional(v.boolean()),
  /** Cannot sensibly be changed to make a check pass: the original's size, a reading. */
  fixed: v.optional(v.boolean()),
  /** Cannot be changed at the stand until it is unlocked. */
  locked: v.optional(v.boolean()),
  /** A reading: taken with a meter, a rule or a chart. Changing a setting does not change what was read. */
  reading: v.optional(v.boolean()),
  read_under: readUnder,
  measured_under: measuredUnder,
  /** How a suggestion may change it. */
  advice: v.optional(advice),
  stand,
  /** The cells with the constants of the meters, which convert light typed as an exposure value, or the reverse. */
  constants: v.optional(named(name)),
  /** For a piece of kit: what sort it is, `lens`. */
  sort: v.optional(v.picklist(KIT_SORTS)),
  /** The piece chosen, each of its figures as typed: the sheet's own copy. */
  piece: v.optional(named(text)),
  /** The givens that take a figure of the piece when it is chosen: `{ "focal": "focal" }`, the piece's figure first. */
  fills: v.optional(named(name)),
  /** How values are distributed within ± limits; rectangular where nothing is said. */
  distribution: v.optional(v.picklist(DISTRIBUTIONS)),
  /** For a normal distribution: how many standard deviations the limits are, as typed; 2 where nothing is said. */
  coverage: v.optional(text),
  /** Where the value comes from, for as long as it is this text; any other value was typed. */
  from: v.optional(
    v.looseObject({
      kind: v.picklist(GIVEN_SOURCES),
      text,
      /** For a measured value: what was planned, and where that came from. */
      planned: v.optional(v.looseObject({ text, kind: v.optional(v.picklist(GIVEN_SOURCES)) })),
    }),
  ),
})

const result = v.looseObject({
  kind: v.literal('result'),
  id,
  name,
  label,
  unit: v.optional(text),
  formula: text,
  /** As measured, as typed: it replaces the computed value until it is cleared. */
  measured: v.optional(text),
  measured_under: measuredUnder,
  /** Cannot be measured over at the stand until it is unlocked. */
  locked: v.optional(v.boolean()),
  /** How one measures it. */
  measure: v.optional(text),
  /** The cells with the constants of the meters, which convert light measured as an exposure value, or the reverse. */
  constants: v.optional(named(name)),
  /** What to do where the measured value is over or under the computed one: `Lower it by {}`. */
  adjust: v.optional(v.looseObject({ over: text, under: text })),
  /** What a measured value of it settles: two measured results that settle one name must agree on its value. */
  determines: v.optional(name),
  hint: v.optional(text),
  more_exact: v.optional(v.boolean()),
  stand,
})

const check = v.looseObject({
  kind: v.literal('check'),
  id,
  name,
  label,
  condition: text,
  /** What to say when it fails; `{name}` or `{formula}` in it is replaced by the figure. */
  message: text,
  /** What to say when it passes. */
  passes: v.optional(text),
  /** A check that passes by less than this share of its limit is marginal; `10 %` where there is none. */
  margin: v.optional(text),
  /**
   * Results that have to be measured before it says anything, as computed they make it pass; readings it may not pass
   * without.
   */
  needs_measured: v.optional(v.array(name)),
  stand,
})

const note = v.looseObject({
  kind: v.literal('note'),
  id,
  text,
  /** Prose where nothing is said; a heading opens a section. */
  role: v.optional(v.picklist(['prose', 'caution', 'heading'])),
  /** Beside a heading: what the section is about. */
  about: v.optional(text),
  /** Of a heading: the stage of the job its section belongs to. */
  stage: v.optional(v.picklist(STAGES)),
  /** Of a heading: the template its section was set in from. */
  template: v.optional(text),
  /** Of a heading: its section is folded away. */
  folded: v.optional(v.boolean()),
})

const drawing = v.looseObject({
  kind: v.literal('drawing'),
  id,
  title: v.optional(text),
  drawing: v.picklist(DRAWING_KINDS),
  /** The unit of its figures. */
  unit: v.optional(text),
  /** Which formula feeds each thing drawn. */
  from: named(text),
  /** The givens that follow when a lamp is dragged: `["lamp_out", "lamp_height"]`. How each moves it is found out. */
  moves: v.optional(v.array(name)),
})

const column = v.looseObject({
  name,
  label,
  /** What its fields take; a quantity where nothing is said. A column with a formula takes nothing. */
  entry: v.optional(v.picklist(['quantity', 'text', 'choice', 'tick', 'date', 'time', 'date and time'])),
  unit: v.optional(text),
  options: v.optional(v.array(text)),
  /** Worked out for each row, from the row's other columns and the rest of the sheet. */
  formula: v.optional(text),
  /** What an empty field of a filled row takes, as typed. */
  default: v.optional(text),
  /** It counts something, so a fraction is refused. */
  whole: v.optional(v.boolean()),
  /** May stay empty; a row with any other empty field is left out of what formulas see. */
  may_be_empty: v.optional(v.boolean()),
  /** The figures under the column. */
  foot: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          figure: v.picklist(['sum', 'mean', 'least', 'greatest', 'percentile', 'count']),
          /** Of a percentile: `95 %`. */
          share: v.optional(text),
          /** Over which rows: a condition on the row. */
          where: v.optional(text),
        }),
      ),
      v.maxLength(6),
    ),
  ),
})

/** A table; formulas see a record with its `count` and each column as a list: `sum(originals.frames)`. */
const table = v.looseObject({
  kind: v.literal('table'),
  id,
  name,
  label,
  columns: v.pipe(v.array(column), v.maxLength(MAX_COLUMNS)),
  /** The column by whose values the rows are grouped, each group with its totals. */
  group: v.optional(name),
  /** Fields as typed, in the order of the columns; those of a formula are empty. */
  rows: v.pipe(v.array(v.pipe(v.array(text), v.maxLength(MAX_COLUMNS))), v.maxLength(MAX_ROWS)),
})

/** A given, a side of one that holds a size, or a column of a table: `original.width`. */
const varied = v.optional(
  v.pipe(v.string(), v.regex(/^[A-Za-z][A-Za-z0-9_]{0,63}(\.[A-Za-z][A-Za-z0-9_]{0,63})?$/, words.nameOfGiven)),
)

const range = v.looseObject({
  kind: v.literal('range'),
  id,
  title: v.optional(text),
  /** The given that is varied, or the column of a table over which others are plotted. */
  of: varied,
  /** From where to where, as typed. */
  from: v.optional(text),
  to: v.optional(text),
  /** Even steps where nothing is said; stops, or the marks there are on lens or shutter, or the given's own options. */
  by: v.optional(v.picklist(['even steps', 'stops', 'marks'])),
  /** How many even steps, or how many in a stop. */
  count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(200))),
  /** A column of a table whose values the given takes, in the place of ends and steps: `originals.width`. */
  values: varied,
  /** Where `of` is a column of a table: the columns of that table plotted over it, up to three. */
  columns: v.optional(v.pipe(v.array(name), v.maxLength(3))),
  /** A second given that is varied as well: the first result over both is a table and a map. */
  second: v.optional(
    v.looseObject({
      of: varied,
      from: v.optional(text),
      to: v.optional(text),
      by: v.optional(v.picklist(['even steps', 'stops', 'marks'])),
      count: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(200))),
    }),
  ),
  /** Up to three results, followed over the range. */
  results: v.pipe(v.array(name), v.maxLength(3)),
})

const variants = v.looseObject({
  kind: v.literal('variants'),
  id,
  title: v.optional(text),
  /** Up to three sets of givens beside the sheet as it is: the names that differ, each as typed. */
  sets: v.pipe(v.array(v.looseObject({ title: text, values: named(text) })), v.maxLength(3)),
  /** The results compared. */
  results: v.pipe(v.array(name), v.maxLength(MOST_LISTED)),
})

const run = v.looseObject({
  kind: v.literal('run'),
  id,
  title: v.optional(text),
  /** The table of originals. */
  of: v.optional(name),
  /** Which formula feeds each thing the plan needs, over a row of the table and the rest of the sheet. */
  from: named(text),
  /** Later set-ups, for which every original is planned once more: what feeds the plan otherwise. */
  set_ups: v.optional(v.pipe(v.array(v.looseObject({ title: text, from: named(text) })), v.maxLength(MOST_LISTED))),
  /** Only what is not done yet is planned. */
  left: v.optional(v.boolean()),
})

const MOST_ARGUMENTS = 20

/** A function of the worksheet's own: every formula of the worksheet can call it. */
const functionCell = v.looseObject({
  kind: v.literal('function'),
  id,
  name,
  label,
  /** What it computes, in a line. */
  about: v.optional(text),
  /** What goes in, in order, each with the unit that says what kind of quantity it is. */
  arguments: v.optional(
    v.pipe(
      v.array(v.looseObject({ name: text, unit: v.optional(text), about: v.optional(text) })),
      v.maxLength(MOST_ARGUMENTS),
    ),
  ),
  /** The unit of its result. */
  unit: v.optional(text),
  /** Over its arguments and functions alone. */
  formula: v.optional(text),
  /** Calls with what they give, as typed: `border(420 mm)` gives `21 mm`. */
  examples: v.optional(v.pipe(v.array(v.looseObject({ formula: text, gives: text })), v.maxLength(MOST_LISTED))),
})

export const CellSchema = v.variant('kind', [
  given,
  result,
  check,
  note,
  drawing,
  steps,
  table,
  range,
  variants,
  run,
  frame,
  functionCell,
])

export const WorksheetSchema = v.looseObject({
  format: v.literal(FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(VERSION)),
  title: text,
  /** The job: a reference, a client, a scenario. */
  job: v.optional(text),
  cells: v.pipe(v.array(CellSchema), v.maxLength(MAX_CELLS)),
  /** The parts the worksheet is composed of, in no particular order, each in the set-up it serves. */
  parts: v.optional(v.pipe(v.array(v.looseObject({ part: text, setup: v.optional(text) })), v.maxLength(MOST_LISTED))),
  /** Sheets of version 1 added exposure values as if they were stops; they go on to, with a warning. */
  levels_as_stops: v.optional(v.boolean()),
  /** What was filled in, by name, also where a part computes it now. */
  given: v.optional(
    v.record(
      v.pipe(v.string(), v.regex(NAME_PATTERN)),
      v.looseObject({ value: text, from: v.picklist(GIVEN_SOURCES) }),
    ),
  ),
  /** The set-ups of a worksheet that has several. */
  setups: v.optional(v.pipe(v.array(v.looseObject({ name: text, title: v.optional(text) })), v.maxLength(MOST_LISTED))),
})

export type Worksheet = v.InferOutput<typeof WorksheetSchema>
export type Cell = v.InferOutput<typeof CellSchema>
export type Given = v.InferOutput<typeof given>
export type Advice = v.InferOutput<typeof advice>
export type Result = v.InferOutput<typeof result>
export type Check = v.InferOutput<typeof check>
export type Note = v.InferOutput<typeof note>
export type Drawing = v.InferOutput<typeof drawing>
export type Steps = v.InferOutput<typeof steps>
export type TableCell = v.InferOutput<typeof table>
export type Column = TableCell['columns'][number]
export type Range = v.InferOutput<typeof range>
export type Variants = v.InferOutput<typeof variants>
export type Run = v.InferOutput<typeof run>
export type Frame = v.InferOutput<typeof frame>
export type FunctionCell = v.InferOutput<typeof functionCell>
export type NamedCell = Given | Result | Check | TableCell | Frame
