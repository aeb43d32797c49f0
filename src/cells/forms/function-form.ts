import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { customElement, property } from 'lit/decorators.js'
import type { Scope } from '../../language/index.ts'
import { functionOutcomeOf, functionSignature } from '../../worksheet/analysis/function-outcome.ts'
import { declaredUnit, type FunctionCell } from '../../worksheet/index.ts'
import { labelled, labelledStyle } from '../fields/labelled.ts'
import { exampleLine, exampleStyle } from '../function/function-cell.ts'
import { functionWords as words } from '../function/words.ts'
import { openedWords } from '../opened/words.ts'
import type { WideView } from '../shared/cell-view.ts'
import { field, shared } from '../style/styles.ts'
import { type Form, formula, textField, withText } from './form-fields.ts'
import { formWords } from './words.ts'
import '../fields/formula-field.ts'
import { argumentType } from '../../worksheet/own-functions/define-function.ts'

type Argument = NonNullable<FunctionCell['arguments']>[number]

let acts = 0

/** The arguments and the examples of a function in Build. */
@customElement('function-form')
export class FunctionForm extends LitElement {
  static override styles = [shared, field, labelledStyle, exampleStyle]

  @property({ attribute: false }) form!: Form
  @property({ attribute: false }) cell!: FunctionCell

  private put(cell: Partial<FunctionCell>, key: string): void {
    this.form.put({ ...this.cell, ...cell } as FunctionCell, `${key}:${this.cell.id}`)
  }

  private argument(argument: Argument, at: number): TemplateResult {
    const args = this.cell.arguments ?? []
    const put = (key: 'name' | 'unit' | 'about', text: string): void =>
      this.put({ arguments: args.with(at, withText(argument, key, text, key !== 'name')) }, `argument-${at}-${key}`)
    const called = argument.name || words.argument(at + 1)
    return html`
      <div class="row">
        ${labelled({ label: words.argument(at + 1), value: argument.name, put: (text) => put('name', text) })}
        ${labelled({
          label: words.unitOf(called),
          value: argument.unit ?? '',
          put: (text) => put('unit', text),
          wrong: declaredUnit(argument.unit).error?.message,
        })}
        ${labelled({ label: words.aboutOf(called), value: argument.about ?? '', put: (text) => put('about', text) })}
        <button type="button" class="word" @click=${() => this.put({ arguments: args.toSpliced(at, 1) }, `remove-${++acts}`)}>
          ${openedWords.remove}<span class="unseen"> ${called}</span>
        </button>
      </div>
    `
  }

  private example(at: number): TemplateResult {
    const examples = this.cell.examples ?? []
    const example = examples[at] as (typeof examples)[number]
    const put = (key: 'formula' | 'gives', text: string): void =>
      this.put({ examples: examples.with(at, withText(example, key, text, false)) }, `example-${at}-${key}`)
    return html`
      <div class="row">
        ${labelled({ label: words.example(at + 1), value: example.formula, placeholder: `${this.cell.name}(…)`, put: (text) => put('formula', text) })}
        ${labelled({ label: words.gives(at + 1), value: example.gives, put: (text) => put('gives', text) })}
        <button type="button" class="word" @click=${() => this.put({ examples: examples.toSpliced(at, 1) }, `remove-${++acts}`)}>
          ${openedWords.remove}<span class="unseen"> ${words.example(at + 1)}</span>
        </button>
      </div>
    `
  }

  override render(): TemplateResult {
    const { cell } = this
    const { sheet } = this.form.view as WideView<FunctionCell>
    const args = cell.arguments ?? []
    const examples = cell.examples ?? []
    const outcome = functionOutcomeOf(sheet.engine, cell.id)
    const inside: Form = {
      ...this.form,
      scope: (): Scope => ({
        library: sheet.engine.scope().library,
        typeOf: (name) => argumentType(cell, name),
        names: () => args.map(({ name }) => name),
      }),
    }
    return html`
      <h4>${words.arguments}</h4>
      ${args.map((one, at) => this.argument(one, at))}
      <button type="button" class="word add-argument" @click=${() => this.put({ arguments: [...args, { name: '' }] }, `add-${++acts}`)}>${words.addArgument}</button>
      ${formula(inside, cell, words.formula, cell.formula ?? '', outcome?.diagnostics ?? [], (text) => ({ ...cell, formula: text }), 'formula')}
      <h4>${words.examples}</h4>
      ${examples.map((_, at) => this.example(at))}
      <button type="button" class="word add-example" @click=${() => this.put({ examples: [...examples, { formula: '', gives: '' }] }, `add-${++acts}`)}>${words.addExample}</button>
      ${outcome && outcome.examples.length > 0 ? html`<ul class="examples">${outcome.examples.map(exampleLine)}</ul>` : nothing}
      ${outcome?.isDefined ? html`<p class="small quiet">${words.howToCall(functionSignature(cell))}</p>` : nothing}
    `
  }
}

/** The fields of a function in Build. */
export const form = (form: Form, cell: FunctionCell): TemplateResult => html`
  ${textField(form, cell, 'label', formWords.label, { className: 'first' })}
  ${textField(form, cell, 'name', words.name, { optional: false })}
  ${labelled({
    label: formWords.unit,
    value: cell.unit ?? '',
    put: (text) => form.put(withText(cell, 'unit', text), `unit:${cell.id}`),
    wrong: declaredUnit(cell.unit).error?.message,
  })}
  ${textField(form, cell, 'about', words.about, { className: 'all' })}
  <function-form class="all" .form=${form} .cell=${cell}></function-form>
`
