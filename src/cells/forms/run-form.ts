import { html, nothing, type TemplateResult } from 'lit'
import { checkFormula, type Diagnostic, type Scope } from '../../language/index.ts'
import type { Run, Sheet, TableCell } from '../../worksheet/index.ts'
import { RUN_GROUPS, RUN_INPUTS, type RunGroup, type RunInput } from '../../worksheet/run/inputs.ts'
import { runFedByName } from '../../worksheet/run/inputs-by-name.ts'
import { tableOf } from '../../worksheet/table/table-node.ts'
import { selected } from '../fields/labelled.ts'
import { labelOf, type WideView } from '../shared/cell-view.ts'
import { type Form, formula, textField } from './form-fields.ts'
import { formWords, runFormWords } from './words.ts'

const tablesIn = ({ cells }: Sheet): TableCell[] => cells.filter((cell) => cell.kind === 'table')

/** A run of another table keeps its formulas and takes missing ones from columns and cells with the usual names. */
export function runFedBy(cell: Run, of: string, sheet: Sheet): Run {
  const table = tablesIn(sheet).find(({ name }) => name === of)
  if (!table) {
    const { of: _, ...rest } = cell
    return rest as Run
  }
  const fed = runFedByName(
    table.columns.map(({ name }) => name),
    sheet.scopeFor().names(),
  )
  return { ...cell, of, from: { ...fed, ...cell.from } }
}

function withInput(cell: Run, input: string, text: string): Run {
  const { [input]: _, ...others } = cell.from
  return { ...cell, from: text === '' ? others : { ...others, [input]: text } }
}

const requirement = ({ needed, otherwise }: RunInput): string =>
  needed ? runFormWords.required : otherwise === undefined ? '' : runFormWords.otherwise(otherwise)

/** The names a row of the table can use: its columns, then the cells of the sheet. */
function rowScope(sheet: Sheet, of: string | undefined): Scope {
  return tableOf(of === undefined ? undefined : sheet.engine.named(of))?.scope ?? sheet.scopeFor()
}

/** What is wrong with a formula as it is typed; an empty one is only missing. */
function problemsOf(text: string, scope: Scope): readonly Diagnostic[] {
  return text.trim() === '' ? [] : checkFormula(text, scope).diagnostics
}

/** What is edited of a run in Build. */
export const form = (form: Form, cell: Run): TemplateResult => {
  const { sheet } = form.view as WideView<Run>
  const inSheet = sheet.scopeFor()
  const inRow = rowScope(sheet, cell.of)
  const tables = tablesIn(sheet)
  const one = (input: RunInput): TemplateResult => {
    const scope = input.over === 'row' ? inRow : inSheet
    const text = cell.from[input.name] ?? ''
    return formula(
      { ...form, scope: () => scope },
      cell,
      `${input.label}${requirement(input)}`,
      text,
      problemsOf(text, scope),
      (next) => withInput(cell, input.name, next),
      `from-${input.name}`,
    )
  }
  return html`
    ${textField(form, cell, 'title', formWords.title, { className: 'all first' })}
    ${selected({
      label: runFormWords.table,
      value: cell.of ?? '',
      options: [
        ['', tables.length === 0 ? runFormWords.noTable : runFormWords.none],
        ...tables.map((table) => [table.name, labelOf(table)] as const),
      ],
      put: (of) => form.put(runFedBy(cell, of, sheet), `of:${cell.id}`),
      className: 'all',
    })}
    ${(Object.keys(RUN_GROUPS) as RunGroup[]).map(
      (group) => html`
        <h4 class="all">${RUN_GROUPS[group]}</h4>
        ${group === 'original' ? html`<p class="all small quiet">${runFormWords.overRow}</p>` : nothing}
        ${RUN_INPUTS.filter((input) => input.group === group).map(one)}
      `,
    )}
  `
}
