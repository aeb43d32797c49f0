import { css, html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { labelledStyle, ticked } from '../../cells/fields/labelled.ts'
import { shared } from '../../cells/style/styles.ts'
import { backupText } from '../../storage/exchange/backup.ts'
import { saveText } from '../../storage/exchange/file.ts'
import { BACKUP_WORDS as WORDS } from '../../storage/exchange/words.ts'
import { lastBackup, rememberBackup } from '../../storage/store/last-backup.ts'
import { deletesUnvisited, type Persistence, persistence } from '../../storage/store/persistence.ts'
import type { Store } from '../../storage/store/types.ts'
import { when } from '../common/words.ts'

const PERSISTENCE: Readonly<Record<Persistence, string>> = {
  persistent: WORDS.persistent,
  'best effort': WORDS.bestEffort,
  unknown: WORDS.persistenceUnknown,
}

/** One file with everything saved in this browser, and what the browser may do with it by itself. */
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
  @state() private last: number | undefined
  @state() private answer: Persistence | undefined

  override firstUpdated(): void {
    void this.load(false)
  }

  private async load(again: boolean): Promise<void> {
    this.answer = await persistence(again)
    this.last = await lastBackup(this.store).catch(() => undefined)
  }

  private async save(): Promise<void> {
    this.said = ''
    try {
      const kit = await this.store.setting('kit')
      const { text, unreadable } = await backupText(this.store, this.withRevisions, kit ? { kit } : {})
      const day = new Date().toLocaleDateString('sv-SE')
      if (!(await saveText(`evenfield-backup-${day}.json`, text, 'application/json'))) return
      this.said = WORDS.backupSaved(unreadable)
      await rememberBackup(this.store)
      await this.load(false)
      this.dispatchEvent(new CustomEvent('backup-made', { bubbles: true, composed: true }))
    } catch (error) {
      this.said = (error as Error).message
    }
  }

  private persistence(): TemplateResult | typeof nothing {
    if (!this.store.persistent || !this.answer) return nothing
    return html`
      <p class="small quiet">
        ${PERSISTENCE[this.answer]} ${deletesUnvisited() ? WORDS.deletesUnvisited : WORDS.othersDelete}
        ${
          this.answer === 'best effort'
            ? html`<button type="button" class="word" @click=${() => void this.load(true)}>${WORDS.askPersistence}</button>`
            : nothing
        }
      </p>
    `
  }

  override render(): TemplateResult {
    return html`
      <p>${WORDS.backupAbout}</p>
      <p>${this.last === undefined ? WORDS.noBackupYet : WORDS.lastBackup(when(new Date(this.last)))}</p>
      ${ticked(WORDS.withRevisions, this.withRevisions, (on) => {
        this.withRevisions = on
      })}
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.save()}>${WORDS.saveBackup}</button>
      </div>
      <p class="small" role="status">${this.said}</p>
      ${this.persistence()}
    `
  }
}
