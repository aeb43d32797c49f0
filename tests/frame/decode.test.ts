import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { decode as decodeWithFastPng } from 'fast-png'
import { decode as decodeWithImageJs } from 'image-js'
import { describe, expect, it } from 'vitest'
import { decodePicture } from '../../src/frame/decode/index.ts'
import { orient } from '../../src/frame/decode/orient.ts'
import { openFrame } from '../../src/frame/index.ts'
import { type Made, make, png, type TiffOptions, tiff } from './files.ts'

/** Every sample differs from its neighbours, so that no two can be exchanged unseen. */
const chequered = (width: number, height: number, channels: number, bits: 8 | 16): Made =>
  make(width, height, channels, bits, (x, y, c) => (x * 7919 + y * 104729 + c * 1299709) % 2 ** bits)

/** The picture as it should be decoded: without what is beyond grey or red, green and blue. */
function colours({ samples, channels }: Made): number[] {
  const saved = channels < 3 ? 1 : 3
  return [...samples].filter((_, i) => i % channels < saved)
}

const samplesOf = (file: Uint8Array): number[] => [...decodePicture(file).picture.samples]

describe('TIFF', () => {
  const layouts: TiffOptions[] = [
    {},
    { rowsPerStrip: 5 },
    { rowsPerStrip: 5, planar: true },
    { tile: [16, 32] },
    { tile: [32, 16], planar: true },
  ]
  const packings: TiffOptions[] = [
    {},
    ...(['lzw', 'deflate'] as const).flatMap((compression) => [{ compression }, { compression, predictor: true }]),
  ]
  for (const bits of [8, 16] as const)
    for (const channels of [1, 3, 4])
      for (const little of [true, false])
        it(`${bits} bits, ${channels} channels, ${little ? 'little' : 'big'} endian: strips, tiles and planes, every compression`, () => {
          const made = chequered(45, 37, channels, bits)
          for (const layout of layouts)
            for (const packing of packings) {
              if (layout.planar && channels === 1) continue
              const options = { ...layout, ...packing, little, extra: channels === 4 ? 1 : 0 }
              const { picture, warnings } = decodePicture(tiff(made, options))
              expect([picture.width, picture.height, picture.bits], JSON.stringify(options)).toEqual([45, 37, bits])
              expect([...picture.samples], JSON.stringify(options)).toEqual(colours(made))
              expect(warnings.length).toBe(channels === 4 ? 1 : 0)
            }
        })

  it('is decoded as image-js decodes it, where that can', () => {
    const made = chequered(45, 37, 3, 16)
    for (const compression of ['none', 'lzw', 'deflate'] as const) {
      const file = tiff(made, { rowsPerStrip: 7, compression })
      const image = decodeWithImageJs(file)
      expect(samplesOf(file)).toEqual([...image.getRawImage().data])
    }
  })

  it('reads long runs of LZW through every width of its codes', () => {
    const made = make(300, 200, 3, 8, (x, y, c) => ((x * y) >> 3) ^ ((c * 91) & 255))
    const whole = make(300, 200, 3, 8, (x, y, c) => (made.samples[(y * 300 + x) * 3 + c] as number) & 255)
    expect(samplesOf(tiff(whole, { compression: 'lzw' }))).toEqual([...whole.samples])
  })

  it('turns white-is-zero over, and reads palettes', () => {
    const made = chequered(9, 7, 1, 8)
    expect(samplesOf(tiff(made, { photometric: 0 }))).toEqual([...made.samples].map((code) => 255 - code))
    const map = Array.from({ length: 768 }, (_, i) => ((i * 37) % 256) * 257)
    const decoded = decodePicture(tiff(made, { photometric: 3, fields: [[320, 3, map]] })).picture
    expect([decoded.channels, decoded.bits]).toEqual([3, 8])
    expect([...decoded.samples]).toEqual(
      [...made.samples].flatMap((i) => [0, 256, 512].map((from) => (map[from + i] as number) / 257)),
    )
  })
})

describe('PNG', () => {
  for (const bits of [8, 16] as const)
    for (const channels of [1, 2, 3, 4])
      it(`${bits} bits, ${channels} channels: every filter, interlaced or not`, () => {
        for (const [width, height] of [
          [31, 23],
          [1, 1],
          [3, 9],
        ] as const) {
          const made = chequered(width, height, channels, bits)
          for (const interlaced of [false, true]) {
            const file = png(made, { interlaced, filters: [0, 1, 2, 3, 4] })
            const { picture, warnings } = decodePicture(file)
            expect([picture.width, picture.height, picture.bits]).toEqual([width, height, bits])
            expect([...picture.samples]).toEqual(colours(made))
            expect(warnings.length).toBe(channels % 2 === 0 ? 1 : 0)
            // The writer of the tests agrees with a library of another hand.
            expect([...decodeWithFastPng(file).data]).toEqual([...made.samples])
          }
        }
      })

  it('reads grey and palettes of 1, 2 and 4 bits, interlaced or not', () => {
    for (const depth of [1, 2, 4])
      for (const interlaced of [false, true]) {
        const most = 2 ** depth - 1
        const made = make(21, 13, 1, 8, (x, y) => (x * 5 + y * 3 + x * y) % (most + 1))
        expect(samplesOf(png(made, { depth, interlaced }))).toEqual(
          [...made.samples].map((code) => (code * 255) / most),
        )
        const palette = Uint8Array.from({ length: 3 * (most + 1) }, (_, i) => (i * 53 + 11) % 256)
        const file = png(made, { depth, interlaced, colourType: 3, chunks: [['PLTE', palette]] })
        expect(samplesOf(file)).toEqual([...made.samples].flatMap((i) => [...palette.subarray(3 * i, 3 * i + 3)]))
      }
  })

  it('is measured as image-js measures it, in a picture that a package carries', () => {
    const found = dirname(createRequire(import.meta.url).resolve('playwright-core/package.json'))
    const file = new Uint8Array(readFileSync(join(found, 'lib/server/chromium/appIcon.png')))
    const { picture } = openFrame(file)
    const image = decodeWithImageJs(file)
    expect([picture.width, picture.height]).toEqual([image.width, image.height])
    const means = image.mean()
    for (let c = 0; c < picture.channels; c++) {
      const own = [...picture.samples].filter((_, i) => i % picture.channels === c)
      expect(own.reduce((sum, code) => sum + code, 0) / own.length).toBeCloseTo(means[c] as number, 9)
    }
  })
})

describe('JPEG', () => {
  const read = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`pictures/${name}`, import.meta.url)))
  /** What the files in pictures/ were encoded from, at quality 95, by libjpeg-turbo. */
  const truth = (x: number, y: number): number[] => [40 + 2.5 * x, 60 + 3 * y, 200 - 1.5 * x - y]

  for (const name of ['baseline-420', 'baseline-422-restarts', 'progressive-420', 'progressive-444', 'rgb'])
    it(`${name}: the gradient it was made of`, () => {
      const { picture } = decodePicture(read(`${name}.jpg`))
      expect([picture.width, picture.height, picture.channels, picture.bits]).toEqual([61, 45, 3, 8])
      let sum = 0
      for (let y = 0, at = 0; y < 45; y++)
        for (let x = 0; x < 61; x++)
          for (const code of truth(x, y)) {
            const off = (picture.samples[at++] as number) - code
            expect(Math.abs(off)).toBeLessThan(6)
            sum += off
          }
      // No channel is a fraction of a code too dark throughout, as one that drops fractions is.
      expect(Math.abs(sum / picture.samples.length)).toBeLessThan(0.3)
    })

  it('reads a progressive grey one', () => {
    const { picture } = decodePicture(read('progressive-grey.jpg'))
    expect([picture.width, picture.height, picture.channels]).toEqual([61, 45, 1])
    for (let y = 0, at = 0; y < 45; y++)
      for (let x = 0; x < 61; x++) {
        const [r, g, b] = truth(x, y) as [number, number, number]
        expect(Math.abs((picture.samples[at++] as number) - (0.299 * r + 0.587 * g + 0.114 * b))).toBeLessThan(4)
      }
  })

  it('refuses CMYK, and says what to export', () => {
    expect(() => decodePicture(read('cmyk.jpg'))).toThrow(/CMYK.*export it as RGB/)
  })
})

describe('the orientation', () => {
  // A picture of 3 × 2 whose codes are 1 to 6, and what is shown for each value of the field (Exif 2.32, table 6).
  const stored = { width: 3, height: 2, channels: 1, bits: 8, samples: Uint8Array.of(1, 2, 3, 4, 5, 6) } as const
  const shown: Record<number, number[][]> = {
    1: [
      [1, 2, 3],
      [4, 5, 6],
    ],
    2: [
      [3, 2, 1],
      [6, 5, 4],
    ],
    3: [
      [6, 5, 4],
      [3, 2, 1],
    ],
    4: [
      [4, 5, 6],
      [1, 2, 3],
    ],
    5: [
      [1, 4],
      [2, 5],
      [3, 6],
    ],
    6: [
      [4, 1],
      [5, 2],
      [6, 3],
    ],
    7: [
      [6, 3],
      [5, 2],
      [4, 1],
    ],
    8: [
      [3, 6],
      [2, 5],
      [1, 4],
    ],
  }
  for (const [value, rows] of Object.entries(shown))
    it(`${value} is shown as it should be`, () => {
      const { width, height, samples } = orient(stored, Number(value))
      expect([width, height]).toEqual([rows[0]?.length, rows.length])
      expect([...samples]).toEqual(rows.flat())
      const file = tiff(stored, { fields: [[274, 3, [Number(value)]]] })
      expect([...openFrame(file).picture.samples]).toEqual(rows.flat())
    })

  it('and its reverse give the picture back', () => {
    const reverse: Record<number, number> = { 1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 8, 7: 7, 8: 6 }
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        (value, width, height) => {
          const made = chequered(width, height, 3, 8)
          const picture = { ...made, channels: 3 } as const
          expect(orient(orient(picture, value), reverse[value] as number)).toEqual(picture)
        },
      ),
    )
  })
})
