import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { USUAL_SEED } from '../../worksheet/simulation/draws.ts'
import type { CheckView } from '../shared/cell-view.ts'
import { shared } from '../style/styles.ts'
import { shareText } from './study-text.ts'
import { WatchedStudy } from './watched-study.ts'
import { simulationWords as words } from './words.ts'

const TRIES = 50_000

/** For a check that does not pass over all limits: the share of tries in which it does, simulated in idle time. */
@customElement('passes-share')
export class PassesShare extends LitElement {
  static override styles = [shared]

  @property({ attribute: false }) view!: CheckView
  private readonly watched = new WatchedStudy(this)

  override willUpdate(): void {
    const { sheet, cell } = this.view
    this.watched.want(sheet, { names: [cell.name], tries: TRIES, seed: USUAL_SEED, inIdleTime: true })
  }

  override render(): TemplateResult | typeof nothing {
    const share = this.watched.study?.passes.get(this.view.cell.name)
    return share === undefined ? nothing : html`<p class="small">${words.passesHere(shareText(share))}</p>`
  }
}
