import * as v from 'valibot'
import { newId } from '../storage/store/store.ts'
import type { Store } from '../storage/store/types.ts'
import { KIT_FORMAT, MAX_KIT_LENGTH, type Piece, PiecesSchema, readKitFile } from './piece.ts'
import { Studio } from './studio.ts'
import { kitFileWords as words } from './words.ts'

/** The number of bytes at the start of a file in which its format is named. */
const HEAD = 200

/** The pieces of a kit file; undefined for a file of another format. Throws KitError. */
export async function kitIn(file: File): Promise<readonly Piece[] | undefined> {
  if (file.size > 4 * MAX_KIT_LENGTH || !(await file.slice(0, HEAD).text()).includes(`"${KIT_FORMAT}"`))
    return undefined
  return readKitFile(await file.text())
}

const same = (a: Piece, b: Piece): boolean =>
  a.name === b.name &&
  a.sort === b.sort &&
  a.note === b.note &&
  Object.keys({ ...a.figures, ...b.figures }).every((name) => a.figures[name] === b.figures[name])

/** Adds pieces to the studio's own. A piece that is already there and differs is added under another name. */
export async function takePieces(store: Store, coming: readonly Piece[]): Promise<string> {
  const studio = new Studio(store)
  const own = new Map(((await studio.pieces()) ?? []).map((piece) => [piece.id, piece]))
  const isHere = (piece: Piece): boolean => [...own.values()].some((one) => same(one, piece))
  const fresh = coming.flatMap((piece): Piece[] => {
    const here = own.get(piece.id)
    if (!here) return [piece]
    const beside = { ...piece, name: words.fromFile(piece.name) }
    return same(here, piece) || isHere(beside) ? [] : [{ ...beside, id: newId() }]
  })
  await studio.take(fresh)
  if (coming.length === 0) return ''
  return fresh.length === 0 ? words.nothingNew : words.added(fresh.length)
}

/** Adds the kit inside a backup. Gives a sentence about it; empty where the backup has no kit. */
export async function takeKitIn(store: Store, backup: string): Promise<string> {
  const { kit } = JSON.parse(backup) as { kit?: unknown }
  if (kit === undefined) return ''
  const read = v.safeParse(PiecesSchema, kit)
  return read.success ? takePieces(store, read.output) : words.unreadableInBackup
}
