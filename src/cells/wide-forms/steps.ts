import type { TemplateResult } from 'lit'
import type { Steps } from '../../worksheet/index.ts'
import { type Form, textField } from '../cell-form.ts'

export const form = (form: Form, cell: Steps): TemplateResult =>
  textField(form, cell, 'title', 'Title', { className: 'all first' })
