import { html, nothing, type TemplateResult } from 'lit'
import { type Cell, type Given, isNamed, type Range, type TableCell } from '../../worksheet/index.ts'
import { columnLabel } from '../../worksheet/table/columns.ts'
import { labelled, selected } from '../fields/labelled.ts'
import { openedWords } from '../opened/words.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { type Form, textField } from './form-fields.ts'
import { formWords, rangeFormWords as words } from './words.ts'

const WAYS: readonly (readonly [NonNullable<Range['by']>, string])[] = [
  ['even steps', words.steps['even steps']],
  ['stops', words.steps.stops],
  ['marks', words.steps.marks],
]

const MOST_RESULTS = 3

const canVary = (cell: Cell): cell is Given =>
  cell.kind === 'given' && ['quantity', 'choice', 'size'].includes(cell.entry ?? 'quantity')

/** What may be varied of a given: itself, or the sides of a size. */
const targetsOf = ({ name, entry }: Given): readonly string[] =>
  entry === 'size' ? [`${name}.width`, `${name}.height`] : [name]

const isQuantity = ({ entry }: TableCell['columns'][number]): boolean => (entry ?? 'quantity') === 'quantity'
const isAlong = (column: TableCell['columns'][number]): boolean =>
  isQuantity(column) || ['date', 'time', 'date and time'].includes(column.entry ?? '')

type Put = (more: Partial<Range>, key: string) => void
/** The names offered with what they are called; a chosen name stays visible even if it is gone from the sheet. */
type Offered = (names: readonly string[], chosen: string | undefined) => [string, string][]

/** The fields of a range in Build: what is varied, its ends and steps, and the results; or the columns that are plotted. */
export function form(form: Form, cell: Range): TemplateResult {
  const { sheet } = form.view as WideView<Range>
  const put: Put = (more, key) => form.put({ ...cell, ...more } as Range, `${key}:${cell.id}`)
  const tables = sheet.cells.filter((one) => one.kind === 'table')
  const targets = sheet.cells.filter(canVary).flatMap(targetsOf)
  const columnsWith = (fits: typeof isAlong): string[] =>
    tables.flatMap((table) => table.columns.filter(fits).map(({ name }) => `${table.name}.${name}`))
  const called = (name: string): string => {
    const [first, part] = name.split('.') as [string, string | undefined]
    const found = sheet.named(first)
    if (!found) return formWords.noLongerThere(name)
    const column = found.kind === 'table' ? found.columns.find((one) => one.name === part) : undefined
    const label = part === undefined ? labelOf(found) : words.side(labelOf(found), column ? columnLabel(column) : part)
    return `${label} (${name})`
  }
  const offered: Offered = (names, chosen) =>
    [...(chosen && !names.includes(chosen) ? [chosen] : []), ...names].map((name) => [name, called(name)])
  const table = tables.find(({ name }) => name === cell.of?.replace(/\..*$/, ''))
  /** A given that is varied has ends and results; a column has other columns over it. */
  const vary = (of: string): void => {
    const { of: _, columns, values, ...rest } = cell
    const isColumn = tables.some(({ name }) => of.startsWith(`${name}.`))
    const kept = isColumn
      ? { columns: of.split('.')[0] === table?.name ? (columns ?? []) : [] }
      : values
        ? { values }
        : {}
    form.put({ ...rest, ...kept, ...(of ? { of } : {}) } as Range, `of:${cell.id}`)
  }
  return html`
    ${textField(form, cell, 'title', formWords.title, { className: 'all first' })}
    ${selected({
      label: words.varied,
      value: cell.of ?? '',
      className: 'all',
      options: [['', words.chooseVaried], ...offered([...targets, ...columnsWith(isAlong)], cell.of)],
      put: vary,
    })}
    ${
      table
        ? plottedColumns(table, cell, put)
        : html`
          ${stepFields(cell, put, offered(columnsWith(isQuantity), cell.values))} ${secondFields(form, cell, offered, targets)}
          ${results(cell, put, (chosen) =>
            offered(
              sheet.cells.filter((one) => isNamed(one) && (one.kind === 'result' || one.kind === 'check')).map(nameOf),
              chosen,
            ),
          )}
        `
    }
  `
}

const nameOf = (cell: Cell): string => (isNamed(cell) ? cell.name : '')

const COLUMN = 'column '

/** How the given steps: evenly, by stops, by marks, or through the values of a column; and from where to where. */
function stepFields(cell: Range, put: Put, columns: readonly [string, string][]): TemplateResult {
  return html`
    ${selected({
      label: words.stepping,
      value: cell.values === undefined ? (cell.by ?? 'even steps') : `${COLUMN}${cell.values}`,
      options: [...WAYS, ...columns.map(([name, label]) => [`${COLUMN}${name}`, words.valuesOf(label)] as const)],
      put: (way) =>
        way.startsWith(COLUMN)
          ? put({ values: way.slice(COLUMN.length) }, 'by')
          : put({ by: way as Range['by'], values: undefined }, 'by'),
    })}
    ${
      cell.values === undefined
        ? html`
          ${labelled({ label: openedWords.from, value: cell.from ?? '', put: (text) => put({ from: text || undefined }, 'from') })}
          ${labelled({ label: openedWords.to, value: cell.to ?? '', put: (text) => put({ to: text || undefined }, 'to') })}
          ${cell.by === 'marks' ? nothing : countField(cell, put)}
        `
        : nothing
    }
  `
}

const countField = (cell: Range, put: Put): TemplateResult =>
  labelled({
    label: cell.by === 'stops' ? words.perStop : words.stepCount,
    value: cell.count === undefined ? '' : String(cell.count),
    placeholder: cell.by === 'stops' ? '1' : '8',
    wrong: cell.count !== undefined && !(cell.count >= 1 && cell.count <= 200) ? words.countRange : undefined,
    put: (text) => {
      const count = Math.round(Number(text))
      put({ count: count >= 1 && count <= 200 ? count : undefined }, 'count')
    },
  })

/** A choice among names that grows to three. */
const choices = (
  chosen: readonly string[],
  { label, next, remove, choose }: Readonly<Record<'label' | 'next' | 'remove' | 'choose', string>>,
  offered: (chosen: string | undefined) => readonly (readonly [string, string])[],
  put: (names: string[], at: number) => void,
): TemplateResult[] =>
  Array.from({ length: Math.min(MOST_RESULTS, chosen.length + 1) }, (_, at) =>
    selected({
      label: at === 0 ? label : next,
      value: chosen[at] ?? '',
      className: 'all',
      options: [['', at < chosen.length ? remove : choose], ...offered(chosen[at])],
      put: (name) => put(name === '' ? chosen.toSpliced(at, 1) : chosen.toSpliced(at, 1, name), at),
    }),
  )

const results = (
  cell: Range,
  put: Put,
  offered: (chosen: string | undefined) => [string, string][],
): TemplateResult[] =>
  choices(
    cell.results,
    { label: words.result, next: words.nextResult, remove: words.removeResult, choose: words.chooseResult },
    offered,
    (names, at) => put({ results: names }, `results-${at}`),
  )

/** The columns of a table that are plotted over another of it. */
function plottedColumns(table: TableCell, cell: Range, put: Put): TemplateResult[] {
  const names = table.columns.filter(isQuantity)
  return choices(
    cell.columns ?? [],
    { label: words.column, next: words.nextColumn, remove: words.removeColumn, choose: words.chooseColumn },
    (chosen) => [
      ...(chosen && !names.some(({ name }) => name === chosen) ? [[chosen, chosen] as const] : []),
      ...names.map((column) => [column.name, `${columnLabel(column)} (${column.name})`] as const),
    ],
    (columns, at) => put({ columns }, `columns-${at}`),
  )
}

/** A second given that is varied as well, where it begins and ends, and its steps. */
function secondFields(form: Form, cell: Range, offered: Offered, targets: readonly string[]): TemplateResult {
  const put = (second: Range['second'], key: string): void => {
    const { second: _, ...rest } = cell
    form.put((second ? { ...rest, second } : rest) as Range, `${key}:${cell.id}`)
  }
  const { second } = cell
  return html`
    ${selected({
      label: words.secondGiven,
      value: second?.of ?? '',
      className: 'all',
      options: [['', words.noSecond], ...offered(targets, second?.of)],
      put: (of) => put(of === '' ? undefined : { ...second, of }, 'second'),
    })}
    ${
      second
        ? html`
          ${labelled({ label: words.secondFrom, value: second.from ?? '', put: (from) => put({ ...second, from: from || undefined }, 'second-from') })}
          ${labelled({ label: words.secondTo, value: second.to ?? '', put: (to) => put({ ...second, to: to || undefined }, 'second-to') })}
          ${labelled({
            label: words.secondCount,
            value: second.count === undefined ? '' : String(second.count),
            placeholder: '8',
            put: (text) => {
              const count = Math.round(Number(text))
              put({ ...second, count: count >= 1 && count <= 200 ? count : undefined }, 'second-count')
            },
          })}
        `
        : nothing
    }
  `
}
