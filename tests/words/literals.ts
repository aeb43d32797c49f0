import { parseSync } from 'vite'

interface Node {
  readonly type: string
  readonly [key: string]: unknown
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string'

/** What is no text on screen: names of modules, types, and the markup and styles of templates. */
const SKIPPED = /^(Import|Export(All|Named)Declaration$|TS(Type|Literal|Union|Interface)|TaggedTemplateExpression)/

/** The texts of a module: quoted ones, and templates with `…` in place of what is put in. Keys of objects are none. */
export function literalsOf(file: string, code: string): readonly string[] {
  const { program, errors } = parseSync(file, code, { lang: 'ts' })
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`)
  const found: string[] = []
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) visit(one)
    else if (isNode(value)) {
      if (value.type === 'Literal' && typeof value.value === 'string') found.push(value.value)
      else if (value.type === 'TemplateLiteral')
        found.push((value.quasis as { value: { cooked: string } }[]).map((part) => part.value.cooked).join('…'))
      if (value.type === 'ExportNamedDeclaration') visit(value.declaration)
      else if (value.type === 'Property') visit(value.value)
      else if (!SKIPPED.test(value.type)) for (const one of Object.values(value)) visit(one)
    }
  }
  visit(program)
  return found
}

/** How many words a text has; what is put in does not count. */
export const wordsIn = (text: string): number => text.match(/[A-Za-z][A-Za-z’-]+/g)?.length ?? 0
