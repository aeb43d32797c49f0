import { expect, test } from 'vitest'
import { isNode, type Node, nameOf, type Sources, textOf, treesOf, walk } from './tree.ts'

/** All code of the app but its catalogues. */
const SOURCES = import.meta.glob<string>(
  ['../../src/**/*.ts', '!../../src/**/words.ts', '!../../src/language/syntax/parser*.ts'],
  { query: '?raw', import: 'default', eager: true },
)

/** Records and tables with texts of their own, each beside what it describes. */
const RECORDS: readonly (readonly [RegExp, string])[] = [
  [/^functions\//, 'a function is a record: what it does, its arguments, its source, and why it refuses'],
  [/^cli\/help\.ts$/, 'the verbs of the terminal'],
  [/^kit\/labels\.ts$/, 'the figures of a piece of kit'],
  [/^drawings\/kinds\/registry\.ts$/, 'the inputs of a drawing'],
  [/^worksheet\/run\/inputs\.ts$/, 'the inputs of a run'],
  [/^units\/table\.ts$/, 'the symbols of units'],
  [/^units\/(plural|figure)\.ts$/, 'counts, lists, days and figures as text: catalogues call them'],
  [/^app\/paper\/(paper-style|print|hand-over)\.ts$/, 'style sheets for paper'],
  [/^language\/editor\/(theme|highlight)\.ts$/, 'styles of the editor'],
]

/** Texts that look like phrases and that no user reads. */
const CODES: Readonly<Record<string, readonly string[]>> = {
  'names of things stored or locked in the browser': ['asked to persist', 'last backup', 'evenfield sheet …'],
  'messages to the service worker': ['take over'],
  'what a key does in Build': ['move section …'],
  'options of jobs, which sheets store': ['close-up lens'],
  'the name of a type, for other programs': ['list of …'],
  'a formula': ['percentile(values, share)'],
  'words that a search leaves out': ['a an and as at for from got have i in is it my of on or some the this to with'],
  'classes of style sheets': ['note caution', 'limit label', 'mean beyond', 'record arguments', 'all formula'],
  'names of formats': ['JPEG XL'],
  'a list of type faces': ["'Atkinson Hyperlegible Next', Arial, Helvetica, sans-serif"],
  'the name of the app': ['Evenfield'],
  'the name of an error, which only logs show': ['Unpublished'],
  'how the messages of the library that checks files begin': ['Invalid'],
  'keys of a keyboard': ['Delete', 'End', 'Enter', 'Escape', 'Home', 'Tab'],
  'what a browser calls dragged files': ['Files'],
}

/** Two words or more, or one that starts as a label does. */
const isPhrase = (text: string): boolean =>
  /[A-Za-z’]{2,}[,;:.!?”")]* [“"(]?[A-Za-z]{2,}/.test(text.replace(/ …(?= )/g, '')) || /^[A-Z][a-z]+\.?$/.test(text)

/** A style, a selector, or a list of classes with hyphens. */
const isStyle = (text: string): boolean =>
  /^\.[a-z]|^[a-z]+(?:-[a-z]+)+: \S/.test(text) ||
  /^\S+(?: [a-z]+(?:-[a-z]+)*-[a-z…]+)+$/.test(text) ||
  /\{[^}]*:/.test(text)

/** What is written between the tags of markup, and in the attributes that a user reads or hears. */
function spokenIn(markup: string): string[] {
  const between = markup.replace(/<!--[\s\S]*?-->|<[^>]*>/g, '\n').split('\n')
  const attributes = [...markup.matchAll(/\s(?:aria-label|alt|placeholder|title)="([^"]*)"/g)].map(([, text]) => text)
  return [...between, ...attributes].map((text) => (text ?? '').trim()).filter((text) => /[A-Za-z]{2}/.test(text))
}

/** The texts that name a member of a type, or one value of several in the format: codes, which the types check. */
function codesOf(programs: readonly (readonly [string, unknown])[]): Set<string> {
  const codes = new Set<string>(Object.values(CODES).flat())
  const add = (value: unknown): void =>
    walk(value, (node) => {
      const text = textOf(node)
      if (text !== undefined) codes.add(text)
      return undefined
    })
  for (const [, program] of programs)
    walk(program, (node) => {
      if (node.type === 'TSLiteralType') add(node)
      else if (node.type === 'CallExpression' && ['picklist', 'literal'].includes(nameOf(node.callee)))
        add(node.arguments)
      return undefined
    })
  return codes
}

/** Nodes whose texts are not shown: types, modules, errors of the code itself, selectors, and lists of classes. */
function isUnseen(node: Node): boolean {
  if (/^Import|^Export(?:All|Named)Declaration$|^TS(?:Type|Literal|Union|Interface)/.test(node.type))
    return !isNode(node.declaration)
  if (node.type === 'NewExpression') return ['Error', 'TypeError'].includes(nameOf(node.callee))
  if (node.type === 'CallExpression')
    return ['querySelector', 'querySelectorAll', 'closest', 'matches', 'matchMedia'].includes(nameOf(node.callee))
  return node.type === 'Property' && ['class', 'className'].includes(nameOf(node.key))
}

/** The texts outside catalogues that a user would read, each with its file. */
function outside(sources: Sources): string[] {
  const programs = treesOf(sources)
  const codes = codesOf(programs)
  return programs.flatMap(([path, program]) => {
    const file = path.replace('../../src/', '')
    if (RECORDS.some(([pattern]) => pattern.test(file))) return []
    // One word there is the name of a node of a tree, of a field of a file, or the symbol of a unit.
    const hasNames = /^(?:language|frame|units)\//.test(file)
    const found: string[] = []
    const say = (text: string): void => {
      if (!codes.has(text) && !isStyle(text) && !(hasNames && !text.includes(' '))) found.push(`${file}: ${text}`)
    }
    const read = (value: unknown): void =>
      walk(value, (node) => {
        if (isUnseen(node)) return false
        if (node.type === 'TaggedTemplateExpression') {
          const markup = node.quasi as Node
          if (['html', 'svg'].includes(nameOf(node.tag))) spokenIn(textOf(markup) as string).forEach(say)
          const parts = markup.quasis as { value: { raw: string } }[]
          read((markup.expressions as Node[]).filter((_, i) => !/\sclass="?[^"]*$/.test(parts[i]?.value.raw ?? '')))
          return false
        }
        const text = textOf(node)
        if (text !== undefined) (/<[a-z?!]/.test(text) ? spokenIn(text) : [text].filter(isPhrase)).forEach(say)
        return undefined
      })
    read(program)
    return found
  })
}

test('a text that users read is in a catalogue or in a record', () => {
  expect(Object.keys(SOURCES).length).toBeGreaterThan(400)
  expect(outside(SOURCES)).toEqual([])
})

test('every code and every record that is allowed is still there', () => {
  const all = Object.values(SOURCES).join('\n')
  const texts = Object.values(CODES).flat()
  expect(texts.filter((text) => !text.split('…').every((part) => all.includes(part)))).toEqual([])
  const files = Object.keys(SOURCES).map((path) => path.replace('../../src/', ''))
  expect(RECORDS.filter(([pattern]) => !files.some((file) => pattern.test(file)))).toEqual([])
})

test.each([
  ["const a = 'Nothing is saved.'", 'Nothing is saved.'],
  ['const a = (n: number) => `saved \u0024{n} sheets`', 'saved … sheets'],
  ["say('Saved')", 'Saved'],
  ['html`<p class="one two">Not saved</p>`', 'Not saved'],
  ['html`<button aria-label="Save it">\u0024{sign}</button>`', 'Save it'],
  ["html`<p>\u0024{ready ? 'It is ready' : nothing}</p>`", 'It is ready'],
  ["throw new SheetError('This sheet is full.')", 'This sheet is full.'],
])('of %s it would be found', (code, text) => {
  expect(outside({ '../../src/app/a.ts': code })).toEqual([`app/a.ts: ${text}`])
})

test.each([
  "import { a } from './the words.ts'",
  "const a: 'yes or no' = 'yes or no'",
  "throw new Error('This cannot happen.')",
  'html`<p class="two words" style=\u0024{`inline-size: calc(1px + \u0024{a})`}>\u0024{words.saved}</p>`',
  'css`p { color: red; }`',
  "root.querySelector('.row button')",
])('of %s nothing would be', (code) => {
  expect(outside({ '../../src/app/a.ts': code })).toEqual([])
})
