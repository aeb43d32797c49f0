import { encode as encodeJpeg } from 'jpeg-js'
import { describe, expect, it } from 'vitest'
import { openFrame } from '../../src/frame/index.ts'
import { app1, type ExifField, exifBlock, make, png, tiff, withSegments } from './files.ts'

const made = make(8, 8, 3, 8, () => 100)
const jpeg = new Uint8Array(encodeJpeg({ width: 8, height: 8, data: new Uint8Array(256).fill(99) }, 95).data)

/** The same fields in the three kinds of file, in either byte order. */
const carriers: [string, (exif: readonly ExifField[], main?: readonly ExifField[]) => Uint8Array][] = [
  ['JPEG', (exif, main) => withSegments(jpeg, [app1(exifBlock(exif, main))])],
  ['JPEG, big endian', (exif, main) => withSegments(jpeg, [app1(exifBlock(exif, main, false))])],
  ['PNG', (exif, main) => png(made, { chunks: [['eXIf', exifBlock(exif, main)]] })],
  [
    'TIFF',
    (exif, main = []) =>
      tiff(made, {
        exif,
        fields: main.map(([tag, type, values]) => [
          tag,
          type,
          typeof values === 'string' ? Uint8Array.from(`${values}\0`, (letter) => letter.charCodeAt(0)) : values,
        ]),
      }),
  ],
]

describe('what the camera wrote', () => {
  for (const [name, carry] of carriers) {
    it(`is read from a ${name}`, () => {
      const file = carry(
        [
          [0x829a, 5, [1, 125]],
          [0x829d, 5, [56, 10]],
          [0x8827, 3, [100]],
          [0x9003, 2, '2026:03:04 10:11:12'],
          [0x9011, 2, '+01:00'],
          [0x920a, 5, [90, 1]],
          [0xa430, 2, 'The Owner'],
          [0xa431, 2, 'SN-123456'],
          [0xa434, 2, 'Macro 90'],
        ],
        [
          [0x010f, 2, 'Bench'],
          [0x0110, 2, 'Bench 45'],
        ],
      )
      const { taken } = openFrame(file)
      expect(taken).toEqual({
        camera: 'Bench 45',
        lens: 'Macro 90',
        focal: 0.09,
        aperture: 5.6,
        time: 1 / 125,
        iso: 100,
        when: '2026-03-04T10:11:12+01:00',
      })
      // Owner and serial number go nowhere.
      expect(JSON.stringify(openFrame(file).taken)).not.toMatch(/Owner|123456/)
    })

    it(`is null where the ${name} lacks it, where it is 0/0 and where it cannot be`, () => {
      const file = carry([
        [0x829a, 5, [0, 0]],
        [0x829d, 5, [1, 0]],
        [0x9003, 2, '0000:00:00 00:00:00'],
      ])
      expect(openFrame(file).taken).toEqual({
        camera: null,
        lens: null,
        focal: null,
        aperture: null,
        time: null,
        iso: null,
        when: null,
      })
    })
  }

  it('is null as a whole where there is no Exif', () => {
    for (const file of [jpeg, png(made), tiff(made)]) expect(openFrame(file).taken).toBeNull()
  })

  it('leaves the offset out where the file holds none, and a date that is none', () => {
    const when = (date: string, offset?: string): string | null | undefined =>
      openFrame(
        withSegments(jpeg, [
          app1(exifBlock([[0x9003, 2, date], ...(offset === undefined ? [] : [[0x9011, 2, offset] as const])])),
        ]),
      ).taken?.when
    expect(when('2026:03:04 10:11:12')).toBe('2026-03-04T10:11:12')
    expect(when('2026:03:04 10:11:12', '   :  ')).toBe('2026-03-04T10:11:12')
    expect(when('2026:02:30 10:11:12')).toBeNull()
    expect(when('    :  :     :  :  ')).toBeNull()
  })

  it('takes aperture and time from their APEX values where they are alone (Exif 2.32, annex C)', () => {
    const { taken } = openFrame(
      withSegments(jpeg, [
        app1(
          exifBlock([
            [0x9201, 10, [7, 1]],
            [0x9202, 5, [6, 1]],
          ]),
        ),
      ]),
    )
    expect(taken?.time).toBeCloseTo(1 / 128, 12)
    expect(taken?.aperture).toBeCloseTo(8, 12)
  })

  it('turns the picture as its orientation says', () => {
    const wide = make(9, 4, 3, 8, () => 100)
    const file = png(wide, { chunks: [['eXIf', exifBlock([], [[0x0112, 3, [6]]])]] })
    expect(openFrame(file).pixels).toMatchObject({ width: 4, height: 9 })
  })
})
