import type { Draw } from '../../drawings/canvas/drawing-options.ts'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import { day } from '../../units/plural.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import type { Drawing, Sheet } from '../../worksheet/index.ts'
import { checkSummaryText } from '../common/words.ts'
import { countExamples, examplesOf } from '../examples/examples.ts'
import { type Section, sectionsOf } from '../open/sections.ts'
import type { SheetCode } from './qr.ts'
import { cautionsOf, rowsOf } from './rows.ts'
import { paperWords as words } from './words.ts'

export interface JobSheetOptions {
  readonly at: Date
  /** The name of the revision. */
  readonly revision?: string | undefined
  /** Whether formulas are shown, as written and with the figures put in. */
  readonly working?: boolean | undefined
  readonly code?: SheetCode | undefined
  /** Whether it is laid out in two columns for pages of paper, each drawing beside the figures of its section. */
  readonly paged?: boolean | undefined
  /** A last line about where the sheet comes from. */
  readonly foot?: string | undefined
}

/** In CSS px: narrower than a page, or a column, of either paper, so that nothing is shrunk and the scale in a drawing holds. */
const DRAWING_WIDTH = 400
const COLUMN_WIDTH = 250
/** The width of a module of a QR code on paper, in mm, which a phone reads at arm’s length. */
const MODULE_MM = 0.36

function head(sheet: Sheet, { at, revision, paged, code }: JobSheetOptions): Node {
  const { title, job } = sheet.worksheet
  const facts: [string, string][] = [
    [words.job, job?.trim() ?? ''],
    [words.date, day(at)],
    [words.revision, revision ?? ''],
    [words.checks, checkSummaryText(sheet.checkSummary)],
    [words.examples, words.stillExample(...countExamples(examplesOf(sheet)))],
  ]
  return element(
    'header',
    {},
    element('h1', {}, title || UNTITLED_SHEET),
    element(
      'dl',
      {},
      ...facts
        .filter(([, fact]) => fact !== '')
        .map(([label, fact]) => element('div', {}, element('dt', {}, label), element('dd', {}, fact))),
    ),
    ...(paged && code ? [codeFigure(code)] : []),
  )
}

/** The functions that draw the drawings of a sheet, by the id of the cell. */
export type Drawers = ReadonlyMap<string, Draw>

/** Loads what draws the drawings of a sheet; a sheet is then laid out without waiting. */
export async function drawersOf({ cells }: Sheet): Promise<Drawers> {
  const drawings = cells.filter((cell): cell is Drawing => cell.kind === 'drawing')
  return new Map(
    await Promise.all(drawings.map(async ({ id, drawing, from }) => [id, await DRAWINGS[drawing].load(from)] as const)),
  )
}

function figure(sheet: Sheet, cell: Drawing, draw: Draw, width: number): Node {
  const { node, title, description, height, ...drawn } = draw(sheet.drawing(cell.id).values, {
    width,
    unit: cell.unit,
    title: cell.title || undefined,
  })
  const omissions = drawn.omissions.filter((why) => why !== description)
  const sized = { ...node, attributes: { ...node.attributes, width: drawn.width, height } }
  return element(
    'figure',
    {},
    sized,
    element(
      'figcaption',
      {},
      element('p', {}, title),
      element('p', { class: 'small description' }, description),
      ...(omissions.length > 0 ? [element('p', { class: 'small' }, omissions.join(' '))] : []),
    ),
  )
}

const headingOf = (text: string, about = ''): Node =>
  element('div', { class: 'heading' }, element('h2', {}, text), ...(about ? [element('p', {}, about)] : []))

const figuresOf = (sheet: Sheet, { drawings }: Section, drawers: Drawers, width: number): Node[] =>
  drawings.flatMap((cell) => {
    const draw = drawers.get(cell.id)
    // A drawing added since the drawers were loaded.
    return draw ? [figure(sheet, cell, draw, width)] : []
  })

function sectionOf(sheet: Sheet, section: Section, options: JobSheetOptions, drawers: Drawers): Node {
  const { heading, rows, exact } = section
  const cells = [...rows, ...exact]
  return element(
    'section',
    {},
    ...(heading ? [headingOf(heading.text, heading.about)] : []),
    ...rowsOf(sheet, cells, options),
    ...cautionsOf(sheet, cells),
    ...figuresOf(sheet, section, drawers, options.paged ? COLUMN_WIDTH : DRAWING_WIDTH),
  )
}

function codeFigure({ node, modules, words: content }: SheetCode): Node {
  const side = `${(modules * MODULE_MM).toFixed(1)}mm`
  return element(
    'figure',
    { class: 'code' },
    { ...node, attributes: { ...node.attributes, width: side, height: side } },
    element('figcaption', {}, element('p', {}, words.opensSheet), element('p', { class: 'small' }, content)),
  )
}

/** The worksheet as a job sheet, both for printing and for a page to hand over. */
export async function jobSheet(sheet: Sheet, options: JobSheetOptions): Promise<Node> {
  return jobSheetWith(sheet, options, await drawersOf(sheet))
}

/** The same without waiting, once what draws its drawings is loaded. */
export function jobSheetWith(sheet: Sheet, options: JobSheetOptions, drawers: Drawers): Node {
  const sections = sectionsOf(sheet.cells)
  return element(
    'article',
    { class: options.paged ? 'job-sheet paged' : 'job-sheet', lang: 'en' },
    head(sheet, options),
    element('div', { class: 'flow' }, ...sections.map((section) => sectionOf(sheet, section, options, drawers))),
    ...(options.code && !options.paged ? [codeFigure(options.code)] : []),
    ...(options.foot ? [element('footer', {}, options.foot)] : []),
  )
}
