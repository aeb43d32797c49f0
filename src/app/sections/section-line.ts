import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { checkSign, signStyle } from '../../cells/shared/check-sign.ts'
import { shared } from '../../cells/style/styles.ts'
import { stateCounts } from '../common/state-counts.ts'
import { stateText } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { pageWidth } from '../open/page-width.ts'
import { type Section, sectionsOf } from '../open/sections.ts'
import { openWords as words } from '../open/words.ts'
import { type Stretch, stretchesOf } from './stretches.ts'

/** With more sections the line shows their states as signs alone, and none where all checks pass. */
const MOST_IN_WORDS = 6

/** A section is reached once its heading is no lower than this: where it comes to when it is asked for, and a little more. */
const REACHED = 200
/** Headings in one row. */
const LEVEL = 8

/**
 * The first section of the last row that is reached; where the section asked for last is in the same row, or the page ends
 * before it can be reached, that one. Bands are looked at first: measuring within a band out of sight would have it laid out.
 */
function currentOf(places: readonly HTMLElement[], asked: string): HTMLElement | undefined {
  const topOf = (one: Element): number => one.getBoundingClientRect().top
  const isReached = (one: Element): boolean => topOf(one) < REACHED
  const bandOf = (one: HTMLElement): Element => one.closest('.band') ?? one
  const band = [...new Set(places.map(bandOf))].findLast(isReached)
  const within = places.filter((one) => bandOf(one) === band)
  const isLevel = (one: Element, other: Element): boolean => Math.abs(topOf(one) - topOf(other)) < LEVEL
  const last = within.findLast(isReached)
  const found = last ? within.find((one) => isLevel(one, last)) : (within[0] ?? places[0])
  const wanted = places.find(({ dataset }) => dataset.section === asked)
  if (!found || !wanted || topOf(bandOf(wanted)) > innerHeight) return found
  const { scrollHeight, scrollTop, clientHeight } = document.documentElement
  const isAtEnd = scrollTop + clientHeight > scrollHeight - LEVEL
  const isBeside = bandOf(wanted) === bandOf(found) && isLevel(wanted, found)
  return isBeside || (isAtEnd && topOf(wanted) > 0) ? wanted : found
}

/** The sections of a sheet on a dimension line: each with its worst state, the current one on a thick line. */
@customElement('section-line')
export class SectionLine extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    signStyle,
    css`
      :host {
        min-inline-size: 0;
        overflow-x: auto;
        scrollbar-width: none;
      }
      nav {
        display: flex;
        padding-inline: 8px;
        padding-block-end: 8px;
        inline-size: fit-content;
        min-inline-size: 100%;
      }
      a {
        position: relative;
        display: flex;
        flex: 1 0 auto;
        align-items: center;
        gap: 8px;
        min-block-size: 34px;
        padding: 0 12px 4px 14px;
        border-block-end: 1px solid var(--ink);
        color: inherit;
        text-decoration: none;
        white-space: nowrap;
      }
      .tight a {
        gap: 5px;
        padding-inline: 8px 5px;
      }
      /* Where there is room, many sections take several lines, so that each is seen with its whole name. */
      @media (min-width: 55rem) {
        .tight {
          flex-wrap: wrap;
          font-size: 0.9333rem;
          row-gap: 4px;
          padding-block: 4px 8px;
          inline-size: 100%;
        }
        .tight a {
          max-inline-size: 13rem;
          min-block-size: 24px;
          padding-block-end: 2px;
          padding-inline: 6px 3px;
          line-height: 1.2;
        }
      }
      @media (min-width: 55rem) and (pointer: coarse) {
        .tight a {
          min-block-size: 30px;
        }
      }
      /* The oblique ticks that end each dimension. */
      a::after,
      a:first-child::before,
      .tight a::before {
        content: '';
        position: absolute;
        inset-block-end: -8px;
        inline-size: 1.5px;
        block-size: 15px;
        background: var(--ink);
        rotate: 45deg;
      }
      a::after {
        inset-inline-end: -1px;
        z-index: 1;
      }
      a::before {
        inset-inline-start: -1px;
      }
      a:hover {
        background: var(--mark);
      }
      a:focus-visible {
        outline-offset: -3px;
      }
      a[aria-current] {
        padding-block-end: 1px;
        border-block-end-width: 4px;
        font-weight: 700;
      }
      .state {
        display: flex;
        gap: 6px;
        align-items: center;
        margin-inline-start: auto;
        font-size: 0.8667rem;
        font-weight: 400;
        color: var(--quiet);
        --sign: 14px;
      }
      /* Close to its name, not to the name after it. */
      .tight .state {
        margin-inline-start: 0;
      }
      @media (pointer: coarse) {
        a {
          min-block-size: 40px;
        }
      }
    `,
  ]

  @property({ attribute: false }) open!: OpenSheet
  /** Where the sections are on the page, so that the current one is known from how far it is scrolled. */
  @property({ attribute: false }) places!: () => readonly HTMLElement[]
  @state() private current = ''
  /** The section asked for last. */
  private asked = ''
  private frame = 0
  private readonly head = new ResizeObserver(([entry]) => {
    const height = entry?.borderBoxSize[0]?.blockSize
    if (height) document.documentElement.style.setProperty('--head', `${height}px`)
  })

  override connectedCallback(): void {
    super.connectedCallback()
    this.head.observe((this.getRootNode() as ShadowRoot).host)
    addEventListener('scroll', this.scrolled, { passive: true })
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.head.disconnect()
    document.documentElement.style.removeProperty('--head')
    removeEventListener('scroll', this.scrolled)
    cancelAnimationFrame(this.frame)
  }

  override firstUpdated(): void {
    this.scrolled()
  }

  private readonly scrolled = (): void => {
    cancelAnimationFrame(this.frame)
    this.frame = requestAnimationFrame(() => {
      this.current = currentOf(this.places(), this.asked)?.dataset.section ?? ''
    })
  }

  /** On a narrow screen the line is scrolled along with the page. */
  override updated(changed: PropertyValues): void {
    // What is typed changes states alone: measuring then would have the whole page laid out at every key.
    if (!changed.has('current')) return
    const current = this.renderRoot.querySelector<HTMLElement>('[aria-current]')
    if (!current || this.scrollWidth <= this.clientWidth) return
    const [from, to] = [current.offsetLeft, current.offsetLeft + current.offsetWidth]
    if (from < this.scrollLeft || to > this.scrollLeft + this.clientWidth)
      this.scrollLeft = from - (this.clientWidth - current.offsetWidth) / 2
  }

  private go(event: Event, { id }: Section): void {
    event.preventDefault()
    this.asked = id
    this.scrolled()
    this.dispatchEvent(new CustomEvent('section-asked', { detail: id, bubbles: true, composed: true }))
  }

  private state({ sections }: Stretch, isTight: boolean): TemplateResult | typeof nothing {
    const cells = sections.flatMap(({ rows, exact }) => [...rows, ...exact])
    const [worst] = stateCounts(this.open.sheet.checkSummaryOf(cells))
    if (worst) {
      const [state, n] = worst
      const text = stateText(state, n)
      if (isTight && state === 'pass') return html`<span class="unseen">${text}</span>`
      return html`<span class="state">${checkSign(state)}${pageWidth.get() === 'wide' && !isTight ? text : html`<span class="unseen">${text}</span>`}</span>`
    }
    const steps = cells.flatMap((cell) => (cell.kind === 'steps' ? cell.steps : []))
    if (isTight || steps.length === 0) return nothing
    return html`<span class="state">${words.done(steps.filter(({ done }) => done).length, steps.length)}</span>`
  }

  override render(): TemplateResult | typeof nothing {
    this.open.changed.get()
    const sections = sectionsOf(this.open.sheet.cells).filter(({ heading }) => heading)
    if (sections.length < 2) return nothing
    // Before the first scroll there is none, or one of the sheet that was here before.
    const current = (sections.find(({ id }) => id === this.current) ?? sections[0])?.id
    const stretches = stretchesOf(sections, this.open.sheet.worksheet.setups ?? [], current ?? '')
    const isTight = stretches.length > MOST_IN_WORDS
    return html`
      <nav class=${isTight ? 'tight' : ''} aria-label=${words.sections}>
        ${stretches.map(
          (one) => html`
            <a
              href="#section"
              aria-current=${one.sections.some(({ id }) => id === current) ? 'location' : nothing}
              @click=${(event: Event) => this.go(event, one.sections[0])}
            >${one.label} ${this.state(one, isTight)}</a>
          `,
        )}
      </nav>
    `
  }
}
