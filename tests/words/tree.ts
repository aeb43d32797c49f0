import { parseSync } from 'vite'

/** A node of the syntax tree of a module. */
export interface Node {
  readonly type: string
  readonly [key: string]: unknown
}

export type Sources = Readonly<Record<string, string>>

/** Whether a value in a tree is a node, and not a name, a flag or a list. */
export const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

/**
 * The tree of a module.
 * @throws Error where the code cannot be parsed.
 */
export function treeOf(path: string, code: string): Node & { readonly body: readonly Node[] } {
  const { program, errors } = parseSync(path, code, { lang: 'ts' })
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`)
  return program as unknown as Node & { readonly body: readonly Node[] }
}

/** The trees of modules, by path. */
export const treesOf = (sources: Sources) =>
  Object.entries(sources).map(([path, code]) => [path, treeOf(path, code)] as const)

/** Visits the nodes below a value, each with the one above it; what `enter` returns false for, it does not go into. */
export function walk(value: unknown, enter: (node: Node, above?: Node) => boolean | undefined, above?: Node): void {
  if (Array.isArray(value)) for (const one of value) walk(one, enter, above)
  else if (isNode(value) && enter(value, above) !== false)
    for (const one of Object.values(value)) walk(one, enter, value)
}

/** The text of a literal, with `…` in place of what is put in. */
export function textOf(node: Node): string | undefined {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : undefined
  if (node.type !== 'TemplateLiteral') return undefined
  return (node.quasis as { value: { cooked: string } }[]).map((part) => part.value.cooked).join('…')
}

/** The name that an identifier, the end of a member expression or a quoted key has. */
export const nameOf = (node: unknown): string =>
  isNode(node) ? ((node.name ?? (isNode(node.property) ? node.property.name : node.value) ?? '') as string) : ''
