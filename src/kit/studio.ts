import * as v from 'valibot'
import type { Store } from '../storage/store/types.ts'
import { KitError, type Piece, PiecesSchema } from './piece.ts'
import { underLock } from './under-lock.ts'
import { kitFileWords } from './words.ts'

const SETTING = 'kit'
const LOCK = 'evenfield-kit'

/** The studio's kit, saved in this browser beside its sheets. */
export class Studio {
  constructor(private readonly store: Pick<Store, 'setting' | 'saveSetting'>) {}

  /** Every piece, in the order they were added; undefined where no kit was ever saved. Throws KitError. */
  async pieces(): Promise<readonly Piece[] | undefined> {
    const saved = await this.store.setting(SETTING)
    if (saved === undefined) return undefined
    const read = v.safeParse(PiecesSchema, saved)
    // Overwriting it would lose what a newer version saved.
    if (!read.success) throw new KitError(kitFileWords.newer)
    return read.output
  }

  /** Adds a piece, or replaces the one with the same id. */
  put(piece: Piece): Promise<readonly Piece[]> {
    return this.change((pieces) => {
      const at = pieces.findIndex(({ id }) => id === piece.id)
      return at < 0 ? [...pieces, piece] : pieces.with(at, piece)
    })
  }

  /** Puts a copy below its original. */
  duplicate(piece: Piece, copy: Piece): Promise<readonly Piece[]> {
    return this.change((pieces) => pieces.toSpliced(pieces.findIndex(({ id }) => id === piece.id) + 1, 0, copy))
  }

  remove(id: string): Promise<readonly Piece[]> {
    return this.change((pieces) => pieces.filter((one) => one.id !== id))
  }

  /** Puts a removed piece back where it was. */
  putBack(piece: Piece, at: number): Promise<readonly Piece[]> {
    return this.change((pieces) => (pieces.some(({ id }) => id === piece.id) ? pieces : pieces.toSpliced(at, 0, piece)))
  }

  /** Adds pieces; one with the id of an existing piece replaces it. */
  take(coming: readonly Piece[]): Promise<readonly Piece[]> {
    return this.change((pieces) => {
      const fresh = new Map(coming.map((piece) => [piece.id, piece]))
      const replaced = pieces.map((piece) => fresh.get(piece.id) ?? piece)
      const known = new Set(pieces.map(({ id }) => id))
      return [...replaced, ...[...fresh.values()].filter(({ id }) => !known.has(id))]
    })
  }

  /** Reads and writes in one step, also when another tab does the same. */
  private change(how: (pieces: readonly Piece[]) => readonly Piece[]): Promise<readonly Piece[]> {
    return underLock(LOCK, async () => {
      const next = how((await this.pieces()) ?? [])
      await this.store.saveSetting(SETTING, next)
      return next
    })
  }
}

/** The pieces a sheet can choose from: the studio's own, or the generic kit where it has none. */
export async function piecesIn(store: Pick<Store, 'setting' | 'saveSetting'>): Promise<readonly Piece[]> {
  const own = await new Studio(store).pieces()
  if (own && own.length > 0) return own
  const { genericKit } = await import('./generic.ts')
  return genericKit()
}
