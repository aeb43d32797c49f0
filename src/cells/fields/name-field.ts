import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { field, shared } from '../style/styles.ts'

/** A name, taken when the field is left or Enter is pressed; while it cannot be taken, what was typed stays and is told why. */
@customElement('name-field')
export class NameField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true }
  static override styles = [
    shared,
    field,
    css`
      label {
        display: block;
      }
    `,
  ]

  @property() label = 'Name'
  @property() value = ''
  /** Takes the name, or gives why it cannot. */
  @property({ attribute: false }) take!: (name: string) => string | undefined
  @state() private draft: string | undefined
  @state() private refused: string | undefined

  private keep(): void {
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
    if (event.key === 'Enter' && !event.altKey) this.keep()
    if (event.key === 'Escape' && this.draft !== undefined) {
      this.draft = undefined
      this.refused = undefined
      event.stopPropagation()
    }
    // While a name is being typed, undo is the field's own.
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
        @change=${this.keep}
        @keydown=${this.keys}
      >
      <p id="refused" class="small" role="status">${this.refused ?? nothing}</p>
    `
  }
}
