import { literalsOf, wordsIn } from './literals.ts'
import { SAMPLES } from './samples.ts'

/** The catalogues of all rooms: every file named words.ts in src. */
const CATALOGUES = import.meta.glob<Readonly<Record<string, unknown>>>('../../src/**/words.ts')

/** Records whose texts users read: verbs of the terminal, sorts of equipment, what drawings and runs take. */
const RECORDS = import.meta.glob<Readonly<Record<string, unknown>>>([
  '../../src/cli/help.ts',
  '../../src/kit/labels.ts',
  '../../src/drawings/kinds/registry.ts',
  '../../src/worksheet/run/inputs.ts',
])

/** The records of functions, and why they refuse their arguments: what the guide, the editor and a cell in error say. */
const FUNCTIONS = import.meta.glob<string>('../../src/functions/**/*.ts', { query: '?raw', import: 'default' })

/** The fields of such a record that users read. */
const READ = new Set(['label', 'about', 'usage', 'options', 'example', 'one', 'many', 'hint'])

/** A message of a catalogue: where it is, and what it says. A function without samples says its own source. */
export interface Message {
  readonly key: string
  readonly texts: readonly string[]
}

type Sentence = (...values: never[]) => unknown

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null

/** The texts inside a function: its quoted and template strings, with the places of figures as `…`. */
function textsIn(source: string): string {
  const texts = source.match(/`(?:[^`\\]|\\.)*`|"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/g) ?? []
  return texts
    .map((text) =>
      text
        .slice(1, -1)
        .replace(/\$\{[^}]*\}/g, '…')
        .replace(/\$\{.*$/, '…'),
    )
    .join(' | ')
}

function* messagesIn(value: unknown, key: string): Generator<Message> {
  if (typeof value === 'string') {
    if (value !== '') yield { key, texts: [value] }
  } else if (typeof value === 'function') {
    const samples = SAMPLES[key]
    const texts = samples
      ? samples.map((values) => String((value as Sentence)(...(values as never[]))))
      : [textsIn(String(value))]
    yield { key, texts }
  } else if (value instanceof Map) for (const text of value.values()) yield* messagesIn(text, `${key}.${text}`)
  else if (isRecord(value)) for (const [name, one] of Object.entries(value)) yield* messagesIn(one, `${key}.${name}`)
}

/** The texts in the fields of records that users read. */
function* readIn(value: unknown, key: string, isRead = false): Generator<Message> {
  if (typeof value === 'string') {
    if (isRead && value !== '') yield { key, texts: [value] }
  } else if (isRecord(value))
    for (const [name, one] of Object.entries(value))
      yield* readIn(one, `${key}.${name}`, READ.has(name) || (isRead && Array.isArray(value)))
}

/** Every message of every catalogue, by the folder of the catalogue in src. */
export async function allMessages(): Promise<ReadonlyMap<string, readonly Message[]>> {
  const found = new Map<string, readonly Message[]>()
  for (const [path, load] of Object.entries(CATALOGUES).sort(([a], [b]) => a.localeCompare(b))) {
    const folder = path.replace('../../src/', '').replace('/words.ts', '')
    const exports = Object.entries(await load()).sort(([a], [b]) => a.localeCompare(b))
    found.set(
      folder,
      exports.flatMap(([name, value]) => [...messagesIn(value, `${folder}: ${name}`)]),
    )
  }
  for (const [path, load] of Object.entries(RECORDS).sort(([a], [b]) => a.localeCompare(b))) {
    const file = path.replace('../../src/', '').replace('.ts', '')
    const exports = Object.entries(await load()).sort(([a], [b]) => a.localeCompare(b))
    found.set(
      file,
      exports.flatMap(([name, value]) => [...readIn(value, `${file}: ${name}`)]),
    )
  }
  for (const [path, load] of Object.entries(FUNCTIONS).sort(([a], [b]) => a.localeCompare(b))) {
    const file = path.replace('../../src/', '').replace('.ts', '')
    const texts = literalsOf(path, await load()).filter((text) => wordsIn(text) >= 2 && text.includes(' '))
    if (texts.length > 0) found.set(file, [{ key: file, texts: [...new Set(texts)] }])
  }
  return found
}
