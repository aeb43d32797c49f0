import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import type { FormulaEditor } from '../../language/editor/index.ts'
import type { Diagnostic, Guide, Scope } from '../../language/index.ts'
import { errorMessage, errorMessageStyle } from '../shared/error-message.ts'
import { field, shared } from '../style/styles.ts'
import { written } from '../style/written.ts'

/** Fired while a formula is typed, with its whole text. */
export type FormulaEvent = CustomEvent<string>
/** Fired when the field is left by key: by Enter, or by Escape. */
export type FormulaLeftEvent = CustomEvent<'entered' | 'escaped'>

/**
 * A field for a formula. It is a plain text field until it is focused; then the editor is loaded and replaces it,
 * with the text typed in the meantime.
 */
@customElement('formula-field')
export class FormulaField extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true }
  static override styles = [
    shared,
    field,
    written,
    errorMessageStyle,
    css`
      label,
      .label {
        display: block;
        padding-block-end: 3px;
      }
      textarea.field {
        field-sizing: content;
        min-block-size: 44px;
        padding-block: 0.55rem;
        line-height: 1.5;
        resize: none;
        overflow-wrap: anywhere;
      }
      .problems {
        margin-block-start: 0.5rem;
      }
    `,
  ]

  @property() label = ''
  @property() value = ''
  @property({ attribute: false }) scope!: () => Scope
  @property({ attribute: false }) called!: (name: string) => string
  /** What a cell gives now, as shown. */
  @property({ attribute: false }) figure: (name: string) => string = () => ''
  @property({ attribute: false }) diagnostics: readonly Diagnostic[] = []
  /** A line that is not yet anything: Escape leaves it as it is. */
  @property({ type: Boolean }) draft = false
  /** Whether the text before the caret is a formula, so that names are offered. */
  @property({ attribute: false }) isFormula: ((before: string) => boolean) | undefined
  @state() private edited = false
  @query('.place') private place!: HTMLElement
  @query('textarea') private plain!: HTMLTextAreaElement | null
  private editor: FormulaEditor | undefined
  private textBefore = ''
  /** Escape puts back what was there: a step of undo of its own, so that what was typed is not lost. */
  isRestoring = false
  private marking: number | undefined

  override focus(): void {
    if (this.editor) this.editor.focus()
    else void this.updateComplete.then(() => this.plain?.focus())
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.editor?.destroy()
    this.editor = undefined
    this.edited = false
  }

  private report(text: string): void {
    this.value = text
    this.dispatchEvent(new CustomEvent('formula-typed', { detail: text }))
  }

  private leave(how: FormulaLeftEvent['detail']): void {
    this.dispatchEvent(new CustomEvent('formula-left', { detail: how, bubbles: true, composed: true }))
  }

  private restore(): void {
    if (!this.draft && this.value !== this.textBefore) {
      this.isRestoring = true
      this.report(this.textBefore)
      this.isRestoring = false
    }
    if (!this.draft) this.editor?.setText(this.textBefore)
    this.leave('escaped')
  }

  private async open(): Promise<void> {
    this.textBefore = this.value
    if (this.editor) return
    let load: typeof import('../../language/editor/index.ts')
    let guide: Guide
    try {
      ;[load, { GUIDE: guide }] = await Promise.all([import('../../language/editor/index.ts'), import('virtual:guide')])
    } catch {
      // Without the network the plain field keeps working.
      return
    }
    const plain = this.plain
    // The field may have been removed or left while the editor was loading.
    if (this.editor || !plain || this.renderRoot !== plain.getRootNode() || !this.isConnected) return
    const focused = this.shadowRoot?.activeElement === plain
    if (!focused) return
    const selected = { from: plain.selectionStart, to: plain.selectionEnd }
    this.edited = true
    this.editor = load.openFormulaEditor({
      parent: this.place,
      root: this.shadowRoot as ShadowRoot,
      text: this.value,
      selected,
      label: this.label,
      describedBy: 'problems',
      scope: () => this.scope(),
      guide,
      called: (name) => this.called(name),
      figure: (name) => this.figure(name),
      isFormula: this.isFormula,
      onText: (text) => this.report(text),
      onKeep: () => this.leave('entered'),
      onRestore: () => this.restore(),
      onFocus: () => {
        this.textBefore = this.value
      },
    })
    // Marks drawn right after the focus would move the caret.
    this.editor.setDiagnostics(this.diagnostics)
    this.editor.focus()
  }

  override updated(changed: PropertyValues<this>): void {
    if (!this.editor) return
    if (changed.has('value')) this.editor.setText(this.value)
    if (changed.has('diagnostics')) this.mark()
  }

  /** Marks are drawn in the next frame; drawn together with a key they would move the caret. */
  private mark(): void {
    this.marking ??= requestAnimationFrame(() => {
      this.marking = undefined
      this.editor?.setDiagnostics(this.diagnostics)
    })
  }

  override render(): TemplateResult {
    return html`
      <label class="small quiet" for="plain">${this.label}</label>
      <div class="place">
        ${
          this.edited
            ? ''
            : html`<textarea
                id="plain"
                class="field mono"
                rows="1"
                autocapitalize="off"
                autocomplete="off"
                spellcheck="false"
                aria-describedby="problems"
                .value=${live(this.value)}
                @focus=${() => void this.open()}
                @input=${(event: Event) => this.report((event.target as HTMLTextAreaElement).value.replace(/\s*\n\s*/g, ' '))}
                @keydown=${(event: KeyboardEvent) => {
                  if (event.key === 'Escape') this.restore()
                  else if (event.key === 'Enter' && !event.altKey) {
                    event.preventDefault()
                    this.leave('entered')
                  }
                }}
              ></textarea>`
        }
      </div>
      <div id="problems" class=${this.diagnostics.length > 0 ? 'problems' : ''}>
        ${errorMessage(this.value, this.diagnostics, (text) => {
          this.report(text)
          this.focus()
        })}
      </div>
    `
  }
}
