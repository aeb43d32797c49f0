import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { field, shared } from '../cells/styles.ts'
import type { Worksheet } from '../worksheet/index.ts'
import { addressOf } from './route.ts'

/** Ways of giving the sheet to someone: a link that holds it whole, or a file. */
@customElement('share-panel')
export class SharePanel extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      section {
        display: grid;
        gap: 0.6rem;
        padding-block: 1.1rem 1.3rem;
        border-block-end: 2px solid var(--ink);
      }
      h2 {
        font-size: 1.15rem;
      }
      .link {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 0.5rem;
        max-inline-size: 44rem;
      }
      .link .field {
        text-overflow: ellipsis;
      }
      .words {
        margin-block-start: 0.2rem;
      }
    `,
  ]

  @property({ attribute: false }) worksheet!: Worksheet
  @state() private address = ''
  @state() private size = ''
  @state() private said = ''
  @query('#link') private link!: HTMLInputElement

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('worksheet')) void this.make(this.worksheet)
  }

  private async make(worksheet: Worksheet): Promise<void> {
    try {
      const { linkSize, toLink } = await import('../storage/link.ts')
      const address = addressOf(await toLink(worksheet))
      // A later key has made a later link.
      if (worksheet !== this.worksheet) return
      this.address = address
      this.size = linkSize(address).words
    } catch (error) {
      this.said = `No link could be made: ${(error as Error).message}`
    }
  }

  private async copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.address)
      this.said = 'Copied.'
    } catch {
      this.link.focus()
      this.link.select()
      this.said = 'This browser does not let a page copy. The link is marked: copy it with Ctrl C.'
    }
  }

  private async save(): Promise<void> {
    try {
      const { saveFile } = await import('../storage/file.ts')
      this.said = (await saveFile(this.worksheet)) ? 'Saved as a file.' : ''
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  override render(): TemplateResult {
    return html`
      <section aria-labelledby="share">
        <h2 id="share" tabindex="-1">Share</h2>
        <p>The link holds the whole sheet as it stands now. It goes to no server; whoever opens it gets a copy.</p>
        <div class="link">
          <input
            id="link"
            class="field mono"
            type="text"
            readonly
            aria-label="Link to a copy of this sheet"
            aria-describedby="size"
            .value=${this.address}
            @focus=${(event: Event) => (event.target as HTMLInputElement).select()}
          >
          <button type="button" class="press" ?disabled=${this.address === ''} @click=${() => void this.copy()}>Copy the link</button>
        </div>
        <p class="small quiet" id="size">${this.size || nothing}</p>
        <div class="presses">
          <button type="button" class="press" @click=${() => void this.save()}>Save as a file</button>
        </div>
        <p class="small" role="status">${this.said}</p>
      </section>
    `
  }
}
