import * as v from 'valibot'
import { NAME_PATTERN } from '../worksheet/format/format.ts'
import { KIT_SORTS } from '../worksheet/format/kit-sorts.ts'
import { issueText } from '../worksheet/schema/issue-text.ts'
import { kitFileWords as words } from './words.ts'

export const KIT_FORMAT = 'evenfield-kit'
const MAX_PIECES = 2000
/** In characters; a kit of MAX_PIECES pieces with all their figures stays far below it. */
export const MAX_KIT_LENGTH = 2_000_000

const PieceSchema = v.looseObject({
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(64)),
  sort: v.picklist(KIT_SORTS),
  name: v.pipe(v.string(), v.maxLength(200)),
  /** As typed. */
  figures: v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), v.pipe(v.string(), v.maxLength(500))),
  note: v.optional(v.pipe(v.string(), v.maxLength(2000))),
})

export const PiecesSchema = v.pipe(v.array(PieceSchema), v.maxLength(MAX_PIECES))

const FileSchema = v.looseObject({
  format: v.literal(KIT_FORMAT),
  version: v.literal(1),
  pieces: PiecesSchema,
})

/** A camera, a lens, a lamp, … of the studio. */
export type Piece = v.InferOutput<typeof PieceSchema>

/** Why a kit file cannot be read, and where. */
export class KitError extends Error {}

/** Reads the text of a kit file as a whole. Throws KitError. */
export function readKitFile(text: string): Piece[] {
  if (text.length > MAX_KIT_LENGTH) throw new KitError(words.tooLarge)
  let data: unknown
  try {
    data = JSON.parse(text.replace(/^\ufeff/, ''))
  } catch {
    throw new KitError(words.notJson)
  }
  const read = v.safeParse(FileSchema, data)
  if (read.success) return read.output.pieces
  if ((data as { format?: unknown } | null)?.format !== KIT_FORMAT) throw new KitError(words.notKit)
  const issue = read.issues[0]
  const place = issue.path?.map(({ key }) => String(key)).join(' › ')
  throw new KitError(words.unreadable(place ?? '', issueText(issue)))
}

/** The text of a file of kit. */
export const writeKitFile = (pieces: readonly Piece[]): string =>
  `${JSON.stringify({ format: KIT_FORMAT, version: 1, pieces }, undefined, 2)}\n`
