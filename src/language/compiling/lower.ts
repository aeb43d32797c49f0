import type { BinarySign, TypedNode } from '../checking/typed-tree.ts'
import { listFunction, partFunction, recordFunction } from '../evaluating/call-table.ts'
import type { Input } from '../evaluating/compiled-formula.ts'
import { MAX_FORMULA_DEPTH } from '../syntax/confusable-characters.ts'
import { ComputeError } from '../values/operations.ts'
import { VALUE_WORDS } from '../values/words.ts'

/** A formula without units or user's names: `f_3(a0, a1) * a2`, and what its arguments are. */
export interface Lowered {
  readonly text: string
  readonly inputs: readonly Input[]
  /** The span in the source of each operation, in the order the operations finish. */
  readonly spans: readonly { readonly from: number; readonly to: number }[]
}

const ATOM = 9
const BINDING: Readonly<Record<BinarySign, number>> = {
  or: 1,
  and: 2,
  '==': 3,
  '!=': 3,
  '<': 3,
  '<=': 3,
  '>': 3,
  '>=': 3,
  '+': 4,
  '-': 4,
  '*': 5,
  '/': 5,
  '^': 7,
}
const PREFIX = 6

interface Piece {
  readonly text: string
  readonly binding: number
  /** How far brackets and calls are nested in it, since the parser below recurses over them. */
  readonly depth: number
}

class Lowering {
  readonly inputs: Input[] = []
  readonly spans: { from: number; to: number }[] = []
  private readonly cells = new Map<string, number>()

  lower(node: TypedNode): Piece {
    switch (node.op) {
      case 'constant':
        return this.input({ constant: node.value })
      case 'cell':
        return this.cell(node.name)
      case 'unary':
        return this.unary(node.sign, node)
      case 'binary':
        return this.binary(node)
      case 'when': {
        const condition = this.within(this.lower(node.condition), 1)
        const then = this.lower(node.then)
        const otherwise = this.lower(node.otherwise)
        this.spans.push(node)
        return piece(`${condition.text} ? (${then.text}) : (${otherwise.text})`, 0, condition, then, otherwise)
      }
      case 'call':
        return this.call(recordFunction(node.record, node.argumentTypes), node.args, node)
      case 'list':
        return this.call(listFunction(), node.items, node)
      case 'part': {
        const of = this.lower(node.of)
        const part = this.input({ constant: node.part })
        this.spans.push(node)
        return piece(`${partFunction()}(${of.text}, ${part.text})`, ATOM, of)
      }
    }
  }

  private input(input: Input): Piece {
    this.inputs.push(input)
    return { text: `a${this.inputs.length - 1}`, binding: ATOM, depth: 0 }
  }

  private cell(name: string): Piece {
    const known = this.cells.get(name)
    if (known !== undefined) return { text: `a${known}`, binding: ATOM, depth: 0 }
    this.cells.set(name, this.inputs.length)
    return this.input({ cell: name })
  }

  private call(name: string, nodes: readonly TypedNode[], span: TypedNode): Piece {
    const args = nodes.map((node) => this.lower(node))
    this.spans.push(span)
    return piece(`${name}(${args.map(({ text }) => text).join(', ')})`, ATOM, ...args)
  }

  private unary(sign: '-' | 'not', node: TypedNode & { op: 'unary' }): Piece {
    const of = this.lower(node.of)
    this.spans.push(node)
    if (sign === 'not') return piece(`not (${of.text})`, PREFIX, of)
    const inside = this.within(of, ATOM)
    return piece(`-${inside.text}`, PREFIX, inside)
  }

  private binary(node: TypedNode & { op: 'binary' }): Piece {
    const binding = BINDING[node.sign]
    const tight = node.sign === '^'
    const left = this.within(this.lower(node.left), tight ? ATOM : binding)
    const right = this.within(this.lower(node.right), tight ? ATOM : binding + 1)
    this.spans.push(node)
    return {
      text: `${left.text} ${node.sign} ${right.text}`,
      binding,
      // A chain to the left is a loop in the parser; only what is to the right nests.
      depth: checkDepth(Math.max(left.depth, right.depth + 1)),
    }
  }

  /** Brackets round a piece that binds less than its surroundings ask. */
  private within(inner: Piece, least: number): Piece {
    return inner.binding >= least ? inner : piece(`(${inner.text})`, ATOM, inner)
  }
}

function checkDepth(depth: number): number {
  if (depth > MAX_FORMULA_DEPTH) throw new ComputeError(VALUE_WORDS.tooDeep(MAX_FORMULA_DEPTH))
  return depth
}

const piece = (text: string, binding: number, ...inner: readonly Piece[]): Piece => ({
  text,
  binding,
  depth: checkDepth(1 + Math.max(0, ...inner.map(({ depth }) => depth))),
})

/** Lowers a checked formula. Throws ComputeError where it is nested too deep to be computed. */
export function lower(node: TypedNode): Lowered {
  const lowering = new Lowering()
  const { text } = lowering.lower(node)
  return { text, inputs: lowering.inputs, spans: lowering.spans.map(({ from, to }) => ({ from, to })) }
}
