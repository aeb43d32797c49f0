import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { Home } from '../../storage/exchange/home.ts'
import { type Difference, type Homecoming, homecoming, takenOver } from '../../storage/exchange/take-over.ts'
import { isFiguresOnly } from '../../storage/figures/figures-only.ts'
import { count } from '../../units/plural.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import type { CheckSummary, Worksheet } from '../../worksheet/index.ts'
import { checkSummaryText, examplesText } from '../common/words.ts'
import { countExamples, examplesOf } from '../examples/examples.ts'
import type { ReceivedFigure } from './copy-figures.ts'
import { receivedStyle } from './received-style.ts'
import { receivedWords as words } from './words.ts'

/** What is taken over into a sheet of this browser. */
export interface TakeOver {
  readonly id: string
  readonly merge: (worksheet: Worksheet) => Worksheet
}

/**
 * A worksheet that came in a link or a file, before anything is saved: what it is, and the choice. The copy of a sheet
 * that is here offers its measurements and ticks, each beside what the sheet has.
 */
@customElement('copy-page')
export class CopyPage extends LitElement {
  static override styles = [
    shared,
    receivedStyle,
    css`
      h1 {
        padding-block-end: 0.7rem;
        border-block-end: 2px solid var(--ink);
        overflow-wrap: anywhere;
      }
      .differences {
        overflow-x: auto;
      }
      table {
        inline-size: 100%;
        border-collapse: collapse;
        font-variant-numeric: tabular-nums;
      }
      th,
      td {
        padding: 0.35rem 0.8rem 0.35rem 0;
        border-block-end: 1px solid var(--rule);
        text-align: start;
        vertical-align: top;
        overflow-wrap: anywhere;
      }
      tbody th {
        inline-size: 40%;
        overflow-wrap: break-word;
      }
      input {
        inline-size: 1.4rem;
        block-size: 1.4rem;
      }
    `,
  ]

  @property({ attribute: false }) worksheet!: Worksheet
  @property({ attribute: false }) checkSummary!: CheckSummary
  @property({ attribute: false }) figures: readonly ReceivedFigure[] = []
  /** The sheet of this browser it is a copy of. */
  @property({ attribute: false }) home: Home | undefined
  /** How it came. */
  @property() from: 'link' | 'server' | 'file' = 'link'
  /** Why nothing was saved. */
  @property() failure = ''
  @state() private chosen: ReadonlySet<string> = new Set()
  private found: Homecoming | undefined

  override willUpdate(changed: PropertyValues): void {
    if (!changed.has('home') && !changed.has('worksheet')) return
    this.found = this.home && homecoming(this.home.worksheet, this.worksheet, this.home.before)
    // What was changed in both is for the user to decide.
    this.chosen = new Set(this.found?.differences.filter(({ isClash }) => !isClash).map(({ key }) => key))
  }

  private tell(name: 'copy-saved' | 'copy-left'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }))
  }

  private takeOver(): void {
    const { home, worksheet, chosen } = this
    if (!home || chosen.size === 0) return
    const detail: TakeOver = { id: home.id, merge: (here) => takenOver(here, worksheet, chosen) }
    this.dispatchEvent(new CustomEvent('copy-taken', { detail, bubbles: true, composed: true }))
  }

  private choose(key: string, isChosen: boolean): void {
    const others = [...this.chosen].filter((one) => one !== key)
    this.chosen = new Set(isChosen ? [...others, key] : others)
  }

  private difference({ key, label, here, there, before, isClash }: Difference): TemplateResult {
    return html`
      <tr>
        <td>
          <input
            type="checkbox"
            aria-label=${words.takeOver(label)}
            .checked=${this.chosen.has(key)}
            @change=${(event: Event) => this.choose(key, (event.target as HTMLInputElement).checked)}
          >
        </td>
        <th scope="row">${label}${isClash ? html`<br><span class="small">${words.clash}</span>` : nothing}</th>
        <td>${here || html`<span class="quiet">${words.empty}</span>`}</td>
        <td>${there || html`<span class="quiet">${words.empty}</span>`}</td>
        <td>${before === undefined ? html`<span class="quiet">${words.unknown}</span>` : before || html`<span class="quiet">${words.empty}</span>`}</td>
      </tr>
    `
  }

  private homecoming(home: Home, { differences, stays, others }: Homecoming): TemplateResult {
    return html`
      <p>${words.isHome(home.worksheet.title || UNTITLED_SHEET)} ${words.differs(differences.length)}</p>
      ${
        differences.length === 0
          ? nothing
          : html`<div class="differences">
              <table>
                <thead>
                  <tr>
                    <td></td>
                    ${[words.place, words.here, words.there, words.before].map((head) => html`<th scope="col">${head}</th>`)}
                  </tr>
                </thead>
                <tbody>${differences.map((one) => this.difference(one))}</tbody>
              </table>
            </div>`
      }
      ${stays > 0 ? html`<p class="quiet">${words.stays(stays)}</p>` : nothing}
      ${others > 0 ? html`<p class="quiet">${words.others(others)}</p>` : nothing}
    `
  }

  /** What it computes, to be read before anything is saved. */
  private results(): TemplateResult | typeof nothing {
    if (this.figures.length === 0) return nothing
    return html`
      <div class="differences" role="region" aria-label=${words.figures} tabindex="0">
        <table>
          <caption class="unseen">${words.figures}</caption>
          <tbody>
            ${this.figures.map(
              ({ label, text }) =>
                html`<tr>
                  <th scope="row">${label}</th>
                  <td>${text}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
    `
  }

  override render(): TemplateResult {
    const { title, job, cells } = this.worksheet
    const { home, found } = this
    const examples = examplesOf({ cells })
    const canTake = found !== undefined && found.differences.length > 0
    return html`
      <main>
        <h1>${title || UNTITLED_SHEET}</h1>
        ${job ? html`<p>${job}</p>` : ''}
        <p>
          ${this.from === 'server' ? words.served(cells.length) : words.sent(cells.length)}
          ${checkSummaryText(this.checkSummary)}
        </p>
        ${examples.length > 0 ? html`<p>${examplesText(...countExamples(examples))}.</p>` : nothing}
        ${isFiguresOnly(this.worksheet) ? html`<p>${words.figuresOnly}</p>` : ''}
        ${home && found ? this.homecoming(home, found) : nothing} ${this.results()}
        <p class="quiet">${this.from === 'link' ? words.inLink : ''} ${words.aboutCopy}</p>
        ${this.failure ? html`<p role="alert">${this.failure}</p>` : nothing}
        <div class="presses">
          ${
            canTake
              ? html`<button type="button" class="press ${this.chosen.size > 0 ? 'primary' : ''}" aria-disabled=${this.chosen.size === 0} @click=${() => this.takeOver()}>
                  ${words.takeOver(count(this.chosen.size))}
                </button>`
              : nothing
          }
          <button type="button" class="press ${canTake ? '' : 'primary'}" @click=${() => this.tell('copy-saved')}>
            ${home ? words.saveSeparate : words.save}
          </button>
          <button type="button" class="press" @click=${() => this.tell('copy-left')}>${words.leave}</button>
        </div>
      </main>
    `
  }
}
