import type { FunctionRecord } from '../function-record.ts'
import { parameterInWords, resultInWords, signature } from './record-text.ts'

function element(tag: string, className: string, ...children: (Node | string)[]): HTMLElement {
  const made = document.createElement(tag)
  if (className) made.className = className
  made.append(...children)
  return made
}

/** A function's record laid out for the hover help and for completion. */
export function recordDom(record: FunctionRecord): HTMLElement {
  const parameters = record.parameters.flatMap((parameter) => [
    element('dt', '', parameter.name),
    element('dd', '', `${parameter.about}: ${parameterInWords(parameter)}`),
  ])
  return element(
    'div',
    'record',
    element('p', 'record-call', signature(record)),
    element('p', '', record.about),
    ...(parameters.length > 0 ? [element('dl', '', ...parameters)] : []),
    element('p', '', `Gives ${resultInWords(record)}. `, element('span', 'record-formula', record.formula)),
    ...(record.validity ? [element('p', '', `Holds for: ${record.validity}`)] : []),
    ...(record.cautions ?? []).map((caution) => element('p', '', element('b', '', 'Caution: '), caution)),
    element('p', 'record-source', `Source: ${record.source}`),
  )
}
