import { showFigure } from '../../units/index.ts'
import type { Worksheet } from '../../worksheet/schema/document.ts'
import { DocumentError, parseJson, readDocument } from '../../worksheet/schema/read-document.ts'
import { PatchMisfit } from './json-difference.ts'
import { withoutPreviews } from './previews.ts'
import { BaseMissing, type BaseSheet, type FindBase, fromBases, onBases } from './sheet-on-bases.ts'
import { EXCHANGE_WORDS as WORDS } from './words.ts'

/** Why a link cannot be opened, and what to do about it. Nothing of the user's has changed. */
export class LinkError extends Error {
  override readonly name = 'LinkError'
}

/** Every version of the packing ever written can always be opened: a whole sheet, and what differs from a job's. */
const WHOLE = 1
const ON_BASES = 2

/** The most memory a sheet may take, even where its link asks for more. */
const MOST_UNPACKED = 2_000_000
/** No honest sheet packs worse than this. */
const MOST_CHARACTERS = 2_000_000

// Unlike the raw form this one ends in a checksum: a figure altered on the way is noticed.
const PACKING = 'deflate'

function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  // A call takes a limited number of arguments.
  for (let at = 0; at < bytes.length; at += 8192) binary += String.fromCharCode(...bytes.subarray(at, at + 8192))
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  if (/[^A-Za-z0-9_-]/.test(text) || text.length % 4 === 1) {
    throw new LinkError(WORDS.linkBroken)
  }
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(binary, (character) => character.charCodeAt(0))
}

async function pack(text: string): Promise<Uint8Array> {
  const packed = new Blob([text]).stream().pipeThrough(new CompressionStream(PACKING))
  return new Uint8Array(await new Response(packed).arrayBuffer())
}

/** Unpacks piece by piece, so that a small link that swells without end is stopped early. */
async function unpack(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream(PACKING)).getReader()
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let text = ''
  let size = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return text + decoder.decode()
    size += value.byteLength
    if (size > MOST_UNPACKED) {
      await reader.cancel().catch(() => {})
      throw new LinkError(WORDS.linkUnpacksTooLarge)
    }
    text += decoder.decode(value, { stream: true })
  }
}

const packed = async (version: number, document: object): Promise<string> =>
  `s=${version}.${toBase64Url(await pack(JSON.stringify(document)))}`

/**
 * Packs a sheet into what goes after `#` in an address; no server ever sees it. A sheet that was made from one of the
 * bases travels as its name and what differs, where that is shorter than the whole.
 */
export async function toLink(whole: Worksheet, bases: readonly BaseSheet[] = []): Promise<string> {
  const worksheet = withoutPreviews(whole)
  const short = onBases(worksheet, bases)
  const links = await Promise.all([packed(WHOLE, worksheet), ...(short ? [packed(ON_BASES, short)] : [])])
  return links.reduce((shortest, link) => (link.length < shortest.length ? link : shortest))
}

/** Whether the part after `#` claims to be a sheet. */
export const isLink = (fragment: string): boolean => /^#?s=/.test(fragment)

/** Opens what `toLink` packed; whatever is wrong with it is a LinkError. */
export async function fromLink(fragment: string, find: FindBase = async () => undefined): Promise<Worksheet> {
  const text = fragment.replace(/^#/, '')
  if (text.length > MOST_CHARACTERS) {
    throw new LinkError(WORDS.linkTooLong)
  }
  const match = /^s=(\d{1,6})\.(.*)$/s.exec(text)
  if (!match) throw new LinkError(WORDS.linkEmpty)
  const version = Number(match[1])
  if (version !== WHOLE && version !== ON_BASES) {
    throw new LinkError(WORDS.linkNewer(version, ON_BASES))
  }
  const bytes = fromBase64Url(match[2] as string)
  let json: string
  try {
    json = await unpack(bytes)
  } catch (error) {
    if (error instanceof LinkError) throw error
    throw new LinkError(WORDS.linkBroken, { cause: error })
  }
  try {
    return readDocument(version === WHOLE ? json : JSON.stringify(await fromBases(parseJson(json), find)))
  } catch (error) {
    if (error instanceof PatchMisfit) throw new LinkError(WORDS.linkBroken, { cause: error })
    if (error instanceof BaseMissing) throw new LinkError(WORDS.linkBaseMissing(error.job), { cause: error })
    if (!(error instanceof DocumentError)) throw error
    throw new LinkError(WORDS.linkUnread(error.message), { cause: error })
  }
}

/** How far a link of some length gets. */
export interface LinkSize {
  readonly characters: number
  /** False: send the file instead. */
  readonly carried: boolean
  readonly words: string
}

/** What common messengers and mail programs carry, by common practice: no standard sets it. */
const CARRIED = 2_000

/** Says how long a whole address is and whether common messengers carry it. */
export function linkSize(address: string): LinkSize {
  const characters = address.length
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, characters))) - 1)
  const rounded = showFigure(Math.round(characters / step) * step).replace(/(?<=^\d)(?=\d{3}$)/, '\u202f')
  if (characters <= CARRIED) return { characters, carried: true, words: WORDS.linkCarried(rounded) }
  return {
    characters,
    carried: false,
    words: WORDS.linkLong(rounded),
  }
}
