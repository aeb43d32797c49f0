import type { TemplateResult } from 'lit'
import type { Schedule } from '../../worksheet/index.ts'
import { type Form, head } from '../cell-form.ts'

export const form = (form: Form, cell: Schedule): TemplateResult => head(form, cell, false)
