import type { SyntaxNode } from '@lezer/common'
import { nearest, readQuantity } from '../../units/index.ts'
import { type Diagnostic, fix, problem, warning } from '../values/diagnostic.ts'
import type { Parameter } from '../values/function-record.ts'
import { describeType, sameType, type Type } from '../values/types.ts'
import { matchArguments, plainDefault, type Written } from './arguments.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import type { TypedNode } from './typed-tree.ts'

export function checkCall(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [nameNode, argumentsNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  const name = c.source(nameNode)
  const nodes = partsOf(argumentsNode)
  if (name === 'when') return checkWhen(c, node, nodes)
  const record = c.scope.library.get(name)
  if (!record) {
    for (const argument of nodes) if (argument.name !== 'Named') c.check(argument)
    return c.report(unknownFunction(c, name, nameNode))
  }
  c.useFunction(record)
  const written = nodes.map((one) => argument(c, one))
  const args = matchArguments(
    record,
    written,
    node,
    (d) => c.report(d),
    (p) => defaultOf(p, node),
  )
  if (!args) return undefined
  const argumentTypes = args.map((argument) => argument.type)
  const doubt = record.warn?.(argumentTypes)
  if (doubt) c.report(warning(doubt, node.from, node.to))
  const type = typeof record.result === 'function' ? record.result(argumentTypes) : record.result
  return { op: 'call', record, argumentTypes, args, type, from: node.from, to: node.to }
}

function argument(c: CheckContext, node: SyntaxNode): Written {
  const span = { from: node.from, to: node.to }
  if (node.name !== 'Named') return { value: argumentValue(c, node), ...span }
  const [nameNode, , valueNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const name = { text: c.source(nameNode), from: nameNode.from, to: nameNode.to }
  return { name, value: argumentValue(c, valueNode), ...span }
}

function argumentValue(c: CheckContext, node: SyntaxNode): Written['value'] {
  if (node.name === 'Name' && c.source(node) === 'infinity' && c.scope.typeOf('infinity') === undefined)
    return 'infinity'
  return c.check(node)
}

function defaultOf(parameter: Parameter, at: { from: number; to: number }): TypedNode {
  const text = parameter.default as string
  const span = { from: at.from, to: at.to }
  const plain = plainDefault(text)
  if (plain) return { op: 'constant', ...plain, ...span }
  const type = parameter.type as Type
  if (text === 'infinity') return { op: 'constant', value: Number.POSITIVE_INFINITY, type, ...span }
  const inside = /^\{(.*)\}$/.exec(text)?.[1]
  if (inside !== undefined) {
    const items = inside.trim() === '' ? [] : inside.split(',').map((item) => readQuantity(item).value)
    return { op: 'constant', value: items, type, ...span }
  }
  return { op: 'constant', value: readQuantity(text).value, type, ...span }
}

function unknownFunction(c: CheckContext, name: string, node: SyntaxNode): Diagnostic {
  const { from, to } = node
  if (c.scope.typeOf(name) !== undefined) {
    c.useName({ name, from, to })
    return problem(`«${name}» is a cell, not a function; to multiply, write «*» before the bracket.`, from, to, [
      fix(`${name} * `, from, node.nextSibling?.from ?? to),
    ])
  }
  const near = nearest(name, [...c.scope.library.keys(), 'when'])
  return problem(
    `There is no function «${name}».${near ? ` Did you mean «${near}»?` : ''}`,
    from,
    to,
    near ? [fix(near, from, to)] : [],
  )
}

function checkWhen(c: CheckContext, node: SyntaxNode, nodes: readonly SyntaxNode[]): TypedNode | undefined {
  if (nodes.length !== 3 || nodes.some((one) => one.name === 'Named'))
    return c.report(problem('«when» takes three arguments: when(condition, then, otherwise).', node.from, node.to))
  const [conditionNode, thenNode, otherwiseNode] = nodes as [SyntaxNode, SyntaxNode, SyntaxNode]
  const condition = c.truth(conditionNode)
  const then = c.check(thenNode)
  const otherwise = c.check(otherwiseNode)
  if (!condition || !then || !otherwise) return undefined
  if (!sameType(then.type, otherwise.type))
    return c.report(
      problem(
        `The two outcomes of «when» differ: ${describeType(then.type)} and ${describeType(otherwise.type)}.`,
        otherwiseNode.from,
        otherwiseNode.to,
      ),
    )
  return { op: 'when', condition, then, otherwise, type: then.type, from: node.from, to: node.to }
}
