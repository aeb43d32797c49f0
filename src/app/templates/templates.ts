import type { Worksheet } from '../../worksheet/index.ts'
import { FORMAT, type Stage, VERSION } from '../../worksheet/schema/format.ts'
import { templateFile } from './prepared-template.ts'

/** How a template answers the shelf's question; stands in the template's own file under `shelf`. */
export interface Answer {
  /** The file's name without its ending: its place in the address. */
  readonly key: string
  /** What one has got: «A flat sheet on a copy stand». */
  readonly answer: string
  /** What the sheet works out, in a sentence. */
  readonly about: string
  readonly order: number
  /** When in a job it is used. */
  readonly moment: Stage
  /** What people say who look for it: `book`, `glare`, `too big`. */
  readonly words: readonly string[]
}

type Shelf = Omit<Answer, 'key'>

// Only the answers load with the page; a template itself is fetched when it is chosen.
const shelves = import.meta.glob<Shelf>('../../../templates/*.json', { import: 'shelf', eager: true })

const keyOf = (path: string): string => path.replace(/^.*\/|\.json$/g, '')

export const ANSWERS: readonly Answer[] = Object.entries(shelves)
  .map(([path, { answer, about, order, moment, words }]) => ({
    key: keyOf(path),
    ...{ answer, about, order, moment, words },
  }))
  .sort((a, b) => a.order - b.order)

export const EMPTY = 'empty'

const emptySheet: Worksheet = { format: FORMAT, version: VERSION, title: 'Untitled worksheet', cells: [] }

/** The worksheet behind an answer; undefined where there is none of that name. */
export const template = async (key: string): Promise<Worksheet | undefined> =>
  key === EMPTY ? emptySheet : (await templateFile(key))?.worksheet
