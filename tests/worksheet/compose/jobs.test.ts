import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { namesFor } from '../../../src/worksheet/compose/aliases.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { isNamed, readDocument, Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { JOBS } from '../../templates/open.ts'
import { composed, errorsOf, namesOf, PARTS, permutations, READ } from './sets.ts'

const job = (name: string): Job => readJob(name) as Job
const partsOf = (names: readonly string[]) => names.flatMap((name) => partsOfJob(job(name)))
const together = (names: readonly string[]): Worksheet => composed(partsOf(names), READ)

/** Names of one quantity: a sheet shows one of each group, or one value under all. */
const ONE_QUANTITY: readonly (readonly string[])[] = [
  ['frames_all', 'run_frames', 'frames_quoted', 'volume_frames'],
  ['pictures', 'pictures_quoted'],
  ['carriage', 'tube_carriage'],
  ['sensor_height', 'tube_sensor'],
  ['room', 'tube_room'],
  ['illuminance', 'centre', 'mended_centre', 'now'],
  ['spread', 'mended_spread'],
  ['lamp_out', 'left_out'],
  ['lamp_height', 'left_height'],
  ['lamp_aim', 'aim_past'],
  ['time', 'set_time', 'crossed_time'],
  ['lens_stops', 'extension_stops', 'tube_shift'],
  ['working', 'tube_aperture'],
  ['diffraction', 'spot_pixels'],
  ['ripple', 'set_ripple'],
  ['page_width', 'gate'],
  ['face_height', 'focus_height'],
  ['master_data', 'joined_data'],
  ['set_data', 'run_set', 'quoted_data'],
  ['hours', 'run_hours', 'stand_time', 'whole_time'],
  ['days', 'run_days', 'work_days'],
]

const SETS: readonly (readonly string[])[] = [
  ['flat-sheet', 'in-tiles', 'two-lamps', 'accept-light'],
  ['upright-original', 'glossy', 'exposure-ledger'],
  ['bound-volume', 'best-aperture', 'accept-colour', 'delivery'],
  ['flat-sheet', 'fixed-arms', 'accept-light'],
  ['rights-and-light', 'flat-sheet', 'two-lamps', 'flicker'],
  ['in-tiles', 'two-lamps', 'square-and-level', 'delivery'],
  ['phone-stand', 'two-lamps', 'square-and-level'],
  ['small-object', 'getting-closer', 'backdrop'],
  ['intake-quote', 'collection-run', 'flat-sheet', 'delivery'],
  ['transparencies', 'best-aperture', 'accept-light'],
]

const near = (a: unknown, b: unknown): boolean =>
  typeof a !== 'number' || typeof b !== 'number' || Math.abs(a - b) <= 0.01 * Math.max(Math.abs(a), Math.abs(b))

function contradictionsIn(worksheet: Worksheet): string[] {
  const sheet = new Sheet(worksheet, LIBRARY)
  const value = (name: string): unknown => {
    const cell = sheet.named(name)
    const outcome = cell && cell.kind !== 'check' ? sheet.outcome(cell.id) : undefined
    return outcome?.state === 'value' ? outcome.value : undefined
  }
  return ONE_QUANTITY.flatMap((group) => {
    const [first, ...others] = group.map(value).filter((one) => one !== undefined)
    return others.every((one) => near(first, one)) ? [] : [group.join(', ')]
  })
}

describe('the matrix of jobs', { timeout: 600_000 }, () => {
  const pairs = JOBS.flatMap((a, at) => JOBS.slice(at + 1).map((b) => [a, b] as const))

  test('no pair is in error, shows one quantity with two values, or depends on the order', () => {
    for (const [a, b] of pairs) {
      const sheet = together([a, b])
      expect(JSON.stringify(together([b, a]).cells), `${a}, ${b}`).toBe(JSON.stringify(sheet.cells))
      const names = namesOf(sheet.cells)
      expect(names.length, `${a}, ${b}`).toBe(new Set(names).size)
      expect(contradictionsIn(sheet), `${a}, ${b}`).toEqual([])
      expect(errorsOf(sheet), `${a}, ${b}`).toEqual([])
    }
  })

  test('no pair takes a reading from an example', () => {
    for (const [a, b] of pairs)
      for (const cell of composed(partsOf([a, b])).cells)
        if (cell.kind === 'given' && PARTS.names.get(cell.name)?.reading)
          expect(cell.value, `${a}, ${b}: ${cell.name}`).toBe('')
  })

  test.each(SETS)('%s, %s, %s and what follows make one sheet in every order', (...set) => {
    const [first, ...others] = permutations(set).map((order) => JSON.stringify(together(order).cells))
    for (const other of others) expect(other).toBe(first)
    expect(errorsOf(together(set))).toEqual([])
    expect(contradictionsIn(together(set))).toEqual([])
  })
})

test.each(JOBS)('every name of the sheet %s of version 1 is still valid', (name) => {
  const older = readDocument(readFileSync(new URL(`../version-1/${name}.json`, import.meta.url), 'utf8'))
  const now = new Set(namesOf(composeJob(PARTS, job(name)).cells))
  const lost = older.cells
    .filter(isNamed)
    .filter((cell) => !now.has(cell.name) && namesFor(PARTS, cell.name, (one) => now.has(one)).length === 0)
  expect(lost.map((cell) => cell.name)).toEqual([])
})
