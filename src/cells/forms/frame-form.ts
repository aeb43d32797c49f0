import { html, type TemplateResult } from 'lit'
import type { Frame } from '../../worksheet/index.ts'
import { labelled } from '../fields/labelled.ts'
import { frameWords as words } from '../frame/words.ts'
import { type Form, head, textField } from './form-fields.ts'

/** What the camera wrote that a given may take. */
const PARTS = [
  ['aperture', words.aperture],
  ['time', words.time],
  ['iso', words.iso],
  ['focal', words.focal],
  ['when', words.when],
] as const

/** The fields a frame is built from. Its areas are marked on the picture itself, when one is open. */
export const form = (form: Form, cell: Frame): TemplateResult => html`
  ${head(form, cell, false)}
  ${textField(form, cell, 'hint', words.hint, { className: 'all', lines: 'few' })}
  ${PARTS.map(([part, label]) =>
    labelled({
      label,
      value: cell.fills?.[part] ?? '',
      put: (name) => {
        const { [part]: _, ...others } = cell.fills ?? {}
        form.put(
          { ...cell, fills: name.trim() === '' ? others : { ...others, [part]: name.trim() } },
          `fills-${part}:${cell.id}`,
        )
      },
      wrong: cell.fills?.[part] !== undefined && !isGiven(form, cell.fills[part] as string) ? words.noGiven : undefined,
    }),
  )}
`

const isGiven = ({ view }: Form, name: string): boolean =>
  'sheet' in view && view.sheet.cells.some((cell) => cell.kind === 'given' && cell.name === name)
