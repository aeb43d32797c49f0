import { css, html, LitElement, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import { field, shared } from '../../cells/style/styles.ts'
import type { SetUp } from '../../worksheet/compose/compose.ts'
import type { OfferedSetUp, PartLibrary } from '../../worksheet/compose/part-library.ts'
import { partsInSetUp } from '../../worksheet/compose/recompose.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { composeWords as words } from './words.ts'

/** A part that is chosen for a later set-up. */
export interface PartOfSetUp {
  readonly prefix: string
  readonly part: string
}

/** The set-ups that may follow the first, and those that do, which can be removed. */
@customElement('set-up-choice')
export class SetUpChoice extends LitElement {
  static override styles = [
    shared,
    field,
    css`
      h3 {
        font-size: 1rem;
        padding-block: 0.9rem 0.2rem;
        border-block-end: 1px solid var(--ink);
      }
      p {
        padding-block: 0.4rem 0;
      }
      .presses {
        padding-block: 0.6rem 0.2rem;
      }
      .press b {
        padding-inline-end: 0.5rem;
      }
      fieldset {
        display: grid;
        gap: 0.4rem;
        justify-items: start;
        margin: 0.6rem 0 0;
        padding: 0.4rem 0.6rem 0.6rem;
        border: 1px solid var(--rule);
      }
      label {
        display: grid;
        grid-template-columns: 7rem minmax(0, 20rem);
        align-items: baseline;
        gap: 0.5rem;
        inline-size: 100%;
      }
    `,
  ]

  @property({ attribute: false }) offered: readonly OfferedSetUp[] = []
  @property({ attribute: false }) there: readonly SetUp[] = []
  @property({ attribute: false }) library!: PartLibrary
  @property({ attribute: false }) worksheet!: Worksheet

  private say<Detail>(name: string, detail: Detail): void {
    this.dispatchEvent(new CustomEvent<Detail>(name, { detail, bubbles: true, composed: true }))
  }

  override render(): TemplateResult {
    return html`
      <h3>${words.anotherSetUp}</h3>
      <p class="small quiet">${words.aboutSetUps}</p>
      <div class="presses">
        ${this.offered.map(
          (one) => html`
            <button type="button" class="press" @click=${() => this.say('set-up-chosen', one)}>
              <b>${one.title}</b> <span class="small quiet">${one.about}</span>
            </button>
          `,
        )}
      </div>
      ${this.there.map(
        (one) => html`
          <fieldset>
            <legend>${one.title}</legend>
            ${this.choices(one)}
            <button type="button" class="press" @click=${() => this.say('set-up-removed', one)}>${words.removeSetUp(one.title)}</button>
          </fieldset>
        `,
      )}
    `
  }

  /** What a later set-up does otherwise than the first, role by role. */
  private choices({ prefix }: SetUp): readonly TemplateResult[] {
    const { library, worksheet } = this
    return partsInSetUp(library, worksheet, prefix).flatMap((current) => {
      const role = library.roles.find(({ role: id }) => id === current.role)
      const others = [...library.parts.values()].filter((part) => part.role === current.role)
      if (!role?.in_set_up || others.length < 2) return []
      const choose = (event: Event): void => {
        const { value } = event.target as HTMLSelectElement
        this.say<PartOfSetUp>('set-up-part-chosen', { prefix, part: value })
      }
      return [
        html`
          <label>
            <span>${role.title}</span>
            <select class="field" @change=${choose}>
              ${others.map((part) => html`<option value=${part.id} ?selected=${part.id === current.id}>${part.offer}</option>`)}
            </select>
          </label>
        `,
      ]
    })
  }
}
