import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { field, shared } from '../style/styles.ts'
import { written } from '../style/written.ts'
import { fieldsWords } from './words.ts'

/** A field for a name, applied on Enter or when the field is left. A refused name stays in the field with the reason. */
@customElement('name-field')
export class NameField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true }
  static override styles = [
    shared,
    field,
    written,
    css`
      label {
        display: block;
        padding-block-end: 3px;
      }
      /* Clear of the ring of its field. */
      #refused:not(:empty) {
        padding-block-start: 4px;
      }
    `,
  ]

  @property() label = fieldsWords.name
  @property() value = ''
  /** Applies the name, or returns why it was refused. */
  @property({ attribute: false }) take!: (name: string) => string | undefined
  @state() private draft: string | undefined
  @state() private refused: string | undefined

  private apply(): void {
    const draft = this.draft?.trim()
    if (draft === undefined || draft === this.value) {
      this.draft = undefined
      this.refused = undefined
      return
    }
    this.refused = this.take(draft)
    if (this.refused === undefined) this.draft = undefined
  }

  private keys(event: KeyboardEvent): void {
    if (event.key === 'Enter' && !event.altKey) this.apply()
    if (event.key === 'Escape' && this.draft !== undefined) {
      this.draft = undefined
      this.refused = undefined
      event.stopPropagation()
    }
    // While a name is typed, undo belongs to the field.
    if (this.draft !== undefined && (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z')
      event.stopPropagation()
  }

  override render(): TemplateResult {
    return html`
      <label class="small quiet" for="name">${this.label}</label>
      <input
        id="name"
        class="field mono"
        type="text"
        autocapitalize="off"
        autocomplete="off"
        spellcheck="false"
        aria-invalid=${this.refused !== undefined}
        aria-describedby="refused"
        .value=${live(this.draft ?? this.value)}
        @input=${(event: Event) => {
          this.draft = (event.target as HTMLInputElement).value
        }}
        @change=${this.apply}
        @keydown=${this.keys}
      >
      <p id="refused" class="small" role="status">${this.refused ?? nothing}</p>
    `
  }
}
