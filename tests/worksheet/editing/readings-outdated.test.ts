import { describe, expect, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { composeJob, type Job } from '../../../src/worksheet/compose/job.ts'
import type { OfferedSetUp } from '../../../src/worksheet/compose/part-library.ts'
import { offeredSetUp, withParts, withSetUp } from '../../../src/worksheet/compose/recompose.ts'
import { confirmed } from '../../../src/worksheet/document/reading.ts'
import { downstreamOf } from '../../../src/worksheet/engine/partial-recompute.ts'
import {
  type Check,
  type Frame,
  type Given,
  readDocument,
  readingText,
  Sheet,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'
import { PARTS } from '../compose/sets.ts'

const NOW = { when: '2026-03-02T14:02:00', by: 'LM' }

const open = (name: string): Sheet => new Sheet(readTemplate(name), LIBRARY)

function given(sheet: Sheet, name: string): Given {
  const cell = sheet.named(name)
  if (cell?.kind !== 'given') throw new Error(`${name} is no given.`)
  return cell
}
const type = (sheet: Sheet, name: string, value: string): void =>
  sheet.apply({ do: 'replace', cell: { ...given(sheet, name), value } }, NOW)
function changedSince(sheet: Sheet, name: string): readonly string[] | undefined {
  const outcome = sheet.outcome(sheet.named(name)?.id ?? '')
  return outcome.state === 'value' ? outcome.before : undefined
}
/** Another value of the same kind: a figure a little greater, another option. */
function otherThan({ value, entry, options }: Given): string | undefined {
  if (entry === 'yes or no') return value === 'yes' ? 'no' : 'yes'
  if (entry === 'choice') return options?.find((option) => option !== value)
  if (entry === 'kit' || entry === 'text' || entry === 'date') return undefined
  const other = value.replace(/\d+(\.\d+)?/, (figure) => String(Number(figure) * 1.05 + (Number(figure) === 0 ? 1 : 0)))
  return other === value ? undefined : other
}
/** The checks that are computed from a cell. */
function checksBeneath(sheet: Sheet, name: string): Check[] {
  const { engine } = sheet
  const node = engine.named(name)
  const marks = downstreamOf(engine.layout, node ? [engine.positionOf(node)] : [])
  return engine.layout.order.flatMap(({ cell }, at) => (marks[at] === 1 && cell.kind === 'check' ? [cell] : []))
}
/** What stands in for a reading that has no example. */
const SOME: Readonly<Record<string, string>> = { list: '880, 870, 860, 868, 875', quantity: '100' }

const readings = JOBS.flatMap((job) =>
  readTemplate(job).cells.flatMap((cell) =>
    cell.kind === 'given' && cell.read_under ? [[job, cell.name] as const] : [],
  ),
)

describe('a reading in every job', () => {
  test('there are such readings', () => {
    expect(readings.length).toBeGreaterThan(15)
  })

  test.each(readings)('%s, %s: is outdated by what it was taken under, and by nothing else', (job, name) => {
    const sheet = open(job)
    const { value, entry = 'quantity' } = given(sheet, name)
    // An example's reading was taken under nothing that is known.
    expect(given(sheet, name).measured_under).toBeUndefined()
    type(sheet, name, value === '' ? (SOME[entry] ?? '') : `${value} `)
    const { figures = {} } = given(sheet, name).measured_under ?? {}
    expect(Object.keys(figures).length).toBeGreaterThan(0)
    expect(figures).not.toHaveProperty(name)
    expect(readingText(given(sheet, name))).toBe('measured 2 March 2026, 14:02 by LM')
    let tried = 0
    for (const cell of sheet.cells) {
      if (cell.kind !== 'given' || cell.name === name) continue
      const other = otherThan(cell)
      if (other === undefined) continue
      const states = checksBeneath(sheet, name).map(({ id }) => sheet.checkState(id))
      type(sheet, cell.name, other)
      const isUnder = Object.hasOwn(figures, cell.name)
      expect(changedSince(sheet, name), cell.name).toEqual(isUnder ? [cell.name] : undefined)
      if (isUnder) {
        tried++
        for (const { id } of checksBeneath(sheet, name)) {
          expect(['waiting', 'error'], sheet.check(id).message).toContain(sheet.checkState(id))
          if (sheet.checkState(id) === 'waiting') expect(sheet.check(id).needs?.length).toBeGreaterThan(0)
        }
      }
      sheet.undo()
      expect(changedSince(sheet, name)).toBeUndefined()
      expect(checksBeneath(sheet, name).map(({ id }) => sheet.checkState(id))).toEqual(states)
    }
    expect(tried).toBeGreaterThan(0)
  })
})

describe('a reading that is outdated', () => {
  function moved(): Sheet {
    const sheet = open('flat-sheet')
    type(sheet, 'illuminance', '820')
    type(sheet, 'lamp_out', '1200')
    return sheet
  }

  test('counts again when it is read again, or confirmed as it is', () => {
    const sheet = moved()
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
    sheet.apply({ do: 'replace', cell: confirmed(given(sheet, 'illuminance')) }, NOW)
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
    expect(given(sheet, 'illuminance').measured_under?.figures.lamp_out).toBe('1200')
    type(sheet, 'lamp_out', '1150')
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
    type(sheet, 'illuminance', '860')
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
    type(sheet, 'illuminance', '')
    expect(given(sheet, 'illuminance')).not.toHaveProperty('measured_under')
  })

  test('counts again when what it was taken under is as it was', () => {
    const sheet = moved()
    type(sheet, 'lamp_out', '112 cm')
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
  })

  test('says so in the file it is saved in, also when another figure is changed there', () => {
    const sheet = new Sheet(readDocument(writeDocument(moved().worksheet)), LIBRARY)
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
  })

  test('an example’s reading taken as the user’s own is read as the sheet is then', () => {
    const sheet = open('flat-sheet')
    const { from: _, ...own } = given(sheet, 'illuminance')
    sheet.apply({ do: 'replace', cell: own as Given }, NOW)
    type(sheet, 'lamp_out', '1200')
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
  })

  test('typed together with what it is taken under, it is of that moment', () => {
    const sheet = open('flat-sheet')
    const changes = [
      { do: 'replace', cell: { ...given(sheet, 'lamp_out'), value: '1200' } },
      { do: 'replace', cell: { ...given(sheet, 'illuminance'), value: '820' } },
    ] as const
    sheet.apply({ do: 'several', changes }, NOW)
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
    expect(given(sheet, 'illuminance').measured_under?.figures.lamp_out).toBe('1200')
    sheet.apply({ do: 'several', changes: [{ do: 'replace', cell: { ...given(sheet, 'lamp_out'), value: '1300' } }] })
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
  })

  test('follows the names of what it was taken under', () => {
    const sheet = open('flat-sheet')
    type(sheet, 'illuminance', '820')
    sheet.apply({ do: 'rename', id: given(sheet, 'lamp_out').id, name: 'out_there' })
    expect(given(sheet, 'illuminance').measured_under?.figures).toMatchObject({ out_there: '1120' })
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
    type(sheet, 'out_there', '1200')
    expect(changedSince(sheet, 'illuminance')).toEqual(['out_there'])
    expect(sheet.check(sheet.named('released_untouched')?.id ?? '').state).toBe('waiting')
  })

  test('remains so when a section is added', () => {
    const job = readJob('flat-sheet') as Job
    const sheet = new Sheet(composeJob(PARTS, job), LIBRARY)
    type(sheet, 'illuminance', '820')
    type(sheet, 'lamp_out', '1200')
    const { change } = withParts(PARTS, sheet.worksheet, [{ part: 'grey-card' }])
    if (change) sheet.apply(change)
    expect(sheet.named('code_g')).toBeDefined()
    expect(changedSince(sheet, 'illuminance')).toEqual(['lamp_out'])
    expect(readingText(given(sheet, 'illuminance'))).toContain('LM')
  })

  test('in another set-up is that set-up’s own', () => {
    const job = readJob('flat-sheet') as Job
    const sheet = new Sheet(composeJob(PARTS, job), LIBRARY)
    const offer = PARTS.setUps.find(({ prefix }) => prefix === 'overview') as OfferedSetUp
    const { change } = withSetUp(PARTS, sheet.worksheet, offeredSetUp(sheet.worksheet, offer))
    if (change) sheet.apply(change)
    type(sheet, 'illuminance', '820')
    type(sheet, 'overview_illuminance', '410')
    type(sheet, 'overview_lamp_out', '1500')
    expect(changedSince(sheet, 'overview_illuminance')).toEqual(['overview_lamp_out'])
    expect(changedSince(sheet, 'illuminance')).toBeUndefined()
  })
})

test('a picture that was measured is outdated like any reading, until another is measured', () => {
  const { change } = withParts(PARTS, composeJob(PARTS, readJob('flat-sheet') as Job), [{ part: 'grey-frame' }])
  const sheet = new FullSheet(composeJob(PARTS, readJob('flat-sheet') as Job), LIBRARY)
  if (change) sheet.apply(change)
  const frame = (): Frame => sheet.named('grey_frame') as Frame
  const picture = (digest: string): Frame['picture'] => ({
    name: 'card.png',
    size: 9,
    digest,
    pixels: { width: 9, height: 9, bits: 8, channels: 3, encoding: 'sRGB' },
    taken: null,
  })
  const readings = { grey: { code: [118, 118, 118], light: [0.18, 0.18, 0.18], lab: [50, 0, 0], noise: 0.01 } }
  sheet.apply({ do: 'replace', cell: { ...frame(), picture: picture('a'), readings } }, NOW)
  expect(frame().measured_under).toMatchObject({ text: 'a', by: 'LM' })
  expect(frame().measured_under?.figures).toMatchObject({ lamp_out: '1120', focal: '60', aperture: 'f/8' })
  type(sheet, 'aperture', 'f/11')
  expect(changedSince(sheet, 'grey_frame')).toEqual(['aperture'])
  expect(sheet.check('exposed_right')).toMatchObject({ state: 'waiting' })
  sheet.apply({ do: 'replace', cell: { ...frame(), picture: picture('b') } }, NOW)
  expect(changedSince(sheet, 'grey_frame')).toBeUndefined()
})
