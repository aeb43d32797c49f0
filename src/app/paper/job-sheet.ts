import { type Drawing as Drawn, element, type Node } from '../../drawings/canvas/tree.ts'
import { DRAWINGS } from '../../drawings/kinds/registry.ts'
import { day } from '../../units/plural.ts'
import type { Drawing, Sheet } from '../../worksheet/index.ts'
import { checkSummaryText, UNTITLED_SHEET } from '../common/words.ts'
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
  /** Whether drawings come last, where they leave no gaps at the ends of pages. */
  readonly drawingsLast?: boolean | undefined
  /** A last line about where the sheet comes from. */
  readonly foot?: string | undefined
}

/** In CSS px: narrower than a page of either paper, so that nothing is shrunk and the scale in a drawing holds. */
const DRAWING_WIDTH = 400
/** The width of a module of a QR code on paper, in mm, which a phone reads at arm’s length. */
const MODULE_MM = 0.36

function head(sheet: Sheet, { at, revision }: JobSheetOptions): Node {
  const { title, job } = sheet.worksheet
  const facts: [string, string][] = [
    [words.job, job?.trim() ?? ''],
    [words.date, day(at)],
    [words.revision, revision ?? ''],
    [words.checks, checkSummaryText(sheet.checkSummary)],
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
  )
}

async function drawn(sheet: Sheet, cell: Drawing): Promise<Drawn> {
  const draw = await DRAWINGS[cell.drawing].load(cell.from)
  return draw(sheet.drawing(cell.id).values, {
    width: DRAWING_WIDTH,
    unit: cell.unit,
    title: cell.title || undefined,
  })
}

async function figure(sheet: Sheet, cell: Drawing): Promise<Node> {
  const { node, title, description, width, height, omissions } = await drawn(sheet, cell)
  const sized = { ...node, attributes: { ...node.attributes, width, height } }
  return element(
    'figure',
    {},
    sized,
    element(
      'figcaption',
      {},
      element('p', {}, title),
      element('p', { class: 'small' }, description),
      ...(omissions.length > 0 ? [element('p', { class: 'small' }, words.notDrawn(omissions))] : []),
    ),
  )
}

const headingOf = (text: string, about = ''): Node =>
  element('div', { class: 'heading' }, element('h2', {}, text), ...(about ? [element('p', {}, about)] : []))

const figuresOf = (sheet: Sheet, { drawings }: Section): Promise<Node[]> =>
  Promise.all(drawings.map((cell) => figure(sheet, cell)))

async function sectionOf(sheet: Sheet, section: Section, options: JobSheetOptions): Promise<Node> {
  const { heading, rows, exact } = section
  const cells = [...rows, ...exact]
  return element(
    'section',
    {},
    ...(heading ? [headingOf(heading.text, heading.about)] : []),
    ...rowsOf(sheet, cells, options.working === true),
    ...cautionsOf(sheet, cells),
    ...(options.drawingsLast ? [] : await figuresOf(sheet, section)),
  )
}

async function drawingsOf(sheet: Sheet, sections: readonly Section[]): Promise<Node[]> {
  const figures = (await Promise.all(sections.map((section) => figuresOf(sheet, section)))).flat()
  return figures.length > 0 ? [element('section', {}, headingOf(words.drawings), ...figures)] : []
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
  const sections = sectionsOf(sheet.cells)
  return element(
    'article',
    { class: 'job-sheet', lang: 'en' },
    head(sheet, options),
    ...(await Promise.all(sections.map((section) => sectionOf(sheet, section, options)))),
    ...(options.drawingsLast ? await drawingsOf(sheet, sections) : []),
    ...(options.code ? [codeFigure(options.code)] : []),
    ...(options.foot ? [element('footer', {}, options.foot)] : []),
  )
}
