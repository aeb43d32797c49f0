import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { app1, exifBlock, make, png, tiff, withSegments } from '../frame/files.ts'
import { evenfield, file, json } from './run.ts'

const folder = mkdtempSync(join(tmpdir(), 'evenfield-frame-'))
const picture = (name: string, bytes: Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  return path
}

const made = make(90, 70, 3, 8, (x, y, c) => 40 + x + y / 2 + 10 * c)
const areas = (...list: object[]): string => file(`areas-${JSON.stringify(list).length}.json`, JSON.stringify(list))

describe('frame in a terminal', () => {
  it('prints one JSON object, by the contract', async () => {
    const list = areas(
      { kind: 'patch', name: 'grey', box: [10, 10, 20, 20] },
      { kind: 'evenness', name: 'plain_card' },
      { kind: 'rule', name: 'rule', from: [0, 0], to: [30, 40], length: '10 mm' },
      {
        kind: 'square',
        name: 'mat',
        corners: [
          [5, 5],
          [85, 5],
          [85, 65],
          [5, 65],
        ],
        size: '80 x 60 mm',
      },
      { kind: 'chart', name: 'chart', patches: [{ name: 'A1', box: [0, 0, 9, 9], lab: [30, 0, 0] }] },
    )
    const exif = exifBlock(
      [
        [0x829a, 5, [1, 60]],
        [0x829d, 5, [8, 1]],
      ],
      [[0x0110, 2, 'Bench']],
    )
    const ran = await evenfield('frame', picture('made.tif', tiff(made)), '--areas', list, '--json')
    expect(ran.err).toBe('')
    expect(ran.code).toBe(0)
    // biome-ignore lint/suspicious/noExplicitAny: read as another program reads it.
    const report = json(ran) as any
    expect(Object.keys(report)).toEqual(['pixels', 'taken', 'areas'])
    expect(report.pixels).toEqual({ width: 90, height: 70, bits: 8, channels: 3, encoding: 'sRGB' })
    expect(report.taken).toBeNull()
    expect(Object.keys(report.areas)).toEqual(['grey', 'plain_card', 'rule', 'mat', 'chart'])
    expect(Object.keys(report.areas.grey)).toEqual(['code', 'light', 'lab', 'noise'])
    expect(Object.keys(report.areas.plain_card)).toEqual(['light', 'spread', 'uniformity', 'corner'])
    expect(report.areas.rule).toEqual({ sampling: 5000, ppi: 127, angle: expect.closeTo(53.1301, 4) })
    expect(report.areas.mat).toEqual({
      keystone_across: 0,
      keystone_down: 0,
      rotation: 0,
      sampling_across: 1000,
      sampling_down: 1000,
      skew: 0,
    })
    expect(Object.keys(report.areas.chart)).toEqual(['patches', 'mean', 'percentile_90', 'worst', 'worst_name'])
    const withExif = await evenfield(
      'frame',
      picture('taken.png', png(made, { chunks: [['eXIf', exif]] })),
      '--areas',
      list,
      '--json',
    )
    expect((json(withExif) as { taken: object }).taken).toEqual({
      camera: 'Bench',
      lens: null,
      focal: null,
      aperture: 8,
      time: 1 / 60,
      iso: null,
      when: null,
    })
  })

  it('prints figures as text without --json', async () => {
    const ran = await evenfield(
      'frame',
      picture('made.png', png(made)),
      '--areas',
      areas({ kind: 'patch', name: 'grey', box: [10, 10, 20, 20] }),
    )
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^pixels\.width 90$/m)
    expect(ran.out).toMatch(/^areas\.grey\.noise \d/m)
  })

  it('ends with 2 and one line where something cannot be read', async () => {
    const good = picture('good.png', png(made))
    const list = areas({ kind: 'patch', name: 'grey', box: [10, 10, 20, 20] })
    const cases: [string[], RegExp][] = [
      [['frame', '/nowhere.tif', '--areas', list], /nowhere\.tif: there is no such file/],
      [['frame', good, '--areas', '/nowhere.json'], /nowhere\.json: there is no such file/],
      [['frame', good, '--areas', file('broken.json', '[{')], /broken\.json: this is not JSON/],
      [['frame', good, '--areas', file('object.json', '{}')], /object\.json: the areas are not a list/],
      [
        ['frame', good, '--areas', file('infinite.json', '[{"kind":"patch","name":"a","box":[0,0,1e999,1]}]')],
        /four numbers/,
      ],
      [
        ['frame', good, '--areas', areas({ kind: 'patch', name: 'far', box: [80, 0, 20, 20] })],
        /good\.png: the box of “far” extends beyond/,
      ],
      [['frame', list, '--areas', list], /not a picture/],
      [['frame', picture('cut.png', png(made).subarray(0, 200)), '--areas', list], /cut\.png: the PNG is cut short/],
      [
        ['frame', picture('cut.jpg', withSegments(Uint8Array.of(0xff, 0xd8), [app1(exifBlock([]))])), '--areas', list],
        /cut short/,
      ],
      [['frame', good, good, '--areas', list], /one picture, found 2/],
      [['frame', '--areas', list], /one picture, found 0/],
      [['frame', good, '--colour'], /frame: Unknown option/],
    ]
    for (const [args, message] of cases) {
      const ran = await evenfield(...args, '--json')
      expect(ran.code, args.join(' ')).toBe(2)
      expect(ran.out).toBe('')
      expect(ran.err).toMatch(/^evenfield: [^\n]+\n$/)
      expect(ran.err).toMatch(message)
    }
  })
})
