import { html, type TemplateResult } from 'lit'
import type { Cell, Given, Range } from '../../worksheet/index.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { labelled, selected } from '../shared/labelled.ts'
import { type Form, textField } from './form-fields.ts'

const WAYS: readonly (readonly [NonNullable<Range['by']>, string])[] = [
  ['even steps', 'In even steps'],
  ['stops', 'By stops'],
  ['marks', 'The marks or options there are'],
]

const MOST_RESULTS = 3

const canRun = (cell: Cell): cell is Given =>
  cell.kind === 'given' && ['quantity', 'choice'].includes(cell.entry ?? 'quantity')

/** The fields a range is built from: what runs, from where to where and how, and what is followed. */
export function form(form: Form, cell: Range): TemplateResult {
  const { sheet } = form.view as WideView<Range>
  const put = (more: Partial<Range>, key: string): void => form.put({ ...cell, ...more } as Range, `${key}:${cell.id}`)
  const givens = sheet.cells.filter(canRun)
  const results = sheet.cells.flatMap((one) => (one.kind === 'result' || one.kind === 'check' ? [one] : []))
  const called = (name: string): string => {
    const found = sheet.named(name)
    return found ? `${labelOf(found)} (${name})` : `${name}, which is not there`
  }
  /** What is chosen stays to be seen where it is gone from the sheet. */
  const offered = (names: readonly string[], chosen: string | undefined): [string, string][] =>
    [...(chosen && !names.includes(chosen) ? [chosen] : []), ...names].map((name) => [name, called(name)])
  const follow = (at: number, name: string): void => {
    const next = [...cell.results]
    if (name === '') next.splice(at, 1)
    else next[at] = name
    put({ results: next }, `results-${at}`)
  }
  const slots = Math.min(MOST_RESULTS, cell.results.length + 1)
  return html`
    ${textField(form, cell, 'title', 'Title', { className: 'all first' })}
    ${selected({
      label: 'What runs through the range',
      value: cell.of ?? '',
      className: 'all',
      options: [
        ['', 'Choose a given'],
        ...offered(
          givens.map(({ name }) => name),
          cell.of,
        ),
      ],
      put: (of) => put({ of: of || undefined }, 'of'),
    })}
    ${selected({
      label: 'How',
      value: cell.by ?? 'even steps',
      options: WAYS,
      put: (by) => put({ by: by as Range['by'] }, 'by'),
    })}
    ${labelled({ label: 'From', value: cell.from ?? '', put: (text) => put({ from: text || undefined }, 'from') })}
    ${labelled({ label: 'To', value: cell.to ?? '', put: (text) => put({ to: text || undefined }, 'to') })}
    ${
      cell.by === 'marks'
        ? ''
        : labelled({
            label: cell.by === 'stops' ? 'How many in a stop' : 'How many steps',
            value: cell.count === undefined ? '' : String(cell.count),
            placeholder: cell.by === 'stops' ? '1' : '8',
            wrong:
              cell.count !== undefined && !(cell.count >= 1 && cell.count <= 200)
                ? 'A whole number from 1 to 200.'
                : undefined,
            put: (text) => {
              const count = Math.round(Number(text))
              put({ count: count >= 1 && count <= 200 ? count : undefined }, 'count')
            },
          })
    }
    ${Array.from({ length: slots }, (_, at) =>
      selected({
        label: at === 0 ? 'What is followed' : 'and',
        value: cell.results[at] ?? '',
        className: 'all',
        options: [
          ['', at < cell.results.length ? 'Nothing: take it out' : 'Choose a result'],
          ...offered(
            results.map(({ name }) => name),
            cell.results[at],
          ),
        ],
        put: (name) => follow(at, name),
      }),
    )}
  `
}
