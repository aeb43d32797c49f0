import type { SyntaxNode } from '@lezer/common'
import { nearest } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import { CONSTANTS, type Scope } from '../values/scope.ts'
import { describeType, list, PLAIN_NUMBER, sameType, type Type } from '../values/types.ts'
import { unitFixFor } from './arguments.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import type { TypedNode } from './typed-tree.ts'

const cellType = (type: Type | 'unknown' | undefined): Type | undefined => (type === 'unknown' ? undefined : type)

export function checkName(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const name = c.source(node)
  const { from, to } = node
  const known = c.scope.typeOf(name)
  if (known !== undefined) {
    c.useName({ name, from, to })
    const type = cellType(known)
    return type && { op: 'cell', name, type, from, to }
  }
  const value = CONSTANTS.get(name)
  if (value !== undefined) return { op: 'constant', value, type: PLAIN_NUMBER, from, to }
  if (name === 'infinity') return c.report(problem('«infinity» stands only as an argument of a function.', from, to))
  c.useName({ name, from, to })
  return c.report(unknownName(c, name, node))
}

function unknownName(c: CheckContext, name: string, node: SyntaxNode): Diagnostic {
  const { from, to } = node
  const record = c.scope.library.get(name)
  if (record) return problem(`«${name}» is a function; its arguments stand in parentheses.`, from, to)
  const after = /^ ?\/ ?(\d+(?:\.\d+)?)/.exec(c.text.slice(to))
  if (name === 'f' && after)
    return problem(
      `There is no cell named «f». The f-number is written without spaces: f/${after[1]}.`,
      from,
      to + after[0].length,
      [fix(`f/${after[1]}`, from, to + after[0].length)],
    )
  const near = nearestName(c.scope, name)
  return problem(
    `There is no cell named «${name}».${near ? ` Did you mean «${near}»?` : ''}`,
    from,
    to,
    near ? [fix(near, from, to)] : [],
  )
}

function nearestName(scope: Scope, name: string): string | undefined {
  if (!scope.nearestName) return nearest(name, [...scope.names(), ...CONSTANTS.keys()])
  return scope.nearestName(name) ?? nearest(name, CONSTANTS.keys())
}

export function checkPart(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [ofNode, dotNode, partNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const part = c.source(partNode)
  if (ofNode.name === 'Number' && ofNode.to === dotNode.from) {
    const number = c.source(ofNode)
    return c.report(
      problem(`A digit is missing after the decimal point of «${number}.».`, ofNode.from, dotNode.to, [
        fix(`${number}.0 ${part}`, ofNode.from, partNode.to),
      ]),
    )
  }
  const of = c.check(ofNode)
  if (!of) return undefined
  if (of.type.kind !== 'record')
    return c.report(problem(`Only a record has parts; this is ${describeType(of.type)}.`, dotNode.from, partNode.to))
  const type = of.type.parts[part]
  if (type) return { op: 'part', of, part, type, from: node.from, to: node.to }
  const parts = Object.keys(of.type.parts)
  const near = nearest(part, parts)
  return c.report(
    problem(
      `A ${of.type.name} has no part «${part}»; it has ${parts.join(', ')}.`,
      partNode.from,
      partNode.to,
      near ? [fix(near, partNode.from, partNode.to)] : [],
    ),
  )
}

export function checkList(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const nodes = partsOf(node)
  const items = nodes.map((one) => c.check(one))
  if (items.some((item) => item === undefined)) return undefined
  const first = items[0]
  if (!first) return c.report(problem('A list holds at least one value.', node.from, node.to))
  const odd = items.findIndex((item) => !sameType((item as TypedNode).type, first.type))
  if (odd > 0) {
    const item = items[odd] as TypedNode
    return c.report(
      problem(
        `A list holds values of one kind: the first is ${describeType(first.type)}, this is ${describeType(item.type)}.`,
        item.from,
        item.to,
        first.type.kind === 'number' ? unitFixFor(item, first.type.dimension.name) : [],
      ),
    )
  }
  return { op: 'list', items: items as TypedNode[], type: list(first.type), from: node.from, to: node.to }
}
