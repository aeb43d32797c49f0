import type { Cell, Worksheet } from '../schema/document.ts'

/** A change of the document. Each is one step of undo, unless merged with the step before it. */
export type Change =
  | { readonly do: 'title'; readonly title: string }
  | { readonly do: 'job'; readonly job: string }
  | { readonly do: 'add'; readonly cell: Cell; readonly at: number }
  /** Adds several cells at one place, each under a new id and a free name. */
  | { readonly do: 'insert'; readonly cells: readonly Cell[]; readonly at: number }
  | { readonly do: 'remove'; readonly id: string }
  | { readonly do: 'move'; readonly id: string; readonly to: number }
  /** Puts a cell in the place of the one with its id. */
  | { readonly do: 'replace'; readonly cell: Cell }
  /** Gives a cell another name, which follows into every formula that uses it. */
  | { readonly do: 'rename'; readonly id: string; readonly name: string }
  /** Gives a column of a table another name, which follows into every formula that uses it. */
  | { readonly do: 'rename column'; readonly id: string; readonly column: number; readonly name: string }
  /** Gives an area of a frame another name, which follows into every formula that uses it. */
  | { readonly do: 'rename area'; readonly id: string; readonly area: number; readonly name: string }
  /** Composes the sheet again from parts; `given` holds what is filled in by name, also where a part computes it. */
  | {
      readonly do: 'arrange'
      readonly cells: readonly Cell[]
      readonly parts: NonNullable<Worksheet['parts']>
      readonly setups?: NonNullable<Worksheet['setups']>
      readonly given: NonNullable<Worksheet['given']>
    }
  | { readonly do: 'several'; readonly changes: readonly Change[] }

/** Why a change is refused: what, and what would do. Nothing has changed then. */
export class ChangeRefused extends Error {}
