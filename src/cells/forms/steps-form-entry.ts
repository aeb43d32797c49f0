import { html, type TemplateResult } from 'lit'
import type { Steps } from '../../worksheet/index.ts'
import { type Form, textField } from './cell-form.ts'
import './steps-form.ts'

export const form = (form: Form, cell: Steps): TemplateResult => html`
  ${textField(form, cell, 'title', 'Title', { className: 'all first' })}
  <steps-form class="all" .form=${form}></steps-form>
`
