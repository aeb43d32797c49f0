import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { labelledStyle, ticked } from '../../cells/shared/labelled.ts'
import { shared } from '../../cells/style/styles.ts'
import { Studio } from '../../kit/studio.ts'
import { backupText } from '../../storage/exchange/backup.ts'
import { saveText } from '../../storage/exchange/file.ts'
import type { Store } from '../../storage/store/types.ts'

/** One file with everything kept in this browser. */
@customElement('backup-panel')
export class BackupPanel extends LitElement {
  static override styles = [
    shared,
    labelledStyle,
    css`
      :host {
        display: grid;
        gap: 0.4rem;
        padding-block-end: 0.6rem;
      }
    `,
  ]

  @property({ attribute: false }) store!: Store
  @state() private withRevisions = true
  @state() private said = ''

  private async save(): Promise<void> {
    this.said = ''
    try {
      const pieces = await new Studio(this.store).pieces()
      const text = await backupText(this.store, this.withRevisions, pieces ? { kit: pieces } : {})
      const day = new Date().toLocaleDateString('sv-SE')
      const saved = await saveText(`evenfield-backup-${day}.json`, text, 'application/json')
      this.said = saved ? 'Saved.' : ''
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  override render(): TemplateResult {
    return html`
      <p>
        One file with every sheet kept in this browser, removed ones too, and your kit. Opened here or in another browser, it brings in
        what is missing; a sheet that differs comes in as a copy, and nothing of yours is changed.
      </p>
      ${ticked('With their revisions', this.withRevisions, (on) => {
        this.withRevisions = on
      })}
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.save()}>Save a backup</button>
      </div>
      <p class="small" role="status">${this.said}</p>
    `
  }
}
