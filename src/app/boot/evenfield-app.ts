import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, query, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import type { Piece } from '../../kit/piece.ts'
import { newId, openStore } from '../../storage/store/store.ts'
import type { Store } from '../../storage/store/types.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { colourScheme, setColourScheme } from '../common/colour-scheme.ts'
import { isAnyLeft } from '../session/any-left.ts'
import type { Autosave } from '../session/autosave.ts'
import type { Leaving } from '../session/leaving.ts'
import { type SessionOptions, SheetSession } from '../session/sheet-session.ts'
import { UnsavedSheets } from '../session/unsaved-sheets.ts'
import { sessionWords } from '../session/words.ts'
import './update-bar.ts'
import { type Face, OWN_TEMPLATE, type Route, readRoute, toSheet, withFace } from '../common/route.ts'
import type { TakeOver } from '../received/copy-page.ts'
import { appStyle } from './app-style.ts'
import { fetchAhead } from './fetch-ahead.ts'
import { newerPage, unreadablePage } from './other-pages.ts'
import { keyOf, type Page, titleOf } from './page.ts'
import type { Question } from './question-bar.ts'
import '../shelf/shelf-page.ts'
import { template } from '../templates/templates.ts'
import { bootWords } from './words.ts'

/** The head is as wide as the page below it. */
const WIDTHS: Partial<Record<Page['on'], string>> = {
  copy: 'narrow',
  kit: 'narrow',
  unreadable: 'narrow',
  newer: 'wide',
}

/** The app: one page at a time, chosen by the address. */
@customElement('evenfield-app')
export class EvenfieldApp extends SignalWatcher(LitElement) {
  static override styles = [shared, appStyle]

  @state() private page: Page = { on: 'nothing' }
  @state() private face: Face = 'fill'
  @query('.page') private place!: HTMLElement
  private store: Store | undefined
  private arriving = 0
  private readonly unsaved = new UnsavedSheets()
  private leaving: Promise<Leaving | undefined> | undefined
  /** What has happened to the store since the page was opened. */
  @state() private notice = ''
  @state() private question: Question | undefined
  /** Why a copy was not saved. */
  @state() private failure = ''
  /** What is to be put into a sheet once it is open. */
  private taking: TakeOver | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    this.ariaBusy = 'true'
    addEventListener('hashchange', this.arrive)
    addEventListener('dragover', this.hover)
    addEventListener('drop', this.drop)
    void this.start()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener('hashchange', this.arrive)
    removeEventListener('dragover', this.hover)
    removeEventListener('drop', this.drop)
    void this.leaving?.then((leaving) => leaving?.close())
  }

  private async start(): Promise<void> {
    fetchAhead(readRoute(location.hash))
    this.store = await openStore({
      onProblem: (error) => {
        this.notice = error.message
        if (error.problem === 'deleted' && this.page.on === 'sheet') this.page.session.saveAgain()
      },
      onAvailable: () => void this.recover(),
    })
    if (isAnyLeft()) await (await this.watchLeaving())?.takeUp()
    await this.go(readRoute(location.hash))
  }

  /** Fetched with the first sheet that is opened. Without it, the page saves what is typed all the same. */
  private watchLeaving(): Promise<Leaving | undefined> {
    this.leaving ??= import('../session/leaving.ts').then(
      ({ Leaving }) => new Leaving(this.opened(), this.unsaved, () => this.autosave),
      () => undefined,
    )
    return this.leaving
  }

  private get autosave(): Autosave | undefined {
    return this.page.on === 'sheet' ? this.page.session.autosave : undefined
  }

  /** The store answers after all: what waits is saved, and what could not be listed or opened is fetched again. */
  private async recover(): Promise<void> {
    await (await this.leaving)?.takeUp()
    await this.unsaved.tryAgain()
    if (this.autosave) await this.autosave.flush()
    else await this.go(readRoute(location.hash))
  }

  private readonly arrive = (): void => {
    if (this.store) void this.go(readRoute(location.hash))
  }

  private async go(route: Route): Promise<void> {
    // A later address overtakes one still being fetched.
    const arrival = ++this.arriving
    const current = this.page.on === 'sheet' ? this.page : undefined
    if (current && (route.at === 'sheet' || route.at === 'new') && keyOf(route) === current.key) {
      this.face = route.face
      return
    }
    if (current) await this.leave(current)
    try {
      const page = await this.pageFor(route)
      if (arrival !== this.arriving) {
        if (page.on === 'sheet') await this.leave(page)
        return
      }
      this.face = 'face' in route ? route.face : 'fill'
      this.turnTo(page)
    } catch (error) {
      const page = (await newerPage(error)) ?? (await unreadablePage(error, route))
      if (arrival === this.arriving) this.turnTo(page ?? { on: 'shelf', problem: (error as Error).message })
    }
  }

  private leave({ session }: Page & { on: 'sheet' }): Promise<void> {
    return session.close()
  }

  private async settled(): Promise<void> {
    await this.autosave?.flush()
  }

  private turnTo(page: Page): void {
    const first = this.page.on === 'nothing'
    this.page = page
    if (page.on === 'sheet') void this.watchLeaving()
    this.ariaBusy = null
    this.failure = ''
    scrollTo(0, 0)
    const title = titleOf(page)
    document.title = title ? `${title}, Evenfield` : 'Evenfield'
    // A screen reader is taken to the start of the page, as after loading one.
    if (!first) void this.updateComplete.then(() => this.place.focus({ preventScroll: true }))
  }

  private async pageFor(route: Route): Promise<Page> {
    if (route.at === 'sheet') {
      return this.savedSheet(route.id, keyOf(route))
    }
    if (route.at === 'new') {
      const worksheet = await this.startOf(route.template, route.own)
      if (!worksheet) throw new Error(bootWords.noSuchStart)
      return this.sheet(worksheet, { id: newId(), key: keyOf(route) })
    }
    if (route.at === 'link' || route.at === 'server') {
      const { receivedAt } = await import('./received-page.ts')
      return receivedAt(this.opened(), route)
    }
    if (route.at === 'kit') {
      await import('../kit/kit-page.ts')
      return { on: 'kit' }
    }
    if (route.at === 'answers') {
      await import('../answers/answers-page.ts')
      return { on: 'answers' }
    }
    return { on: 'shelf', problem: '' }
  }

  /** What a new sheet starts from: a template of the studio, or one of the app. */
  private async startOf(name: string, own?: boolean): Promise<Worksheet | undefined> {
    if (!name.startsWith(OWN_TEMPLATE)) return template(name, own)
    const { StudioTemplates } = await import('../../kit/studio-templates.ts')
    return new StudioTemplates(this.opened()).find(name.slice(OWN_TEMPLATE.length))
  }

  /** A sheet of this browser, as it is saved, or as it was left when it could not be. */
  private async savedSheet(id: string, key: string): Promise<Page> {
    const autosave = this.unsaved.take(id)
    try {
      const unsaved = autosave?.unsaved?.worksheet
      const saved = unsaved ? undefined : await this.opened().read(id)
      const worksheet = unsaved ?? saved?.worksheet
      if (!worksheet) throw new Error(sessionWords.noSuchSheet)
      return await this.sheet(worksheet, { id, key, saved, autosave })
    } catch (error) {
      if (autosave) void this.unsaved.leave(autosave)
      throw error
    }
  }

  /** A given that is a piece of kit asks for what there is: the studio's own, or the generic kit until it has one. */
  private readonly giveKit = (event: CustomEvent<(pieces: Promise<readonly Piece[]>) => void>): void => {
    event.preventDefault()
    event.detail(import('../../kit/studio.ts').then(({ piecesIn }) => piecesIn(this.opened())))
  }

  private opened(): Store {
    return this.store as Store
  }

  private async sheet(
    worksheet: Worksheet,
    { key, ...rest }: Pick<SessionOptions, 'id' | 'saved' | 'autosave'> & { readonly key: string },
  ): Promise<Page> {
    const { openWorksheet } = await import('../sheet/opening.ts')
    const session = new SheetSession({
      ...rest,
      open: await openWorksheet(worksheet),
      store: this.opened(),
      unsaved: this.unsaved,
      changed: () => this.settle(rest.id),
    })
    await session.take()
    const { taking } = this
    this.taking = undefined
    if (taking?.id === rest.id && !(await session.takeIn(taking.merge))) {
      const { receivedWords } = await import('../received/words.ts')
      this.notice = receivedWords.elsewhere
    }
    return { on: 'sheet', session, key }
  }

  /** With its first change a fresh sheet becomes the user's, with a new address. */
  private settle(id: string): void {
    const { page } = this
    if (page.on !== 'sheet' || readRoute(location.hash).at !== 'new') return
    history.replaceState(null, '', withFace(toSheet(id), this.face))
    this.page = { ...page, key: `sheet ${id}` }
  }

  private async saveCopy(worksheet: Worksheet): Promise<void> {
    try {
      const { saveReceived } = await import('../../storage/exchange/save-received.ts')
      location.hash = toSheet(await saveReceived(this.opened(), worksheet))
    } catch (error) {
      // The copy stays on the page: it may be nowhere else.
      this.failure = (error as Error).message
    }
  }

  /** Opens the sheet a copy belongs to and puts the copy's measurements in. */
  private takeOver({ id, merge }: TakeOver): void {
    this.taking = { id, merge }
    location.hash = toSheet(id)
  }

  private async openFiles(files: readonly File[]): Promise<void> {
    const { openFiles } = await import('./open-files.ts')
    const opened = await openFiles(this.opened(), files, (words) => this.ask(words))
    const { ids, said, failed, error } = opened
    if (opened.copy) {
      const { receivedPage } = await import('./received-page.ts')
      return this.turnInstead(await receivedPage(this.opened(), opened.copy, 'file'), '#copy')
    }
    const [id] = ids
    if (id !== undefined && said.length === 0) {
      location.hash = toSheet(id)
      return
    }
    const newer = files.length === 1 ? await newerPage(error) : undefined
    if (newer) return this.turnInstead(newer, '#newer')
    const words = said.join(' ')
    await this.turnInstead({ on: 'shelf', problem: failed ? words : '', said: failed ? '' : words }, '#')
  }

  /** Turns to a page that takes the place of the present one in the history too, so that Back leads to the shelf. */
  private async turnInstead(page: Page, fragment: string): Promise<void> {
    if (this.page.on === 'sheet') await this.leave(this.page)
    history.replaceState(null, '', fragment)
    this.turnTo(page)
  }

  /** Asks above the page; resolves with the answer. */
  private async ask(words: string): Promise<boolean> {
    await import('./question-bar.ts')
    const answer = await new Promise<boolean>((settle) => {
      this.question = { words, answer: settle }
    })
    this.question = undefined
    return answer
  }

  private readonly hover = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault()
  }

  private readonly drop = (event: DragEvent): void => {
    const files = [...(event.dataTransfer?.files ?? [])]
    if (files.length === 0) return
    event.preventDefault()
    void this.openFiles(files)
  }

  /** Only where nothing outlives the tab does the page say so itself. */
  private unsavedBar(): TemplateResult | typeof nothing {
    const left = this.store?.persistent ? this.unsaved.left.get() : []
    if (left.length === 0) return nothing
    void import('../session/unsaved-bar.ts')
    return html`<unsaved-bar .sheets=${left} .unsaved=${this.unsaved}></unsaved-bar>`
  }

  private shown(): TemplateResult | typeof nothing {
    const { page } = this
    if (page.on === 'sheet') return html`<sheet-page .session=${page.session} .face=${this.face}></sheet-page>`
    if (page.on === 'copy')
      return html`<copy-page
        .worksheet=${page.worksheet}
        .checkSummary=${page.checkSummary}
        .figures=${page.figures}
        .home=${page.home}
        .from=${page.from}
        .failure=${this.failure}
        @copy-saved=${() => void this.saveCopy(page.worksheet)}
        @copy-taken=${(event: CustomEvent<TakeOver>) => this.takeOver(event.detail)}
        @copy-left=${() => {
          location.hash = ''
        }}
      ></copy-page>`
    if (page.on === 'kit') return html`<kit-page .store=${this.opened()}></kit-page>`
    if (page.on === 'answers')
      return html`<answers-page
        .store=${this.opened()}
        .failure=${this.failure}
        @sheet-composed=${(event: CustomEvent<Worksheet>) => void this.saveCopy(event.detail)}
      ></answers-page>`
    if (page.on === 'newer')
      return html`<newer-page
        .newer=${page.newer}
        @newer-left=${() => {
          location.hash = ''
        }}
      ></newer-page>`
    if (page.on === 'unreadable')
      return html`<unreadable-page .store=${this.opened()} .id=${page.id} .why=${page.why}></unreadable-page>`
    if (page.on === 'shelf')
      return html`<shelf-page
        .store=${this.opened()}
        .problem=${page.problem || (this.opened().problem?.message ?? '')}
        .said=${page.said ?? ''}
        .arrival=${page}
        @files-chosen=${(event: CustomEvent<readonly File[]>) => void this.openFiles(event.detail)}
      ></shelf-page>`
    return nothing
  }

  /** The head of every page but a sheet, which has its own. */
  private header(): TemplateResult {
    const dim = colourScheme.get() === 'dim'
    return html`
      <header class=${WIDTHS[this.page.on] ?? ''}>
        <a class="brand" href="#">Evenfield</a>
        <nav aria-label=${bootWords.thisPage}>
          ${this.page.on === 'shelf' || this.page.on === 'kit' || this.page.on === 'answers' ? html`<a class="word" href="#kit" aria-current=${this.page.on === 'kit' ? 'page' : nothing}>${bootWords.kit}</a>` : nothing}
          <button type="button" class="word" @click=${() => setColourScheme(dim ? 'light' : 'dim')}>${dim ? bootWords.light : bootWords.dim}</button>
        </nav>
      </header>
    `
  }

  override render(): TemplateResult {
    return html`
      ${this.page.on === 'sheet' ? nothing : this.header()}
      ${this.notice ? html`<p class="notice" role="alert">${this.notice}</p>` : nothing}
      ${this.unsavedBar()} ${this.question ? html`<question-bar .question=${this.question}></question-bar>` : nothing}
      <update-bar .settled=${() => this.settled()}></update-bar>
      <div class="page" tabindex="-1" @kit-asked=${this.giveKit}>${this.shown()}</div>
    `
  }
}
