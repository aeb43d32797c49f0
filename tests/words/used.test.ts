import { posix } from 'node:path'
import { expect, test } from 'vitest'
import { isNode, type Node, nameOf, type Sources, textOf, treesOf, walk } from './tree.ts'

const SOURCES = import.meta.glob<string>(['../../src/**/*.ts', '!../../src/language/syntax/parser*.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** The sentences of the catalogues that are written as objects. Where one has a type, the compiler asks for every key. */
function sentencesIn(body: readonly Node[]): [catalogue: string, key: string][] {
  return body.flatMap(({ type, declaration }) => {
    if (type !== 'ExportNamedDeclaration' || !isNode(declaration)) return []
    return ((declaration.declarations ?? []) as { id: Node; init: Node }[]).flatMap(({ id, init }) => {
      const { type: kind, properties } = isNode(init.expression) ? init.expression : init
      if (id.typeAnnotation || kind !== 'ObjectExpression') return []
      return (properties as Node[])
        .filter(({ key }) => isNode(key))
        .map(({ key }): [string, string] => [nameOf(id), nameOf(key)])
    })
  })
}

/** The keys that a member expression may ask for; none where they are not written in it. */
function keysOf(property: unknown, computed: boolean): readonly string[] {
  if (!computed || !isNode(property)) return [nameOf(property)]
  const ways = property.type === 'ConditionalExpression' ? [property.consequent, property.alternate] : [property]
  const texts = (ways as Node[]).map(textOf)
  return texts.every((text) => text !== undefined) ? texts : []
}

/** What a module asks of catalogues, as `path:catalogue.key`, or `path:catalogue` where it hands on all of one. */
function askedIn(path: string, program: Node): string[] {
  const asked: string[] = []
  const fetched: string[] = []
  const imported = new Map<string, string>()
  const resolved = (source: unknown): string => posix.join(path, '..', nameOf(source))
  walk(program, (node) => {
    if (node.type === 'ImportExpression') fetched.push(resolved(node.source))
    if (node.type === 'ImportDeclaration')
      for (const { local, imported: name } of node.specifiers as Node[])
        imported.set(nameOf(local), `${resolved(node.source)}:${nameOf(name)}`)
    return node.type !== 'ImportDeclaration'
  })
  /** Where an expression may have a catalogue from: `words`, or `words.limits` of what is imported as `* as words`. */
  const places = (node: unknown): readonly string[] => {
    if (!isNode(node)) return []
    if (node.type === 'Identifier') {
      const place = imported.get(nameOf(node))
      return place === undefined ? [path, ...fetched].map((file) => `${file}:${nameOf(node)}`) : [place]
    }
    const [above = ''] = node.type === 'MemberExpression' ? places(node.object) : []
    return above.endsWith(':') ? [`${above}${nameOf(node)}`] : []
  }
  walk(program, (node, above) => {
    const { type, object, property, id, init } = node
    const ask = (catalogue: unknown, keys: readonly string[]): void => {
      for (const place of places(catalogue)) asked.push(...keys.map((key) => `${place}.${key}`))
    }
    if (type === 'VariableDeclarator' && isNode(id) && id.type === 'ObjectPattern')
      ask(
        init,
        (id.properties as Node[]).map(({ key }) => nameOf(key)),
      )
    else if (type === 'VariableDeclarator') asked.push(...places(init))
    if (type === 'MemberExpression') {
      const keys = keysOf(property, node.computed === true)
      if (keys.length === 0) asked.push(...places(object))
      else ask(object, keys)
    }
    if (/^(?:Call|New|Spread|Array|Conditional|Return)/.test(above?.type ?? '')) asked.push(...places(node))
    return type !== 'ImportDeclaration'
  })
  return asked
}

/** The sentences of catalogues that no module asks for. */
function unasked(sources: Sources): string[] {
  const trees = treesOf(sources)
  const asked = new Set(trees.flatMap(([path, program]) => askedIn(path, program)))
  return trees
    .filter(([path]) => path.endsWith('/words.ts'))
    .flatMap(([path, { body }]) =>
      sentencesIn(body)
        .filter(([name, key]) => !asked.has(`${path}:${name}`) && !asked.has(`${path}:${name}.${key}`))
        .map(([name, key]) => `${path.replace('../../src/', '')}: ${name}.${key}`),
    )
}

test('every sentence of a catalogue is asked for', () => {
  expect(unasked(SOURCES)).toEqual([])
})

const WORDS = "export const a = { said: 'Saved.', unsaid: 'Lost.' } as const"

test.each([
  "import { a } from './words.ts'\nsay(a.said)",
  "import { a as b } from './words.ts'\nsay(b.said)",
  "import * as words from './words.ts'\nsay(words.a.said)",
  "import { a } from './words.ts'\nconst { said } = a",
  "import { a } from './words.ts'\nsay(a[now ? 'said' : 'other'])",
  "const { a } = await import('./words.ts')\nsay(a.said)",
])('a sentence that nothing asks for would be found in %j', (code) => {
  expect(unasked({ '../../src/app/words.ts': WORDS, '../../src/app/a.ts': code })).toEqual(['app/words.ts: a.unsaid'])
})

test.each([
  "import { a } from './words.ts'\nsay(a[which])",
  "import { a } from './words.ts'\nsayAll(a)",
  "import { a } from './words.ts'\nconst { said, unsaid } = a",
])('none would be found in %j', (code) => {
  expect(unasked({ '../../src/app/words.ts': WORDS, '../../src/app/a.ts': code })).toEqual([])
})
