import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { fileName, saveText } from '../../storage/exchange/file.ts'
import type { Revision } from '../../storage/store/revision.ts'
import { stateOf } from '../../storage/store/summary.ts'
import type { Store } from '../../storage/store/types.ts'
import { when } from '../common/words.ts'
import { receivedStyle } from './received-style.ts'
import { receivedWords as words } from './words.ts'

/** A saved sheet that cannot be read: why, a way to save it as it is, and the revisions that can be read. */
@customElement('unreadable-page')
export class UnreadablePage extends LitElement {
  static override styles = [
    shared,
    receivedStyle,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
        border-block-start: 1px solid var(--rule);
      }
      li {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        border-block-end: 1px solid var(--rule);
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  @property() override id = ''
  @property() why = ''
  @state() private revisions: readonly Revision[] | undefined
  @state() private said = ''

  override firstUpdated(): void {
    void this.trying(async () => {
      const readable: Revision[] = []
      for (const one of await this.store.revisions(this.id))
        if (await this.store.revision(this.id, one.at).catch(() => undefined)) readable.push(one)
      this.revisions = readable
    })
  }

  private async trying(work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private saveRaw(): Promise<void> {
    return this.trying(async () => {
      const raw = await this.store.raw(this.id)
      if (!raw) return
      const text = `${JSON.stringify(raw.data, null, 2)}\n`
      if (await saveText(fileName(raw.summary.title), text, 'application/json')) this.said = words.savedUnchanged
    })
  }

  /** What cannot be read becomes a revision itself, so that going back loses nothing. */
  private restore(at: number): Promise<void> {
    return this.trying(async () => {
      const raw = await this.store.raw(this.id)
      const worksheet = await this.store.revision(this.id, at)
      if (!raw || !worksheet) return
      await this.store.saveRevision(this.id, { name: words.couldNotBeRead })
      await this.store.save(this.id, worksheet, { seen: [stateOf(raw.summary)] })
      dispatchEvent(new HashChangeEvent('hashchange'))
    })
  }

  private list(revisions: readonly Revision[]): TemplateResult {
    if (revisions.length === 0) return html`<p>${words.noRevisions}</p>`
    return html`
      <ul>
        ${revisions.map((one) => {
          const time = when(new Date(one.at))
          return html`
            <li>
              <span>${one.name ? html`<b>${one.name}</b>, ` : nothing}${time}</span>
              <button type="button" class="word" aria-label=${words.restoreAt(time)} @click=${() => void this.restore(one.at)}>
                ${words.restore}
              </button>
            </li>
          `
        })}
      </ul>
    `
  }

  override render(): TemplateResult {
    return html`
      <main>
        <h1>${words.unreadable}</h1>
        <p role="alert">${this.why}</p>
        <p>${words.aboutUnreadable}</p>
        <div class="presses">
          <button type="button" class="press primary" @click=${() => void this.saveRaw()}>${words.saveUnchanged}</button>
        </div>
        <p class="small" role="status">${this.said}</p>
        <h2>${words.revisions}</h2>
        ${this.revisions ? this.list(this.revisions) : nothing}
      </main>
    `
  }
}
