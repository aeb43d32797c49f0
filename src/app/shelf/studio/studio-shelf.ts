import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { shared } from '../../../cells/style/styles.ts'
import { Studio } from '../../../kit/studio.ts'
import { type StudioTemplate, StudioTemplates, writeStudioSet } from '../../../kit/studio-templates.ts'
import { saveText } from '../../../storage/exchange/file.ts'
import type { Store } from '../../../storage/store/types.ts'
import { UNTITLED_SHEET } from '../../../worksheet/document/words.ts'
import { OWN_TEMPLATE, toNew } from '../../common/route.ts'
import { cellsText } from '../../common/words.ts'
import { studioWords as words } from './words.ts'

/** The studio's own templates, and one file with these, their functions and the kit. */
@customElement('studio-shelf')
export class StudioShelf extends LitElement {
  static override styles = [
    shared,
    css`
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: flex;
        flex-wrap: wrap;
        gap: 0.3rem 1rem;
        align-items: baseline;
        padding-block: 0.3rem;
        border-block-end: 1px solid var(--rule);
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  @state() private templates: readonly StudioTemplate[] = []
  @state() private said = ''

  override firstUpdated(): void {
    void this.trying(async () => {
      this.templates = await new StudioTemplates(this.store).list()
    })
  }

  private async trying(work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private removeTemplate({ id, worksheet }: StudioTemplate): Promise<void> {
    return this.trying(async () => {
      this.templates = await new StudioTemplates(this.store).remove(id)
      this.said = words.removed(worksheet.title || UNTITLED_SHEET)
    })
  }

  private save(): Promise<void> {
    return this.trying(async () => {
      const kit = (await new Studio(this.store).pieces()) ?? []
      const set = writeStudioSet({ templates: this.templates.map(({ worksheet }) => worksheet), kit })
      if (await saveText('studio.evenfield-studio.json', set, 'application/json')) this.said = words.setSaved
    })
  }

  override render(): TemplateResult {
    return html`
      <p>${this.templates.length === 0 ? words.noStudioTemplates : words.aboutStudioTemplates}</p>
      <ul>
        ${this.templates.map((one) => {
          const title = one.worksheet.title || UNTITLED_SHEET
          return html`<li>
            <a href=${toNew(`${OWN_TEMPLATE}${one.id}`)}>${title}</a>
            <span class="small quiet">${cellsText(one.worksheet.cells.length)}</span>
            <button type="button" class="word" aria-label=${words.act(words.remove, title)} @click=${() => void this.removeTemplate(one)}>${words.remove}</button>
          </li>`
        })}
      </ul>
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.save()}>${words.saveSet}</button>
      </div>
      ${this.said ? html`<p class="small" role="status">${this.said}</p>` : nothing}
    `
  }
}
