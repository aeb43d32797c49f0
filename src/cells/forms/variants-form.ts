import { html, type TemplateResult } from 'lit'
import type { Cell, Given, Variants } from '../../worksheet/index.ts'
import { adding, ticked } from '../fields/labelled.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { type Form, textField } from './form-fields.ts'
import { formWords, rangeFormWords, variantsFormWords } from './words.ts'

/** A piece of kit cannot vary, but the givens it fills in can. */
const canVary = (cell: Cell): cell is Given => cell.kind === 'given' && cell.entry !== 'kit'

/** The fields of variants in Build: the varied givens, the compared results and the sets. */
export function form(form: Form, cell: Variants): TemplateResult {
  const { sheet } = form.view as WideView<Variants>
  const put = (more: Partial<Variants>, key: string): void =>
    form.put({ ...cell, ...more } as Variants, `${key}:${cell.id}`)
  const varied = [...new Set(cell.sets.flatMap(({ values }) => Object.keys(values)))]
  const called = (name: string): string => {
    const found = sheet.named(name)
    return found ? `${labelOf(found)} (${name})` : formWords.noLongerThere(name)
  }
  const vary = (given: Given): void => {
    const sets = cell.sets.length > 0 ? cell.sets : [{ title: '', values: {} }]
    put(
      { sets: sets.map((set) => ({ ...set, values: { ...set.values, [given.name]: given.value } })) },
      `vary-${given.name}`,
    )
  }
  const keepFixed = (name: string): void =>
    put(
      {
        sets: cell.sets.map((set) => ({
          ...set,
          values: Object.fromEntries(Object.entries(set.values).filter(([one]) => one !== name)),
        })),
      },
      `leave-${name}`,
    )
  const givens = sheet.cells.filter(canVary).filter(({ name }) => !varied.includes(name))
  const results = sheet.cells.flatMap((one) =>
    (one.kind === 'result' || one.kind === 'check') && !cell.results.includes(one.name) ? [one] : [],
  )
  return html`
    ${textField(form, cell, 'title', formWords.title, { className: 'all first' })}
    <div class="all">
      <span class="small quiet">${variantsFormWords.varied}</span>
      ${varied.map((name) => ticked(called(name), true, () => keepFixed(name)))}
    </div>
    ${adding({
      label: variantsFormWords.varyMore,
      className: 'all',
      options: [
        ['', rangeFormWords.chooseGiven],
        ...givens.map((one): [string, string] => [one.name, called(one.name)]),
      ],
      put: (name) => {
        const given = givens.find((one) => one.name === name)
        if (given) vary(given)
      },
    })}
    <div class="all">
      <span class="small quiet">${variantsFormWords.compared}</span>
      ${cell.results.map((name) =>
        ticked(called(name), true, () =>
          put({ results: cell.results.filter((one) => one !== name) }, `take-out-${name}`),
        ),
      )}
    </div>
    ${adding({
      label: variantsFormWords.compareMore,
      className: 'all',
      options: [
        ['', variantsFormWords.chooseResult],
        ...results.map((one): [string, string] => [one.name, called(one.name)]),
      ],
      put: (name) => {
        if (name) put({ results: [...cell.results, name] }, `compare-${name}`)
      },
    })}
    <div class="all words">
      ${cell.sets.map(
        ({ title }, at) =>
          html`<button type="button" class="word" @click=${() => put({ sets: cell.sets.toSpliced(at, 1) }, `without-${at}`)}>
            ${variantsFormWords.remove(title.trim() || variantsFormWords.variant(at + 1))}
          </button>`,
      )}
    </div>
  `
}
