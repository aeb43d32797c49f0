import type { SyntaxNode } from '@lezer/common'
import { readQuantity } from '../../units/index.ts'
import { type Diagnostic, type Fix, fix, problem, warning } from '../values/diagnostic.ts'
import type { Callable, Parameter } from '../values/function-record.ts'
import { describeType, sameType, type Type } from '../values/types.ts'
import { write } from '../values/words.ts'
import { matchArguments, plainDefault, type Written } from './arguments.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import { fixesToward, grouped } from './expression.ts'
import { refuseMixedLevels } from './levels.ts'
import { nearestFunction } from './near-names.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

/**
 * The type of a call and the steps that compute it: its arguments matched to the parameters, in whatever order they
 * are named. Undefined where something in it is wrong, which the context then has.
 */
export function checkCall(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [nameNode, argumentsNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  const name = c.source(nameNode)
  const nodes = partsOf(argumentsNode)
  if (name === 'when') return checkWhen(c, node, nodes)
  const record = c.scope.library.get(name)
  if (!record) {
    c.report(unknownFunction(c, name, nameNode, nodes, node))
    for (const argument of nodes) if (argument.name !== 'Named') c.check(argument)
    return undefined
  }
  c.useFunction(record)
  const written = nodes.map((one) => argument(c, record, one))
  const args = matchArguments(c, record, written, node, (parameter) => defaultOf(parameter, node))
  if (!args) return undefined
  const argumentTypes = args.map((argument) => argument.type)
  const doubt = record.warn?.(argumentTypes)
  if (doubt) c.report(warning(doubt, node.from, node.to))
  const type = typeof record.result === 'function' ? record.result(argumentTypes) : record.result
  return { op: 'call', record, argumentTypes, args, type, from: node.from, to: node.to }
}

function argument(c: CheckContext, record: Callable, node: SyntaxNode): Written {
  const span = { from: node.from, to: node.to }
  if (node.name === 'Comparison') {
    const misnamed = equalsForColon(c, record, node)
    if (misnamed) {
      c.report(misnamed)
      return { value: undefined, ...span }
    }
  }
  if (node.name !== 'Named') return { value: argumentValue(c, node), ...span }
  const [nameNode, , valueNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const name = { text: c.source(nameNode), from: nameNode.from, to: nameNode.to }
  return { name, value: argumentValue(c, valueNode), ...span }
}

/** `depth_of_field(aperture = f/8)`: an argument's name with “=” after it, unless a condition may be meant. */
function equalsForColon(c: CheckContext, record: Callable, node: SyntaxNode): Diagnostic | undefined {
  const [nameNode, signNode] = partsOf(node) as [SyntaxNode, SyntaxNode]
  const name = c.source(nameNode)
  const parameter = record.parameters.find((one) => one.name === name)
  if (nameNode.name !== 'Name' || c.source(signNode) !== '=' || !parameter) return undefined
  if (parameter.type.kind === 'yes or no' && c.scope.typeOf(name) !== undefined) return undefined
  const end = signNode.to + (c.text[signNode.to] === ' ' ? 1 : 0)
  return problem(W.colonForArgument(name), node.from, node.to, [fix(': ', nameNode.to, end, write(`${name}:`))])
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

/** What tables and programming languages call functions that are written otherwise here. */
const OTHER_NAMES: ReadonlyMap<string, string> = new Map([
  ['if', 'when'],
  ['iif', 'when'],
  ['ifs', 'when'],
  ['average', 'mean'],
  ['avg', 'mean'],
  ['minimum', 'min'],
  ['maximum', 'max'],
  ['total', 'sum'],
  ['squareroot', 'sqrt'],
  ['sqr', 'sqrt'],
  ['root', 'sqrt'],
  ['length', 'count'],
  ['len', 'count'],
  ['arctan', 'atan'],
  ['arcsin', 'asin'],
  ['arccos', 'acos'],
  ['ceiling', 'ceil'],
  ['trunc', 'floor'],
  ['int', 'floor'],
  ['index', 'item'],
  ['choose', 'item'],
  ['lg', 'log10'],
  ['ld', 'log2'],
])

/** Functions of elsewhere that are an operator here, and how their arguments are joined. */
const AS_OPERATORS: ReadonlyMap<string, string> = new Map([
  ['and', ' and '],
  ['or', ' or '],
  ['pow', '^'],
  ['power', '^'],
])

function rewritten(
  c: CheckContext,
  name: string,
  nodes: readonly SyntaxNode[],
  call: SyntaxNode,
): Diagnostic | undefined {
  const plain = name.toLowerCase()
  const other = OTHER_NAMES.get(plain)
  const nameTo = call.from + name.length
  if (other && (other === 'when' || c.scope.library.has(other)))
    return problem(W.otherFunction(name, `${other}(…)`), call.from, nameTo, [fix(other, call.from, nameTo)])
  const operator = AS_OPERATORS.get(plain)
  if (operator && nodes.length >= 2 && (operator !== '^' || nodes.length === 2)) {
    const whole = nodes.map((node) => grouped(c.text, node)).join(operator)
    return problem(W.otherFunction(name, `a${operator}b`), call.from, nameTo, [
      fix(operator === '^' ? whole : `(${whole})`, call.from, call.to),
    ])
  }
  if (plain === 'not' && nodes.length === 1)
    return problem(W.otherFunction(name, 'not'), call.from, nameTo, [fix('not ', call.from, nameTo)])
  if (plain === 'pi' && nodes.length === 0)
    return problem(W.otherFunction(name, 'pi'), call.from, call.to, [fix('pi', call.from, call.to)])
  return undefined
}

function unknownFunction(
  c: CheckContext,
  name: string,
  node: SyntaxNode,
  nodes: readonly SyntaxNode[],
  call: SyntaxNode,
): Diagnostic {
  const { from, to } = node
  if (c.scope.typeOf(name) !== undefined) {
    c.useName({ name, from, to })
    return problem(W.cellIsNoFunction(name), from, to, [fix(`${name} * `, from, node.nextSibling?.from ?? to)])
  }
  const habit = rewritten(c, name, nodes, call)
  if (habit) return habit
  const mark = /^[fF](\d+(?:\.\d+)?)$/.exec(name)
  if (mark) return problem(W.fNumber(`f/${mark[1]}`), from, to, [fix(`f/${mark[1]}`, from, to)])
  const near = nearestFunction(c.scope.library, name)
  return problem(W.noFunction(name, near), from, to, near ? [fix(near, from, to)] : [])
}

function checkWhen(c: CheckContext, node: SyntaxNode, nodes: readonly SyntaxNode[]): TypedNode | undefined {
  if (nodes.length !== 3 || nodes.some((one) => one.name === 'Named'))
    return c.report(problem(W.whenTakes, node.from, node.to))
  const [conditionNode, thenNode, otherwiseNode] = nodes as [SyntaxNode, SyntaxNode, SyntaxNode]
  const condition = c.truth(conditionNode)
  const then = c.check(thenNode)
  const otherwise = c.check(otherwiseNode)
  if (!condition || !then || !otherwise) return undefined
  if (!sameType(then.type, otherwise.type))
    return c.report(
      problem(
        W.outcomesDiffer(describeType(then.type), describeType(otherwise.type)),
        otherwiseNode.from,
        otherwiseNode.to,
        towardEachOther(c, then, otherwise),
      ),
    )
  refuseMixedLevels(c, W.outcomesOfOneChoice, then, otherwise, otherwiseNode)
  return { op: 'when', condition, then, otherwise, type: then.type, from: node.from, to: node.to }
}

/** Fixes that make two values the same kind, the second changed first. */
const towardEachOther = (c: CheckContext, first: TypedNode, second: TypedNode): Fix[] => [
  ...fixesToward(c.scope, c.text, second, first.type),
  ...fixesToward(c.scope, c.text, first, second.type),
]
