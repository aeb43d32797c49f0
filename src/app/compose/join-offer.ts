import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { composeWords } from './words.ts'

/** The button at the end of a sheet that adds a section. The panel behind it is fetched on the first press. */
@customElement('join-offer')
export class JoinOffer extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        padding-block: 1.2rem 0.4rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @state() private asked = false
  /** Why an offered part could not be added. */
  @state() private problem = ''
  private face: Node | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.face = this.getRootNode()
    this.face.addEventListener('part-asked', this.add)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.face?.removeEventListener('part-asked', this.add)
  }

  /** Adds a part that was offered beside a failing check. */
  private readonly add = async (event: Event): Promise<void> => {
    const { addPart } = await import('./add-part.ts')
    this.problem = await addPart(this, this.open, (event as CustomEvent<string>).detail)
  }

  private async ask(): Promise<void> {
    this.asked = true
    await import('./join-panel.ts')
    await this.updateComplete
    await this.renderRoot.querySelector<LitElement & { take: () => Promise<void> }>('join-panel')?.take()
  }

  private async leave(): Promise<void> {
    this.asked = false
    await this.updateComplete
    this.renderRoot.querySelector('button')?.focus()
  }

  override render(): TemplateResult | typeof nothing {
    if (this.open.frozen.get()) return nothing
    return this.asked
      ? html`<join-panel
          .open=${this.open}
          @section-set=${() => {
            this.asked = false
          }}
          @join-left=${() => void this.leave()}
        ></join-panel>`
      : html`
          ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
          <button type="button" class="press" @click=${() => void this.ask()}>${composeWords.addASection}</button>
        `
  }
}
