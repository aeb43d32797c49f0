import * as v from 'valibot'
import { FORMAT, MAX_CELLS, VERSION } from '../format/format.ts'
import { CellSchema, type Worksheet, WorksheetSchema } from './document.ts'
import { readData } from './read-document.ts'

/** What this version makes of a worksheet of a newer one: to be looked at, never to be written back. */
export interface NewerDocument {
  readonly worksheet: Worksheet
  readonly version: number
  /** How many cells it does not know, which are left out. */
  readonly unknown: number
  /** The whole of it as it came, to be saved unchanged. */
  readonly original: unknown
}

/** Reads what it can of a newer worksheet's data. Throws DocumentError where even its outline is another. */
export function readNewer(original: unknown): NewerDocument {
  const data = original as { readonly version: number; readonly cells?: unknown }
  const cells = Array.isArray(data.cells) ? data.cells.slice(0, MAX_CELLS) : []
  const known = cells.filter((cell) => v.safeParse(CellSchema, cell).success)
  const readable = { ...data, version: VERSION, cells: known }
  // Where its title or job is of a kind not known here it opens without.
  const outline = v.safeParse(WorksheetSchema, { ...readable, cells: [] })
  const worksheet = readData(outline.success ? readable : { format: FORMAT, version: VERSION, title: '', cells: known })
  return { worksheet, version: data.version, unknown: cells.length - known.length, original }
}
