import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { type Compared, type ComparedRow, type Varied, variantsTable } from '../../worksheet/analysis/variants-table.ts'
import type { Change, Given, Variants } from '../../worksheet/index.ts'
import { figuresCell, figuresTable, firstColumn } from '../details/figures-table.ts'
import { type CellSignal, labelOf, requestChange, type WideView } from '../shared/cell-view.ts'
import { checkSign, signStyle } from '../shared/check-sign.ts'
import { unitSuffix } from '../shared/unit-suffix.ts'
import { STATE_LABELS } from '../shared/words.ts'
import { field, shared } from '../style/styles.ts'
import { variantsWords } from './words.ts'

const MOST_SETS = 3

/** Two or three sets of givens side by side, with their results. */
@customElement('variants-cell')
export class VariantsCell extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    field,
    signStyle,
    figuresCell,
    figuresTable,
    css`
      h3 {
        padding-block-end: 0.3rem;
      }
      table {
        inline-size: 100%;
      }
      thead th {
        vertical-align: bottom;
      }
      th,
      td {
        padding: 0.3rem 0 0.3rem 0.9rem;
        min-inline-size: 6.6rem;
      }
      tbody th {
        min-inline-size: 7.5rem;
        line-height: 1.25;
      }
      tbody tr.first > * {
        border-block-start: 2px solid var(--ink);
      }
      .field {
        text-align: end;
      }
      .set .field {
        font-weight: 700;
      }
      td .small {
        display: block;
      }
      .differs {
        font-weight: 700;
      }
      .state {
        display: inline-flex;
        align-items: center;
        gap: 0.4rem;
        justify-content: end;
      }
      td.why {
        color: var(--quiet);
        font-size: 0.86rem;
        line-height: 1.25;
      }
    `,
    firstColumn,
  ]

  @property({ attribute: false }) view!: CellSignal<WideView<Variants>>
  @state() private announced = ''

  private put(cell: Variants, sets: Variants['sets'], key?: string): void {
    requestChange(this, { do: 'replace', cell: { ...cell, sets } }, key && `${key}:${cell.id}`)
  }

  private retitle(cell: Variants, at: number, title: string): void {
    this.put(
      cell,
      cell.sets.map((set, one) => (one === at ? { ...set, title } : set)),
      `title-${at}`,
    )
  }

  private fill(cell: Variants, at: number, name: string, text: string): void {
    this.put(
      cell,
      cell.sets.map((set, one) => (one === at ? { ...set, values: { ...set.values, [name]: text } } : set)),
      `value-${at}-${name}`,
    )
  }

  /** Puts the values of a set into the sheet; one undo reverts it. */
  private useSet({ cell, sheet }: WideView<Variants>, at: number, title: string): void {
    const changes = Object.entries(cell.sets[at]?.values ?? {}).flatMap(([name, value]): Change[] => {
      const given = sheet.named(name)
      return given?.kind === 'given' ? [{ do: 'replace', cell: { ...given, value } as Given }] : []
    })
    const refused = requestChange(this, { do: 'several', changes })
    this.announced = refused ?? variantsWords.inSheet(title)
  }

  /** Adds a set with the present values of the sheet. */
  private add({ cell, sheet }: WideView<Variants>): void {
    const names = [...new Set(cell.sets.flatMap(({ values }) => Object.keys(values)))]
    const values = names.flatMap((name): [string, string][] => {
      const given = sheet.named(name)
      return given?.kind === 'given' ? [[name, given.value]] : []
    })
    this.put(cell, [...cell.sets, { title: '', values: Object.fromEntries(values) }])
  }

  private heads(view: WideView<Variants>, titles: readonly string[]): TemplateResult {
    const { cell } = view
    return html`
      <tr>
        <th scope="col"><span class="unseen">${variantsWords.quantity}</span></th>
        <th scope="col">${variantsWords.present}</th>
        ${cell.sets.map(
          ({ title }, at) => html`
            <th scope="col" class="set">
              <input
                class="field"
                aria-label=${variantsWords.titleOf(at + 1)}
                placeholder=${titles[at]}
                autocomplete="off"
                .value=${live(title)}
                @input=${(event: Event) => this.retitle(cell, at, (event.target as HTMLInputElement).value)}
              >
            </th>
          `,
        )}
      </tr>
    `
  }

  private varied(cell: Variants, { name, cell: given, present, texts, wrong }: Varied, titles: readonly string[]) {
    const label = given ? labelOf(given) : name
    const unit = unitSuffix(given?.unit)
    return html`
      <tr>
        <th scope="row">${label}${unit ? html` <span class="quiet">${unit}</span>` : nothing}</th>
        <td>${present || '–'}</td>
        ${texts.map(
          (text, at) => html`
            <td>
              <input
                class="field"
                aria-label=${variantsWords.field(label, titles[at] as string)}
                aria-invalid=${wrong[at] !== undefined}
                placeholder=${given?.value ?? ''}
                autocomplete="off"
                spellcheck="false"
                .value=${live(text ?? '')}
                @input=${(event: Event) => this.fill(cell, at, name, (event.target as HTMLInputElement).value)}
              >
              ${wrong[at] ? html`<span class="small"><b>${variantsWords.unreadable}</b> ${wrong[at]}</span>` : nothing}
            </td>
          `,
        )}
      </tr>
    `
  }

  private figure({ shown, why, difference, differs, state }: Compared): TemplateResult {
    if (state)
      return html`<td>
        <span class="state ${differs ? 'differs' : ''}">${checkSign(state)} ${STATE_LABELS[state]}</span>
      </td>`
    return html`
      <td>
        <span class=${differs ? 'differs' : ''}>${shown.replaceAll('_', ' ')}</span>
        ${difference ? html`<span class="small quiet">${difference}</span>` : nothing}
        ${why ? html`<span class="small quiet">${why}</span>` : nothing}
      </td>
    `
  }

  private compared({ name, cell, present, sets }: ComparedRow, at: number): TemplateResult {
    return html`
      <tr class=${at === 0 ? 'first' : ''}>
        <th scope="row">${cell ? labelOf(cell) : name}</th>
        ${this.figure(present)} ${sets.map((one) => this.figure(one))}
      </tr>
    `
  }

  private acts(view: WideView<Variants>, titles: readonly string[]): TemplateResult {
    const { cell } = view
    return html`
      <div class="words small">
        ${cell.sets.map(
          (_, at) =>
            html`<button type="button" class="word" @click=${() => this.useSet(view, at, titles[at] as string)}>
              ${variantsWords.use(titles[at] as string)}
            </button>`,
        )}
        ${
          cell.sets.length < MOST_SETS
            ? html`<button type="button" class="word" @click=${() => this.add(view)}>${variantsWords.add}</button>`
            : nothing
        }
      </div>
    `
  }

  override render(): TemplateResult {
    const view = this.view.get()
    const { cell, sheet } = view
    const { titles, varied, compared } = variantsTable(sheet, cell)
    const empty = varied.length === 0 && compared.length === 0
    return html`
      <h3>${labelOf(cell)}</h3>
      ${
        empty
          ? html`<p class="small">${variantsWords.empty}</p>`
          : html`
              <div class="scrolled" tabindex="0" role="region" aria-label=${labelOf(cell)}>
                <table>
                  <thead>${this.heads(view, titles)}</thead>
                  <tbody>
                    ${varied.map((one) => this.varied(cell, one, titles))} ${compared.map((one, at) => this.compared(one, at))}
                  </tbody>
                </table>
              </div>
            `
      }
      ${this.acts(view, titles)}
      <p class="unseen" role="status">${this.announced}</p>
    `
  }
}
