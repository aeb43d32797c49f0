import * as v from 'valibot'
import { NAME_PATTERN } from '../format/format.ts'
import { id, label, measuredUnder, name, readUnder, text } from './fields.ts'

const MOST_LISTED = 60
const MAX_PATCHES = 300
const MAX_PICTURES = 200
/** Characters of a small copy as a data address. */
const MAX_PREVIEW = 200_000

const coordinates = v.pipe(v.array(v.number()), v.maxLength(4))

/** A place in a picture and what is measured there, in pixels of the picture as shown. */
const area = v.looseObject({
  kind: v.picklist(['patch', 'evenness', 'rule', 'square', 'edge', 'chart', 'line']),
  name,
  /** x, y, width and height. */
  box: v.optional(coordinates),
  columns: v.optional(v.number()),
  rows: v.optional(v.number()),
  /** Two marks, and as typed how far they are apart. */
  from: v.optional(coordinates),
  to: v.optional(coordinates),
  length: v.optional(text),
  /** Top left, top right, bottom right, bottom left, and as typed the true width and height. */
  corners: v.optional(v.pipe(v.array(coordinates), v.maxLength(4))),
  size: v.optional(text),
  /** For a chart: where its outline lies, clockwise, by which its patches are found again in the next picture. */
  outline: v.optional(v.pipe(v.array(coordinates), v.maxLength(4))),
  /** For a chart: each patch with its reference L*a*b* for D50. */
  patches: v.optional(
    v.pipe(
      v.array(v.looseObject({ name: text, box: coordinates, lab: v.array(v.number()) })),
      v.maxLength(MAX_PATCHES),
    ),
  ),
})

/**
 * A picture measured; formulas see a record with its areas' readings: `plain_card.light.spread`. The picture itself is
 * never saved.
 */
export const frame = v.looseObject({
  kind: v.literal('frame'),
  id,
  name,
  label,
  /** What is to be photographed, and how. */
  hint: v.optional(text),
  areas: v.optional(v.pipe(v.array(area), v.maxLength(MOST_LISTED))),
  /** The picture last measured: by its digest it is known again. */
  picture: v.optional(
    v.looseObject({
      name: text,
      /** Bytes. */
      size: v.number(),
      /** SHA-256 of the file. */
      digest: text,
      pixels: v.looseObject({
        width: v.number(),
        height: v.number(),
        bits: v.number(),
        channels: v.number(),
        encoding: text,
      }),
      /** A small copy, where it was wanted; it is sent along only where that was chosen as well. */
      preview: v.optional(
        v.looseObject({ image: v.pipe(v.string(), v.maxLength(MAX_PREVIEW)), travels: v.optional(v.boolean()) }),
      ),
      /** What the camera wrote; owner, serial number and place are never saved. */
      taken: v.nullable(v.looseObject({})),
    }),
  ),
  /** What was read, by the name of the area. */
  readings: v.optional(v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), v.looseObject({}))),
  read_under: readUnder,
  /** Of the picture, by its digest. */
  measured_under: measuredUnder,
  /** Pictures compared over time, the earliest first; an empty list where the next pictures are to be. */
  series: v.optional(
    v.pipe(
      v.array(
        v.looseObject({
          name: text,
          digest: text,
          /** As the camera wrote it, ISO 8601. */
          when: v.nullable(text),
          readings: v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), v.looseObject({})),
        }),
      ),
      v.maxLength(MAX_PICTURES),
    ),
  ),
  /** The givens that take what the camera wrote: `{ "aperture": "aperture" }`, the camera's figure first. */
  fills: v.optional(v.record(v.pipe(v.string(), v.regex(NAME_PATTERN)), name)),
})
