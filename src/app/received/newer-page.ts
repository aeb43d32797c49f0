import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import type { Asked } from '../../cells/shared/cell-view.ts'
import { shared } from '../../cells/style/styles.ts'
import { fileName, saveText } from '../../storage/exchange/file.ts'
import { VERSION } from '../../worksheet/index.ts'
import { type NewerDocument, readNewer } from '../../worksheet/schema/read-newer.ts'
import '../fill/fill-face.ts'
import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { readOnly } from '../common/read-only.ts'
import { checkSummaryText } from '../common/words.ts'
import type { OpenSheet } from '../open/open-sheet.ts'
import { openWorksheet } from '../sheet/opening.ts'
import { receivedStyle } from './received-style.ts'
import { receivedWords as words } from './words.ts'

/** A newer sheet as far as it is understood here, and the sheet opened from it. */
export interface NewerSheet {
  readonly document: NewerDocument
  readonly open: OpenSheet
}

/** Opens a newer worksheet's data to be looked at. */
export async function openNewer(data: unknown): Promise<NewerSheet> {
  const document = readNewer(data)
  const open = await openWorksheet(document.worksheet)
  open.frozen.set(true)
  return { document, open }
}

/** A worksheet of a newer version: read only, with the reason and a way to save it as it came. */
@customElement('newer-page')
export class NewerPage extends LitElement {
  static override styles = [
    shared,
    receivedStyle,
    css`
      /* On its ground as the page of a sheet is. */
      main {
        display: block;
        max-inline-size: 1560px;
        margin-inline: max(24px, (100% - 1560px) / 2);
        padding: 16px 32px 28px;
      }
      @media (max-width: 1179px) {
        main {
          margin-inline: 12px;
          padding-inline: 24px;
        }
      }
      @media (max-width: 40rem) {
        main {
          margin-inline: 0;
          padding-inline: 16px;
          border-inline: 0;
        }
      }
      h1 {
        overflow-wrap: anywhere;
      }
      .why {
        display: grid;
        gap: 0.6rem;
        max-inline-size: 46rem;
        margin-block: 0.9rem;
        padding-inline-start: 0.7rem;
        border-inline-start: 4px solid var(--ink);
      }
      .summary {
        padding-block-end: 0.5rem;
        border-block-end: 2px solid var(--ink);
      }
    `,
  ]

  @property({ attribute: false }) newer!: NewerSheet
  @state() private saved = ''

  override firstUpdated(): void {
    readOnly(this.renderRoot.querySelector('main') as HTMLElement, () => true)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.newer.open.close()
  }

  private async save(): Promise<void> {
    const { original, worksheet } = this.newer.document
    try {
      const text = `${JSON.stringify(original, null, 2)}\n`
      this.saved = (await saveText(fileName(worksheet.title), text, 'application/json')) ? words.savedUnchanged : ''
    } catch (error) {
      this.saved = (error as Error).message
    }
  }

  override render(): TemplateResult {
    const { document, open } = this.newer
    const { title, job } = document.worksheet
    const left = document.unknown === 0 ? '' : ` ${words.notShown(document.unknown)}`
    return html`
      <main
        @change-asked=${(event: CustomEvent<Asked>) => event.detail.refuse(words.newerReadOnly)}
      >
        <h1>${title || UNTITLED_SHEET}</h1>
        ${job ? html`<p>${job}</p>` : ''}
        <div class="why">
          <p role="alert">${words.newer(document.version, VERSION)}${left}</p>
          <p>${words.reload}</p>
          <div class="presses">
            <button type="button" class="press" @click=${() => void this.save()}>${words.saveUnchanged}</button>
            <button
              type="button"
              class="press"
              @click=${() => this.dispatchEvent(new CustomEvent('newer-left', { bubbles: true, composed: true }))}
            >${words.leaveNewer}</button>
            <span role="status">${this.saved}</span>
          </div>
        </div>
        <p class="quiet summary">${words.shows(document.worksheet.cells.length, checkSummaryText(open.sheet.checkSummary))}</p>
        <fill-face .open=${open}></fill-face>
      </main>
    `
  }
}
