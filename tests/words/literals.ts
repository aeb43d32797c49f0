import { textOf, treeOf, walk } from './tree.ts'

/** What is no text on screen: names of modules, types, and the markup and styles of templates. */
const SKIPPED = /^(Import|Export(All|Named)Declaration$|TS(Type|Literal|Union|Interface)|TaggedTemplateExpression)/

/** The texts of a module: quoted ones, and templates with `…` in place of what is put in. Keys of objects are none. */
export function literalsOf(file: string, code: string): readonly string[] {
  const found: string[] = []
  const visit = (value: unknown): void =>
    walk(value, (node) => {
      const text = textOf(node)
      if (text !== undefined) found.push(text)
      if (node.type === 'ExportNamedDeclaration') visit(node.declaration)
      else if (node.type === 'Property') visit(node.value)
      else return !SKIPPED.test(node.type)
      return false
    })
  visit(treeOf(file, code))
  return found
}

/** How many words a text has; what is put in does not count. */
export const wordsIn = (text: string): number => text.match(/[A-Za-z][A-Za-z’-]+/g)?.length ?? 0
