import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { repeat } from 'lit/directives/repeat.js'
import { field, shared } from '../../cells/style/styles.ts'
import type { Revision } from '../../storage/store/revision.ts'
import { compare, type Difference } from '../../worksheet/analysis/compare.ts'
import { Sheet, type Worksheet } from '../../worksheet/index.ts'
import { libraryFor } from '../common/library.ts'
import { panelStyle } from '../common/panel-style.ts'
import { when } from '../common/words.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import { restoreSheet } from './restore-sheet.ts'
import { comparison } from './revision-list.ts'
import { revisionsWords as words } from './words.ts'

/** What a revision is compared with: another one, or the sheet as it is now. */
const NOW = 'now'

/** How many lines are shown at first: months of work make a long list. */
const SHOWN = 30

/** The revisions of a sheet: when each was saved, what has changed since, and the way back to it. */
@customElement('revisions-panel')
export class RevisionsPanel extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    field,
    panelStyle,
    css`
      h4 {
        margin-block: 0.9rem 0.1rem;
        font-size: 0.86rem;
      }
      form {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0.2rem 0.5rem;
        max-inline-size: 44rem;
      }
      form label {
        grid-column: 1 / -1;
      }
      ul {
        margin: 0.4rem 0 0;
        padding: 0;
        list-style: none;
        border-block-start: 1px solid var(--rule);
      }
      li {
        border-block-end: 1px solid var(--rule);
      }
      .line {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        align-items: center;
        column-gap: 1.2rem;
      }
      .line > span {
        padding-block: 0.5rem;
        overflow-wrap: anywhere;
      }
      .opened {
        padding-block: 0.2rem 1rem;
        max-inline-size: 52rem;
      }
      .with {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.2rem 0.6rem;
      }
      .with .field {
        inline-size: auto;
        max-inline-size: 100%;
      }
      dl {
        border-block-start: 1px solid var(--edge);
      }
      dl {
        display: grid;
        grid-template-columns: minmax(0, 2fr) minmax(0, 3fr);
      }
      dt,
      dd {
        padding-block: 0.35rem;
        border-block-end: 1px solid var(--rule);
        overflow-wrap: anywhere;
        font-variant-numeric: tabular-nums;
      }
      dt {
        padding-inline-end: 1rem;
      }
      .formulas dd {
        font-family: var(--mono);
        font-size: 0.92rem;
      }
      @media (max-width: 40rem) {
        .line {
          grid-template-columns: minmax(0, 1fr);
        }
        .line > span {
          padding-block-end: 0;
        }
        dl {
          grid-template-columns: minmax(0, 1fr);
        }
        dt {
          padding-block-end: 0;
          border: 0;
          color: var(--quiet);
        }
        dd {
          padding-block-start: 0;
        }
      }
    `,
  ]

  @property({ attribute: false }) session!: SheetSession
  @state() private revisions: readonly Revision[] | undefined
  @state() private all = false
  /** The revision whose comparison is open, and what it is compared with. */
  @state() private opened: number | undefined
  @state() private other: string = NOW
  @state() private differences: readonly Difference[] | undefined
  /** The revision being given a name. */
  @state() private naming: number | undefined
  @state() private said = ''
  private listedAt: number | undefined

  private async list(): Promise<void> {
    await this.trying(async () => {
      this.revisions = await this.session.store.revisions(this.session.id)
    })
  }

  private async trying(work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private stateAt(at: number): Promise<Worksheet | undefined> {
    return this.session.store.revision(this.session.id, at)
  }

  private async compare(): Promise<void> {
    const { opened, other } = this
    if (opened === undefined) return
    await this.trying(async () => {
      const first = await this.stateAt(opened)
      const second = other === NOW ? this.session.open.sheet.worksheet : await this.stateAt(Number(other))
      if (!first || !second) throw new Error(words.gone)
      const [before, after] = other !== NOW && Number(other) < opened ? [second, first] : [first, second]
      const library = await libraryFor([...before.cells, ...after.cells])
      const found = compare(new Sheet(before, library), new Sheet(after, library))
      // Another pair may have been asked for meanwhile.
      if (opened === this.opened && other === this.other) this.differences = found
    })
  }

  private look(at: number): void {
    this.opened = this.opened === at ? undefined : at
    this.other = NOW
    this.differences = undefined
    void this.compare()
  }

  private async saveAs(event: SubmitEvent): Promise<void> {
    event.preventDefault()
    const input = (event.target as HTMLFormElement).elements.namedItem('name') as HTMLInputElement
    const name = input.value.trim()
    if (name === '') {
      this.said = words.nameFirst
      input.focus()
      return
    }
    await this.trying(async () => {
      await this.session.autosave.flush()
      await this.session.store.saveRevision(this.session.id, { name })
      input.value = ''
      this.said = words.savedAs(name)
    })
    await this.list()
  }

  private async rename(event: SubmitEvent, at: number): Promise<void> {
    event.preventDefault()
    const input = (event.target as HTMLFormElement).elements.namedItem('name') as HTMLInputElement
    await this.trying(() => this.session.store.nameRevision(this.session.id, at, input.value))
    this.naming = undefined
    await this.list()
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`[data-name="${at}"]`)?.focus()
  }

  private async name(at: number): Promise<void> {
    this.naming = this.naming === at ? undefined : at
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('li form input')?.focus()
  }

  private async restore(revision: Revision): Promise<void> {
    await this.trying(async () => {
      const worksheet = await this.stateAt(revision.at)
      if (!worksheet) throw new Error(words.gone)
      await restoreSheet(this.session, worksheet)
      this.opened = undefined
      this.said = words.restored(when(new Date(revision.at)))
    })
    await this.list()
  }

  private revision(one: Revision): TemplateResult {
    const time = when(new Date(one.at))
    const opened = this.opened === one.at
    const what = one.name === undefined ? time : `${one.name}, ${time}`
    return html`
      <li>
        <div class="line">
          <span>
            ${one.name === undefined ? html`${time}` : html`<b>${one.name}</b>, ${time}`}
            ${one.why === undefined ? nothing : html`<span class="small quiet"> ${one.why}</span>`}
          </span>
          <div class="words">
            <button type="button" class="word" aria-expanded=${opened} aria-label=${words.compareIt(what)} @click=${() => this.look(one.at)}>${words.compare}</button>
            <button
              type="button"
              class="word"
              aria-label=${words.restoreIt(what)}
              aria-disabled=${this.session.open.frozen.get()}
              @click=${() => !this.session.open.frozen.get() && void this.restore(one)}
            >${words.restore}</button>
            <button
              type="button"
              class="word"
              data-name=${one.at}
              aria-expanded=${this.naming === one.at}
              aria-label=${words.nameIt(what)}
              @click=${() => void this.name(one.at)}
            >${words.name}</button>
          </div>
        </div>
        ${this.naming === one.at ? this.nameForm(one) : nothing} ${opened ? this.compared(one) : nothing}
      </li>
    `
  }

  private nameForm(one: Revision): TemplateResult {
    return html`
      <form class="opened" @submit=${(event: SubmitEvent) => void this.rename(event, one.at)}>
        <label class="small quiet" for="rename">${words.nameOf}</label>
        <input id="rename" class="field" name="name" type="text" autocomplete="off" .value=${one.name ?? ''}>
        <button type="submit" class="press">${words.saveName}</button>
      </form>
    `
  }

  private compared(one: Revision): TemplateResult {
    const others = (this.revisions ?? []).filter(({ at }) => at !== one.at)
    return html`
      <div class="opened">
        <div class="with">
          <label for="other">${words.comparedWith}</label>
          <select
            id="other"
            class="field"
            @change=${(event: Event) => {
              this.other = (event.target as HTMLSelectElement).value
              this.differences = undefined
              void this.compare()
            }}
          >
            <option value=${NOW}>${words.asItIsNow}</option>
            ${others.map(({ at, name }) => html`<option value=${at}>${name ? `${name}, ` : ''}${when(new Date(at))}</option>`)}
          </select>
        </div>
        ${this.differences ? comparison(this.differences) : nothing}
      </div>
    `
  }

  override render(): TemplateResult {
    const state = this.session.autosave.saveState.get()
    const saved = state.state === 'saved' ? state.at.getTime() : 0
    if (saved !== this.listedAt) {
      this.listedAt = saved
      void this.list().then(() => this.compare())
    }
    const { revisions = [] } = this
    const shown = this.all ? revisions : revisions.slice(0, SHOWN)
    return html`
      <section aria-labelledby="revisions">
        <h2 id="revisions" tabindex="-1">${words.heading}</h2>
        <p class="quiet">${words.about}</p>
        <form @submit=${(event: SubmitEvent) => void this.saveAs(event)}>
          <label class="small quiet" for="name">${words.nameNow}</label>
          <input id="name" class="field" name="name" type="text" autocomplete="off">
          <button type="submit" class="press">${words.saveNow}</button>
        </form>
        ${
          this.revisions?.length === 0
            ? html`<p>${words.none}</p>`
            : html`<ul>
                ${repeat(
                  shown,
                  ({ at }) => at,
                  (one) => this.revision(one),
                )}
              </ul>`
        }
        ${
          shown.length < revisions.length
            ? html`<div>
                <button
                  type="button"
                  class="word"
                  @click=${() => {
                    this.all = true
                  }}
                >${words.showAll(revisions.length)}</button>
              </div>`
            : nothing
        }
        <p class="small" role="status">${this.said}</p>
      </section>
    `
  }
}
