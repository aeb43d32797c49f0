import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { composeWords } from './words.ts'

/** The button at the end of a sheet that adds a section. The panel behind it is fetched on the first press. */
@customElement('join-offer')
export class JoinOffer extends SignalWatcher(LitElement) {
  static override styles = shared

  @property({ attribute: false }) open!: OpenSheet
  @state() private asked = false
  @state() private arranging = false
  /** Whether the sheet is of an earlier version, and can be arranged by parts. */
  @state() private isOlder = false
  /** Why an offered part could not be added. */
  @state() private problem = ''
  private face: Node | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.face = this.getRootNode()
    this.face.addEventListener('part-asked', this.add)
  }

  override firstUpdated(): void {
    const { parts, cells } = this.open.sheet.worksheet
    if (parts === undefined && cells.length > 0) void this.lookWhetherOlder()
  }

  private async lookWhetherOlder(): Promise<void> {
    try {
      const { isOlder } = await import('./older-sheet.ts')
      this.isOlder = await isOlder(this.open.sheet.worksheet)
    } catch {
      // Without the network it is offered when the sheet is opened next.
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.face?.removeEventListener('part-asked', this.add)
  }

  /** Adds a part that was offered beside a failing check. */
  private readonly add = async (event: Event): Promise<void> => {
    const { addPart } = await import('./add-part.ts')
    this.problem = await addPart(this, this.open, (event as HTMLElementEventMap['part-asked']).detail)
  }

  private async ask(arranging = false): Promise<void> {
    this.arranging = arranging
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
    this.open.laidOut.get()
    return this.asked
      ? html`<join-panel
          .open=${this.open}
          ?arranging=${this.arranging}
          @section-set=${() => {
            this.asked = false
          }}
          @join-left=${() => void this.leave()}
        ></join-panel>`
      : html`
          ${this.problem ? html`<p role="alert">${this.problem}</p>` : nothing}
          <button type="button" class="press" @click=${() => void this.ask()}>${composeWords.addASection}</button>
          ${
            this.isOlder && this.open.sheet.worksheet.parts === undefined
              ? html`<button type="button" class="press" @click=${() => void this.ask(true)}>${composeWords.arrange}</button>
                  <p class="small quiet">${composeWords.aboutOlder}</p>`
              : nothing
          }
        `
  }
}
