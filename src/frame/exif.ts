import ExifReader from 'exifreader'

/** What the camera wrote of how the picture was taken. Owner, serial numbers and place are never read. */
export interface Taken {
  readonly camera: string | null
  readonly lens: string | null
  /** Focal length, m. */
  readonly focal: number | null
  /** The f-number. */
  readonly aperture: number | null
  /** Exposure time, s. */
  readonly time: number | null
  readonly iso: number | null
  /** Date and time after ISO 8601, with the offset from UTC where the file has one. */
  readonly when: string | null
}

export interface ExifFields {
  /** Null where the file says nothing of how it was taken. */
  readonly taken: Taken | null
  /** 1 to 8, as the orientation field of Exif and TIFF counts. */
  readonly orientation: number
  readonly colourSpace: 'sRGB' | 'Adobe RGB (1998)' | 'uncalibrated' | undefined
}

const NOTHING: ExifFields = { taken: null, orientation: 1, colourSpace: undefined }

/** Names as exifreader gives them, ids where its names change with the version of Exif. */
const FIELDS = {
  Make: 0x010f,
  Model: 0x0110,
  Orientation: 0x0112,
  ExposureTime: 0x829a,
  FNumber: 0x829d,
  Sensitivity: 0x8827,
  ExposureIndex: 0x8832,
  Original: 0x9003,
  Digitized: 0x9004,
  OffsetOriginal: 0x9011,
  OffsetDigitized: 0x9012,
  ShutterSpeed: 0x9201,
  Aperture: 0x9202,
  FocalLength: 0x920a,
  ColourSpace: 0xa001,
  LensModel: 0xa434,
  Interoperability: 0x0001,
} as const

type Field = keyof typeof FIELDS
const TAKEN: readonly Field[] = [
  'Make',
  'Model',
  'LensModel',
  'FocalLength',
  'FNumber',
  'Aperture',
  'ExposureTime',
  'ShutterSpeed',
  'Sensitivity',
  'ExposureIndex',
  'Original',
  'Digitized',
]

/** Reads the Exif fields of a TIFF structure. What cannot be read counts as not there; it never throws. */
export function readExif(block: Uint8Array | undefined): ExifFields {
  if (!block || block.length < 8) return NOTHING
  let found: Map<number, unknown>
  try {
    const view = new DataView(block.buffer, block.byteOffset, block.byteLength)
    const { exif } = ExifReader.loadView(view, { expanded: true, includeTags: { exif: Object.values(FIELDS) } })
    found = new Map(
      Object.values(exif ?? {}).map((tag) => [(tag as { id: number }).id, (tag as { value: unknown }).value]),
    )
  } catch {
    return NOTHING
  }
  const value = (field: Field): unknown => found.get(FIELDS[field])
  return {
    taken: TAKEN.some((field) => value(field) !== undefined) ? takenOf(value) : null,
    orientation: number(value('Orientation')) ?? 1,
    colourSpace: colourSpaceOf(value),
  }
}

function takenOf(value: (field: Field) => unknown): Taken {
  const focal = positive(value('FocalLength'))
  const sensitivity = positive(value('Sensitivity'))
  // The field has 16 bits: one that is full points to the field with more.
  const iso =
    sensitivity === null || sensitivity === 65535 ? (positive(value('ExposureIndex')) ?? sensitivity) : sensitivity
  return {
    camera: text(value('Model')) ?? text(value('Make')),
    lens: text(value('LensModel')),
    focal: focal === null ? null : focal / 1000,
    aperture: positive(value('FNumber')) ?? apex(value('Aperture'), (stops) => 2 ** (stops / 2)),
    time: positive(value('ExposureTime')) ?? apex(value('ShutterSpeed'), (stops) => 2 ** -stops),
    iso,
    when: moment(value('Original'), value('OffsetOriginal')) ?? moment(value('Digitized'), value('OffsetDigitized')),
  }
}

function colourSpaceOf(value: (field: Field) => unknown): ExifFields['colourSpace'] {
  const space = number(value('ColourSpace'))
  if (space === undefined || space === null) return undefined
  if (space === 1) return 'sRGB'
  // The rule of DCF 2.0: uncalibrated, and R03 in the interoperability field.
  return space === 2 || text(value('Interoperability')) === 'R03' ? 'Adobe RGB (1998)' : 'uncalibrated'
}

/** A number or a fraction; 0/0 and what is not finite is none. */
function number(value: unknown): number | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null
  if (!Array.isArray(value) || value.length === 0) return null
  const [above, below] = value as unknown[]
  if (typeof above !== 'number') return number(above)
  const ratio = typeof below === 'number' ? above / below : above
  return Number.isFinite(ratio) ? ratio : null
}

/** A focal length, an f-number or a time of zero says that the camera did not know it. */
function positive(value: unknown): number | null {
  const read = number(value)
  return read !== null && read > 0 ? read : null
}

function apex(value: unknown, from: (stops: number) => number): number | null {
  const stops = number(value)
  return stops === null || Math.abs(stops) > 40 ? null : from(stops)
}

function text(value: unknown): string | null {
  const whole = Array.isArray(value) ? value.join('') : value
  if (typeof whole !== 'string') return null
  const plain = (whole.split('\0')[0] as string).replace(/\p{Cc}/gu, ' ').trim()
  return plain === '' ? null : plain.slice(0, 200)
}

/** `2026:03:04 10:11:12` and `+01:00` as ISO 8601. Blank and impossible dates are none. */
function moment(value: unknown, offset: unknown): string | null {
  const match = /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)/.exec(text(value) ?? '')
  if (!match) return null
  const [, year, month, day, hour, minute, second] = match as unknown as [
    string,
    string,
    string,
    string,
    string,
    string,
    string,
  ]
  const written = `${year}-${month}-${day}T${hour}:${minute}:${second}`
  const date = new Date(`${written}Z`)
  if (Number.isNaN(date.getTime()) || !date.toISOString().startsWith(written)) return null
  const zone = /^([+-]\d\d:\d\d|Z)$/.exec(text(offset) ?? '')
  return zone ? written + zone[0] : written
}
