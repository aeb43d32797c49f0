import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Given, Sheet } from '../../worksheet/index.ts'
import { shared } from '../style/styles.ts'

/** What piece of kit a given is. The kit itself is fetched when another is to be chosen. */
@customElement('kit-field')
export class KitField extends LitElement {
  static override styles = [
    shared,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 0.9rem;
        overflow-wrap: anywhere;
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
        <span class=${cell.value ? '' : 'quiet'}>${cell.value || 'none chosen'}</span>
        <button type="button" class="word" aria-label="Choose: ${label}" @click=${() => void this.choose()}>Choose</button>
      </span>
    `
  }
}
