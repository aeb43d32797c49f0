import { signature } from '../checking/arguments.ts'
import { parameterText, resultText } from '../checking/record-text.ts'
import type { Callable, GuideText } from '../values/function-record.ts'

function element(tag: string, className: string, ...children: (Node | string)[]): HTMLElement {
  const made = document.createElement(tag)
  if (className) made.className = className
  made.append(...children)
  return made
}

/** A function laid out for the hover help and for completion, with what the guide tells of it. */
export function recordDom(record: Callable, told: GuideText | undefined): HTMLElement {
  const parameters = record.parameters.flatMap((parameter) => [
    element('dt', '', parameter.name),
    element('dd', '', `${parameter.about}: ${parameterText(parameter)}`),
  ])
  return element(
    'div',
    'record',
    element('p', 'record-call', signature(record)),
    element('p', '', told?.about ?? ''),
    ...(parameters.length > 0 ? [element('dl', '', ...parameters)] : []),
    element('p', '', `Gives ${resultText(record)}. `, element('span', 'record-formula', told?.formula ?? '')),
    ...(told?.validity ? [element('p', '', `Holds for: ${told.validity}`)] : []),
    ...(record.cautions ?? []).map((caution) => element('p', '', element('b', '', 'Caution: '), caution)),
    ...(told ? [element('p', 'record-source', `Source: ${told.source}`)] : []),
  )
}
