import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { aSort } from '../../kit/labels.ts'
import type { Piece } from '../../kit/piece.ts'
import { choosePiece } from '../../worksheet/document/kit-given.ts'
import type { Given, Sheet } from '../../worksheet/index.ts'
import { requestChange } from '../shared/cell-view.ts'
import { field, shared } from '../style/styles.ts'
import { askForKit } from './kit-request.ts'
import { kitChoiceWords } from './words.ts'

/** The field of a given that is a piece of kit: the studio's pieces of its sort, or the copy stored in the sheet. */
@customElement('kit-choice')
export class KitChoice extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      a {
        color: inherit;
      }
    `,
  ]

  @property({ attribute: false }) cell!: Given
  @property({ attribute: false }) sheet!: Sheet
  @property() label = ''
  @state() private pieces: readonly Piece[] = []
  @state() private problem = ''

  override connectedCallback(): void {
    super.connectedCallback()
    void this.take(askForKit(this))
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('select')?.focus(options)
  }

  private async take(coming: Promise<readonly Piece[]>): Promise<void> {
    try {
      this.pieces = await coming
    } catch (error) {
      this.problem = (error as Error).message
    }
  }

  private choose(id: string): void {
    const piece = this.pieces.find((one) => one.id === id)
    const change = choosePiece(this.sheet.cells, this.cell, piece ?? { name: '', figures: {} })
    this.problem = requestChange(this, change) ?? ''
  }

  override render(): TemplateResult {
    const { value, sort, piece = {} } = this.cell
    const own = this.pieces.filter((one) => one.sort === sort)
    const same = own.find(({ name, figures }) => name === value && sameFigures(figures, piece))
    const stray = value !== '' && !same
    return html`
      <select
        class="field"
        aria-label=${this.label}
        @change=${(event: Event) => this.choose((event.target as HTMLSelectElement).value)}
      >
        <option value="" .selected=${live(value === '')}>${sort ? kitChoiceWords.chooseA(aSort(sort)) : kitChoiceWords.noSort}</option>
        ${stray ? html`<option value="stray" .selected=${live(true)} disabled>${kitChoiceWords.copyInSheet(value)}</option>` : nothing}
        ${own.map(({ id, name }) => html`<option value=${id} .selected=${live(id === same?.id)}>${name}</option>`)}
      </select>
      <span class="small quiet">${kitChoiceWords.from} <a href="#kit">${kitChoiceWords.yourKit}</a>.</span>
      ${this.problem ? html`<p class="small" role="alert">${this.problem}</p>` : nothing}
    `
  }
}

function sameFigures(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean {
  const names = Object.keys(a)
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name])
}
