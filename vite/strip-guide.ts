import { type ESTree, parseSync } from 'vite'

/** The properties of a record that only the guide reads: GuideText in src/language/values/function-record.ts. */
export const GUIDE_KEYS = ['subject', 'about', 'also', 'formula', 'source', 'validity', 'examples'] as const

type Node = ESTree.Node
type Literal = ESTree.ObjectExpression

const isNode = (value: unknown): value is Node => typeof (value as Node | null)?.type === 'string'

const childrenOf = (node: Node): Node[] => Object.values(node).flat().filter(isNode)

const isRecordList = (type: string): boolean => /^:\s*readonly FunctionRecord\[\]$/.test(type)

/**
 * Takes what only the guide reads out of the function records of a module. What is listed as a record must be written
 * out as an object, or be made by a `map` whose function gives one written out; anything else throws.
 */
export function stripGuide(code: string, file: string): string {
  if (!code.includes('FunctionRecord[]')) return code
  const { program, errors } = parseSync(file, code, { lang: 'ts' })
  if (errors[0]) throw new Error(`${file}: ${errors[0].message}`)
  const text = (node: Node): string => code.slice(node.start, node.end)
  const refuse: (node: Node) => never = (node) => {
    const line = code.slice(0, node.start).split('\n').length
    throw new Error(
      `${file}:${line}: a function record is an object written out with its keys, or made by map; this is “${text(node).slice(0, 60)}”.`,
    )
  }

  const cuts: [from: number, to: number][] = []
  const strip = (record: Literal): void => {
    const keys = new Set<string>()
    for (const [i, property] of record.properties.entries()) {
      if (property.type !== 'Property' || property.computed || property.key.type !== 'Identifier') refuse(property)
      const { name } = property.key
      keys.add(name)
      const next = record.properties[i + 1]
      if ((GUIDE_KEYS as readonly string[]).includes(name))
        cuts.push([property.start, next ? next.start : property.end])
    }
    for (const required of ['name', 'parameters', 'result', 'compute', 'subject', 'examples'])
      if (!keys.has(required)) refuse(record)
  }
  const unwrapped = (node: Node): Node =>
    node.type === 'ParenthesizedExpression' || node.type === 'TSAsExpression' ? unwrapped(node.expression) : node
  const stripMade = (node: Node): void => {
    const spread = unwrapped(node)
    // Another list, which is stripped where it is written out.
    if (spread.type === 'Identifier') return
    if (spread.type !== 'CallExpression' || !/\.map$/.test(text(spread.callee))) refuse(spread)
    const made = spread.arguments[0]
    const body = made?.type === 'ArrowFunctionExpression' ? unwrapped(made.body) : undefined
    if (body?.type === 'ObjectExpression') strip(body)
    else refuse(spread)
  }
  const look = (node: Node): void => {
    if (node.type === 'VariableDeclarator' && node.id.type === 'Identifier' && node.id.typeAnnotation) {
      if (isRecordList(text(node.id.typeAnnotation))) {
        if (node.init?.type !== 'ArrayExpression') refuse(node)
        for (const item of node.init.elements) {
          if (item?.type === 'ObjectExpression') strip(item)
          else if (item?.type === 'SpreadElement') stripMade(item.argument)
          else refuse(item ?? node)
        }
        return
      }
    }
    for (const child of childrenOf(node)) look(child)
  }
  look(program)

  let stripped = code
  for (const [from, to] of cuts.reverse()) stripped = stripped.slice(0, from) + stripped.slice(to)
  return stripped
}
