import { html, type TemplateResult } from 'lit'
import type { Cell, Given, Range } from '../../worksheet/index.ts'
import { labelled, selected } from '../fields/labelled.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { cellWords } from '../shared/words.ts'
import { type Form, textField } from './form-fields.ts'
import { rangeFormWords } from './words.ts'

const WAYS: readonly (readonly [NonNullable<Range['by']>, string])[] = [
  ['even steps', rangeFormWords.steps['even steps']],
  ['stops', rangeFormWords.steps.stops],
  ['marks', rangeFormWords.steps.marks],
]

const MOST_RESULTS = 3

const canRun = (cell: Cell): cell is Given =>
  cell.kind === 'given' && ['quantity', 'choice', 'size'].includes(cell.entry ?? 'quantity')

/** What may be varied of a given: itself, or the sides of a size. */
const targetsOf = ({ name, entry }: Given): readonly string[] =>
  entry === 'size' ? [`${name}.width`, `${name}.height`] : [name]

/** The fields of a range in Build: the varied given, its ends and steps, and the results. */
export function form(form: Form, cell: Range): TemplateResult {
  const { sheet } = form.view as WideView<Range>
  const put = (more: Partial<Range>, key: string): void => form.put({ ...cell, ...more } as Range, `${key}:${cell.id}`)
  const givens = sheet.cells.filter(canRun)
  const results = sheet.cells.flatMap((one) => (one.kind === 'result' || one.kind === 'check' ? [one] : []))
  const called = (name: string): string => {
    const [given, side] = name.split('.') as [string, string | undefined]
    const found = sheet.named(given)
    if (found && side) return `${rangeFormWords.side(labelOf(found), side)} (${name})`
    return found ? `${labelOf(found)} (${name})` : cellWords.noLongerThere(name)
  }
  /** A chosen name stays visible even if its cell is gone from the sheet. */
  const offered = (names: readonly string[], chosen: string | undefined): [string, string][] =>
    [...(chosen && !names.includes(chosen) ? [chosen] : []), ...names].map((name) => [name, called(name)])
  const follow = (at: number, name: string): void => {
    const next = [...cell.results]
    if (name === '') next.splice(at, 1)
    else next[at] = name
    put({ results: next }, `results-${at}`)
  }
  const putSecond = (second: Range['second'], key: string): void => {
    const { second: _, ...rest } = cell
    form.put((second ? { ...rest, second } : rest) as Range, `${key}:${cell.id}`)
  }
  const slots = Math.min(MOST_RESULTS, cell.results.length + 1)
  return html`
    ${textField(form, cell, 'title', cellWords.title, { className: 'all first' })}
    ${selected({
      label: rangeFormWords.variedGiven,
      value: cell.of ?? '',
      className: 'all',
      options: [['', rangeFormWords.chooseGiven], ...offered(givens.flatMap(targetsOf), cell.of)],
      put: (of) => put({ of: of || undefined }, 'of'),
    })}
    ${selected({
      label: rangeFormWords.stepping,
      value: cell.by ?? 'even steps',
      options: WAYS,
      put: (by) => put({ by: by as Range['by'] }, 'by'),
    })}
    ${labelled({ label: cellWords.from, value: cell.from ?? '', put: (text) => put({ from: text || undefined }, 'from') })}
    ${labelled({ label: cellWords.to, value: cell.to ?? '', put: (text) => put({ to: text || undefined }, 'to') })}
    ${
      cell.by === 'marks'
        ? ''
        : labelled({
            label: cell.by === 'stops' ? rangeFormWords.perStop : rangeFormWords.stepCount,
            value: cell.count === undefined ? '' : String(cell.count),
            placeholder: cell.by === 'stops' ? '1' : '8',
            wrong:
              cell.count !== undefined && !(cell.count >= 1 && cell.count <= 200)
                ? rangeFormWords.countRange
                : undefined,
            put: (text) => {
              const count = Math.round(Number(text))
              put({ count: count >= 1 && count <= 200 ? count : undefined }, 'count')
            },
          })
    }
    ${selected({
      label: rangeFormWords.secondGiven,
      value: cell.second?.of ?? '',
      className: 'all',
      options: [['', rangeFormWords.noSecond], ...offered(givens.flatMap(targetsOf), cell.second?.of)],
      put: (of) => putSecond(of === '' ? undefined : { ...cell.second, of }, 'second'),
    })}
    ${cell.second ? secondEnds(cell.second, putSecond) : ''}
    ${Array.from({ length: slots }, (_, at) =>
      selected({
        label: at === 0 ? rangeFormWords.result : rangeFormWords.nextResult,
        value: cell.results[at] ?? '',
        className: 'all',
        options: [
          ['', at < cell.results.length ? rangeFormWords.removeResult : rangeFormWords.chooseResult],
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

/** Where the second given begins and ends, and its steps. */
const secondEnds = (
  second: NonNullable<Range['second']>,
  put: (second: Range['second'], key: string) => void,
): TemplateResult => html`
  ${labelled({ label: rangeFormWords.secondFrom, value: second.from ?? '', put: (from) => put({ ...second, from: from || undefined }, 'second-from') })}
  ${labelled({ label: rangeFormWords.secondTo, value: second.to ?? '', put: (to) => put({ ...second, to: to || undefined }, 'second-to') })}
  ${labelled({
    label: rangeFormWords.secondCount,
    value: second.count === undefined ? '' : String(second.count),
    placeholder: '8',
    put: (text) => {
      const count = Math.round(Number(text))
      put({ ...second, count: count >= 1 && count <= 200 ? count : undefined }, 'second-count')
    },
  })}
`
