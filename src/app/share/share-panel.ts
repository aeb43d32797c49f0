import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { customElement, property, query, state } from 'lit/decorators.js'
import { drawTree } from '../../cells/shared/draw-tree.ts'
import { labelledStyle, ticked } from '../../cells/shared/labelled.ts'
import { field, shared } from '../../cells/style/styles.ts'
import type { LinkSize } from '../../storage/exchange/link.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { addressOf } from '../common/route.ts'
import type { SheetCode } from '../paper/qr.ts'
import type { SheetSession } from '../session/sheet-session.ts'

/** On a screen a module of a QR code is this many px wide, where there is room. */
const MODULE_PX = 4

/** Ways of giving the sheet to someone: a link or a QR code that holds it, a file, a page to read, paper. */
@customElement('share-panel')
export class SharePanel extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
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

  /** Says what went wrong, where something did. */
  private async trying(failure: string, work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.said = `${failure}${(error as Error).message}`
    }
  }

  /** A later key, or the tick, has made a later link. */
  private isLate(worksheet: Worksheet, figuresOnly: boolean): boolean {
    return worksheet !== this.worksheet || figuresOnly !== this.figuresOnly
  }

  private make(): Promise<void> {
    const { worksheet, figuresOnly } = this
    return this.trying('No link could be made: ', async () => {
      const { linkSize, toLink } = await import('../../storage/exchange/link.ts')
      const sent = figuresOnly
        ? (await import('../../storage/figures/figures-only.ts')).figuresOnly(this.session.open.sheet)
        : worksheet
      const address = addressOf(await toLink(sent))
      if (this.isLate(worksheet, figuresOnly)) return
      this.address = address
      this.size = linkSize(address)
    })
  }

  private encode(): Promise<void> {
    const { worksheet, figuresOnly } = this
    return this.trying('No QR code could be made: ', async () => {
      const { codeFor } = await import('../paper/qr.ts')
      const code = await codeFor(this.session.open.sheet, addressOf, !figuresOnly)
      if (!this.isLate(worksheet, figuresOnly)) this.code = code ?? 'too large'
    })
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

  private save(): Promise<void> {
    return this.trying('', async () => {
      const { saveFile } = await import('../../storage/exchange/file.ts')
      this.said = (await saveFile(this.worksheet)) ? 'Saved as a file.' : ''
    })
  }

  private savePage(): Promise<void> {
    return this.trying('No page could be made: ', async () => {
      const { savePage } = await import('../paper/give-out.ts')
      this.said = (await savePage(this.session, this.working)) ? 'Saved as a page.' : ''
    })
  }

  private print(): Promise<void> {
    return this.trying('It could not be printed: ', async () => {
      const { printSession } = await import('../paper/give-out.ts')
      await printSession(this.session, this.working)
    })
  }

  private shownCode(): TemplateResult | typeof nothing {
    const { code } = this
    if (!this.showsCode || !code) return nothing
    if (code === 'too large')
      return html`<p>This sheet is too large for a QR code. Send the link or the file to the tablet.</p>`
    const width = code.modules * MODULE_PX
    const node = { ...code.node, attributes: { ...code.node.attributes, width, height: width } }
    return html`${drawTree(node)}
      <p class="small quiet">${code.words}</p>`
  }

  private links(): TemplateResult {
    const words = this.size?.carried === false ? html`<b>Save as a file</b>` : 'Save as a file'
    return html`
      <h3>As a link</h3>
      <p>The link holds the sheet as it stands now. It goes to no server; whoever opens it gets a copy.</p>
      ${ticked('Results and givens only, without the formulas', this.figuresOnly, (on) => {
        this.figuresOnly = on
      })}
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
      <p class="small quiet" id="size">${this.size?.words ?? nothing}</p>
      <div class="presses">
        <button type="button" class="press" @click=${() => void this.save()}>${words}</button>
        <button
          type="button"
          class="press"
          aria-expanded=${this.showsCode}
          @click=${() => {
            this.showsCode = !this.showsCode
          }}
        >${this.showsCode ? 'Hide the QR code' : 'QR code for a tablet'}</button>
      </div>
      ${this.shownCode()}
    `
  }

  override render(): TemplateResult {
    return html`
      <section aria-labelledby="share">
        <h2 id="share" tabindex="-1">Share</h2>
        ${this.links()}
        <h3>On paper, or as a page to read</h3>
        <p>A job sheet, or one HTML file with the figures and drawings that opens in any browser.</p>
        ${ticked('With the working: formulas, and the figures put in', this.working, (on) => {
          this.working = on
        })}
        <div class="presses">
          <button type="button" class="press" @click=${() => void this.print()}>Print</button>
          <button type="button" class="press" @click=${() => void this.savePage()}>Save as a page</button>
        </div>
        <p class="small" role="status">${this.said}</p>
      </section>
    `
  }
}
