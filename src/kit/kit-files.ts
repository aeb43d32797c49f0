import * as v from 'valibot'
import { newId } from '../storage/store/store.ts'
import type { Store } from '../storage/store/types.ts'
import { KIT_FORMAT, MAX_KIT_LENGTH, type Piece, PiecesSchema, readKitFile } from './piece.ts'
import { Studio } from './studio.ts'

/** Far enough into a file to see what it says it is. */
const HEAD = 200

/** The pieces of a file that is a kit; undefined where it says it is something else. Throws KitError. */
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

/** Takes pieces in beside the studio's own: one that is here and differs comes in beside it under another name. */
export async function takePieces(store: Store, coming: readonly Piece[]): Promise<string> {
  const studio = new Studio(store)
  const own = new Map(((await studio.pieces()) ?? []).map((piece) => [piece.id, piece]))
  const isHere = (piece: Piece): boolean => [...own.values()].some((one) => same(one, piece))
  const fresh = coming.flatMap((piece): Piece[] => {
    const here = own.get(piece.id)
    if (!here) return [piece]
    const beside = { ...piece, name: `${piece.name}, from a file` }
    return same(here, piece) || isHere(beside) ? [] : [{ ...beside, id: newId() }]
  })
  await studio.take(fresh)
  const pieces = (n: number): string => (n === 1 ? '1 piece' : `${n} pieces`)
  if (coming.length === 0) return ''
  return fresh.length === 0 ? 'The kit in it you had already.' : `${pieces(fresh.length)} of kit came in.`
}

/** Takes in the kit that goes along with a backup; what cannot be read is said. */
export async function takeKitIn(store: Store, backup: string): Promise<string> {
  const { kit } = JSON.parse(backup) as { kit?: unknown }
  if (kit === undefined) return ''
  const read = v.safeParse(PiecesSchema, kit)
  return read.success ? takePieces(store, read.output) : 'The kit in it cannot be read.'
}
