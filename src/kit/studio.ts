import * as v from 'valibot'
import type { Store } from '../storage/store/types.ts'
import { KitError, type Piece, PiecesSchema } from './piece.ts'

const SETTING = 'kit'
const LOCK = 'evenfield-kit'

/** The studio's kit, kept in this browser beside its sheets. */
export class Studio {
  constructor(private readonly store: Pick<Store, 'setting' | 'saveSetting'>) {}

  /** Every piece, in the order they were put in; undefined where no kit was ever kept. Throws KitError. */
  async pieces(): Promise<readonly Piece[] | undefined> {
    const kept = await this.store.setting(SETTING)
    if (kept === undefined) return undefined
    const read = v.safeParse(PiecesSchema, kept)
    // Written over, what a newer version keeps would be lost.
    if (!read.success)
      throw new KitError('The kit kept in this browser cannot be read by this version. It stays as it is.')
    return read.output
  }

  /** Puts a piece in, or in the place of the one with its id. */
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

  /** Takes pieces in; of two with one id the one that comes in counts, and everything else stays. */
  take(coming: readonly Piece[]): Promise<readonly Piece[]> {
    return this.change((pieces) => {
      const fresh = new Map(coming.map((piece) => [piece.id, piece]))
      const kept = pieces.map((piece) => fresh.get(piece.id) ?? piece)
      const known = new Set(pieces.map(({ id }) => id))
      return [...kept, ...[...fresh.values()].filter(({ id }) => !known.has(id))]
    })
  }

  /** Reads and writes as one, also where another tab does the same. */
  private change(how: (pieces: readonly Piece[]) => readonly Piece[]): Promise<readonly Piece[]> {
    const work = async (): Promise<readonly Piece[]> => {
      const next = how((await this.pieces()) ?? [])
      await this.store.saveSetting(SETTING, next)
      return next
    }
    const locks = globalThis.navigator?.locks as LockManager | undefined
    return locks ? locks.request(LOCK, work) : work()
  }
}

/** What a sheet can be filled in from: the studio's own pieces, or the generic kit where it has none. */
export async function piecesIn(store: Pick<Store, 'setting' | 'saveSetting'>): Promise<readonly Piece[]> {
  const own = await new Studio(store).pieces()
  if (own && own.length > 0) return own
  const { genericKit } = await import('./generic.ts')
  return genericKit()
}
