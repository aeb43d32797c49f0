import { readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { JOBS } from '../templates/open.ts'
import { evenfield, json } from './run.ts'

const out = join(tmpdir(), `composed-${process.pid}.json`)

interface Computed {
  readonly cells: Readonly<
    Record<string, { value: unknown; from?: string; rests_on_example?: readonly string[]; in_example?: string }>
  >
  readonly checks: Readonly<Record<string, string>>
}

const computed = async (...args: readonly string[]): Promise<Computed> =>
  json(await evenfield('compute', ...args, '--json')) as Computed

describe('evenfield compose', () => {
  it('writes one sheet, the same in whatever order jobs and parts are named', async () => {
    const cells = async (...names: readonly string[]): Promise<unknown> => {
      const ran = await evenfield('compose', ...names, '--out', out)
      expect(ran.err).toBe('')
      expect(ran.code).toBe(0)
      return JSON.parse(readFileSync(out, 'utf8'))
    }
    const one = await cells('in-tiles', 'flat-sheet', 'two-lamps')
    expect(await cells('two-lamps', 'in-tiles', 'flat-sheet')).toEqual(one)
    expect(await cells('flat-sheet', 'two-lamps', 'in-tiles', 'flat-sheet')).toEqual(one)
  })

  it('says which part replaces which', async () => {
    const ran = await evenfield('compose', 'in-tiles', 'flat-sheet', '--out', out)
    expect(ran.out).toContain('the part one-frame is replaced by tiles')
  })

  it('fills in what is set, also under an older name, and leaves readings empty', async () => {
    await evenfield(
      'compose',
      'in-tiles',
      'accept-light',
      '--set',
      'original=980 x 730',
      '--set',
      'aim_past=310',
      '--out',
      out,
    )
    const { cells } = await computed(out)
    expect(cells.original).toMatchObject({ from: 'typed', value: { width: 0.98, height: 0.73 } })
    expect(cells.lamp_aim).toMatchObject({ from: 'typed', value: 0.31 })
    expect(cells.illuminance).toMatchObject({ from: 'empty', value: null })
    expect(cells.readings).toMatchObject({ from: 'empty', value: null })
    expect(cells.even_limit).toMatchObject({ from: 'usual' })
    expect(cells.sensor).toMatchObject({ from: 'example' })
  })

  it('takes for what set-ups share the name that each had for it, and an older name with the prefix of a set-up', async () => {
    const ran = await evenfield(
      ...['compose', 'flat-sheet', 'easel', '--set-up', 'raking', '--set', 'raking_lean=4 deg'],
      ...['--set', 'raking_now=300 lx', '--out', out],
    )
    expect(ran).toMatchObject({ code: 0, err: '' })
    const { cells } = await computed(out)
    expect(cells.lean).toMatchObject({ from: 'typed', value: expect.closeTo((4 * Math.PI) / 180, 9) })
    expect(cells.raking_illuminance).toMatchObject({ from: 'typed', value: 300 })
    expect(cells.illuminance).toMatchObject({ from: 'empty' })
  })

  it('reports a name that is neither a job nor a part, and a missing file, in one line', async () => {
    expect(await evenfield('compose', 'flat-shet', '--out', out)).toMatchObject({ code: 2 })
    expect((await evenfield('compose', 'flat-sheet')).err).toContain('--out FILE.json')
    expect((await evenfield('compose', '--out', out)).err).toContain('found none')
  })
})

describe('what rests on an example', () => {
  const file = 'templates/flat-sheet.json'

  it('waits, names the figures, and shows the state for the example', async () => {
    const { cells, checks } = await computed(file)
    expect(checks.sharp_enough).toBe('waiting')
    expect(cells.sharp_enough).toMatchObject({ in_example: 'fail' })
    expect(cells.sharp_enough?.rests_on_example).toEqual(
      expect.arrayContaining(['original', 'sensor', 'sensor_pixels', 'wanted_sampling']),
    )
    expect(cells.magnification?.rests_on_example).toEqual(['original', 'sensor'])
    expect((await evenfield('compute', file)).code).toBe(1)
  })

  it('is the user’s own once every figure beneath it is typed, or all are taken as the user’s own', async () => {
    const sets = ['original=420 x 297', 'sensor=36 x 24', 'sensor_pixels=6000 x 4000', 'wanted_sampling=250'].flatMap(
      (set) => ['--set', set],
    )
    const typed = await computed(file, ...sets)
    expect(typed.checks.sharp_enough).toBe('pass')
    expect(typed.cells.sharp_enough).toMatchObject({ rests_on_example: [] })
    expect(typed.cells.sharp_enough).not.toHaveProperty('in_example')
    const mine = await computed(file, '--as-mine')
    expect(mine.checks.sharp_enough).toBe('fail')
    expect(Object.values(mine.cells).filter(({ from }) => from === 'example')).toEqual([])
  })

  it('never keeps an unused choice of kit waiting', async () => {
    expect((await computed(file)).cells.camera).toMatchObject({ from: 'empty' })
  })
})

it('every job computes in the terminal, marked as an example', { timeout: 300_000 }, async () => {
  for (const job of JOBS) {
    const { cells } = await computed(`templates/${job}.json`)
    expect(
      Object.values(cells).some(({ from }) => from === 'example'),
      job,
    ).toBe(true)
  }
})
