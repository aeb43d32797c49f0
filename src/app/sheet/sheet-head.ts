import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import { requestChange } from '../../cells/shared/cell-view.ts'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { isHeading } from '../../worksheet/index.ts'
import { colourScheme, setColourScheme } from '../common/colour-scheme.ts'
import { type Face, withFace } from '../common/route.ts'
import { stateCounts } from '../common/state-counts.ts'
import { stateText } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { pageWidth } from '../open/page-width.ts'
import type { Autosave } from '../session/autosave.ts'
import { headStyle } from './head-style.ts'
import { sheetWords as words } from './words.ts'

/** The field of the title has room for so many characters. */
const SHORTEST_TITLE = 12

const FACES: readonly (readonly [Face, string])[] = [
  ['fill', words.fillIn],
  ['stand', words.atTheStand],
  ['build', words.build],
]

/** The head of an open worksheet, which stays while the page scrolls: its title, its state and the way around. */
@customElement('sheet-head')
export class SheetHead extends SignalWatcher(LitElement) {
  static override styles = [shared, field, signStyle, headStyle]

  @property({ attribute: false }) open!: OpenSheet
  @property({ attribute: false }) autosave!: Autosave
  @property({ reflect: true }) face: Face = 'fill'
  /** The places of the sections on the page. */
  @property({ attribute: false }) places: () => readonly HTMLElement[] = () => []
  @property({ type: Boolean }) looksBack = false
  @property({ type: Boolean }) sharing = false
  @property({ type: Boolean }) canFind = false
  @property({ type: Boolean }) finds = false

  private ask(name: string, detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }))
  }

  focusFind(): void {
    const find = this.renderRoot.querySelector<HTMLElement>('.find')
    const menu = find?.closest('details')
    if (menu) menu.open = true
    find?.focus()
  }

  private savedText(): string {
    if (this.open.frozen.get()) return words.readOnly
    const saving = this.autosave.saveState.get()
    if (saving.state === 'saved') return words.saved(saving.at)
    if (saving.state === 'saving') return words.saving
    return saving.state === 'failed' ? words.notSaved : words.unchanged
  }

  /** On a phone the time of the last save is left out, and nothing is said before the first change. */
  private savedShort(): string {
    const { state } = this.autosave.saveState.get()
    if (this.open.frozen.get() || state === 'saving' || state === 'failed') return this.savedText()
    return state === 'saved' ? words.savedShort : ''
  }

  private tool(
    label: string,
    event: string,
    options: { can?: boolean; expanded?: boolean; name?: string } = {},
  ): TemplateResult {
    const { can = true, expanded, name = '' } = options
    // Not `disabled`, which would lose the focus when the last step is undone.
    return html`<button
      type="button"
      class="tool ${name}"
      aria-disabled=${!can}
      aria-expanded=${expanded ?? nothing}
      @click=${() => {
        if (!can) return
        this.closeMenu()
        this.ask(event)
      }}
    >${label}</button>`
  }

  private closeMenu(): void {
    const menu = this.renderRoot.querySelector('details')
    if (menu) menu.open = false
  }

  private heading(): TemplateResult {
    const { title, job } = this.open.sheet.worksheet
    if (this.face === 'build')
      return html`<h1><input
        class="field"
        type="text"
        size=${Math.max(SHORTEST_TITLE, title.length)}
        aria-label=${words.title}
        .value=${live(title)}
        @input=${(event: Event) => requestChange(this, { do: 'title', title: (event.target as HTMLInputElement).value }, 'title')}
      ></h1>`
    return html`<h1>${title || UNTITLED_SHEET}${this.face === 'stand' && job && pageWidth.get() !== 'narrow' ? html` <span class="of">${job}</span>` : nothing}</h1>`
  }

  private job(): TemplateResult | typeof nothing {
    if (this.face === 'stand') return nothing
    return html`
      <input
        class="job field"
        type="text"
        autocomplete="off"
        aria-label=${words.job}
        placeholder=${words.aboutJob}
        .value=${live(this.open.sheet.worksheet.job ?? '')}
        @input=${(event: Event) => requestChange(this, { do: 'job', job: (event.target as HTMLInputElement).value }, 'job')}
      >
    `
  }

  private faces(): TemplateResult {
    return html`<nav class="faces" aria-label=${words.faces}>${FACES.map(
      ([face, label]) =>
        html`<a
          href=${withFace(location.hash, face)}
          aria-current=${this.face === face ? 'page' : nothing}
          @click=${() => this.closeMenu()}
        >${label}</a>`,
    )}</nav>`
  }

  private menu(items: readonly unknown[]): TemplateResult {
    const dim = colourScheme.get() === 'dim'
    return html`
      <details class="menu" @focusout=${(event: FocusEvent) => {
        const menu = event.currentTarget as HTMLDetailsElement
        if (event.relatedTarget instanceof Node && !menu.contains(event.relatedTarget)) menu.open = false
      }}>
        <summary class="tool">${pageWidth.get() === 'narrow' ? words.menu : words.moreTools}</summary>
        <div class="items">
          ${items}
          ${this.face === 'stand' ? nothing : this.tool(words.revisions, 'revisions-asked', { expanded: this.looksBack })}
          <a
            class="tool"
            href=${withFace(location.hash, 'functions')}
            aria-current=${this.face === 'functions' ? 'page' : nothing}
            @click=${() => this.closeMenu()}
          >${words.functions}</a>
          <button type="button" class="tool" @click=${() => setColourScheme(dim ? 'light' : 'dim')}>${dim ? words.light : words.dim}</button>
          <a class="tool" href="#">${words.allSheets}</a>
        </div>
      </details>
    `
  }

  private tools(): TemplateResult {
    const { canUndo, canRedo } = this.open.sheet
    const frozen = this.open.frozen.get()
    const width = pageWidth.get()
    const undo = this.tool(words.undo, 'undo-asked', { can: canUndo && !frozen })
    const redo = this.tool(words.redo, 'redo-asked', { can: canRedo && !frozen })
    const find = this.canFind ? this.tool(words.find, 'find-asked', { expanded: this.finds, name: 'find' }) : nothing
    const share = this.tool(words.share, 'share-asked', { expanded: this.sharing })
    if (this.face === 'stand')
      return html`
        ${width === 'narrow' ? nothing : html`<slot></slot>`} ${undo} ${this.menu([this.faces(), redo, share, this.job()])}
        ${width === 'narrow' ? nothing : html`<a class="leave" href=${withFace(location.hash, 'fill')}>${words.fillIn}</a>`}
      `
    if (width === 'wide') return html`${undo} ${redo} ${find} ${share} ${this.menu([])} ${this.faces()}`
    if (width === 'medium') return html`${undo} ${this.menu([redo, find, share])} ${this.faces()}`
    return html`${undo} ${this.menu([this.faces(), redo, find, share, this.job()])}`
  }

  private counts(): TemplateResult | typeof nothing {
    const shown = stateCounts(this.open.sheet.checkSummary)
    if (shown.length === 0) return nothing
    return html`<div class="counts" role="group" aria-label=${words.checks}>${shown.map(
      ([state, n]) =>
        html`<button type="button" class="tool ${state}" @click=${() => this.ask('state-asked', state)}>${checkSign(state)} ${pageWidth.get() === 'wide' ? stateText(state, n) : html`${n}<span class="unseen"> ${stateText(state, n)}</span>`}</button>`,
    )}</div>`
  }

  override firstUpdated(): void {
    // Its row has its height before.
    void import('../sections/section-line.ts')
    // Here before it is needed: what keeps a sheet from being saved may keep this from being fetched.
    void import('../session/save-failed.ts')
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const saving = this.autosave.saveState.get()
    const narrow = pageWidth.get() === 'narrow'
    // On a phone the row is there in any case: the page makes up for it while one types.
    const lined =
      (this.face === 'fill' || this.face === 'build') && (narrow || this.open.sheet.cells.filter(isHeading).length > 1)
    const atStand = this.face === 'stand'
    const counts = this.face !== 'functions' && !atStand && !narrow ? this.counts() : nothing
    return html`
      <div class="first">
        ${pageWidth.get() === 'wide' ? html`<a class="brand" href="#">Evenfield</a>` : nothing}
        <div class="titles">${this.heading()} ${narrow ? nothing : this.job()}</div>
        <span class="small quiet saved" title=${this.savedText()}>${narrow ? this.savedShort() : this.savedText()}</span>
        <div class="tools">${this.tools()}</div>
      </div>
      ${
        lined || counts !== nothing
          ? html`<div class="second">
              ${counts}
              ${lined ? html`<section-line .open=${this.open} .places=${this.places}></section-line>` : nothing}
            </div>`
          : nothing
      }
      ${atStand && narrow ? html`<div class="second"><slot></slot></div>` : nothing}
      ${
        saving.state === 'failed' && !this.open.frozen.get()
          ? html`<save-failed .worksheet=${this.open.sheet.worksheet} .why=${saving.message}></save-failed>`
          : nothing
      }
    `
  }
}
