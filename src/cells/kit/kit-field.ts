import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Given, Sheet } from '../../worksheet/index.ts'
import { shared } from '../style/styles.ts'
import { kitChoiceWords } from './words.ts'

/** Shows the chosen piece of kit. The kit is loaded when another is to be chosen. */
@customElement('kit-field')
export class KitField extends LitElement {
  static override styles = [
    shared,
    css`
      :host {
        grid-column: 2 / -1;
      }
      .line {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 58px;
        align-items: center;
        column-gap: 8px;
      }
      .piece {
        min-block-size: calc(var(--field) - 2px);
        padding: 3px 8px;
        align-content: center;
        overflow: hidden;
        border: 1px solid var(--mark);
        border-inline-start: 4px solid var(--edge);
        border-radius: 2px;
        background: var(--mark);
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      .piece.quiet {
        border: 1px dashed var(--edge);
        background: none;
      }
      .word {
        min-block-size: var(--field);
        font-size: 0.8667rem;
      }
    `,
  ]

  @property({ attribute: false }) cell!: Given
  @property({ attribute: false }) sheet!: Sheet
  @property() label = ''
  @state() private choosing = false

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('button, kit-choice')?.focus(options)
  }

  private async choose(): Promise<void> {
    await import('./kit-choice.ts')
    this.choosing = true
    await this.updateComplete
    const choice = this.renderRoot.querySelector<LitElement>('kit-choice')
    await choice?.updateComplete
    choice?.focus()
  }

  override render(): TemplateResult {
    const { cell, sheet, label } = this
    if (this.choosing) return html`<kit-choice .cell=${cell} .sheet=${sheet} .label=${label}></kit-choice>`
    return html`
      <span class="line">
        <span class="piece ${cell.value ? '' : 'quiet'}" title=${cell.value}>${cell.value || kitChoiceWords.noneChosen}</span>
        <button type="button" class="word" aria-label=${(cell.value ? kitChoiceWords.changeFor : kitChoiceWords.chooseFor)(label)} @click=${() => void this.choose()}>${cell.value ? kitChoiceWords.change : kitChoiceWords.choose}</button>
      </span>
    `
  }
}
