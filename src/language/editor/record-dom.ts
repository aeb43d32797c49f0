import { signature } from '../checking/arguments.ts'
import { parameterText, resultText } from '../checking/record-text.ts'
import { RECORD_WORDS } from '../checking/words.ts'
import type { Callable, GuideText } from '../values/function-record.ts'

function element(tag: string, className: string, ...children: (Node | string)[]): HTMLElement {
  const made = document.createElement(tag)
  if (className) made.className = className
  made.append(...children)
  return made
}

/** A function laid out for the hover help and for completion, with its text in the guide. */
export function recordDom(record: Callable, guide: GuideText | undefined): HTMLElement {
  const parameters = record.parameters.flatMap((parameter) => [
    element('dt', '', parameter.name),
    element('dd', '', `${parameter.about}: ${parameterText(parameter)}`),
  ])
  return element(
    'div',
    'record',
    element('p', 'record-call', signature(record)),
    element('p', '', guide?.about ?? ''),
    ...(parameters.length > 0 ? [element('dl', '', ...parameters)] : []),
    element(
      'p',
      '',
      `${RECORD_WORDS.gives(resultText(record))}. `,
      element('span', 'record-formula', guide?.formula ?? ''),
    ),
    ...(guide?.validity ? [element('p', '', RECORD_WORDS.appliesTo(guide.validity))] : []),
    ...(record.cautions ?? []).map((caution) =>
      element('p', '', element('b', '', `${RECORD_WORDS.caution} `), caution),
    ),
    ...(guide ? [element('p', 'record-source', RECORD_WORDS.source(guide.source))] : []),
  )
}
