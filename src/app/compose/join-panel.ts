import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { requestChange } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { SetUp } from '../../worksheet/compose/compose.ts'
import { type IncomingSection, type JoinPlan, planJoin, type Resolution } from '../../worksheet/compose/join.ts'
import type { OfferedSetUp, PartLibrary } from '../../worksheet/compose/part-library.ts'
import {
  isComposed,
  offeredSetUp,
  partsBeside,
  partsOf,
  type Recomposed,
  setUpsOf,
  withoutSetUp,
  withParts,
  withSetUp,
} from '../../worksheet/compose/recompose.ts'
import type { Change } from '../../worksheet/document/change.ts'
import { isHeading, type Worksheet } from '../../worksheet/index.ts'
import { cellId } from '../common/additions.ts'
import { MOMENTS } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { found, isNamedSo } from '../shelf/shelf-find.ts'
import { parts } from '../templates/part-library.ts'
import { SHELF, type ShelfEntry, template } from '../templates/templates.ts'
import { joinStyle } from './join-style.ts'
import { type Question, questionsOf, resolutionText, usedText } from './join-text.ts'
import { arrangement, type Recompose } from './older-sheet.ts'
import { previewOf } from './parts-preview.ts'
import type { PartOfSetUp } from './set-up-choice.ts'
import { type SingleSection, singleSections } from './single-sections.ts'
import './set-up-choice.ts'
import { composeWords as words } from './words.ts'

/** Adds the section of a template to the open sheet: which one, and what happens to names both use. */
@customElement('join-panel')
export class JoinPanel extends LitElement {
  static override styles = [shared, field, joinStyle]

  @property({ attribute: false }) open!: OpenSheet
  /** Opens on how a sheet of an earlier version is arranged by parts. */
  @property({ type: Boolean }) arranging = false
  @state() private query = ''
  @state() private coming: (IncomingSection & { readonly answer: string }) | undefined
  /** What is added to a sheet that is composed of parts. */
  @state() private adding:
    | {
        readonly title: string
        readonly about?: string
        readonly confirm: string
        readonly library: PartLibrary
        readonly how: Recompose
      }
    | undefined
  /** The set-ups there may be, once they are fetched. */
  @state() private library: PartLibrary | undefined
  @state() private choices: ReadonlyMap<string, Resolution> = new Map()
  @state() private problem = ''

  /** Moves the focus to its heading. */
  async take(): Promise<void> {
    await this.updateComplete
    const heading = this.renderRoot.querySelector<HTMLElement>('h2')
    heading?.scrollIntoView({ block: 'start' })
    heading?.focus({ preventScroll: true })
  }

  override async firstUpdated(): Promise<void> {
    if (this.arranging) await this.arrange()
    if (!isComposed(this.open.sheet.worksheet)) return
    // Without the network sections are chosen as before.
    this.library = await parts().catch(() => undefined)
  }

  private leave(): void {
    this.dispatchEvent(new CustomEvent('join-left', { bubbles: true, composed: true }))
  }

  private async choose({ key, answer, moment }: ShelfEntry): Promise<void> {
    this.problem = ''
    try {
      const worksheet = await template(key)
      if (!worksheet) throw new Error(words.missing)
      if (isComposed(this.open.sheet.worksheet)) {
        await this.addParts(answer, worksheet)
        return
      }
      await this.open.loadLanguageFor(worksheet.cells)
      this.choices = new Map()
      this.coming = { key, title: worksheet.title, cells: worksheet.cells, stage: moment, answer }
      await this.take()
    } catch (error) {
      this.problem = (error as Error).message
    }
  }

  private async addParts(answer: string, job: Worksheet): Promise<void> {
    const chosen = partsOf(job)
    await this.recompose(words.adding(answer), words.confirm, (library, worksheet) =>
      withParts(library, worksheet, partsBeside(library, worksheet, chosen)),
    )
    if (!this.adding) return
    const { library } = this.adding
    const taken = partsBeside(library, this.open.sheet.worksheet, chosen)
    const offerOf = (part: string): string => library.parts.get(part)?.offer ?? part
    const swapped = chosen.flatMap(({ part }, at) => {
      const by = taken[at]?.part ?? part
      return by === part ? [] : [words.instead(offerOf(by), offerOf(part))]
    })
    if (swapped.length > 0) this.adding = { ...this.adding, about: swapped.join(' ') }
  }

  private async addSection({ key, answer }: SingleSection): Promise<void> {
    await this.recompose(words.adding(answer), words.confirm, (library, worksheet) =>
      withParts(library, worksheet, [{ part: key, by: 'hand' }]),
    )
  }

  private async arrange(): Promise<void> {
    try {
      const how = await arrangement(this.open.sheet.worksheet)
      await this.recompose(words.arrange, words.arrange, how, words.aboutArranging)
    } catch (error) {
      this.problem = (error as Error).message
    }
  }

  /** Shows what composing the sheet anew would change. */
  private async recompose(title: string, confirm: string, how: Recompose, about?: string): Promise<void> {
    try {
      const library = await parts()
      await this.open.loadLanguageFor(how(library, this.open.sheet.worksheet).cells)
      this.adding = { title, confirm, library, how, ...(about === undefined ? {} : { about }) }
      await this.take()
    } catch (error) {
      this.problem = (error as Error).message
    }
  }

  private async another(): Promise<void> {
    this.adding = undefined
    this.coming = undefined
    this.problem = ''
    await this.take()
  }

  private plan(coming: IncomingSection): JoinPlan {
    return planJoin(this.open.sheet, coming, { choices: this.choices, freshId: cellId })
  }

  private setIn(coming: IncomingSection): void {
    // The sheet may have changed since the preview was made.
    const { change, first } = this.plan(coming)
    this.make(change, first)
  }

  private make(change: Change | undefined, first: string | undefined): void {
    if (!change || first === undefined) return
    const refused = requestChange(this, change)
    if (refused !== undefined) {
      this.problem = refused
      return
    }
    this.dispatchEvent(new CustomEvent<string>('section-set', { detail: first, bubbles: true, composed: true }))
  }

  private pick(names: readonly string[], way: Resolution): void {
    this.choices = new Map([...this.choices, ...names.map((name) => [name, way] as const)])
  }

  private chooser(): TemplateResult {
    const query = this.query.trim()
    const { entries, whole } = found(this.offered(query), query)
    const there = new Set([
      ...this.open.sheet.cells.flatMap((cell) => (cell.kind === 'note' ? (cell.template ?? []) : [])),
      ...partsOf(this.open.sheet.worksheet).map(({ part }) => part),
    ])
    return html`
      <h2 tabindex="-1">${words.addASection}</h2>
      <div class="seek">
        <label for="query">${words.search}</label>
        <input
          id="query"
          class="field"
          type="search"
          autocomplete="off"
          .value=${this.query}
          @input=${(event: Event) => {
            this.query = (event.target as HTMLInputElement).value
          }}
        >
        <button type="button" class="word" @click=${() => this.leave()}>${words.cancel}</button>
      </div>
      <p class="unseen" role="status">${query === '' ? '' : words.found(entries.length)}</p>
      ${entries.length === 0 ? html`<p>${words.noMatch(query)}</p>` : nothing}
      ${entries.length > 0 && !whole ? html`<p>${words.partlyMatches(query)}</p>` : nothing}
      ${this.setUps()}
      ${MOMENTS.map(([moment, said]) => {
        const some = entries.filter((one) => one.moment === moment)
        if (some.length === 0) return nothing
        return html`
          <h3>${said}</h3>
          <ul class="answers">${repeat(
            some,
            ({ key }) => key,
            (one) => html`
              <li>
                <button type="button" class="answer" @click=${() => void ('isBrought' in one ? this.addSection(one) : this.choose(one))}>
                  <b>${one.answer}</b>
                  <span class="quiet">${one.about}${there.has(one.key) ? ` ${words.alreadyInSheet}` : ''}</span>
                </button>
              </li>
            `,
          )}</ul>
        `
      })}
    `
  }

  /**
   * Jobs, and in a sheet that is composed of parts also single sections: without a search those that no job brings, which
   * would else not be found.
   */
  private offered(query: string): readonly (ShelfEntry | SingleSection)[] {
    if (!this.library) return SHELF
    const single = singleSections(this.library)
    return [...SHELF, ...(query === '' ? single.filter(({ isBrought }) => !isBrought) : single)]
  }

  /** Set-ups that may follow the first, and those that do. */
  private setUps(): TemplateResult | typeof nothing {
    const { library } = this
    const { worksheet } = this.open.sheet
    if (!library || !isComposed(worksheet)) return nothing
    const asked = this.query.trim() !== ''
    const offered = library.setUps.filter(({ title, about }) => isNamedSo({ title, of: about }, this.query))
    if (offered.length === 0) return nothing
    return html`
      <set-up-choice
        .offered=${offered}
        .there=${asked ? [] : setUpsOf(worksheet)}
        .library=${library}
        .worksheet=${worksheet}
        @set-up-part-chosen=${({ detail: { prefix, part } }: CustomEvent<PartOfSetUp>) => {
          const of = library.parts.get(part)?.offer ?? part
          void this.recompose(words.adding(of), words.confirm, (one, sheet) =>
            withParts(one, sheet, [{ part, by: 'hand' }], prefix),
          )
        }}
        @set-up-chosen=${({ detail }: CustomEvent<OfferedSetUp>) => {
          const setUp = offeredSetUp(worksheet, detail)
          void this.recompose(words.adding(setUp.title), words.confirm, (one, sheet) => withSetUp(one, sheet, setUp))
        }}
        @set-up-removed=${({ detail: { prefix, title } }: CustomEvent<SetUp>) =>
          void this.recompose(words.removingSetUp(title), words.removeIt, (one, sheet) =>
            withoutSetUp(one, sheet, prefix),
          )}
      ></set-up-choice>
    `
  }

  private partsPreview({ title, about, confirm, library, how }: NonNullable<typeof this.adding>): TemplateResult {
    const recomposed = (): Recomposed => how(library, this.open.sheet.worksheet)
    const next = recomposed()
    return html`
      <h2 tabindex="-1">${title}</h2>
      ${about === undefined ? nothing : html`<p>${about}</p>`}
      ${
        next.change
          ? html`<div class="summary">${previewOf(this.open.sheet, library, next).map((said) => html`<p>${said}</p>`)}</div>`
          : html`<p>${words.nothingNew}</p>`
      }
      <div class="presses">
        ${
          next.change
            ? html`<button type="button" class="press primary" @click=${() => {
                const { change, first, cells } = recomposed()
                this.make(change, first ?? cells[0]?.id)
              }}>${confirm}</button>`
            : nothing
        }
        <button type="button" class="press" @click=${() => void this.another()}>${words.another}</button>
        <button type="button" class="press" @click=${() => this.leave()}>${words.cancel}</button>
      </div>
    `
  }

  private asked({ name, said, ways, way, why }: Question): TemplateResult {
    if (ways.length === 1) return html`<p class="alone">${said} ${why}</p>`
    return html`
      <fieldset>
        <legend>${said}</legend>
        ${ways.map(
          (one) => html`
            <label class="way">
              <input type="radio" name=${name} .checked=${way === one.way} @change=${() => this.pick([name], one.way)}>
              <span>${one.said}</span>
            </label>
          `,
        )}
      </fieldset>
    `
  }

  private preview(coming: IncomingSection & { readonly answer: string }): TemplateResult {
    const plan = this.plan(coming)
    const questions = questionsOf(plan.meetings)
    const open = questions.filter(({ clashes, ways }) => clashes && ways.some(({ way }) => way === 'keep'))
    const headings = plan.cells.flatMap((cell) => (isHeading(cell) ? [cell.text] : []))
    return html`
      <h2 tabindex="-1">${words.adding(coming.answer)}</h2>
      ${
        plan.change
          ? html`
              <div class="summary">
                <p>${words.headings(headings)}</p>
                <p>${usedText(plan.meetings)}</p>
              </div>
              ${
                open.length > 1
                  ? html`
                      <p>${words.clashes(open.length)}</p>
                      <div class="presses">
                        ${resolutionText.map(
                          ([way, said]) =>
                            html`<button type="button" class="press" @click=${() =>
                              this.pick(
                                open.map(({ name }) => name),
                                way,
                              )}>${said}</button>`,
                        )}
                      </div>
                    `
                  : nothing
              }
              ${repeat(
                questions,
                ({ name }) => name,
                (one) => this.asked(one),
              )}
            `
          : html`<p>${words.nothingNew}</p>`
      }
      <div class="presses">
        ${plan.change ? html`<button type="button" class="press primary" @click=${() => this.setIn(coming)}>${words.confirm}</button>` : nothing}
        <button type="button" class="press" @click=${() => void this.another()}>${words.another}</button>
        <button type="button" class="press" @click=${() => this.leave()}>${words.cancel}</button>
      </div>
    `
  }

  override render(): TemplateResult {
    return html`
      ${this.problem ? html`<p class="problem" role="alert">${this.problem}</p>` : nothing}
      ${this.adding ? this.partsPreview(this.adding) : this.coming ? this.preview(this.coming) : this.chooser()}
    `
  }
}
