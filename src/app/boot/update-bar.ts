import { SignalWatcher } from '@lit-labs/signals'
import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { shared } from '../../cells/style/styles.ts'
import { update } from './update.ts'
import { bootWords as words } from './words.ts'

/** A line that says a newer Evenfield is here, and takes it when asked. */
@customElement('update-bar')
export class UpdateBar extends SignalWatcher(LitElement) {
  static override styles = [
    shared,
    css`
      :host {
        max-inline-size: 70rem;
        margin-inline: auto;
        padding-inline: clamp(1rem, 4vw, 2.4rem);
      }
      p {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        column-gap: 0.8rem;
      }
    `,
  ]

  /** Resolves when nothing typed is left to be saved. */
  @property({ attribute: false }) settled: () => Promise<void> = async () => {}
  private asked = false

  private async use(take: () => void): Promise<void> {
    await this.settled()
    this.asked = true
    take()
  }

  private async reload(): Promise<void> {
    await this.settled()
    location.reload()
  }

  override updated(): void {
    if (this.asked && update.get().state === 'in use') void this.reload()
  }

  private line(said: string, word: string, press: () => Promise<void>): TemplateResult {
    return html`<p>${said} <button type="button" class="word" @click=${() => void press()}>${word}</button></p>`
  }

  override render(): TemplateResult {
    const now = update.get()
    return html`<div role="status">${
      now.state === 'ready'
        ? this.line(words.newerReady, words.useNewer, () => this.use(now.use))
        : now.state === 'in use'
          ? this.line(words.newerElsewhere, words.loadNewer, () => this.reload())
          : nothing
    }</div>`
  }
}
