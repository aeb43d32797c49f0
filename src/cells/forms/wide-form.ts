import { css, LitElement, nothing } from 'lit'
import { customElement, property, state } from 'lit/decorators.js'
import { labelledStyle } from '../fields/labelled.ts'
import type { WideCell } from '../shared/cell-view.ts'
import { field, shared } from '../style/styles.ts'
import type { Form } from './form-fields.ts'

type Fields = (form: Form, cell: never) => unknown

const FETCH: Readonly<Record<WideCell['kind'], () => Promise<{ readonly form: Fields }>>> = {
  steps: () => import('./steps-form.ts'),
  table: () => import('./table-form.ts'),
  range: () => import('./range-form.ts'),
  variants: () => import('./variants-form.ts'),
  run: () => import('./run-form.ts'),
  frame: () => import('./frame-form.ts'),
  function: () => import('./function-form.ts'),
}

/** The form of a cell that takes the whole width, loaded when one is first opened. */
@customElement('wide-form')
export class WideForm extends LitElement {
  static override styles = [
    shared,
    field,
    labelledStyle,
    css`
      :host {
        display: contents;
      }
      .all {
        grid-column: 1 / -1;
      }
      h4 {
        margin: 0.8rem 0 0;
        font-size: 1rem;
      }
    `,
  ]

  @property({ attribute: false }) form!: Form
  @state() private fields: Fields | undefined

  protected override async getUpdateComplete(): Promise<boolean> {
    await this.fetching
    return super.getUpdateComplete()
  }
  private fetching: Promise<void> | undefined

  override willUpdate(): void {
    this.fetching ??= FETCH[(this.form.view.cell as WideCell).kind]().then(({ form }) => {
      this.fields = form
    })
  }

  override render(): unknown {
    return this.fields ? this.fields(this.form, this.form.view.cell as never) : nothing
  }
}
