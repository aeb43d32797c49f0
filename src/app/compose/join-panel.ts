import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { requestChange } from '../../cells/shared/cell-view.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { ChosenPart } from '../../worksheet/compose/choose-parts.ts'
import { type IncomingSection, type JoinPlan, planJoin, type Resolution } from '../../worksheet/compose/join.ts'
import type { PartLibrary } from '../../worksheet/compose/part-library.ts'
import { isComposed, partsOf, type Recomposed, withParts } from '../../worksheet/compose/recompose.ts'
import type { Change } from '../../worksheet/document/change.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { MOMENTS } from '../common/moments.ts'
import { cellId } from '../common/new-cell.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { found } from '../shelf/shelf-find.ts'
import { parts } from '../templates/part-library.ts'
import { ANSWERS, type Answer, template } from '../templates/templates.ts'
import { type Question, questionsOf, resolutionText, usedText } from './join-text.ts'
import { previewOf } from './parts-preview.ts'
import { composeWords as words } from './words.ts'

/** Adds the section of a template to the open sheet: which one, and what happens to names both use. */
@customElement('join-panel')
export class JoinPanel extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      :host {
        padding-block: 0.4rem 1rem;
        border-block: 2px solid var(--ink);
      }
      h2 {
        font-size: 1.15rem;
        padding-block: 0.5rem;
      }
      h3 {
        font-size: 1rem;
        padding-block: 0.9rem 0.2rem;
        border-block-end: 1px solid var(--ink);
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      .answers {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr));
        column-gap: 2.4rem;
      }
      li {
        border-block-end: 1px solid var(--rule);
      }
      .answer {
        display: block;
        inline-size: 100%;
        min-block-size: 44px;
        padding: 0.6rem 0;
        border: 0;
        background: none;
        text-align: start;
        cursor: pointer;
      }
      .answer b {
        text-decoration: underline;
        text-decoration-thickness: 1px;
        text-underline-offset: 0.25em;
      }
      .answer:hover b {
        text-decoration-thickness: 2px;
      }
      .answer .quiet {
        display: block;
      }
      .seek {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.3rem 0.9rem;
      }
      .seek .field {
        flex: 1 1 14rem;
        max-inline-size: 24rem;
      }
      .summary {
        display: grid;
        gap: 0.6rem;
        max-inline-size: 46rem;
        padding-block: 0.2rem 0.8rem;
      }
      fieldset {
        min-inline-size: 0;
        margin: 0;
        padding: 0.6rem 0;
        border: 0;
        border-block-start: 1px solid var(--rule);
      }
      legend {
        float: inline-start;
        inline-size: 100%;
        padding: 0;
      }
      legend + * {
        clear: both;
      }
      .way {
        display: flex;
        align-items: center;
        gap: 0.7rem;
        min-block-size: 44px;
        cursor: pointer;
      }
      .way input {
        flex: none;
        inline-size: 1.2rem;
        block-size: 1.2rem;
        margin: 0;
        accent-color: var(--ink);
      }
      .presses {
        padding-block: 0.8rem 0.4rem;
      }
      .alone {
        padding-block: 0.6rem;
        border-block-start: 1px solid var(--rule);
      }
      .trouble {
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  @state() private query = ''
  @state() private coming: (IncomingSection & { readonly answer: string }) | undefined
  /** What is added to a sheet that is composed of parts. */
  @state() private adding:
    | { readonly answer: string; readonly library: PartLibrary; readonly parts: readonly ChosenPart[] }
    | undefined
  @state() private choices: ReadonlyMap<string, Resolution> = new Map()
  @state() private trouble = ''

  /** Moves the focus to its heading. */
  async take(): Promise<void> {
    await this.updateComplete
    const heading = this.renderRoot.querySelector<HTMLElement>('h2')
    heading?.scrollIntoView({ block: 'start' })
    heading?.focus({ preventScroll: true })
  }

  private leave(): void {
    this.dispatchEvent(new CustomEvent('join-left', { bubbles: true, composed: true }))
  }

  private async choose({ key, answer, moment }: Answer): Promise<void> {
    this.trouble = ''
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
      this.trouble = (error as Error).message
    }
  }

  private async addParts(answer: string, job: Worksheet): Promise<void> {
    const library = await parts()
    const chosen = partsOf(job)
    await this.open.loadLanguageFor(withParts(library, this.open.sheet.worksheet, chosen).cells)
    this.adding = { answer, library, parts: chosen }
    await this.take()
  }

  private async another(): Promise<void> {
    this.adding = undefined
    this.coming = undefined
    this.trouble = ''
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
      this.trouble = refused
      return
    }
    this.dispatchEvent(new CustomEvent<string>('section-set', { detail: first, bubbles: true, composed: true }))
  }

  private pick(names: readonly string[], way: Resolution): void {
    this.choices = new Map([...this.choices, ...names.map((name) => [name, way] as const)])
  }

  private chooser(): TemplateResult {
    const { answers, whole } = found(ANSWERS, this.query)
    const query = this.query.trim()
    const there = new Set(this.open.sheet.cells.flatMap((cell) => (cell.kind === 'note' ? (cell.template ?? []) : [])))
    return html`
      <h2 tabindex="-1">${words.add}</h2>
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
      <p class="unseen" role="status">${query === '' ? '' : words.found(answers.length)}</p>
      ${answers.length === 0 ? html`<p>${words.noMatch(query)}</p>` : nothing}
      ${answers.length > 0 && !whole ? html`<p>${words.partlyMatches(query)}</p>` : nothing}
      ${MOMENTS.map(([moment, said]) => {
        const some = answers.filter((one) => one.moment === moment)
        if (some.length === 0) return nothing
        return html`
          <h3>${said}</h3>
          <ul class="answers">${repeat(
            some,
            ({ key }) => key,
            (one) => html`
              <li>
                <button type="button" class="answer" @click=${() => void this.choose(one)}>
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

  private partsPreview({ answer, library, parts: chosen }: NonNullable<typeof this.adding>): TemplateResult {
    const recomposed = (): Recomposed => withParts(library, this.open.sheet.worksheet, chosen)
    const next = recomposed()
    return html`
      <h2 tabindex="-1">${words.adding(answer)}</h2>
      ${
        next.change
          ? html`<div class="summary">${previewOf(this.open.sheet, library, next).map((said) => html`<p>${said}</p>`)}</div>`
          : html`<p>${words.nothingNew}</p>`
      }
      <div class="presses">
        ${
          next.change
            ? html`<button type="button" class="press" @click=${() => {
                const { change, first, cells } = recomposed()
                this.make(change, first ?? cells[0]?.id)
              }}><b>${words.confirm}</b></button>`
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
    const headings = plan.cells.flatMap((cell) => (cell.kind === 'note' && cell.role === 'heading' ? [cell.text] : []))
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
        ${plan.change ? html`<button type="button" class="press" @click=${() => this.setIn(coming)}><b>${words.confirm}</b></button>` : nothing}
        <button type="button" class="press" @click=${() => void this.another()}>${words.another}</button>
        <button type="button" class="press" @click=${() => this.leave()}>${words.cancel}</button>
      </div>
    `
  }

  override render(): TemplateResult {
    return html`
      ${this.trouble ? html`<p class="trouble" role="alert">${this.trouble}</p>` : nothing}
      ${this.adding ? this.partsPreview(this.adding) : this.coming ? this.preview(this.coming) : this.chooser()}
    `
  }
}
