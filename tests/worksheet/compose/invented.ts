import type { ChosenPart } from '../../../src/worksheet/compose/choose-parts.ts'
import { type Composition, compose } from '../../../src/worksheet/compose/compose.ts'
import {
  type Choosing,
  type GivenPlace,
  type Part,
  type PartCell,
  type PartLibrary,
  type PublishedName,
  partLibrary,
  type Role,
  type SetUpDrawing,
} from '../../../src/worksheet/compose/part-library.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import type { Cell, Worksheet } from '../../../src/worksheet/index.ts'

/** A few parts made up for a test, so that it shows all that they say. */
export interface Invented {
  readonly roles: readonly (string | (Partial<Role> & { readonly role: string }))[]
  /** Of the first role where nothing is said. */
  readonly names?: Readonly<Record<string, Partial<PublishedName>>>
  /** Of the first role where nothing is said. */
  readonly parts?: Readonly<Record<string, Partial<Part>>>
  readonly phases?: readonly string[]
  readonly settings?: Readonly<Record<string, readonly string[]>>
  readonly drawing?: Partial<SetUpDrawing>
  readonly choosing?: Partial<Choosing>
}

export function invented({
  roles,
  names = {},
  parts = {},
  phases = [],
  settings = {},
  drawing = {},
  choosing = {},
}: Invented): PartLibrary {
  const all = roles.map(
    (one): Role => ({
      ...{ title: `Title of ${typeof one === 'string' ? one : one.role}`, stage: 'frame' },
      ...(typeof one === 'string' ? { role: one } : one),
    }),
  )
  const { role } = all[0] as Role
  return partLibrary(
    {
      roles: all,
      phases,
      settings,
      drawing: { title: 'The set-up', needs: ['never_there'], any: [], from: {}, moves: [], ...drawing },
      choosing: { kinds: [], phone: '', several: '', asks: [], rules: [], figures: [], ...choosing },
      set_ups: [],
    },
    { names: Object.fromEntries(Object.entries(names).map(([name, one]) => [name, { role, ...one }])) },
    Object.fromEntries(
      Object.entries(parts).map(([id, one]) => [
        id,
        {
          ...{ role, title: `Part ${id}`, about: `About ${id}`, offer: id, stage: 'light' },
          rank: 0,
          cells: [],
          steps: [],
          ...one,
        },
      ]),
    ) as Readonly<Record<string, Omit<Part, 'id'>>>,
  )
}

type More = Readonly<Record<string, unknown>>

/** The cells of a part, before they have ids. */
export const computes = (name: string, formula: string, more: More = {}): PartCell => ({
  ...{ kind: 'result', name, formula },
  ...more,
})
export const judges = (name: string, condition: string, more: More = {}): PartCell => ({
  ...{ kind: 'check', name, condition, message: '' },
  ...more,
})
export const asks = (given: string, more: More = {}): GivenPlace => ({ given, ...more })
export const says = (text: string, more: More = {}): PartCell => ({ kind: 'note', text, ...more })

export const parts = (...ids: readonly (string | ChosenPart)[]): ChosenPart[] =>
  ids.map((one) => (typeof one === 'string' ? { part: one } : one))

export const typed = (texts: Readonly<Record<string, string>>): ReadonlyMap<string, Filled> =>
  new Map(Object.entries(texts).map(([name, value]) => [name, { value, from: 'typed' }]))

/** The sheet that parts make. */
export const sheetOf = (
  library: PartLibrary,
  ids: readonly (string | ChosenPart)[],
  more: Partial<Composition> = {},
): Worksheet => compose(library, { title: 'A sheet', parts: parts(...ids), ...more }).worksheet

export const cellOf = ({ cells }: Worksheet, id: string): Cell | undefined => cells.find((cell) => cell.id === id)

/** The cells in order, a heading by its text in brackets. */
export const orderOf = ({ cells }: Worksheet): string[] =>
  cells.map((cell) => (cell.kind === 'note' && cell.role === 'heading' ? `[${cell.text}]` : cell.id))
