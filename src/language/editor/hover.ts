import { syntaxTree } from '@codemirror/language'
import { hoverTooltip } from '@codemirror/view'
import type { Guide } from '../values/function-record.ts'
import type { Scope } from '../values/scope.ts'
import { describeType } from '../values/types.ts'
import { recordDom } from './record-dom.ts'
import { completionWords } from './words.ts'

/** The record of the function under the pointer, or what kind of value a cell has and what it is now. */
export const hoverHelp = (
  scope: () => Scope,
  guide: Guide,
  called: (name: string) => string,
  figure: (name: string) => string,
) =>
  hoverTooltip((view, pos, side) => {
    const node = syntaxTree(view.state).resolveInner(pos, side)
    if (node.name !== 'Name') return null
    const name = view.state.sliceDoc(node.from, node.to)
    const now = scope()
    const record = now.library.get(name)
    const type = now.typeOf(name)
    if (!record && type === undefined) return null
    return {
      pos: node.from,
      end: node.to,
      above: false,
      create() {
        if (record && type === undefined) return { dom: recordDom(record, guide.get(name)) }
        const dom = document.createElement('div')
        dom.className = 'record'
        const kind = type === 'unknown' || type === undefined ? completionWords.inError : describeType(type)
        dom.textContent = [`${called(name)}: ${kind}`, figure(name)].filter(Boolean).join(', ')
        return { dom }
      },
    }
  })
