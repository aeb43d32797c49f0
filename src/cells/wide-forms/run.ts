import type { TemplateResult } from 'lit'
import type { Run } from '../../worksheet/index.ts'
import { type Form, textField } from '../cell-form.ts'

export const form = (form: Form, cell: Run): TemplateResult =>
  textField(form, cell, 'title', 'Title', { className: 'all first' })
