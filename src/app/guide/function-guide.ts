import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { field, shared } from '../../cells/style/styles.ts'
import { type FunctionFinder, functionFinder } from '../../language/finding/find-functions.ts'
import {
  type Callable,
  type Example,
  type GuideText,
  parameterText,
  resultText,
  type Subject,
  signature,
} from '../../language/index.ts'
import { wholeLibrary } from '../common/library.ts'
import { SUBJECT_TITLES, guideWords as words } from './words.ts'
import './published-checks.ts'

interface Entry {
  readonly record: Callable
  readonly text: GuideText
}

/** Every function laid out: by subject, found by words of the trade, its examples ready to be put into the sheet. */
@customElement('function-guide')
export class FunctionGuide extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      .find {
        display: grid;
        gap: 0.3rem;
        max-inline-size: 28rem;
        padding-block: 1rem 0.4rem;
      }
      h2 {
        font-size: 1.15rem;
        margin-block-start: 1.6rem;
        padding-block-end: 0.4rem;
        border-block-end: 2px solid var(--ink);
      }
      details {
        border-block-end: 1px solid var(--rule);
      }
      summary {
        display: block;
        min-block-size: 44px;
        padding-block: 0.55rem;
        cursor: pointer;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary:hover code {
        text-decoration: underline;
        text-underline-offset: 0.25em;
      }
      code {
        font-family: var(--mono);
        font-size: 0.92rem;
        overflow-wrap: anywhere;
      }
      summary code {
        font-weight: 700;
      }
      summary span {
        display: block;
      }
      .details {
        display: grid;
        gap: 0.6rem;
        padding: 0.2rem 0 1.1rem 1rem;
        max-inline-size: 48rem;
      }
      dl {
        display: grid;
        grid-template-columns: minmax(7rem, auto) minmax(0, 1fr);
        gap: 0.25rem 1.2rem;
      }
      dt {
        font-family: var(--mono);
        font-size: 0.92rem;
        overflow-wrap: anywhere;
      }
      .caution {
        padding-inline-start: 0.8rem;
        border-inline-start: 4px solid var(--ink);
      }
      .example {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        gap: 0.3rem 1rem;
      }
      .example .quiet {
        display: block;
      }
      @container page (max-width: 32rem) {
        .details {
          padding-inline-start: 0;
        }
        dl {
          grid-template-columns: minmax(0, 1fr);
        }
        dd {
          padding-block-end: 0.3rem;
        }
        .example {
          grid-template-columns: minmax(0, 1fr);
        }
      }
    `,
  ]

  /** Whether there is a sheet to put an example into. */
  @property({ type: Boolean }) canPut = false
  @state() private entries: readonly Entry[] = []
  @state() private words = ''
  private finder: FunctionFinder | undefined
  @state() private opened: ReadonlySet<string> = new Set()

  override connectedCallback(): void {
    super.connectedCallback()
    void this.load()
  }

  private async load(): Promise<void> {
    const [{ GUIDE }, library] = await Promise.all([import('virtual:guide'), wholeLibrary()])
    this.entries = [...library.values()].flatMap((record) => {
      const text = GUIDE.get(record.name)
      return text ? [{ record, text }] : []
    })
    this.finder = functionFinder(this.entries)
  }

  private put({ formula }: Example): void {
    this.dispatchEvent(new CustomEvent('example-put', { detail: formula, bubbles: true, composed: true }))
  }

  private example(example: Example): TemplateResult {
    return html`
      <div class="example">
        <p><code>${example.formula}</code> <span class="quiet">${words.example(example.gives ?? '')}</span></p>
        ${
          this.canPut
            ? html`<button type="button" class="press" @click=${() => this.put(example)}>${words.put}</button>`
            : nothing
        }
      </div>
    `
  }

  private details({ record, text }: Entry): TemplateResult {
    return html`
      <div class="details">
        ${
          record.parameters.length > 0
            ? html`<dl>${record.parameters.map(
                (one) => html`<dt>${one.name}</dt><dd>${one.about}: ${parameterText(one)}</dd>`,
              )}</dl>`
            : nothing
        }
        <p>${words.gives(resultText(record))}: <code>${text.formula}</code></p>
        ${text.validity ? html`<p>${words.appliesTo(text.validity)}</p>` : nothing}
        ${[...(record.safety ?? []), ...(record.cautions ?? [])].map((caution) => html`<p class="caution"><b>${words.caution}</b> ${caution}</p>`)}
        <p class="quiet">${words.source(text.source)}</p>
        <published-checks name=${record.name}></published-checks>
        ${text.examples.filter(({ gives }) => gives !== undefined).map((one) => this.example(one))}
      </div>
    `
  }

  private entry(entry: Entry): TemplateResult {
    const { name } = entry.record
    const toggle = (event: Event): void => {
      const open = (event.target as HTMLDetailsElement).open
      if (open !== this.opened.has(name))
        this.opened = open ? new Set([...this.opened, name]) : new Set([...this.opened].filter((one) => one !== name))
    }
    return html`
      <details @toggle=${toggle}>
        <summary><code>${signature(entry.record)}</code><span class="quiet">${entry.text.about}</span></summary>
        ${this.opened.has(name) ? this.details(entry) : nothing}
      </details>
    `
  }

  /** Without words every function; with words those found, the best first. */
  private found(): readonly Entry[] {
    if (this.words.trim() === '' || !this.finder) return this.entries
    return this.finder.find(this.words).flatMap((name) => this.entries.find(({ record }) => record.name === name) ?? [])
  }

  private list(found: readonly Entry[]): TemplateResult | TemplateResult[] {
    if (this.words.trim() !== '')
      return html`<section aria-label=${words.found}>${found.map((entry) => this.entry(entry))}</section>`
    return (Object.keys(SUBJECT_TITLES) as Subject[])
      .filter((subject) => found.some(({ text }) => text.subject === subject))
      .map(
        (subject) => html`
          <section aria-label=${SUBJECT_TITLES[subject]}>
            <h2>${SUBJECT_TITLES[subject]}</h2>
            ${found.filter(({ text }) => text.subject === subject).map((entry) => this.entry(entry))}
          </section>
        `,
      )
  }

  override render(): TemplateResult {
    const found = this.found()
    return html`
      <label class="find">
        <span>${words.find}</span>
        <input
          class="field"
          type="search"
          autocomplete="off"
          .value=${this.words}
          @input=${(event: Event) => {
            this.words = (event.target as HTMLInputElement).value
          }}
        >
      </label>
      <p class="quiet" role="status">${this.entries.length === 0 ? words.fetching : words.count(found.length)}</p>
      ${this.list(found)}
    `
  }
}
