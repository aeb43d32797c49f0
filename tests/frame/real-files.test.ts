import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { decode as decodeWithImageJs } from 'image-js'
import { describe, expect, it } from 'vitest'
import { frameReport, openFrame, readAreas } from '../../src/frame/index.ts'

const require = createRequire(import.meta.url)
const within = (entry: string, file: string): string => join(dirname(entry), file)
const PARSER = require.resolve('exif-parser')
const PICTURES = require.resolve('exif-js')

/** Pictures that two packages carry as test data, both under the MIT licence: of three cameras, and two edited ones. */
const FILES: readonly string[] = [
  within(PARSER, 'test/starfish.jpg'),
  within(PICTURES, 'example/DSCN0614_small.jpg'),
  within(PICTURES, 'example/dsc_09827.jpg'),
  within(PICTURES, 'example/Bush-dog.jpg'),
  within(PICTURES, 'example/Bloated-Hero.jpg'),
]

/** Tags as another reader gives them, its simplifying left off: lists of numbers and fractions. */
interface OtherTags {
  readonly FNumber?: [[number, number]]
  readonly ExposureTime?: [[number, number]]
  readonly FocalLength?: [[number, number]]
  readonly ISO?: [number]
  readonly Model?: string
  readonly DateTimeOriginal?: string
  readonly GPSLatitude?: readonly (readonly [number, number])[]
}
const { create } = require('exif-parser') as {
  create(file: Buffer): { enableSimpleValues(on: boolean): { parse(): { tags: OtherTags } } }
}
const tagsOf = (file: Buffer): OtherTags => create(file).enableSimpleValues(false).parse().tags
const fraction = (value: [[number, number]] | undefined): number | null => (value ? value[0][0] / value[0][1] : null)

describe.each(FILES.map((path) => [path.split('/').at(-1) as string, readFileSync(path)] as const))('%s', (_, file) => {
  const frame = openFrame(file)
  const { width, height } = frame.pixels

  it('has the mean code that another decoder gives, over a box of it', () => {
    const box = [Math.floor(width / 4), Math.floor(height / 4), Math.floor(width / 2), Math.floor(height / 2)] as const
    const { areas } = frameReport(frame, readAreas([{ kind: 'patch', name: 'middle', box }]))
    const other = decodeWithImageJs(new Uint8Array(file))
    expect([other.width, other.height]).toEqual([width, height])
    const mean = [0, 1, 2].map((channel) => {
      let sum = 0
      for (let y = 0; y < box[3]; y++)
        for (let x = 0; x < box[2]; x++) sum += other.getValue(box[0] + x, box[1] + y, channel)
      return sum / (box[2] * box[3] * 255)
    })
    const { code } = areas.middle as { code: readonly number[] }
    // The other decoder cuts a code's fraction off, which is half a code on average; here it is rounded.
    for (const [channel, value] of mean.entries())
      expect(Math.abs(255 * ((code[channel] as number) - value) - 0.5)).toBeLessThan(0.25)
  })

  it('was taken as another reader of its Exif block says', () => {
    const tags = tagsOf(file)
    const { taken } = frame
    if (tags.Model === undefined) expect(taken).toBeNull()
    else {
      expect(taken?.camera).toBe(tags.Model.replaceAll('\0', '').trim())
      expect(taken?.aperture).toBe(fraction(tags.FNumber))
      expect(taken?.time).toBe(fraction(tags.ExposureTime))
      const focal = fraction(tags.FocalLength)
      if (focal === null) expect(taken?.focal).toBeNull()
      else expect(taken?.focal).toBeCloseTo(focal / 1000, 12)
      expect(taken?.iso).toBe(tags.ISO?.[0] ?? null)
      const [date, time] = (tags.DateTimeOriginal as string).split(' ') as [string, string]
      expect(taken?.when).toBe(`${date.replaceAll(':', '-')}T${time.replaceAll('\0', '')}`)
    }
  })
})

it('leaves the place out that the camera wrote', () => {
  const file = readFileSync(FILES[0] as string)
  expect(tagsOf(file).GPSLatitude).toBeDefined()
  const frame = openFrame(file)
  const text = JSON.stringify(frameReport(frame, readAreas([{ kind: 'patch', name: 'p', box: [0, 0, 9, 9] }])))
  expect(text).not.toMatch(/gps|latitude|longitude/i)
  expect(Object.keys(frame.taken ?? {}).sort()).toEqual(['aperture', 'camera', 'focal', 'iso', 'lens', 'time', 'when'])
})
