import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { initialsField, initialsStyle } from '../../cells/details/measured-field.ts'
import { goToCell, labelOf, requestChange } from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { asOwn } from '../../cells/shared/given-origin.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { shortList } from '../../units/plural.ts'
import type { Check, CheckOutcome, Sheet } from '../../worksheet/index.ts'
import { countExamples, type Example, examplesOf } from '../examples/examples.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { unbraced } from './setting.ts'
import { checksIn } from './stand-cells.ts'
import { standWords as words } from './words.ts'

/** What is open in a sheet before the work at the stand begins. */
interface OpenPoints {
  readonly examples: readonly Example[]
  readonly checks: Readonly<Record<'fail' | 'waiting' | 'marginal', readonly Check[]>>
}

function openPoints(sheet: Sheet): OpenPoints {
  const of = (state: CheckOutcome['state']): readonly Check[] => checksIn(sheet, state)
  return {
    examples: examplesOf(sheet),
    checks: { fail: of('fail'), waiting: of('waiting'), marginal: of('marginal') },
  }
}

/** Whether anything is still an example’s, fails, waits or is marginal before the first frame. */
export function hasOpenPoints(sheet: Sheet): boolean {
  const { examples, checks } = openPoints(sheet)
  return examples.length + checks.fail.length + checks.waiting.length + checks.marginal.length > 0
}

/** The page before the stand: what is still the example's, what needs figures, fails or is marginal, each with a way to change it. */
@customElement('check-first')
export class CheckFirst extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    field,
    signStyle,
    initialsStyle,
    css`
      :host {
        --sign: 20px;
      }
      h2 {
        font-size: 2.1333rem;
        line-height: 1.25;
      }
      .initials {
        margin-block-start: 1.2rem;
        font-size: 1rem;
      }
      .initials .field {
        min-block-size: 60px;
      }
      .about {
        padding-block: 4px 12px;
        font-size: 1.1333rem;
      }
      .groups {
        columns: 26rem auto;
        column-gap: 48px;
      }
      section {
        padding-block-end: 16px;
      }
      h3 {
        display: flex;
        gap: 10px;
        align-items: center;
        margin: 0;
        padding-block: 8px 6px;
        border-block-end: 2px solid var(--ink);
        font-size: 1.1333rem;
        break-after: avoid;
      }
      .sample {
        inline-size: 26px;
        block-size: 16px;
        border: 1px dashed var(--ink);
        border-radius: 2px;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto auto;
        gap: 6px 10px;
        align-items: center;
        min-block-size: 72px;
        padding-block: 5px;
        border-block-end: 1px solid var(--rule);
        font-size: 1.1333rem;
        line-height: 1.3;
        break-inside: avoid;
      }
      li b {
        white-space: nowrap;
      }
      .example {
        font-weight: 400;
        text-decoration: underline;
        text-decoration-style: dashed;
        text-decoration-thickness: 1px;
        text-underline-offset: 4px;
      }
      .press {
        min-block-size: 60px;
        max-inline-size: 12.5rem;
        padding-inline: 14px;
      }
      li .press:last-child {
        grid-column: -2;
      }
      /* On a phone both buttons are below what they change. */
      @media (max-width: 40rem) {
        li > span:has(+ .press + .press) {
          grid-column: 1 / -1;
        }
        li .press {
          justify-self: start;
          max-inline-size: none;
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet

  private example(cell: Example): TemplateResult {
    const { sheet } = this.open
    const label = labelOf(cell)
    if (cell.kind === 'table')
      return html`
        <li>
          <span>${label}: <b class="example">${words.rows(cell.rows.length)}</b></span>
          <button type="button" class="press" aria-label=${words.useRowsOf(label)} @click=${() => this.use(cell)}>${words.useRows}</button>
          ${this.change(cell.id, label)}
        </li>
      `
    const outcome = sheet.outcome(cell.id)
    const shown = outcome.state === 'value' ? unbraced(outcome.shown.text) : cell.value
    return html`
      <li>
        <span>${label}: <b class="example">${shown}</b></span>
        <button type="button" class="press" aria-label=${words.useThisFor(shown, label)} @click=${() => this.use(cell)}>${words.useThis(shown)}</button>
        ${this.change(cell.id, label)}
      </li>
    `
  }

  private use(cell: Example): void {
    requestChange(this, { do: 'replace', cell: asOwn(cell) })
    // The button pressed is gone: the next row's takes the focus.
    void this.updateComplete.then(() => {
      const next =
        this.renderRoot.querySelector<HTMLElement>('li .press') ?? this.renderRoot.querySelector<HTMLElement>('h2')
      next?.focus()
    })
  }

  private change(id: string, label: string): TemplateResult {
    return html`<button type="button" class="press" aria-label=${words.changeThis(label)} @click=${() => goToCell(this, id)}>${words.change}</button>`
  }

  private checks(
    state: 'fail' | 'waiting' | 'marginal',
    title: (n: number) => string,
    checks: readonly Check[],
  ): unknown {
    if (checks.length === 0) return nothing
    const { sheet, called } = this.open
    const line = (cell: Check): TemplateResult => {
      const label = labelOf(cell)
      const { message, needs = [], again } = sheet.check(cell.id)
      const needed = again ? message : words.needs(shortList(needs.map(called)))
      // A check that needs a figure is answered where that figure is filled in.
      const place = sheet.named(needs[0] ?? '')?.id ?? cell.id
      const rests = state !== 'waiting' && this.open.resting.has(cell.id)
      const said = state !== 'waiting' ? asSentence(message) || label : needs.length > 0 ? `${label}: ${needed}` : label
      return html`<li><span>${said}${rests ? html` <span class="quiet">(${words.exampleFigure(false)})</span>` : nothing}</span>${this.change(place, label)}</li>`
    }
    // Solid as soon as one of them is judged by the user's own figures.
    const areDashed = state !== 'waiting' && checks.every(({ id }) => this.open.resting.has(id))
    return html`
      <section>
        <h3>${checkSign(state, areDashed)} ${title(checks.length)}</h3>
        <ul>${checks.map(line)}</ul>
      </section>
    `
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const { sheet } = this.open
    const { examples, checks } = openPoints(sheet)
    return html`
      <h2 tabindex="-1">${words.checkTitle}</h2>
      <p class="about quiet">${hasOpenPoints(sheet) ? words.checkAbout : words.nothingOpen}</p>
      <div class="groups">
        ${this.checks('fail', words.failing, checks.fail)} ${this.checks('waiting', words.waiting, checks.waiting)}
        ${
          examples.length > 0
            ? html`<section>
                <h3><span class="sample"></span> ${words.stillExample(...countExamples(examples))}</h3>
                <ul>${examples.map((cell) => this.example(cell))}</ul>
              </section>`
            : nothing
        }
        ${this.checks('marginal', words.isMarginal, checks.marginal)}
      </div>
      ${initialsField()}
    `
  }

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true })
  }
}

/** A message as a sentence of its own: elsewhere it follows the word for its state. A unit or a stop stays as it is. */
const asSentence = (message: string): string =>
  message.replace(/^[a-z](?=[a-z]*[ ,])/, (letter) => letter.toUpperCase())
