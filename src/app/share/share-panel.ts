import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { labelledStyle, ticked } from '../../cells/fields/labelled.ts'
import { drawTree } from '../../cells/shared/draw-tree.ts'
import { field, shared } from '../../cells/style/styles.ts'
import { carriedTexts } from '../../storage/exchange/carried-texts.ts'
import type { LinkSize } from '../../storage/exchange/link.ts'
import { withOrigin } from '../../storage/exchange/origin.ts'
import { COPY_WORDS } from '../../storage/exchange/words.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { panelStyle } from '../common/panel-style.ts'
import { addressOf } from '../common/route.ts'
import type { SheetCode } from '../paper/qr.ts'
import { originOfSent, rememberSent } from '../session/sent-copy.ts'
import type { SheetSession } from '../session/sheet-session.ts'
import { shareWords as words } from './words.ts'

/** The width of a module of a QR code on a screen, in CSS px, where there is room. */
const MODULE_PX = 4

/** Ways to share the sheet: a link or QR code that contains it, a file, a page to read, paper. */
@customElement('share-panel')
export class SharePanel extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    panelStyle,
    css`
      h3 {
        font-size: 1rem;
        margin-block-start: 0.6rem;
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
      .qr {
        display: block;
        max-inline-size: 100%;
        block-size: auto;
      }
    `,
  ]

  @property({ attribute: false }) worksheet!: Worksheet
  @property({ attribute: false }) session!: SheetSession
  @state() private figuresOnly = false
  @state() private working = false
  @state() private address = ''
  @state() private size: LinkSize | undefined
  @state() private showsCode = false
  @state() private code: SheetCode | 'too large' | undefined
  @state() private said = ''
  @query('#link') private link!: HTMLInputElement

  override willUpdate(changed: PropertyValues): void {
    const inLink = changed.has('worksheet') || changed.has('figuresOnly')
    if (inLink) void this.make()
    if (this.showsCode && (inLink || changed.has('showsCode'))) void this.encode()
  }

  /** Does some work and announces a failure in a sentence made from its reason. */
  private async trying(failure: (why: string) => string, work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.said = failure((error as Error).message)
    }
  }

  /** Whether an edit or the tick has started a newer link meanwhile. */
  private isLate(worksheet: Worksheet, figuresOnly: boolean): boolean {
    return worksheet !== this.worksheet || figuresOnly !== this.figuresOnly
  }

  private make(): Promise<void> {
    const { worksheet, figuresOnly } = this
    return this.trying(words.noLink, async () => {
      const { linkSize, toLink } = await import('../../storage/exchange/link.ts')
      const sent = figuresOnly
        ? (await import('../../storage/figures/figures-only.ts')).figuresOnly(this.session.open.sheet)
        : worksheet
      const { basesFor } = await import('../templates/base-sheets.ts')
      const link = await toLink(withOrigin(sent, originOfSent(this.session)), await basesFor(worksheet))
      const address = addressOf(link)
      if (this.isLate(worksheet, figuresOnly)) return
      this.address = address
      this.size = linkSize(address)
    })
  }

  private encode(): Promise<void> {
    const { worksheet, figuresOnly } = this
    return this.trying(words.noCode, async () => {
      const { codeFor } = await import('../paper/qr.ts')
      const { basesFor } = await import('../templates/base-sheets.ts')
      await this.remember()
      const code = await codeFor(this.session.open.sheet, {
        addressOf,
        formulas: !figuresOnly,
        along: { origin: originOfSent(this.session) },
        bases: await basesFor(worksheet),
      })
      if (!this.isLate(worksheet, figuresOnly)) this.code = code ?? 'too large'
    })
  }

  private async copy(): Promise<void> {
    await this.remember()
    try {
      await navigator.clipboard.writeText(this.address)
      this.said = words.copied
    } catch {
      this.link.focus()
      this.link.select()
      this.said = words.copyByHand
    }
  }

  /** What is sent is compared with what comes back; where that cannot be saved, it is sent all the same. */
  private remember(): Promise<void> {
    return rememberSent(this.session).catch(() => {})
  }

  private save(): Promise<void> {
    return this.trying(
      (why) => why,
      async () => {
        const { saveFile } = await import('../../storage/exchange/file.ts')
        await this.remember()
        this.said = (await saveFile(withOrigin(this.worksheet, originOfSent(this.session)))) ? words.savedFile : ''
      },
    )
  }

  private saveAsTemplate(): Promise<void> {
    return this.trying(
      (why) => why,
      async () => {
        const { StudioTemplates } = await import('../../kit/studio-templates.ts')
        await new StudioTemplates(this.session.store).put(this.worksheet)
        this.said = words.onShelf
      },
    )
  }

  private savePage(): Promise<void> {
    return this.trying(words.noPage, async () => {
      const { savePage } = await import('../paper/give-out.ts')
      this.said = (await savePage(this.session, this.working)) ? words.savedPage : ''
    })
  }

  private print(): Promise<void> {
    return this.trying(words.notPrinted, async () => {
      const { printSession } = await import('../paper/give-out.ts')
      await printSession(this.session, this.working)
    })
  }

  private shownCode(): TemplateResult | typeof nothing {
    const { code } = this
    if (!this.showsCode || !code) return nothing
    if (code === 'too large') return html`<p>${words.tooLargeForCode}</p>`
    const width = code.modules * MODULE_PX
    const node = { ...code.node, attributes: { ...code.node.attributes, width, height: width } }
    return html`${drawTree(node)}
      <p class="small quiet">${code.words}</p>`
  }

  /** The client's texts that leave with a link or a file. */
  private carried(): TemplateResult | typeof nothing {
    const texts = carriedTexts(this.worksheet)
    if (texts.length === 0) return nothing
    return html`
      <div class="small">
        <p>${COPY_WORDS.carries}</p>
        <ul>
          ${texts.map(({ label, text }) => html`<li>${label}: ${text}</li>`)}
        </ul>
      </div>
    `
  }

  private links(): TemplateResult {
    const save = this.size?.carried === false ? html`<b>${words.saveFile}</b>` : words.saveFile
    return html`
      <h3>${words.asALink}</h3>
      <p>${words.aboutLink}</p>
      ${this.carried()}
      ${ticked(words.withoutFormulas, this.figuresOnly, (on) => {
        this.figuresOnly = on
      })}
      <div class="link">
        <input
          id="link"
          class="field mono"
          type="text"
          readonly
          aria-label=${words.link}
          aria-describedby="size"
          .value=${this.address}
          @focus=${(event: Event) => (event.target as HTMLInputElement).select()}
        >
        <button type="button" class="press ${this.address === '' ? '' : 'primary'}" ?disabled=${this.address === ''} @click=${() => void this.copy()}>${words.copyLink}</button>
      </div>
      <p class="small quiet" id="size">${this.size?.words ?? nothing}</p>
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.save()}>${save}</button>
        <button
          type="button"
          class="press"
          aria-expanded=${this.showsCode}
          @click=${() => {
            this.showsCode = !this.showsCode
          }}
        >${this.showsCode ? words.hideCode : words.showCode}</button>
      </div>
      ${this.shownCode()}
    `
  }

  override render(): TemplateResult {
    return html`
      <section aria-labelledby="share">
        <h2 id="share" tabindex="-1">${words.share}</h2>
        ${this.links()}
        <h3>${words.asATemplate}</h3>
        <p>${words.aboutTemplate}</p>
        <div class="presses">
          <button type="button" class="press" @click=${() => void this.saveAsTemplate()}>${words.putOnShelf}</button>
        </div>
        <h3>${words.onPaper}</h3>
        <p>${words.aboutPaper}</p>
        ${ticked(words.working, this.working, (on) => {
          this.working = on
        })}
        <div class="presses">
          <button type="button" class="press" @click=${() => void this.print()}>${words.print}</button>
          <button type="button" class="press" @click=${() => void this.savePage()}>${words.savePage}</button>
        </div>
        <p class="small" role="status">${this.said}</p>
      </section>
    `
  }
}
