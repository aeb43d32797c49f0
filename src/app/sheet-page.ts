import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Asked } from '../cells/cell-view.ts'
import { labelledStyle } from '../cells/labelled.ts'
import { shared } from '../cells/styles.ts'
import { type Cell, ChangeRefused } from '../worksheet/index.ts'
import type { BuildFace } from './build-face.ts'
import './fill-face.ts'
import type { FillFace } from './fill-face.ts'
import { firstTrouble } from './first-trouble.ts'
import { standingInWords } from './in-words.ts'
import type { Keeper } from './keeper.ts'
import { keysList, keysStyle } from './keys-list.ts'
import { newCell } from './new-cell.ts'
import type { OpenSheet } from './open-sheet.ts'
import { type Face, withFace } from './route.ts'
import './sheet-head.ts'

/** A live region is told how the checks stand once the typing pauses, not at every key. */
const SPOKEN_AFTER_MS = 900

/** An open worksheet: its head, what can be shared, and one of its two faces. */
@customElement('sheet-page')
export class SheetPage extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    labelledStyle,
    keysStyle,
    css`
      main {
        max-inline-size: 70rem;
        margin-inline: auto;
        padding: clamp(1rem, 3vw, 1.8rem) clamp(1rem, 4vw, 2.4rem) 1.4rem;
        background: var(--sheet);
        border: 1px solid var(--edge);
      }
      @media (max-width: 71rem) {
        main {
          border-inline: 0;
        }
      }
      .keys {
        margin-block-start: 1.4rem;
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) keeper!: Keeper
  @property() face: Face = 'fill'
  @property({ type: Boolean }) sharing = false
  @state() private spoken = ''
  @query('fill-face') private fillFace!: FillFace | null
  @query('build-face') private buildFace!: BuildFace | null
  /** A cell just put into the sheet, to be shown once the Build face is there. */
  private arriving: string | undefined
  private speaking: ReturnType<typeof setTimeout> | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    document.addEventListener('keydown', this.keys)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    document.removeEventListener('keydown', this.keys)
    clearTimeout(this.speaking)
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('face') && this.face === 'build') void import('./build-face.ts')
    if (changed.has('face') && this.face === 'functions') void import('./function-guide.ts')
    if (changed.has('sharing') && this.sharing) void import('./share-panel.ts')
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has('sharing') && this.sharing) void this.showShare()
    if (this.face === 'build' && this.arriving !== undefined) {
      void this.showArrived(this.arriving)
      this.arriving = undefined
    }
  }

  private async showShare(): Promise<void> {
    await customElements.whenDefined('share-panel')
    const panel = this.renderRoot.querySelector<LitElement>('share-panel')
    await panel?.updateComplete
    panel?.renderRoot.querySelector<HTMLElement>('h2')?.focus()
  }

  private readonly keys = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 'z') this.step(event.shiftKey ? 'redo' : 'undo')
    else if (key === 'y') this.step('redo')
    else return
    event.preventDefault()
  }

  private step(which: 'undo' | 'redo'): void {
    this.open.sheet[which]()
  }

  private readonly asked = (event: CustomEvent<Asked>): void => {
    const { change, merge } = event.detail
    try {
      this.open.apply(change, merge)
    } catch (error) {
      if (!(error instanceof ChangeRefused)) throw error
      event.detail.refused = error.message
    }
  }

  private readonly showTrouble = (): void => {
    const id = firstTrouble(this.open.sheet)
    if (id !== undefined) void (this.fillFace ?? this.buildFace)?.show(id)
  }

  private speak(words: string): void {
    if (words === this.spoken) return
    clearTimeout(this.speaking)
    this.speaking = setTimeout(() => {
      this.spoken = words
    }, SPOKEN_AFTER_MS)
  }

  /** An example from the guide becomes the sheet's last result, opened where it is built. */
  private put(formula: string): void {
    const cell = { ...newCell('result', this.open.sheet.cells), formula } as Cell
    this.open.apply({ do: 'add', cell, at: this.open.sheet.cells.length })
    this.arriving = cell.id
    location.hash = withFace(location.hash, 'build')
  }

  private async showArrived(id: string): Promise<void> {
    await customElements.whenDefined('build-face')
    await this.buildFace?.show(id)
  }

  private shownFace(): TemplateResult {
    if (this.face === 'build') return html`<build-face .open=${this.open}></build-face>`
    if (this.face === 'fill') return html`<fill-face .open=${this.open}></fill-face>`
    return html`<function-guide canPut @example-put=${(event: CustomEvent<string>) => this.put(event.detail)}></function-guide>`
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const { worksheet, standing } = this.open.sheet
    this.speak(standingInWords(standing))
    return html`
      <main @change-asked=${this.asked}>
        <sheet-head
          .open=${this.open}
          .keeper=${this.keeper}
          .build=${this.face === 'build'}
          @show-trouble=${this.showTrouble}
          @undo-asked=${() => this.step('undo')}
          @redo-asked=${() => this.step('redo')}
        ></sheet-head>
        ${this.sharing ? html`<share-panel .worksheet=${worksheet}></share-panel>` : nothing}
        ${this.shownFace()}
        ${keysList()}
        <p class="unseen" role="status">${this.spoken}</p>
      </main>
    `
  }
}
