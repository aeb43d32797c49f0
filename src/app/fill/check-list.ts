import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { type CellSignal, type CheckView, goToCell, labelOf } from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { shared } from '../../cells/style/styles.ts'
import { foldLine } from './fold-line.ts'
import { fillWords as words } from './words.ts'

// Waiting and passing checks are a line each, so a sheet is usable before its checks in full.
void import('../../cells/checks/check-cell.ts')

/** The checks of a section: failing, marginal and broken ones in full, waiting and passing ones folded to a line. */
@customElement('check-list')
export class CheckList extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    signStyle,
    foldLine,
    css`
      .needs {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr);
        column-gap: 8px;
        padding-block: 8px 9px;
        border-block-end: 1px solid var(--rule);
      }
      .needs summary {
        min-block-size: 24px;
      }
      .needs .sign {
        margin-block-start: 2px;
      }
      .unbroken {
        white-space: nowrap;
      }
      .link {
        display: inline;
        white-space: normal;
        margin-block: -3px;
        padding: 3px 0;
        border: 0;
        background: none;
        cursor: pointer;
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-decoration-color: var(--hair);
        text-underline-offset: 3px;
      }
    `,
  ]

  @property({ attribute: false }) views: readonly CellSignal<CheckView>[] = []

  /** Brings the check of an id into view, unfolded, and gives its element; undefined where it is not in this list. */
  async reveal(id: string): Promise<HTMLElement | undefined> {
    const cell = this.renderRoot.querySelector<HTMLElement>(`[data-cell="${CSS.escape(id)}"]`)
    const fold = cell?.closest('details')
    if (fold) fold.open = true
    await this.updateComplete
    return cell ?? undefined
  }

  private cells(views: readonly CellSignal<CheckView>[]): unknown {
    return repeat(
      views,
      (view) => view.get().cell.id,
      (view) => html`<check-cell data-cell=${view.get().cell.id} .view=${view}></check-cell>`,
    )
  }

  private needs(views: readonly CellSignal<CheckView>[]): TemplateResult | typeof nothing {
    const [first] = views
    if (!first) return nothing
    const { called, sheet } = first.get()
    const needsOf = (all: readonly CellSignal<CheckView>[]): Set<string> =>
      new Set(all.flatMap((view) => view.get().outcome.needs ?? []))
    const names = [...needsOf(views)]
    const again = needsOf(views.filter((view) => view.get().outcome.again))
    const checks = views.map((view) => labelOf(view.get().cell))
    const link = (name: string): TemplateResult => {
      const id = sheet.named(name)?.id
      const label = again.has(name) ? words.again(called(name)) : called(name)
      return id === undefined
        ? html`<span>${label}</span>`
        : html`<button type="button" class="link" @click=${() => goToCell(this, id)}>${label}</button>`
    }
    return html`
      <div class="needs">
        ${checkSign('waiting')}
        <div>
          <p><b>${words.checksNeed(views.length, names.length)}</b>${names.length > 0 ? ': ' : '.'}${names.map(
            (name, at) =>
              html`${at > 0 ? ' ' : ''}<span class="unbroken">${link(name)}${at < names.length - 1 ? ',' : ''}</span>`,
          )}</p>
          <details>
            <summary class="small quiet">${checks.join(', ')}</summary>
            ${this.cells(views)}
          </details>
        </div>
      </div>
    `
  }

  /** Checks of one state as a line with their names, which unfolds. */
  private folded(
    views: readonly CellSignal<CheckView>[],
    state: 'pass' | 'error',
    text: string,
    rests = false,
  ): TemplateResult | typeof nothing {
    if (views.length === 0) return nothing
    return html`
      <details class="fold-line ${rests ? 'quiet' : ''}">
        <summary>
          ${checkSign(state, rests)} <span>${text}</span>
          <span class="small quiet names">${views.map((view) => labelOf(view.get().cell)).join(', ')}</span>
        </summary>
        ${this.cells(views)}
      </details>
    `
  }

  private passing(views: readonly CellSignal<CheckView>[], rests: boolean): TemplateResult | typeof nothing {
    const own = views.filter((view) => (view.get().rests ?? false) === rests)
    return this.folded(own, 'pass', words.checksPass(own.length, rests), rests)
  }

  /** One check for each error in full: a mistake in a given may block a dozen. */
  private errors(views: readonly CellSignal<CheckView>[]): unknown {
    const textOf = (view: CellSignal<CheckView>): string | undefined => {
      const { outcome } = view.get()
      return outcome.state === 'error' ? outcome.diagnostics[0]?.message : undefined
    }
    return [...new Set(views.map(textOf))].map((text) => {
      const [first, ...rest] = views.filter((view) => textOf(view) === text)
      return html`${this.cells(first ? [first] : [])} ${this.folded(rest, 'error', words.sameError(rest.length))}`
    })
  }

  override render(): TemplateResult {
    const by = (...states: readonly string[]) => this.views.filter((view) => states.includes(view.get().outcome.state))
    const pass = by('pass')
    return html`
      ${this.errors(by('error'))} ${this.cells([...by('fail'), ...by('marginal')])} ${this.needs(by('waiting'))}
      ${this.passing(pass, false)} ${this.passing(pass, true)}
    `
  }
}
