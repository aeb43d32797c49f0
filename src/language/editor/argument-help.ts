import { syntaxTree } from '@codemirror/language'
import { type EditorState, StateField } from '@codemirror/state'
import { showTooltip, type Tooltip } from '@codemirror/view'
import type { SyntaxNode } from '@lezer/common'
import { parameterText } from '../checking/record-text.ts'
import type { Callable, Parameter } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'

/** The call whose arguments the caret is among, and which argument it is in. */
interface PresentCall {
  readonly record: Callable
  readonly from: number
  readonly parameter: Parameter | undefined
}

/** The innermost call of a known function with the caret between its brackets. */
function presentCall(state: EditorState, scope: Scope): PresentCall | undefined {
  const { head } = state.selection.main
  for (let node: SyntaxNode | null = syntaxTree(state).resolveInner(head, -1); node; node = node.parent) {
    if (node.name !== 'Call') continue
    const name = node.firstChild
    const record = name && scope.library.get(state.sliceDoc(name.from, name.to))
    const open = name ? state.sliceDoc(name.to, node.to).indexOf('(') : -1
    if (!record || !name || open < 0 || head <= name.to + open) continue
    if (head === node.to && state.sliceDoc(head - 1, head) === ')') continue
    return { record, from: node.from, parameter: parameterAt(record, state.sliceDoc(name.to + open + 1, head)) }
  }
  return undefined
}

/** The parameter that what is typed of the arguments has come to: by its name, else by its place. */
function parameterAt({ parameters, variadic }: Callable, typed: string): Parameter | undefined {
  const pieces = ['']
  let depth = 0
  for (const sign of typed) {
    if (/[([{]/.test(sign)) depth++
    else if (/[)\]}]/.test(sign)) depth--
    if (sign === ',' && depth === 0) pieces.push('')
    else pieces[pieces.length - 1] += sign
  }
  const named = /^\s*([A-Za-z]\w*)\s*:/.exec(pieces.at(-1) as string)?.[1]
  if (named !== undefined) return parameters.find(({ name }) => name === named)
  const place = pieces.length - 1
  return parameters[variadic ? Math.min(place, parameters.length - 1) : place]
}

function helpDom({ record, parameter }: PresentCall): HTMLElement {
  const dom = document.createElement('div')
  dom.className = 'record arguments'
  const call = document.createElement('p')
  call.className = 'record-call'
  call.append(`${record.name}(`)
  for (const [at, one] of record.parameters.entries()) {
    const word = document.createElement(one === parameter ? 'b' : 'span')
    word.textContent = one.name
    if (one === parameter) word.setAttribute('aria-current', 'true')
    call.append(at === 0 ? '' : ', ', word)
  }
  call.append(record.variadic ? ', …)' : ')')
  dom.append(call)
  if (parameter) {
    const about = document.createElement('p')
    about.textContent = [parameter.about, parameterText(parameter)].filter(Boolean).join(': ')
    dom.append(about)
  }
  return dom
}

/** Keeps the arguments of the call in view while it is typed, with the current one marked. */
export const argumentHelp = (scope: () => Scope) => {
  const tooltip = (state: EditorState): Tooltip | null => {
    const call = presentCall(state, scope())
    return call ? { pos: call.from, above: true, create: () => ({ dom: helpDom(call) }) } : null
  }
  return StateField.define<Tooltip | null>({
    create: tooltip,
    update: (before, transaction) =>
      transaction.docChanged || transaction.selection ? tooltip(transaction.state) : before,
    provide: (field) => showTooltip.from(field),
  })
}
