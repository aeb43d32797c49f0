import { SignalWatcher } from '@lit-labs/signals'
import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import '../../cells/basic/given-cell.ts'
import type { Asked, GivenView, ReadView } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { Store } from '../../storage/store/types.ts'
import { figureOf } from '../../worksheet/compose/figures.ts'
import { fromAnswers, mayBeSeveral, type Reasoned } from '../../worksheet/compose/from-answers.ts'
import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import type { Filled } from '../../worksheet/compose/sections.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { Sheet } from '../../worksheet/editing/sheet.ts'
import { ChangeRefused, type Given, isHeading, isNamed, type Worksheet } from '../../worksheet/index.ts'
import { pageStyle } from '../common/page-style.ts'
import { checkSummaryText } from '../common/words.ts'
import { showHint } from '../hints/hint-line.ts'
import { Announcement } from '../open/announcement.ts'
import { OpenSheet } from '../open/open-sheet.ts'
import { parts } from '../templates/part-library.ts'
import { answersStyle } from './answers-style.ts'
import { answersIn, NO_ANSWERS, readSaved, type SavedAnswers, SETTING } from './saved-answers.ts'
import { answersWords as words } from './words.ts'

/** A pause in typing after which the sheet is composed again. */
const COMPOSE_AFTER_MS = 120

/** Asks what there is to photograph and with what, and composes a sheet from the answers. */
@customElement('answers-page')
export class AnswersPage extends SignalWatcher(LitElement) {
  static override styles = [shared, field, pageStyle, answersStyle]

  @property({ attribute: false }) store!: Store
  /** Why the sheet was not saved. */
  @property() failure = ''
  @state() private library: PartLibrary | undefined
  @state() private open: OpenSheet | undefined
  @state() private answers: SavedAnswers = NO_ANSWERS
  @state() private chosen: readonly Reasoned[] = []
  @state() private problem = ''
  private compute: ((worksheet: Worksheet) => Sheet) | undefined
  private readonly announcement = new Announcement(this)
  private waiting: ReturnType<typeof setTimeout> | undefined

  override connectedCallback(): void {
    super.connectedCallback()
    void this.start()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearTimeout(this.waiting)
    this.open?.close()
  }

  private async start(): Promise<void> {
    try {
      const [library, { FULL_CAPABILITIES, wholeLibrary }, saved] = await Promise.all([
        parts(),
        import('../common/full-language.ts'),
        this.store.setting(SETTING).catch(() => undefined),
      ])
      const functions = await wholeLibrary()
      this.compute = (worksheet) => new Sheet(worksheet, functions, FULL_CAPABILITIES)
      this.answers = readSaved(saved)
      this.library = library
      this.compose()
    } catch (error) {
      this.problem = words.notComposed((error as Error).message)
    }
  }

  /** Composes the sheet anew; what is shown changes where the sheet does. */
  private compose(): void {
    const { library, compute, answers } = this
    if (!library || !compute) return
    clearTimeout(this.waiting)
    this.waiting = undefined
    const { worksheet, sheet, chosen } = fromAnswers(library, answers, compute)
    this.chosen = chosen
    if (!this.open) this.open = new OpenSheet(sheet)
    else if (JSON.stringify(worksheet) !== JSON.stringify(this.open.sheet.worksheet)) this.open.sheet.become(worksheet)
    void this.store.saveSetting(SETTING, answersIn(answers)).catch(() => {})
  }

  private answer(change: Partial<SavedAnswers>): void {
    this.answers = { ...this.answers, ...change }
    this.compose()
  }

  /** Composes the sheet once typing has paused. */
  private composeSoon(): void {
    clearTimeout(this.waiting)
    this.waiting = setTimeout(() => this.compose(), COMPOSE_AFTER_MS)
  }

  private readonly asked = (event: CustomEvent<Asked>): void => {
    const { open } = this
    if (!open) return
    try {
      open.apply(event.detail.change, event.detail.merge)
    } catch (error) {
      if (!(error instanceof ChangeRefused)) throw error
      event.detail.refuse(error.message)
      return
    }
    this.answers = { ...this.answers, givens: this.filledIn(open) }
    this.composeSoon()
  }

  /** What is answered: in the sheet as it is, and what was typed for a kind chosen before. */
  private filledIn({ sheet }: OpenSheet): ReadonlyMap<string, Filled> {
    const givens = new Map(this.answers.givens)
    for (const cell of sheet.cells) {
      if (cell.kind !== 'given') continue
      const { name, value, from, piece } = cell
      const source = from?.text === value ? from.kind : 'typed'
      if (value.trim() === '' || source === 'usual') givens.delete(name)
      else givens.set(name, { value, from: source, ...(piece ? { piece } : {}) })
    }
    return givens
  }

  private clear(): void {
    this.answers = NO_ANSWERS
    this.compose()
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus()
  }

  private make(): void {
    this.compose()
    if (!this.open) return
    this.dispatchEvent(
      new CustomEvent<Worksheet>('sheet-composed', {
        detail: this.open.sheet.worksheet,
        bubbles: true,
        composed: true,
      }),
    )
    void this.store.saveSetting(SETTING, undefined).catch(() => {})
  }

  private choice(
    name: string,
    legend: string,
    options: readonly { readonly key: string; readonly title: string; readonly about?: string }[],
    chosen: string | undefined,
    take: (key: string) => void,
  ): TemplateResult {
    return html`
      <fieldset>
        <legend>${legend}</legend>
        <div class="choices">
          ${options.map(
            ({ key, title, about }) => html`
              <label class="choice">
                <input type="radio" name=${name} value=${key} .checked=${chosen === key} @change=${() => take(key)}>
                <span><b>${title}</b>${about ? html` <span class="small quiet">${about}</span>` : nothing}</span>
              </label>
            `,
          )}
        </div>
      </fieldset>
    `
  }

  /** The givens of some roles that are asked here. */
  private questions(library: PartLibrary, { sheet }: OpenSheet, has: (role: string) => boolean): readonly Given[] {
    return library.choosing.asks.flatMap((name): readonly Given[] => {
      const cell = sheet.named(name)
      return cell?.kind === 'given' && has(library.names.get(name)?.role ?? '') ? [cell] : []
    })
  }

  private group(title: string, givens: readonly Given[], before: unknown = nothing): TemplateResult | typeof nothing {
    if (givens.length === 0) return nothing
    const { open } = this
    return html`
      <section class="gives" aria-label=${title} @focusin=${showHint} @pointerover=${showHint}>
        <h2>${title}</h2>
        ${before}
        ${repeat(
          givens,
          ({ id }) => id,
          (cell) =>
            html`<given-cell data-cell=${cell.id} .view=${open?.view(cell) as ReadView<GivenView>}></given-cell>`,
        )}
        <p class="hint-line small quiet"></p>
      </section>
    `
  }

  private asking(library: PartLibrary, open: OpenSheet): TemplateResult {
    const { kind, byPhone, several, job } = this.answers
    const titleOf = (role: string): string => library.roles.find((one) => one.role === role)?.title ?? role
    const kinds = library.choosing.kinds.map((one) => ({ key: one.kind, title: one.title, about: one.about }))
    const by = this.choice(
      'by',
      words.by,
      [
        { key: 'camera', title: words.camera },
        { key: 'phone', title: words.phone },
      ],
      byPhone ? 'phone' : 'camera',
      (key) => this.answer({ byPhone: key === 'phone' }),
    )
    const chosen = library.choosing.kinds.find((one) => one.kind === kind) ?? library.choosing.kinds[0]
    const howMany =
      chosen && mayBeSeveral(library, chosen)
        ? this.choice(
            'several',
            words.several,
            [
              { key: 'one', title: words.one },
              { key: 'several', title: words.alike },
            ],
            several ? 'several' : 'one',
            (key) => this.answer({ several: key === 'several' }),
          )
        : nothing
    const others = library.roles.map(({ role }) => role).filter((role) => role !== 'original' && role !== 'kit')
    return html`
      <div class="asking">
        ${this.choice('kind', words.kind, kinds, kind, (key) => this.answer({ kind: key }))}
        ${this.group(
          titleOf('original'),
          this.questions(library, open, (role) => role === 'original'),
          howMany,
        )}
        ${this.group(
          titleOf('kit'),
          this.questions(library, open, (role) => role === 'kit'),
          by,
        )}
        ${others.map((role) =>
          this.group(
            titleOf(role),
            this.questions(library, open, (one) => one === role),
          ),
        )}
        <section class="job">
          <label for="job">${words.job}</label>
          <input
            id="job"
            class="field"
            maxlength="200"
            autocomplete="off"
            aria-describedby="about-job"
            .value=${job}
            @input=${(event: Event) => {
              this.answers = { ...this.answers, job: (event.target as HTMLInputElement).value }
              this.composeSoon()
            }}
          >
          <p class="small quiet" id="about-job">${words.aboutJob}</p>
        </section>
      </div>
    `
  }

  private preview(library: PartLibrary, { sheet }: OpenSheet): TemplateResult {
    const why = new Map(this.chosen.map((one) => [one.part, one.why]))
    const sections = sheet.cells.flatMap((cell) =>
      isHeading(cell) && cell.fills_role !== undefined
        ? [{ title: cell.text, about: cell.about, part: typeof cell.part === 'string' ? cell.part : '' }]
        : [],
    )
    const figures = library.choosing.figures.flatMap((name) => {
      const cell = sheet.named(name)
      const figure = figureOf(sheet, name)
      return cell?.kind === 'result' && figure !== undefined ? [{ label: labelOf(cell), figure }] : []
    })
    const failing = sheet.cells.flatMap((cell) => {
      if (cell.kind !== 'check' || sheet.checkState(cell.id) !== 'fail') return []
      return [{ label: labelOf(cell), message: sheet.check(cell.id).message }]
    })
    const empty = sheet.cells.flatMap((cell) =>
      cell.kind === 'given' && isNamed(cell) && !cell.more_exact && cell.entry !== 'kit' && cell.value.trim() === ''
        ? [labelOf(cell)]
        : [],
    )
    const checks = checkSummaryText(sheet.checkSummary)
    this.announcement.state(checks)
    return html`
      <aside aria-label=${words.yourSheet}>
        <h2>${words.yourSheet}</h2>
        <ul class="sections" aria-label=${words.sections}>
          ${sections.map(
            ({ title, about, part }) => html`
              <li>
                <b>${title}</b>
                ${why.has(part) ? html`<span class="why">${why.get(part)}</span>` : about ? html`<span class="small quiet">${about}</span>` : nothing}
              </li>
            `,
          )}
        </ul>
        <h3>${words.figures}</h3>
        ${
          figures.length === 0
            ? html`<p class="quiet">${words.noFigures}</p>`
            : html`<dl>${figures.map(({ label, figure }) => html`<div><dt>${label}</dt><dd>${figure}</dd></div>`)}</dl>`
        }
        <h3>${words.checks}</h3>
        <p>${checks}</p>
        <p class="unseen" role="status">${this.announcement.text}</p>
        ${failing.length > 0 ? html`<ul class="failing">${failing.map(({ label, message }) => html`<li><b>${label}</b>: ${message}</li>`)}</ul>` : nothing}
        <p class="quiet">${empty.length > 0 ? words.asks(empty) : words.asksNothing}</p>
        <div class="presses">
          <button type="button" class="press primary" @click=${() => this.make()}>${words.make}</button>
          <button type="button" class="press" @click=${() => this.clear()}>${words.clear}</button>
        </div>
      </aside>
    `
  }

  override render(): TemplateResult {
    const { library, open } = this
    open?.changed.get()
    return html`
      <main @change-asked=${this.asked}>
        <h1 tabindex="-1">${words.title}</h1>
        <p class="quiet intro">${words.about}</p>
        ${this.problem || this.failure ? html`<p class="problem" role="alert">${this.problem || this.failure}</p>` : nothing}
        ${
          library && open
            ? html`<div class="sides">${this.asking(library, open)} ${this.preview(library, open)}</div>`
            : this.problem
              ? nothing
              : html`<p role="status">${words.composing}</p>`
        }
      </main>
    `
  }
}
