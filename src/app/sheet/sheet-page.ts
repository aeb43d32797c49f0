import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import type { Advice, AdviceQuestion } from '../../cells/details/advice-request.ts'
import type { Asked } from '../../cells/shared/cell-view.ts'
import { fold, shared } from '../../cells/style/styles.ts'
import { TooLong } from '../../worksheet/editing/text-limits.ts'
import { ChangeRefused, type CheckOutcome } from '../../worksheet/index.ts'
import type { AdviceClient } from '../advice/advice-client.ts'
import type { BuildFace } from '../build/build-face.ts'
import '../fill/fill-face.ts'
import { focusPath, isField } from '../../cells/shared/focus.ts'
import { paperStyle } from '../common/page-style.ts'
import { type Face, withFace } from '../common/route.ts'
import { checkSummaryText } from '../common/words.ts'
import type { FillFace } from '../fill/fill-face.ts'
import type { FindLine } from '../find/find-line.ts'
import { Announcement } from '../open/announcement.ts'
import { markFound } from '../open/find-mark.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import './sheet-head.ts'
import type { SheetHead } from './sheet-head.ts'
import { sheetStyle } from './sheet-style.ts'
import { sheetWords } from './words.ts'

/** An open worksheet: its head, its panels and the chosen face. */
@customElement('sheet-page')
export class SheetPage extends SignalWatcher(LitElement) {
  static override styles = [shared, fold, paperStyle, sheetStyle]

  @property({ attribute: false }) session!: SheetSession
  @property() face: Face = 'fill'
  @state() private sharing = false
  /** Announces how the checks are once that has changed, and in any case after a step back or forward. */
  private readonly announcement = new Announcement(this)
  /** Why the last change did not fit. */
  @state() private tooLong = ''
  @state() private looksBack = false
  @state() private finds = false
  /** Whether a field of the sheet has the focus: the head of a phone is then one row. */
  @state() private typing = false
  @query('fill-face') private fillFace!: FillFace | null
  @query('.keys') private keysPlace!: HTMLDetailsElement
  @query('build-face') private buildFace!: BuildFace | null
  /** A cell to show once its face has been rendered. */
  private arriving: string | undefined
  /** The element that had the focus when the list of keys was opened with ?. */
  private beforeKeys: HTMLElement | undefined
  private isFrozen = false
  private advice: AdviceClient | undefined
  private endPrinting: (() => void) | undefined

  private get open(): OpenSheet {
    return this.session.open
  }

  override connectedCallback(): void {
    super.connectedCallback()
    document.addEventListener('keydown', this.keys)
    void import('../paper/ready-to-print.ts').then(({ readyToPrint }) => {
      if (this.isConnected) this.endPrinting ??= readyToPrint(this.session)
    })
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    document.removeEventListener('keydown', this.keys)
    this.endPrinting?.()
    this.endPrinting = undefined
    this.advice?.close()
    this.advice = undefined
  }

  /** Makes the sheet read only. Fetched on demand, since only a second tab needs it. */
  private async freeze(): Promise<void> {
    this.isFrozen = true
    const [{ readOnly }] = await Promise.all([import('../common/read-only.ts'), import('../session/tab-lock-bar.ts')])
    readOnly(this, () => this.open.frozen.get())
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('face') && this.face === 'build') void import('../build/build-face.ts')
    if (changed.has('face') && this.face === 'stand') void import('../stand/stand-view.ts')
    if (changed.has('face') && this.face === 'functions') void import('../guide/function-guide.ts')
  }

  override firstUpdated(): void {
    if (this.face === 'build' && this.open.sheet.cells.length === 0)
      void import('../keys/ask-name.ts').then(({ askName }) => askName(this.renderRoot))
  }

  override updated(changed: PropertyValues<this>): void {
    const { arriving } = this
    if (changed.get('face') && arriving === undefined)
      void import('../keys/keep-focus.ts').then(({ beginAt }) => beginAt(this.renderRoot.querySelector('main')))
    if (arriving === undefined || (this.face !== 'build' && this.face !== 'fill')) return
    this.arriving = undefined
    void this.showArrived(arriving)
  }

  private async show(name: 'share-panel' | 'revisions-panel', fetched: Promise<unknown>): Promise<void> {
    await fetched
    await this.updateComplete
    const panel = this.renderRoot.querySelector<LitElement>(name)
    await panel?.updateComplete
    panel?.renderRoot.querySelector<HTMLElement>('h2')?.focus()
  }

  private readonly keys = (event: KeyboardEvent): void => {
    if (event.key === '?' && !event.ctrlKey && !event.metaKey && !event.altKey && !isField(event)) {
      event.preventDefault()
      void import('../keys/toggle-keys.ts').then(({ toggleKeys }) => {
        this.beforeKeys = toggleKeys(this.keysPlace, this.beforeKeys)
      })
    }
    if (event.altKey && event.shiftKey && /^Key[FSB]$/.test(event.code)) {
      event.preventDefault()
      void import('../keys/face-keys.ts').then(({ turn }) => {
        this.arriving = turn(event.code, this.face, this.open)
      })
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return
    const key = event.key.toLowerCase()
    if (key === 'f') {
      // Inside the search the key is left to the browser’s own search.
      if (!this.canFind || isIn(event, 'find-line')) return
      void this.find()
    } else if (key === 'z') this.step(event.shiftKey ? 'redo' : 'undo')
    else if (key === 'y') this.step('redo')
    else if (key === 'p') void this.print()
    else return
    event.preventDefault()
  }

  /** Prints the job sheet in place of the page as shown. */
  private async print(): Promise<void> {
    const { printSession } = await import('../paper/give-out.ts')
    await printSession(this.session)
  }

  private step(which: 'undo' | 'redo'): void {
    const { canUndo, canRedo } = this.open.sheet
    if (!(which === 'undo' ? canUndo : canRedo) || this.open.frozen.get()) return
    this.announcement.after(sheetWords[which === 'undo' ? 'undone' : 'redone'])
    this.keepingFocus(() => this.open.step(which))
  }

  /** Makes a change after which something else than what has the focus may be on the page. */
  private keepingFocus(change: () => void): void {
    const held = focusPath()
    const before = [
      ...((this.fillFace ?? this.buildFace)?.shadowRoot?.querySelectorAll<HTMLElement>('[data-cell]') ?? []),
    ]
    change()
    void import('../keys/keep-focus.ts').then(({ keepFocus }) => keepFocus(held, before))
  }

  private readonly asked = (event: CustomEvent<Asked>): void => {
    const { change, merge } = event.detail
    try {
      // What is typed leaves its field where it is.
      if (merge === undefined) this.keepingFocus(() => this.open.apply(change))
      else this.open.apply(change, merge)
      this.tooLong = ''
    } catch (error) {
      if (!(error instanceof ChangeRefused)) throw error
      event.detail.refuse(error.message)
      // Fields take any text; what does not fit is reported here for every field.
      this.tooLong = error instanceof TooLong ? error.message : ''
    }
  }

  /** Advice comes from a worker, which is fetched when a sheet first has a check that fails. */
  private readonly adviceAsked = (event: CustomEvent<AdviceQuestion>): void => {
    event.preventDefault()
    const { sheet, answer } = event.detail
    const ask = async (): Promise<Advice | undefined> => {
      const [{ AdviceClient }, { kitFor }] = await Promise.all([
        import('../advice/advice-client.ts'),
        import('../../cells/kit/kit-request.ts'),
      ])
      // While the store cannot be read, advice goes without the studio's kit.
      const pieces = await kitFor(this, sheet).catch(() => [])
      this.advice ??= new AdviceClient()
      // The sheet as it is now: an older one would end the question about a newer one.
      return this.advice.answer(event.detail, sheet.worksheet, pieces)
    }
    answer(ask())
  }

  private get canFind(): boolean {
    return this.face === 'fill' || this.face === 'build'
  }

  private async find(): Promise<void> {
    await import('../find/find-line.ts')
    this.finds = true
    await this.updateComplete
    this.renderRoot.querySelector<FindLine>('find-line')?.take()
  }

  private readonly showFound = (id?: string): void => {
    const face = this.fillFace ?? this.buildFace
    if (id !== undefined) void face?.show(id, 'found')
    else if (face?.renderRoot) markFound(face.renderRoot)
  }

  /** Moves the focus to the cell found, or back to the Find button. */
  private leaveFind(id?: string): void {
    this.finds = false
    if (id !== undefined) this.lead(id)
    else this.renderRoot.querySelector<SheetHead>('sheet-head')?.focusFind()
  }

  private async share(): Promise<void> {
    this.sharing = !this.sharing
    if (this.sharing) await this.show('share-panel', import('../share/share-panel.ts'))
  }

  private async lookBack(): Promise<void> {
    this.looksBack = !this.looksBack
    if (this.looksBack) await this.show('revisions-panel', import('../revisions/revisions-panel.ts'))
  }

  /** Goes to the first cell in a state. */
  private readonly goToState = ({ detail }: CustomEvent<CheckOutcome['state']>): void => {
    void import('../find/first-in-state.ts').then(({ firstInState }) => {
      const id = firstInState(this.open.sheet, detail)
      if (id !== undefined) this.lead(id)
    })
  }

  private readonly goToSection = ({ detail }: CustomEvent<string>): void => {
    const face = this.fillFace ?? this.buildFace
    void face?.show(detail, this.fillFace ? 'focus' : 'found')
  }

  /** The elements of the sections on the open face, in their order. */
  private readonly places = (): readonly HTMLElement[] => [
    // A face that has not rendered yet has no root.
    ...((this.fillFace ?? this.buildFace)?.shadowRoot?.querySelectorAll<HTMLElement>('[data-section]') ?? []),
  ]

  /** Adds an example of the guide as the last result of the sheet and opens it in Build. */
  private async put(formula: string): Promise<void> {
    const { putExample } = await import('../guide/put-example.ts')
    this.arriving = putExample(this.open, formula)
    location.hash = withFace(location.hash, 'build')
  }

  /** Goes to a cell in the open face, or in Fill in where the open face shows no cells. */
  private lead(id: string): void {
    const open = this.fillFace ?? this.buildFace
    if (open) {
      void open.show(id)
      return
    }
    this.arriving = id
    location.hash = withFace(location.hash, 'fill')
  }

  private async showArrived(id: string): Promise<void> {
    if (this.face === 'build') await customElements.whenDefined('build-face')
    await (this.fillFace ?? this.buildFace)?.show(id)
  }

  private shownFace(): TemplateResult {
    if (this.face === 'build') return html`<build-face .open=${this.open}></build-face>`
    // Its list of keys is at its end, beside the button that adds a section.
    if (this.face === 'fill') return html`<fill-face .open=${this.open}>${this.keysList()}</fill-face>`
    if (this.face === 'stand')
      return html`<stand-view .open=${this.open} @cell-wanted=${(event: CustomEvent<string>) => this.lead(event.detail)}></stand-view>`
    return html`<function-guide canPut @example-put=${(event: CustomEvent<string>) => void this.put(event.detail)}></function-guide>`
  }

  private keysList(): TemplateResult {
    return html`
      <details class="keys" @toggle=${() => void import('../keys/keys-list.ts')}>
        <summary>${sheetWords.keys}</summary>
        <keys-list></keys-list>
      </details>
    `
  }

  override render(): TemplateResult {
    this.open.changed.get()
    const { worksheet, checkSummary } = this.open.sheet
    const barred = this.session.lockState.get() !== 'here' || this.session.rescued.get() !== undefined
    if (barred && !this.isFrozen) void this.freeze()
    this.announcement.state(checkSummaryText(checkSummary))
    return html`
      <sheet-head
        role="banner"
        .open=${this.open}
        .autosave=${this.session.autosave}
        .face=${this.face}
        ?typing=${this.typing}
        .places=${this.places}
        .looksBack=${this.looksBack}
        .sharing=${this.sharing}
        .canFind=${this.canFind}
        .finds=${this.finds && this.canFind}
        @change-asked=${this.asked}
        @state-asked=${this.goToState}
        @section-asked=${this.goToSection}
        @undo-asked=${() => this.step('undo')}
        @redo-asked=${() => this.step('redo')}
        @share-asked=${() => void this.share()}
        @revisions-asked=${() => void this.lookBack()}
        @find-asked=${() => (this.finds ? this.leaveFind() : void this.find())}
      >${this.face === 'stand' ? html`<stand-switch></stand-switch>` : nothing}</sheet-head>
      <main
        class="${this.face} ${this.typing ? 'typing' : ''}"
        @focusin=${(event: Event) => {
          this.typing = isField(event)
        }}
        @focusout=${() => {
          this.typing = false
        }}
        @change-asked=${this.asked}
        @advice-asked=${this.adviceAsked}
      >
        ${this.tooLong ? html`<p role="alert">${this.tooLong}</p>` : nothing}
        ${barred ? html`<tab-lock-bar .session=${this.session} @revisions-asked=${() => void this.lookBack()}></tab-lock-bar>` : nothing}
        ${this.looksBack ? html`<revisions-panel .session=${this.session}></revisions-panel>` : nothing}
        ${this.sharing ? html`<share-panel .worksheet=${worksheet} .session=${this.session}></share-panel>` : nothing}
        ${
          this.finds && this.canFind
            ? html`<find-line
                .open=${this.open}
                .show=${this.showFound}
                @find-left=${(event: CustomEvent<string | null>) => this.leaveFind(event.detail ?? undefined)}
              ></find-line>`
            : nothing
        }
        ${this.shownFace()}
        ${this.face === 'fill' ? nothing : this.keysList()}
        <p class="unseen" role="status">${this.announcement.text}</p>
      </main>
    `
  }
}

const isIn = (event: Event, name: string): boolean =>
  event.composedPath().some((one) => one instanceof HTMLElement && one.localName === name)
