import type { TemplateResult } from 'lit'
import type { Range } from '../../worksheet/index.ts'
import { type Form, textField } from '../cell-form.ts'

export const form = (form: Form, cell: Range): TemplateResult =>
  textField(form, cell, 'title', 'Title', { className: 'all first' })
