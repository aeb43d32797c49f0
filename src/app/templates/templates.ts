import { UNTITLED_SHEET } from '../../worksheet/document/words.ts'
import { FORMAT, type Stage, VERSION } from '../../worksheet/format/format.ts'
import type { Worksheet } from '../../worksheet/index.ts'
import { preparedAs, templateFile } from './prepared-template.ts'

/** A job on the shelf, from the key `shelf` of its file. */
export interface ShelfEntry {
  /** The name of the file without its extension, used in the address. */
  readonly key: string
  /** What it is called there: “A flat sheet”. */
  readonly answer: string
  /** What the sheet computes, in a sentence. */
  readonly about: string
  readonly order: number
  /** The stage of the job it is used at. */
  readonly moment: Stage
  /** Search words: `book`, `glare`, `too big`. */
  readonly words: readonly string[]
}

// Only the entries load with the page; a template is fetched when it is chosen.
const shelves = import.meta.glob<Omit<ShelfEntry, 'key'>>('../../../templates/*.json', { import: 'shelf', eager: true })

const keyOf = (path: string): string => path.replace(/^.*\/|\.json$/g, '')

/** The jobs on the shelf, in its order. */
export const SHELF: readonly ShelfEntry[] = Object.entries(shelves)
  .map(([path, { answer, about, order, moment, words }]) => ({
    key: keyOf(path),
    ...{ answer, about, order, moment, words },
  }))
  .sort((a, b) => a.order - b.order)

export const EMPTY = 'empty'

const emptySheet: Worksheet = { format: FORMAT, version: VERSION, title: UNTITLED_SHEET, cells: [] }

/** The worksheet of a job, with its example or empty for the user's own figures; undefined where no job has that name. */
export async function template(key: string, own = false): Promise<Worksheet | undefined> {
  if (key === EMPTY) return emptySheet
  const file = await templateFile(key)
  if (!file || !own) return file?.worksheet
  // The page opens without it, and most sheets do too.
  const { withoutExample } = await import('../../worksheet/compose/without-example.ts')
  return preparedAs(withoutExample(file.worksheet), file)
}
