import type { SyntaxNode } from '@lezer/common'
import { findUnit, nearest } from '../../units/index.ts'
import { type Diagnostic, fix, problem } from '../values/diagnostic.ts'
import { CONSTANTS, type Scope } from '../values/scope.ts'
import { describeType, list, PLAIN_NUMBER, sameType, type Type } from '../values/types.ts'
import { type CheckContext, partsOf } from './check-context.ts'
import { fixesToward } from './expression.ts'
import { refuseMixedLevels } from './levels.ts'
import type { TypedNode } from './typed-tree.ts'
import { CHECK_WORDS as W } from './words.ts'

const cellType = (type: Type | 'unknown' | undefined): Type | undefined => (type === 'unknown' ? undefined : type)

/** The type of the cell a name stands for. Undefined where there is none, or where it is in error. */
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
  if (name === 'infinity') return c.report(problem(W.infinityOnlyArgument, from, to))
  c.useName({ name, from, to })
  return c.report(unknownName(c, name, node))
}

const YES_OR_NO: ReadonlyMap<string, string> = new Map([
  ['true', 'yes'],
  ['false', 'no'],
  ['yes', 'yes'],
  ['no', 'no'],
])

function unknownName(c: CheckContext, name: string, node: SyntaxNode): Diagnostic {
  const { from, to } = node
  const record = c.scope.library.get(name)
  if (record)
    return problem(
      W.functionNeedsArguments(name),
      from,
      to,
      record.parameters.every((parameter) => parameter.default !== undefined) ? [fix(`${name}()`, from, to)] : [],
    )
  const mark = fNumberMeant(c.text, name, to)
  if (mark) return problem(W.fNumber(`f/${mark.figure}`), from, mark.to, [fix(`f/${mark.figure}`, from, mark.to)])
  const lower = name.toLowerCase()
  const truth = YES_OR_NO.get(lower)
  if (truth) return problem(W.yesOrNo(name, truth), from, to, [fix(truth, from, to)])
  if (CONSTANTS.has(lower)) return problem(W.noCell(name, lower), from, to, [fix(lower, from, to)])
  if (name.length > 1 && findUnit(name)) return problem(W.unitNeedsNumber(name), from, to, [fix(`1 ${name}`, from, to)])
  const near = nearestName(c.scope, name)
  // A word of a choice may lack its quotes; where no text fits, the fix is not shown.
  const quoted = mayBeText(c, node) ? [fix(`"${name}"`, from, to)] : []
  return problem(W.noCell(name, near), from, to, [...(near ? [fix(near, from, to)] : []), ...quoted])
}

/** `F/8`, `f / 8`, `f8`: an f-number written another way, where there is no cell of that name. */
function fNumberMeant(text: string, name: string, to: number): { figure: string; to: number } | undefined {
  const joined = /^[fF](\d+)$/.exec(name)
  if (joined) return { figure: joined[1] as string, to }
  if (name !== 'f' && name !== 'F') return undefined
  const after = /^ ?\/ ?(\d+(?:\.\d+)?)/.exec(text.slice(to))
  return after ? { figure: after[1] as string, to: to + after[0].length } : undefined
}

/** Whether a text may be in the place of a name: compared, in a list, or an argument of a function that takes texts. */
function mayBeText(c: CheckContext, { parent }: SyntaxNode): boolean {
  if (parent?.name === 'Comparison' || parent?.name === 'List') return true
  const list = parent?.name === 'Named' ? parent.parent : parent
  const called = list?.name === 'Arguments' ? c.source(list.prevSibling as SyntaxNode) : ''
  const record = c.scope.library.get(called)
  return called === 'when' || (record?.parameters ?? []).some(({ type }) => type.kind === 'text')
}

function nearestName(scope: Scope, name: string): string | undefined {
  if (scope.isDraft) return undefined
  if (!scope.nearestName) return nearest(name, [...scope.names(), ...CONSTANTS.keys()])
  return scope.nearestName(name) ?? nearest(name, CONSTANTS.keys())
}

/** The type of a part of a record, `original.width`, or of a column of a table. Undefined where it has no such part. */
export function checkPart(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const [ofNode, dotNode, partNode] = partsOf(node) as [SyntaxNode, SyntaxNode, SyntaxNode]
  const part = c.source(partNode)
  if (ofNode.name === 'Number' && ofNode.to === dotNode.from) {
    const number = c.source(ofNode)
    return c.report(
      problem(W.digitMissing('after', `${number}.`), ofNode.from, dotNode.to, [
        fix(`${number}.0 ${part}`, ofNode.from, partNode.to),
      ]),
    )
  }
  const of = c.check(ofNode)
  if (!of) return undefined
  if (of.type.kind !== 'record')
    return c.report(
      problem(W.notARecord(describeType(of.type)), dotNode.from, partNode.to, [
        fix('', dotNode.from, partNode.to, W.remove(`.${part}`)),
      ]),
    )
  const type = of.type.parts[part]
  if (type) return { op: 'part', of, part, type, from: node.from, to: node.to }
  const parts = Object.keys(of.type.parts)
  const near = nearest(part, parts)
  const likely = [...(near ? [near] : []), ...parts.filter((one) => one !== near)].slice(0, near ? 1 : 8)
  return c.report(
    problem(
      W.noPart(of.type.name, part, parts),
      partNode.from,
      partNode.to,
      likely.map((one) => fix(one, partNode.from, partNode.to)),
    ),
  )
}

/** The type of a list in braces: all its items are of one type. Undefined where they are not. */
export function checkList(c: CheckContext, node: SyntaxNode): TypedNode | undefined {
  const nodes = partsOf(node)
  const items = nodes.map((one) => c.check(one))
  if (items.some((item) => item === undefined)) return undefined
  const first = items[0]
  if (!first) return c.report(problem(W.emptyList, node.from, node.to))
  const odd = items.find((item) => !sameType((item as TypedNode).type, first.type))
  if (odd) {
    const fixes = [...fixesToward(c.scope, c.text, odd, first.type), ...fixesToward(c.scope, c.text, first, odd.type)]
    return c.report(problem(W.mixedList(describeType(first.type), describeType(odd.type)), odd.from, odd.to, fixes))
  }
  for (const item of items) refuseMixedLevels(c, W.valuesOfOneList, first, item as TypedNode, item as TypedNode)
  return { op: 'list', items: items as TypedNode[], type: list(first.type), from: node.from, to: node.to }
}
