import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Papa from 'papaparse'
import { afterAll, describe, expect, it, onTestFinished } from 'vitest'
import { exifBlock, make, png } from '../frame/files.ts'
import { type Four, scene } from '../frame/find/drawn.ts'
import { file, inTerminal, worksheet } from './run.ts'

const folder = mkdtempSync(join(tmpdir(), 'evenfield-frames-'))
const out = join(folder, 'report.csv')

/** A plain card whose right side is darker by so many stops, taken in that minute. */
const card = (stops: number, minute: number, aperture: number): Uint8Array =>
  png(
    make(90, 70, 1, 16, (x) => 40000 * 2 ** ((-stops * x) / 89)),
    {
      chunks: [
        ['gAMA', Uint8Array.of(0, 1, 0x86, 0xa0)],
        [
          'eXIf',
          exifBlock([
            [0x829d, 5, [aperture * 10, 10]],
            [0x9003, 2, `2026:11:28 10:${String(minute).padStart(2, '0')}:00`],
          ]),
        ],
      ],
    },
  )

// By name the other way round than by time.
const STOPS = [0.05, 0.1, 0.15, 0.28, 0.6]
for (const [i, stops] of STOPS.entries())
  writeFileSync(join(folder, `card-${9 - i}.png`), card(stops, 10 + i, i === 2 ? 5.6 : 8))
writeFileSync(join(folder, 'cut.png'), card(0.1, 30, 8).subarray(0, 250))
writeFileSync(join(folder, 'notes.txt'), 'no picture')

const sheet = worksheet('day.json', [
  { kind: 'given', id: 'a', name: 'aperture', unit: 'f/', value: 'f/8' },
  {
    kind: 'frame',
    id: 'f',
    name: 'plain_card',
    fills: { aperture: 'aperture' },
    areas: [
      { kind: 'evenness', name: 'light', columns: 3, rows: 2 },
      { kind: 'patch', name: 'middle', box: [40, 30, 10, 10] },
    ],
  },
  {
    kind: 'check',
    id: 'c',
    name: 'even',
    condition: 'plain_card.light.spread <= 0.2 stop',
    message: 'Uneven by {plain_card.light.spread}.',
  },
])

const ran = inTerminal('', 'frames', folder, '--sheet', sheet, '--out', out)
const rows = Papa.parse<Record<string, string>>(readFileSync(out, 'utf8'), { header: true, skipEmptyLines: true }).data

describe('a folder of frames', () => {
  it('is measured whole, one line a frame in order of time, graded by the checks of the sheet', () => {
    expect(ran.err).toBe('')
    expect(ran.code).toBe(1)
    expect(rows.map(({ File }) => File)).toEqual([
      'card-9.png',
      'card-8.png',
      'card-7.png',
      'card-6.png',
      'card-5.png',
      'cut.png',
    ])
    for (const [i, stops] of STOPS.entries()) {
      // The outer fields of three are 60 of 89 columns apart, nearly: log-linear light keeps their ratio.
      expect(Number(rows[i]?.['light.spread'])).toBeCloseTo((stops * 60) / 89, 3)
      expect(rows[i]?.even).toBe(
        (stops * 60) / 89 <= 0.2 * 0.9 ? 'pass' : (stops * 60) / 89 <= 0.2 ? 'marginal' : 'fail',
      )
      expect(rows[i]?.State).toBe(rows[i]?.even)
    }
    expect(rows[4]?.Remarks).toMatch(/^Uneven by 0\.40/)
    expect(rows[5]).toMatchObject({ State: 'unreadable', 'light.spread': '' })
    expect(rows[5]?.Remarks).toMatch(/cut short/)
  })

  it('says where the camera was set unlike the sheet', () => {
    expect(rows.map((row) => row['Differs from the sheet'])).toEqual([
      '',
      '',
      'aperture: f/8 set, f/5.6 in the frame',
      '',
      '',
      '',
    ])
  })

  it('names the slowest first in its summary, and what was not measured', () => {
    expect(ran.out).toMatch(/^Measured: 6 frames in [\d.]+ s: 3 pass, 1 marginal, 1 fail, 1 unreadable/)
    const times = [...ran.out.matchAll(/, ([\d.]+) s$/gm)].map((match) => Number(match[1]))
    expect(times).toEqual([...times].sort((one, other) => other - one))
    expect(ran.out).toMatch(/^Not measured: cut\.png: /m)
    expect(ran.out).toContain(`Written: ${out}`)
  })

  it('compares each frame with those before it where the sheet follows them over time', () => {
    const drifting = mkdtempSync(join(tmpdir(), 'evenfield-drift-'))
    // By name the other way round than by time; a tenth of a stop less light every half hour.
    for (let i = 0; i < 4; i++)
      writeFileSync(
        join(drifting, `grey-${9 - i}.png`),
        png(
          make(20, 20, 1, 16, () => 30000 * 2 ** (-0.1 * i)),
          {
            chunks: [
              ['gAMA', Uint8Array.of(0, 1, 0x86, 0xa0)],
              ['eXIf', exifBlock([[0x9003, 2, `2026:11:28 1${i >> 1}:${i % 2 === 0 ? '00' : '30'}:00`]])],
            ],
          },
        ),
      )
    const follows = worksheet('follows.json', [
      {
        kind: 'frame',
        id: 'f',
        name: 'card',
        areas: [{ kind: 'patch', name: 'grey', box: [2, 2, 16, 16] }],
        series: [],
      },
      {
        kind: 'result',
        id: 'r',
        name: 'moved',
        unit: 'stop',
        formula: 'light_over_time(card.grey.series.time, card.grey.series.light).greatest',
      },
      {
        kind: 'check',
        id: 'c',
        name: 'steady',
        condition: 'abs(moved) <= 0.15 stop',
        message: 'Changed by {moved}.',
        margin: '0 %',
      },
    ])
    const report = join(drifting, 'report.csv')
    expect(inTerminal('', 'frames', drifting, '--sheet', follows, '--out', report).code).toBe(1)
    const lines = Papa.parse<Record<string, string>>(readFileSync(report, 'utf8'), {
      header: true,
      skipEmptyLines: true,
    }).data
    expect(lines.map(({ File, steady }) => [File, steady])).toEqual([
      ['grey-9.png', 'waiting'],
      ['grey-8.png', 'pass'],
      ['grey-7.png', 'fail'],
      ['grey-6.png', 'fail'],
    ])
    expect(lines[3]?.Remarks).toMatch(/^Changed by .?0\.30 stop/)
  })

  it('compares today’s frame with the earlier days that the sheet has, and with nothing later', () => {
    const today = mkdtempSync(join(tmpdir(), 'evenfield-today-'))
    onTestFinished(() => rmSync(today, { recursive: true }))
    writeFileSync(
      join(today, 'today.png'),
      png(
        make(20, 20, 1, 16, () => 30000),
        {
          chunks: [
            ['gAMA', Uint8Array.of(0, 1, 0x86, 0xa0)],
            ['eXIf', exifBlock([[0x9003, 2, '2026:11:28 08:00:00']])],
          ],
        },
      ),
    )
    const day = (when: string, code: number) => ({
      name: `${when}.png`,
      digest: when,
      when: `${when}T08:00:00`,
      readings: { grey: { light: [code / 65535, code / 65535, code / 65535] } },
    })
    const followed = worksheet('day-by-day.json', [
      {
        kind: 'frame',
        id: 'f',
        name: 'card',
        areas: [{ kind: 'patch', name: 'grey', box: [2, 2, 16, 16] }],
        series: [day('2026-11-26', 30000), day('2026-11-27', 60000), day('2026-11-29', 15000)],
      },
      {
        kind: 'result',
        id: 'r',
        name: 'moved',
        unit: 'stop',
        formula:
          'change_over_time(card.grey.series.time, light_over_time(card.grey.series.time, card.grey.series.light).changes).since_before',
      },
      { kind: 'check', id: 'c', name: 'steady', condition: 'abs(moved) <= 0.05 stop', message: 'Changed by {moved}.' },
    ])
    const report = join(today, 'report.csv')
    expect(inTerminal('', 'frames', today, '--sheet', followed, '--out', report).code).toBe(1)
    const [line] = Papa.parse<Record<string, string>>(readFileSync(report, 'utf8'), { header: true }).data
    // Half of yesterday’s light.
    expect([line?.steady, line?.Remarks]).toEqual(['fail', 'Changed by −1 stop.'])
  })

  it('ends with 2 and one line where folder, sheet or report cannot be used', () => {
    const none = worksheet('none.json', [])
    const empty = mkdtempSync(join(tmpdir(), 'evenfield-empty-'))
    const otherName = join(empty, 'day.csv')
    symlinkSync(sheet, otherName)
    const cases: [string[], RegExp][] = [
      [['/nowhere', '--sheet', sheet, '--out', out], /no such folder/],
      [[empty, '--sheet', sheet, '--out', out], /no JPEG, PNG or TIFF/],
      [[folder, '--sheet', none, '--out', out], /no frame in this worksheet/],
      [[folder, '--sheet', sheet, '--out', out, '--frame', 'other'], /no frame of that name/],
      [[folder, '--out', out], /--sheet SHEET.json is missing/],
      [[folder, '--sheet', sheet], /--out report.csv is missing/],
      [[folder, '--sheet', sheet, '--out', sheet], /replace one of its own input files/],
      [[folder, '--sheet', sheet, '--out', otherName], /replace one of its own input files/],
      [[folder, '--sheet', sheet, '--out', '/nowhere/report.csv'], /no such folder/],
      [[file('a.txt', ''), '--sheet', sheet, '--out', out], /not a folder/],
    ]
    for (const [args, message] of cases) {
      const refused = inTerminal('', 'frames', ...args)
      expect(refused.code, args.join(' ')).toBe(2)
      expect(refused.err).toMatch(message)
      expect(refused.err).toMatch(/^evenfield: [^\n]+\n$/)
    }
  })
})

describe('a card that lies elsewhere in each frame', () => {
  const cards: Readonly<Record<string, Four>> = {
    'first.png': [
      [60, 40],
      [180, 40],
      [180, 130],
      [60, 130],
    ],
    // Larger, moved, and wider at its lower side by 6 px.
    'second.png': [
      [53, 30],
      [197, 30],
      [200, 138],
      [50, 138],
    ],
  }
  const there = mkdtempSync(join(tmpdir(), 'evenfield-frames-'))
  const report = join(there, 'report.csv')
  for (const [name, corners] of Object.entries(cards))
    writeFileSync(
      join(there, name),
      png(scene({ width: 260, height: 180, ground: () => 0.05, cards: [{ corners, light: () => 0.7 }] })),
    )
  writeFileSync(join(there, 'third.png'), png(make(260, 180, 1, 16, () => 9000)))
  const square = worksheet('square.json', [
    { kind: 'frame', id: 'f', name: 'card_frame', areas: [{ kind: 'square', name: 'card', size: '120 x 90 mm' }] },
    {
      kind: 'check',
      id: 'c',
      name: 'upright',
      condition: 'card_frame.card.keystone_across <= 1 px',
      message: 'Keystone.',
    },
  ])
  const { err, code } = inTerminal('', 'frames', there, '--sheet', square, '--out', report)
  const lines = Papa.parse<Record<string, string>>(readFileSync(report, 'utf8'), { header: true, skipEmptyLines: true })
  const [first, second, third] = lines.data
  afterAll(() => rmSync(there, { recursive: true, force: true }))

  it('is found by itself, though nothing is marked in the sheet', () => {
    expect([err, code]).toEqual(['', 1])
    expect(Number(first?.['card.sampling_across'])).toBeCloseTo(1000, 0)
    expect(Number(first?.['card.keystone_across'])).toBeLessThan(0.2)
    expect(Number(second?.['card.keystone_across'])).toBeCloseTo(6, 0)
    expect([first?.upright, second?.upright]).toEqual(['pass', 'fail'])
  })

  it('is said not to be found where there is none, and the check waits', () => {
    expect(third).toMatchObject({ upright: 'waiting', State: 'waiting' })
    expect(third?.Remarks).toContain('card: its corners cannot be found reliably in this picture')
  })
})
