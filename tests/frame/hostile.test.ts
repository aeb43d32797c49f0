import { readFileSync } from 'node:fs'
import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FrameError, frameReport, openFrame, readAreas } from '../../src/frame/index.ts'
import { app1, chunk, exifBlock, header, make, png, profile, SIGNATURE, tiff, withSegments } from './files.ts'

const AREAS = readAreas([
  { kind: 'patch', name: 'patch', box: [1, 1, 5, 5] },
  { kind: 'evenness', name: 'light', columns: 3, rows: 2 },
  { kind: 'edge', name: 'edge', box: [0, 0, 20, 20] },
  { kind: 'line', name: '__proto__', from: [0, 0], to: [30, 2] },
])

/** Either a report whose every number is finite, or FrameError with a message of one line. */
function measured(file: Uint8Array): 'measured' | 'refused' {
  let refused = false
  try {
    const frame = openFrame(file)
    for (const area of AREAS)
      try {
        const text = JSON.stringify(frameReport(frame, [area]))
        expect(text).not.toMatch(/\bnull\b(?![,}])/)
      } catch (error) {
        if (!(error instanceof FrameError)) throw error
      }
  } catch (error) {
    if (!(error instanceof FrameError)) throw error
    expect(error.message).not.toMatch(/\n|undefined|NaN/)
    expect(error.message.length).toBeGreaterThan(20)
    refused = true
  }
  expect(Object.keys(Object.prototype)).toEqual([])
  return refused ? 'refused' : 'measured'
}

const jpegs = ['baseline-420', 'progressive-420', 'progressive-grey', 'baseline-422-restarts'].map(
  (name) => new Uint8Array(readFileSync(new URL(`pictures/${name}.jpg`, import.meta.url))),
)
const made = make(40, 30, 3, 8, (x, y, c) => 40 + 3 * x + 2 * y + 10 * c)
const made16 = make(40, 30, 3, 16, (x, y, c) => 9000 + 300 * x + 200 * y + 1000 * c)
const icc = profile({
  columns: [
    [0.44, 0.22, 0.01],
    [0.38, 0.72, 0.1],
    [0.14, 0.06, 0.71],
  ],
  curve: { exponent: 2.2 },
})
const exif = exifBlock(
  [
    [0x829a, 5, [1, 125]],
    [0x9003, 2, '2026:03:04 10:11:12'],
  ],
  [[0x0112, 3, [1]]],
)
const FILES = [
  ...jpegs,
  withSegments(jpegs[0] as Uint8Array, [app1(exif)]),
  png(made),
  png(made16, { interlaced: true, filters: [0, 1, 2, 3, 4], chunks: [['eXIf', exif]] }),
  tiff(made, { rowsPerStrip: 7, compression: 'lzw', fields: [[34675, 7, icc]] }),
  tiff(made16, { tile: [16, 16], compression: 'deflate', predictor: true, little: false }),
  tiff(made16, { planar: true, exif: [[0x829a, 5, [1, 125]]] }),
]

const RUNS = { numRuns: 400 }

describe('what someone might drop', () => {
  it('every file is measured whole', () => {
    for (const file of FILES) expect(measured(file)).toBe('measured')
  })

  it('a file cut anywhere is refused, never measured in part', () => {
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), fc.double({ min: 0, max: 1, noNaN: true }), (which, share) => {
        const file = FILES[which] as Uint8Array
        const cut = file.subarray(0, Math.floor(share * file.length))
        // A TIFF of this writer ends with its last strip, the others with a mark of their end.
        if (cut.length < file.length) expect(measured(cut)).toBe('refused')
      }),
      RUNS,
    )
  })

  it('a JPEG cut within its data, with an end put behind it, is refused', () => {
    for (const file of jpegs) {
      const start = file.findIndex((byte, i) => byte === 0xff && file[i + 1] === 0xda) + 20
      for (const share of [0.1, 0.4]) {
        const at = Math.floor(start + share * (file.length - start))
        if (file[at - 1] === 0xff) continue
        expect(measured(Uint8Array.of(...file.subarray(0, at), 0xff, 0xd9))).toBe('refused')
      }
    }
  })

  it('changed bytes give a figure or a refusal', () => {
    const changes = fc.array(fc.tuple(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), fc.nat(255)), {
      minLength: 1,
      maxLength: 8,
    })
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), changes, (which, list) => {
        const file = (FILES[which] as Uint8Array).slice()
        for (const [share, byte] of list) file[Math.floor(share * file.length)] = byte
        measured(file)
      }),
      { numRuns: 1500 },
    )
  })

  it('changed headers give a figure or a refusal', () => {
    const changes = fc.array(fc.tuple(fc.nat(220), fc.constantFrom(0, 1, 2, 4, 0x7f, 0x80, 0xff)), {
      minLength: 1,
      maxLength: 5,
    })
    fc.assert(
      fc.property(fc.nat(FILES.length - 1), changes, (which, list) => {
        const file = (FILES[which] as Uint8Array).slice()
        for (const [at, byte] of list) if (at < file.length) file[at] = byte
        measured(file)
      }),
      { numRuns: 1500 },
    )
  })

  it('random bytes behind a known start are refused', () => {
    const starts = [
      [],
      [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10],
      [0xff, 0xd8, 0xff],
      [0x49, 0x49, 42, 0, 8, 0, 0, 0],
      [0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ]
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 300 }), (start, rest) => {
        expect(measured(Uint8Array.of(...start, ...rest))).toBe('refused')
      }),
      RUNS,
    )
  })

  it('a header that promises 200 megapixels over a few bytes is refused before anything is reserved', () => {
    const [width, height] = [16000, 12500]
    const few = new Uint8Array(deflateSync(new Uint8Array(100)))
    const lying = Uint8Array.from(
      Buffer.concat([
        SIGNATURE,
        chunk('IHDR', header(width, height, 16, 2)),
        chunk('IDAT', few),
        chunk('IEND', new Uint8Array(0)),
      ]),
    )
    expect(() => openFrame(lying)).toThrow(/16000 × 12500 pixels, but has far too few data/)
    const jpeg = (jpegs[0] as Uint8Array).slice()
    const frame = jpeg.findIndex((byte, i) => byte === 0xff && jpeg[i + 1] === 0xc0)
    jpeg.set([12500 >> 8, 12500 & 255, 16000 >> 8, 16000 & 255], frame + 5)
    expect(() => openFrame(jpeg)).toThrow(/16000 × 12500 pixels, but has far too few data/)
    for (const compression of ['none', 'lzw', 'deflate'] as const) {
      const file = tiff(
        make(4, 4, 3, 16, () => 9),
        { compression },
      )
      const view = new DataView(file.buffer)
      view.setUint32(10 + 8, width, true)
      view.setUint32(10 + 12 + 8, height, true)
      expect(() => openFrame(file)).toThrow(/16000 × 12500 pixels/)
    }
    const before = process.memoryUsage().arrayBuffers
    expect(before).toBeLessThan(1e9)
  })

  it('a small file that inflates without end is stopped at the size of its picture', () => {
    const bomb = new Uint8Array(deflateSync(new Uint8Array(60_000_000), { level: 9 }))
    const file = Uint8Array.from(
      Buffer.concat([
        SIGNATURE,
        chunk('IHDR', header(200, 100, 8, 0)),
        chunk('IDAT', bomb),
        chunk('IEND', new Uint8Array(0)),
      ]),
    )
    expect(measured(file)).toBe('measured')
  })

  it('files of other kinds are refused with what to export instead', () => {
    const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0))
    const kinds: [string, RegExp][] = [
      ['\0\0\0\x18ftypheic', /HEIC.*export it as JPEG/],
      ['\0\0\0\x18ftypmif1', /HEIC.*export it as JPEG/],
      ['\0\0\0\x18ftypcrx ', /raw file.*16-bit TIFF/],
      ['FUJIFILMCCD-RAW 0201', /raw file.*16-bit TIFF/],
      ['IIU\0\x18\0\0\0', /raw file.*16-bit TIFF/],
      ['RIFF\0\0\0\0WEBPVP8 ', /WebP/],
      ['8BPS', /flat TIFF/],
      ['%PDF-1.7', /PDF/],
      ['GIF89a', /GIF/],
      ['hello', /not a picture/],
    ]
    for (const [start, message] of kinds) expect(() => openFrame(ascii(start.padEnd(64, '\x01')))).toThrow(message)
    expect(() => openFrame(new Uint8Array(0))).toThrow(/empty/)
    // The directory of a raw file that is laid out as a TIFF: the version of its format, or an array of colour filters.
    expect(() => openFrame(tiff(made, { fields: [[50706, 1, [1, 4, 0, 0]]] }))).toThrow(/raw file/)
    expect(() => openFrame(tiff(made16, { photometric: 32803 }))).toThrow(/raw file/)
    expect(() =>
      openFrame(
        tiff(
          make(4, 4, 4, 8, () => 9),
          { photometric: 5 },
        ),
      ),
    ).toThrow(/CMYK.*export it as RGB/)
    expect(() => openFrame(tiff(made, { photometric: 8 }))).toThrow(/Lab.*export it as grey or RGB/)
    expect(() => openFrame(tiff(made, { fields: [[339, 3, [3, 3, 3]]] }))).toThrow(/floating-point.*8 or 16 bits/)
    // Three samples of 4 bits, by its field BitsPerSample.
    const packed = tiff(make(8, 4, 3, 8, () => 9))
    const view = new DataView(packed.buffer)
    for (let i = 0; i < 3; i++) view.setUint16(view.getUint32(10 + 2 * 12 + 8, true) + 2 * i, 4, true)
    expect(() => openFrame(packed)).toThrow(/4, 4, 4 bits per sample.*8 or 16 bits/)
  })
})

describe('areas that cannot be read', () => {
  const bad =
    (...areas: unknown[]): (() => unknown) =>
    () =>
      readAreas(areas)
  const patch = { kind: 'patch', name: 'a', box: [0, 0, 1, 1] }
  const cases: [string, () => unknown, RegExp][] = [
    ['no list', () => readAreas({ a: patch }), /are not a list/],
    ['null', () => readAreas(null), /are not a list/],
    ['an entry that is none', bad(1), /area 1 is not an object/],
    ['no name', bad({ kind: 'patch', box: [0, 0, 1, 1] }), /area 1 has no name/],
    ['an unknown kind', bad({ ...patch, kind: 'spot' }), /“spot”.*patch, evenness/],
    ['no kind', bad({ name: 'a' }), /no kind/],
    ['no box', bad({ kind: 'patch', name: 'a' }), /“a” has no box/],
    ['a box of texts', bad({ ...patch, box: ['0', '0', '1', '1'] }), /box of area “a”.*four numbers/],
    ['a box of three', bad({ ...patch, box: [0, 0, 1] }), /four numbers/],
    ['a box of NaN', bad({ ...patch, box: [0, 0, Number.NaN, 1] }), /four numbers/],
    ['an infinite box', bad({ ...patch, box: [0, 0, Number.POSITIVE_INFINITY, 1] }), /four numbers/],
    ['an empty box', bad({ ...patch, box: [0, 0, 0, 1] }), /above zero/],
    ['no columns', bad({ kind: 'evenness', name: 'a', columns: 0 }), /columns.*1 to/],
    ['half a row', bad({ kind: 'evenness', name: 'a', rows: 1.5 }), /rows.*1 to/],
    [
      'three corners',
      bad({
        kind: 'square',
        name: 'a',
        size: '1 x 1 mm',
        corners: [
          [0, 0],
          [1, 0],
          [1, 1],
        ],
      }),
      /3 corners.*four/,
    ],
    [
      'a corner of one',
      bad({ kind: 'square', name: 'a', size: '1 x 1 mm', corners: [[0, 0], [1], [1, 1], [0, 1]] }),
      /corner 2/,
    ],
    [
      'a size without a unit',
      bad({
        kind: 'square',
        name: 'a',
        size: '20 x 10',
        corners: [
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 9],
        ],
      }),
      /without a unit/,
    ],
    ['no length', bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1] }), /length.*missing/],
    ['a length of zero', bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1], length: '0 mm' }), /not above zero/],
    [
      'a length below zero',
      bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1], length: '-5 mm' }),
      /not above zero/,
    ],
    [
      'a length of another kind',
      bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1], length: '5 s' }),
      /time, not a length/,
    ],
    ['a bare number', bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1], length: '100' }), /without a unit/],
    ['a length that is no text', bad({ kind: 'rule', name: 'a', from: [0, 0], to: [1, 1], length: 100 }), /not a text/],
    ['a rule of no length', bad({ kind: 'rule', name: 'a', from: [1, 1], to: [1, 1], length: '1 mm' }), /one place/],
    ['no patches', bad({ kind: 'chart', name: 'a', patches: [] }), /no patches/],
    [
      'a patch without Lab',
      bad({ kind: 'chart', name: 'a', patches: [{ name: 'p', box: [0, 0, 1, 1] }] }),
      /“p”.*no reference/,
    ],
    ['two of one name', bad(patch, patch), /two areas have the name “a”/],
  ]
  for (const [name, work, message] of cases) it(name, () => expect(work).toThrow(message))

  it('areas out of the picture are refused, with where they end', () => {
    const file = png(made)
    const report =
      (area: object): (() => object) =>
      () =>
        frameReport(openFrame(file), readAreas([{ name: 'a', ...area }]))
    expect(report({ kind: 'patch', box: [30, 0, 11, 5] })).toThrow(
      /“a” extends beyond the picture: it ends at 41, 5.*40 × 30/,
    )
    expect(report({ kind: 'patch', box: [-1, 0, 5, 5] })).toThrow(/starts at -1, 0/)
    expect(report({ kind: 'rule', from: [0, 0], to: [40.5, 1], length: '1 mm' })).toThrow(/"to" of “a” is at 40.5, 1/)
    expect(
      report({
        kind: 'square',
        corners: [
          [0, 0],
          [40, 0],
          [40, 31],
          [0, 30],
        ],
        size: '4 x 3 mm',
      }),
    ).toThrow(/corner 3/)
  })

  it('any JSON is read or refused, and a name may be any text', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        try {
          readAreas(value)
        } catch (error) {
          expect(error).toBeInstanceOf(FrameError)
        }
      }),
      RUNS,
    )
    for (const name of ['__proto__', 'constructor', 'toString']) {
      const report = frameReport(openFrame(png(made)), readAreas([{ ...patch, name }])) as { areas: object }
      expect(Object.keys(JSON.parse(JSON.stringify(report)).areas)).toEqual([name])
    }
    expect(Object.keys(Object.prototype)).toEqual([])
  })
})
