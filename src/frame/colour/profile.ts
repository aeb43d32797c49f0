import { luminanceOf, type Triple } from '../../functions/acceptance/colour-space.ts'
import { FrameError, quoted } from '../problem.ts'
import { type Curve, type Encoding, knownName } from './encoding.ts'
import { ofColumns } from './matrix.ts'
import { curveOf } from './profile-curve.ts'
import * as words from './words.ts'

const EXPORT = words.exportWith
const bad = (what: string): FrameError => new FrameError(words.profile(what, EXPORT))

/** Kinds of profile that describe a picture: an input, a display and a colour space. */
const CLASSES = ['scnr', 'mntr', 'spac']
const SPACES: Readonly<Record<string, string>> = {
  CMYK: 'CMYK',
  'Lab ': 'Lab',
  'XYZ ': 'XYZ',
  'CMY ': 'CMY',
  'HSV ': 'HSV',
}

/** Reads a matrix/TRC or grey profile (ICC.1:2022, clauses 8.3 to 8.5 and 9). Throws FrameError with what to export instead. */
export function readProfile(bytes: Uint8Array, channels: 1 | 3): Encoding {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < 132 || signature(bytes, 36) !== 'acsp') throw bad(words.cutShortOrNone)
  const [kind, space, connection] = [signature(bytes, 12), signature(bytes, 16), signature(bytes, 20)]
  const tags = tagsOf(bytes, view)
  if (space !== 'RGB ' && space !== 'GRAY') throw new FrameError(words.otherSpace(SPACES[space] ?? words.otherColours))
  if (!CLASSES.includes(kind)) throw bad(kind === 'prtr' ? words.printers : words.notForPictures)
  if (['A2B0', 'A2B1', 'A2B2', 'D2B0'].some((tag) => tags.has(tag))) throw bad(words.byTables)
  const described = description(tags.get('desc'))
  const name = described ? words.named(quoted(described)) : words.unnamed
  if (space === 'GRAY') {
    if (channels === 3) throw bad(words.forGrey)
    const curve = needed(tags, 'kTRC')
    // In a profile that connects by Lab the curve gives lightness.
    const curves = [connection === 'Lab ' ? (code: number) => luminanceOf(100 * curve(code)) : curve]
    return { name: knownName({ curves, matrix: undefined }) ?? name, curves, matrix: undefined }
  }
  if (connection !== 'XYZ ') throw bad(words.labWithoutTable)
  const curves = ['rTRC', 'gTRC', 'bTRC'].map((tag) => needed(tags, tag))
  const [r, g, b] = ['rXYZ', 'gXYZ', 'bXYZ'].map((tag) => xyz(tags.get(tag), tag)) as [Triple, Triple, Triple]
  if (channels === 1) return greyOf(curves, name)
  const matrix = ofColumns([r, g, b])
  if (!(r[1] + g[1] + b[1] > 0)) throw bad(words.noWhite)
  return { name: knownName({ curves, matrix }) ?? name, curves, matrix }
}

/** A grey picture with a profile for RGB is read by its curve, where the three are one. */
function greyOf(curves: readonly Curve[], name: string): Encoding {
  const [red, green, blue] = curves as [Curve, Curve, Curve]
  for (let code = 0; code <= 1; code += 1 / 64)
    if (Math.max(Math.abs(red(code) - green(code)), Math.abs(blue(code) - green(code))) > 1e-4) throw bad(words.forRgb)
  return { name: knownName({ curves: [green], matrix: undefined }) ?? name, curves: [green], matrix: undefined }
}

const signature = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4))

function tagsOf(bytes: Uint8Array, view: DataView): Map<string, Uint8Array> {
  const count = view.getUint32(128)
  if (132 + 12 * count > bytes.length) throw bad(words.cutShort)
  const tags = new Map<string, Uint8Array>()
  for (let i = 0; i < count; i++) {
    const at = 132 + 12 * i
    const [offset, size] = [view.getUint32(at + 4), view.getUint32(at + 8)]
    if (offset + size > bytes.length) throw bad(words.cutShort)
    tags.set(signature(bytes, at), bytes.subarray(offset, offset + size))
  }
  return tags
}

function needed(tags: ReadonlyMap<string, Uint8Array>, tag: string): Curve {
  const body = tags.get(tag)
  const curve = body && curveOf(body)
  if (!curve) throw bad(words.noCurve(tag))
  return curve
}

function xyz(body: Uint8Array | undefined, tag: string): Triple {
  if (!body || body.length < 20 || signature(body, 0) !== 'XYZ ') throw bad(words.noPrimary(tag))
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength)
  return [view.getInt32(8) / 65536, view.getInt32(12) / 65536, view.getInt32(16) / 65536]
}

/** The description, of version 2 or 4; only for a profile whose numbers are not known. */
function description(body: Uint8Array | undefined): string | undefined {
  if (!body || body.length < 16) return undefined
  const view = new DataView(body.buffer, body.byteOffset, body.byteLength)
  let text = ''
  if (signature(body, 0) === 'desc')
    text = String.fromCharCode(...body.subarray(12, 12 + Math.min(view.getUint32(8), 200)))
  else if (signature(body, 0) === 'mluc' && body.length >= 28) {
    const [length, offset] = [view.getUint32(20), view.getUint32(24)]
    for (let at = offset; at + 1 < Math.min(body.length, offset + Math.min(length, 200)); at += 2)
      text += String.fromCharCode(view.getUint16(at))
  }
  return (text.split('\0')[0] as string).replace(/\p{Cc}/gu, ' ').trim() || undefined
}
