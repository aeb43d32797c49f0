import { html, type TemplateResult } from 'lit'
import type { Schedule } from '../../worksheet/index.ts'
import { type Form, head } from './cell-form.ts'
import './table-form.ts'

export const form = (form: Form, cell: Schedule): TemplateResult => html`
  ${head(form, cell, false)}
  <schedule-form class="all" .form=${form} .cell=${cell}></schedule-form>
`
