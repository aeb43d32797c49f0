import fc from 'fast-check'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { JOBS } from '../../templates/open.ts'
import { composed, errorsOf, namesOf, PARTS, permutations, READ, set } from './sets.ts'

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

const near = (a: unknown, b: unknown): boolean =>
  typeof a !== 'number' || typeof b !== 'number' || Math.abs(a - b) <= 0.01 * Math.max(Math.abs(a), Math.abs(b))

/** The groups of names that show one quantity with two values. */
export function contradictionsIn(worksheet: Worksheet): string[] {
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

const chosenFor = (name: string) => (JOBS.includes(name) ? partsOfJob(readJob(name) as Job) : set(name))

/** The sheet of jobs and parts in the order they are named, with every reading filled in. */
export const together = (names: readonly string[]): Worksheet => composed(names.flatMap(chosenFor), READ)

/** Two to four jobs or parts. */
export const handfuls = fc.uniqueArray(fc.constantFrom(...JOBS, ...PARTS.parts.keys()), { minLength: 2, maxLength: 4 })

/** What is wrong with the sheet of some jobs and parts; nothing where it is one sheet in every order. */
export function wrongWith(names: readonly string[]): string[] {
  const sheet = together(names)
  const cells = JSON.stringify(sheet.cells)
  const own = namesOf(sheet.cells)
  const empty = composed(names.flatMap(chosenFor))
  return [
    ...(permutations(names).some((order) => JSON.stringify(together(order).cells) !== cells)
      ? ['the order makes a difference']
      : []),
    ...(JSON.stringify(together([...names, ...names]).cells) === cells ? [] : ['naming one again makes a difference']),
    ...own.filter((name, at) => own.indexOf(name) !== at).map((name) => `${name} is there twice`),
    ...contradictionsIn(sheet).map((group) => `one quantity has two values: ${group}`),
    ...errorsOf(sheet),
    ...empty.cells.flatMap((cell) =>
      cell.kind === 'given' && PARTS.names.get(cell.name)?.reading && cell.value !== ''
        ? [`${cell.name} is a reading and takes an example`]
        : [],
    ),
  ]
}
