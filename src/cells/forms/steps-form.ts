import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { live } from 'lit/directives/live.js'
import type { Steps } from '../../worksheet/index.ts'
import { labelledStyle, selected } from '../fields/labelled.ts'
import { openedWords } from '../opened/words.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { field, shared } from '../style/styles.ts'
import { type Form, textField } from './form-fields.ts'
import { formWords, stepsFormWords } from './words.ts'

type Step = Steps['steps'][number]
/** The part of a step to focus after it is drawn. */
type Goal = { readonly at: number; readonly on: '.text' | '.up' | '.down' }

let acts = 0

/** The list of steps in Build: each with its text and its reading. */
@customElement('steps-form')
export class StepsForm extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    css`
      :host {
        container-type: inline-size;
      }
      ol {
        list-style: none;
        margin: 0;
        padding: 0;
      }
      li {
        display: grid;
        grid-template-columns: 1.8rem minmax(0, 1fr) minmax(0, 15rem);
        gap: 0 0.7rem;
        align-items: start;
        padding-block: 0.5rem 0.1rem;
        border-block-start: 1px solid var(--rule);
      }
      .number {
        padding-block-start: 1.75rem;
        text-align: end;
        font-variant-numeric: tabular-nums;
      }
      .words {
        grid-column: 2 / -1;
      }
      .add {
        margin-block: 0.6rem;
      }
      @container (max-width: 34rem) {
        li {
          grid-template-columns: 1.4rem minmax(0, 1fr);
        }
        li > .reading {
          grid-column: 2;
        }
      }
    `,
  ]

  @property({ attribute: false }) form!: Form
  private goal: Goal | undefined

  private get cell(): Steps {
    return this.form.view.cell as Steps
  }

  private put(steps: readonly Step[], key: string, goal?: Goal): void {
    this.goal = goal
    this.form.put({ ...this.cell, steps: [...steps] }, key)
  }

  /** Adding, moving and removing each get a new key, so that each is one undo step. */
  private act(steps: readonly Step[], goal?: Goal): void {
    this.put(steps, `steps:${this.cell.id}:${++acts}`, goal)
  }

  override updated(): void {
    const { goal } = this
    if (!goal) return
    this.goal = undefined
    const place = this.renderRoot.querySelector(`li:nth-child(${goal.at + 1})`)
    const on = place?.querySelector<HTMLElement>(goal.on) ?? this.renderRoot.querySelector<HTMLElement>('.add')
    on?.focus()
  }

  private edit(at: number, step: Step, key: string): void {
    this.put(this.cell.steps.with(at, step), `${key}:${at}:${this.cell.id}`)
  }

  private add(at: number, texts: readonly string[] = ['']): void {
    const added = texts.map((text) => ({ text }))
    this.act(this.cell.steps.toSpliced(at, 0, ...added), { at: at + added.length - 1, on: '.text' })
  }

  private move(at: number, by: -1 | 1): void {
    const to = at + by
    const { steps } = this.cell
    if (to < 0 || to >= steps.length) return
    const step = steps[at] as Step
    this.act(steps.toSpliced(at, 1).toSpliced(to, 0, step), { at: to, on: by < 0 ? '.up' : '.down' })
  }

  private removeStep(at: number): void {
    const { steps } = this.cell
    this.act(steps.toSpliced(at, 1), { at: Math.min(at, steps.length - 2), on: '.text' })
  }

  /** Pastes a list: each line becomes a step. */
  private pasted(event: ClipboardEvent, at: number): void {
    const lines = (event.clipboardData?.getData('text/plain') ?? '').split(/\r?\n/).map((line) => line.trim())
    const full = lines.filter((line) => line !== '')
    if (full.length < 2) return
    event.preventDefault()
    const step = this.cell.steps[at] as Step
    const [first, ...rest] = full as [string, ...string[]]
    const begun = step.text.trim() === '' ? [{ ...step, text: first }] : [step, { text: first }]
    const steps = [...begun, ...rest.map((text) => ({ text }))]
    this.act(this.cell.steps.toSpliced(at, 1, ...steps), { at: at + steps.length - 1, on: '.text' })
  }

  private keys(event: KeyboardEvent, at: number): void {
    const { altKey, ctrlKey, metaKey, shiftKey, key, isComposing } = event
    if (key !== 'Enter' || altKey || ctrlKey || metaKey || shiftKey || isComposing) return
    event.preventDefault()
    this.add(at + 1)
  }

  private readings(chosen: string | undefined): readonly (readonly [string, string])[] {
    const { sheet } = this.form.view as WideView<Steps>
    const named = sheet.cells.flatMap((cell) =>
      cell.kind === 'given' || cell.kind === 'result'
        ? [[cell.name, cell.label ? `${labelOf(cell)} (${cell.name})` : cell.name] as const]
        : [],
    )
    const lost = chosen !== undefined && !named.some(([name]) => name === chosen)
    return [
      ['', stepsFormWords.nothing],
      ...(lost ? [[chosen, formWords.noLongerThere(chosen)] as const] : []),
      ...named,
    ]
  }

  private step(step: Step, at: number, last: number): TemplateResult {
    const word = (name: 'up' | 'down', by: -1 | 1, can: boolean): TemplateResult =>
      html`<button
        type="button"
        class="word ${name}"
        aria-label=${(name === 'up' ? stepsFormWords.stepUp : stepsFormWords.stepDown)(at + 1)}
        aria-disabled=${!can}
        @click=${() => can && this.move(at, by)}
      >${openedWords[name]}</button>`
    return html`
      <li>
        <span class="number" aria-hidden="true">${at + 1}</span>
        <label class="labelled">
          <span class="small quiet"><span class="unseen">${stepsFormWords.step(at + 1)}</span>${stepsFormWords.task}</span>
          <textarea
            class="field short text"
            rows="1"
            .value=${live(step.text)}
            @input=${(event: Event) => this.edit(at, { ...step, text: (event.target as HTMLTextAreaElement).value }, 'text')}
            @keydown=${(event: KeyboardEvent) => this.keys(event, at)}
            @paste=${(event: ClipboardEvent) => this.pasted(event, at)}
          ></textarea>
        </label>
        ${selected({
          label: stepsFormWords.reading,
          className: 'reading',
          value: step.reading ?? '',
          options: this.readings(step.reading),
          put: (name) => {
            const { reading: _, ...rest } = step
            this.edit(at, (name === '' ? rest : { ...rest, reading: name }) as Step, 'reading')
          },
        })}
        <div class="words">
          ${word('up', -1, at > 0)} ${word('down', 1, at < last)}
          <button type="button" class="word" aria-label=${stepsFormWords.removeStep(at + 1)} @click=${() => this.removeStep(at)}>${openedWords.remove}</button>
        </div>
      </li>
    `
  }

  override render(): TemplateResult {
    const { steps } = this.cell
    return html`
      <ol>
        ${steps.map((step, at) => this.step(step, at, steps.length - 1))}
      </ol>
      <button type="button" class="press add" @click=${() => this.add(steps.length)}>${stepsFormWords.add}</button>
    `
  }
}

/** What is edited of steps in Build. */
export const form = (form: Form, cell: Steps): TemplateResult => html`
  ${textField(form, cell, 'title', formWords.title, { className: 'all first' })}
  <steps-form class="all" .form=${form}></steps-form>
`
