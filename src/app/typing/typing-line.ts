import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { goToCell, labelOf } from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { fullKeyboard } from '../../cells/shared/typing-aids.ts'
import { STATE_LABELS } from '../../cells/shared/words.ts'
import { shared } from '../../cells/style/styles.ts'
import { signKeys, signKeysStyle } from '../../cells/touch/sign-keys.ts'
import type { Check, Result } from '../../worksheet/index.ts'
import { weighedFigures } from '../open/key-figures.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { sectionsOf } from '../open/sections.ts'
import { typingWords as words } from './words.ts'

interface Typing {
  readonly cell: string
  readonly field: HTMLInputElement
}

/** The line above the keyboard of a touch screen: what follows from what is typed, and the signs its keys lack. */
@customElement('typing-line')
export class TypingLine extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    signStyle,
    signKeysStyle,
    css`
      :host {
        position: fixed;
        inset-inline: 0;
        inset-block-end: var(--keyboard, 0px);
        z-index: 6;
        padding: 8px 16px;
        border-block-start: 1px solid var(--sheet);
        background: var(--ink);
        color: var(--sheet);
      }
      :host([hidden]) {
        display: none;
      }
      .figures {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr) auto;
        gap: 12px;
        align-items: center;
        min-block-size: 40px;
      }
      .key {
        font-size: 1.6rem;
        font-weight: 700;
        white-space: nowrap;
      }
      .worst {
        display: flex;
        gap: 6px;
        align-items: start;
        min-inline-size: 0;
        font-size: 0.9333rem;
        line-height: 1.25;
      }
      .worst > span {
        display: -webkit-box;
        overflow: hidden;
        -webkit-box-orient: vertical;
        -webkit-line-clamp: 2;
      }
      .to-check {
        min-block-size: 44px;
        padding: 0 4px;
        border: 0;
        background: none;
        font-weight: 700;
        white-space: nowrap;
      }
      .keys {
        display: flex;
        gap: 8px;
        justify-content: space-between;
        padding-block-start: 4px;
      }
      .press {
        border-color: var(--sheet);
        background: none;
      }
      .press[aria-pressed='true'] {
        background: var(--sheet);
        color: var(--ink);
      }
      :focus-visible {
        outline-color: var(--sheet);
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** The given typed into and its field. */
  @state() private typing: Typing | undefined
  private root: EventTarget | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.root = this.getRootNode()
    this.root.addEventListener('focusin', this.typeIn)
    this.root.addEventListener('focusout', this.typed)
    visualViewport?.addEventListener('resize', this.place)
    visualViewport?.addEventListener('scroll', this.place)
    this.place()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.root?.removeEventListener('focusin', this.typeIn)
    this.root?.removeEventListener('focusout', this.typed)
    visualViewport?.removeEventListener('resize', this.place)
    visualViewport?.removeEventListener('scroll', this.place)
    fullKeyboard.set(false)
  }

  private readonly typeIn = (event: Event): void => {
    const path = event.composedPath()
    const [field] = path
    const cell = path.find((one) => (one as Element).localName === 'given-cell')
    if (field instanceof HTMLInputElement && field.type === 'text' && cell instanceof HTMLElement)
      this.typing = { cell: cell.dataset.cell ?? '', field }
  }

  /** The full keyboard is asked for by taking the focus away and back, which leaves the line in its place. */
  private readonly typed = (): void => {
    requestAnimationFrame(() => {
      if (!this.typing?.field.matches(':focus')) this.typing = undefined
    })
  }

  /** Above the keyboard: most browsers lay it over the page without making the page shorter. */
  private readonly place = (): void => {
    const seen = visualViewport
    const covered = seen ? innerHeight - seen.height - seen.offsetTop : 0
    this.style.setProperty('--keyboard', `${Math.max(0, Math.round(covered))}px`)
  }

  /** The keyboard changes only when the field takes the focus again. */
  private async toggleKeyboard(field: HTMLInputElement): Promise<void> {
    fullKeyboard.set(!fullKeyboard.get())
    await new Promise(requestAnimationFrame)
    field.blur()
    field.focus()
  }

  override willUpdate(): void {
    this.hidden = this.typing === undefined
  }

  override render(): TemplateResult | typeof nothing {
    const { typing } = this
    if (!typing) return nothing
    this.open.changed.get()
    const { sheet } = this.open
    const sections = sectionsOf(sheet.cells).map(({ rows, exact }) => [...rows, ...exact])
    const at = sections.findIndex((cells) => cells.some(({ id }) => id === typing.cell))
    const isNumber = ({ id }: Result): boolean => {
      const outcome = sheet.outcome(id)
      return outcome.state === 'value' && outcome.type.kind === 'number'
    }
    // Where nothing follows in the section typed into, it does in one further on.
    const cells = sections.slice(Math.max(0, at)).find((one) => weighedFigures(one, isNumber).length > 0) ?? []
    const [key] = weighedFigures(cells, isNumber)
    const shown = key && sheet.outcome(key.id)
    const checks = cells.filter((cell): cell is Check => cell.kind === 'check')
    const worst = (['error', 'fail', 'marginal'] as const)
      .map((state) => checks.find(({ id }) => sheet.checkState(id) === state))
      .find((check) => check !== undefined)
    const outcome = worst && sheet.check(worst.id)
    return html`
      <div class="figures" role="group" aria-label=${words.whatFollows}>
        <span class="key">${shown?.state === 'value' ? shown.shown.text : ''}</span>
        ${
          worst && outcome
            ? html`
                <span class="worst">${checkSign(outcome.state)} <span><b>${STATE_LABELS[outcome.state]}</b> ${outcome.message || labelOf(worst)}</span></span>
                <button type="button" class="to-check" @pointerdown=${(event: Event) => event.preventDefault()} @click=${() => {
                  typing.field.blur()
                  goToCell(this, worst.id)
                }}>${words.waysToFix} <span aria-hidden="true">↓</span></button>
              `
            : html`<span class="worst">${key ? labelOf(key) : ''}</span>`
        }
      </div>
      <div class="keys">
        ${signKeys(typing.field)}
        <button
          type="button"
          class="press"
          aria-pressed=${fullKeyboard.get()}
          @pointerdown=${(event: Event) => event.preventDefault()}
          @click=${() => void this.toggleKeyboard(typing.field)}
        >${words.letters}</button>
      </div>
    `
  }
}
