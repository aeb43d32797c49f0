import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { compose } from '../../../src/worksheet/compose/compose.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { readBy } from '../../../src/worksheet/compose/join-names.ts'
import {
  isComposed,
  offeredSetUp,
  setUpsOf,
  withoutSetUp,
  withParts,
  withSetUp,
} from '../../../src/worksheet/compose/recompose.ts'
import {
  type Cell,
  type Given,
  isNamed,
  type Result,
  readDocument,
  Sheet,
  type Worksheet,
  withMeasured,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { followNames } from '../../../src/worksheet/renaming/follow-names.ts'
import { JOBS } from '../../templates/open.ts'
import { result } from '../make.ts'
import { errorsOf, PARTS, READ, set } from './sets.ts'

const job = (name: string): Job => readJob(name) as Job
const opened = (name: string): Sheet => new Sheet(composeJob(PARTS, job(name)), LIBRARY)

function added(sheet: Sheet, name: string): ReturnType<typeof withParts> {
  const next = withParts(PARTS, sheet.worksheet, partsOfJob(job(name)))
  if (next.change) sheet.apply(next.change)
  return next
}

describe('adding parts to a composed sheet', () => {
  it('makes one sheet whichever job came first, but for what was filled in', () => {
    const names = (sheet: Sheet): string[] => sheet.cells.filter(isNamed).map(({ name }) => name)
    const [one, other] = [opened('flat-sheet'), opened('in-tiles')]
    added(one, 'in-tiles')
    added(other, 'flat-sheet')
    expect(names(one)).toEqual(names(other))
  })

  it('keeps givens by name and says what it asks and what gives way', () => {
    const sheet = opened('flat-sheet')
    const { asks, replaced } = added(sheet, 'in-tiles')
    expect(sheet.named('original')).toMatchObject({ value: '420 x 297' })
    expect(replaced).toEqual([{ part: 'one-frame', by: 'tiles' }])
    expect(asks.map(({ name }) => name)).toEqual(expect.arrayContaining(['travel_reach', 'free_table']))
    // A section that is added brings no examples.
    for (const { value } of asks) expect(value).toBe('')
  })

  it('is one step of undo and of redo, also where a section replaces one, and adding the same again changes nothing', () => {
    const sheet = opened('flat-sheet')
    const before = sheet.worksheet
    expect(added(sheet, 'in-tiles').replaced).toEqual([{ part: 'one-frame', by: 'tiles' }])
    const after = sheet.worksheet
    expect(added(sheet, 'in-tiles').change).toBeUndefined()
    expect(sheet.steps).toEqual({ undo: [before], redo: [] })
    sheet.undo()
    expect(sheet.worksheet).toBe(before)
    expect(sheet.canUndo).toBe(false)
    sheet.redo()
    expect(sheet.worksheet).toBe(after)
  })

  it('has added cells, edits, measured values and what was removed stay as they are', () => {
    const sheet = opened('flat-sheet')
    const at = sheet.cells.findIndex(({ id }) => id === 'ppi')
    sheet.apply({ do: 'add', at: at + 1, cell: { ...result('my_own', '2 * focal'), id: 'own_cell' } })
    sheet.apply({ do: 'replace', cell: { ...(sheet.cell('border') as Given), label: 'My border' } })
    sheet.apply({
      do: 'replace',
      cell: { ...(sheet.cell('carriage') as never as object), measured: '920 mm', locked: true } as never,
    })
    sheet.apply({ do: 'remove', id: 'pixels_match' })
    added(sheet, 'in-tiles')
    const ids = sheet.cells.map(({ id }) => id)
    expect(ids.indexOf('own_cell')).toBe(ids.indexOf('ppi') + 1)
    expect(sheet.named('border')).toMatchObject({ label: 'My border' })
    expect(sheet.named('carriage')).toMatchObject({ measured: '920 mm', locked: true })
    expect(sheet.named('pixels_match')).toBeUndefined()
  })

  it('takes the new formula of a result that was measured, with what was read, when and by whom', () => {
    const sheet = opened('flat-sheet')
    const cell = sheet.named('ppi') as Result
    sheet.apply({ do: 'replace', cell: withMeasured(cell, '300 ppi') }, { when: '2026-11-28T14:02:00', by: 'LM' })
    const { measured_under } = sheet.named('ppi') as Result
    added(sheet, 'in-tiles')
    const formula = opened('in-tiles').named('ppi') as Result
    expect(formula.formula).not.toBe(cell.formula)
    expect(sheet.named('ppi')).toMatchObject({ formula: formula.formula, measured: '300 ppi', measured_under })
    expect(measured_under).toMatchObject({ when: '2026-11-28T14:02:00', by: 'LM' })
  })

  it.each(JOBS)('takes every formula of %s as if nothing had been measured', (name) => {
    const [plain, measured] = [opened(name), opened(name)]
    for (const cell of measured.cells)
      if (cell.kind === 'result')
        measured.apply({ do: 'replace', cell: withMeasured(cell, '1') }, { when: '2026-11-28T14:02:00' })
    const formulas = ({ cells }: Sheet) =>
      cells.flatMap((cell) => (cell.kind === 'result' ? [[cell.id, cell.formula]] : []))
    for (const other of ['in-tiles', 'glossy', 'accept-light']) {
      added(plain, other)
      added(measured, other)
      expect(formulas(measured)).toEqual(formulas(plain))
    }
  })

  it('remembers a given that a part computes, through a file', () => {
    const sheet = new Sheet(composeJob(PARTS, job('two-lamps')), LIBRARY)
    expect(sheet.named('lens_height')).toMatchObject({ kind: 'given' })
    added(sheet, 'flat-sheet')
    expect(sheet.named('lens_height')).toMatchObject({ kind: 'result' })
    const read = readDocument(writeDocument(sheet.worksheet))
    expect(read.given?.lens_height).toMatchObject({ value: '1200', from: 'example' })
    expect(isComposed(read)).toBe(true)
  })

  it('does nothing to a sheet that has the parts', () => {
    const sheet = opened('flat-sheet')
    expect(withParts(PARTS, sheet.worksheet, set('pair', 'lux')).change).toBeUndefined()
  })
})

describe('another set-up', () => {
  const offer = (prefix: string) => {
    const found = PARTS.setUps.find((one) => one.prefix === prefix)
    if (!found) throw new Error(`No set-up is offered as ${prefix}.`)
    return found
  }
  const withOne = (sheet: Sheet, prefix: string): void => {
    const { change } = withSetUp(PARTS, sheet.worksheet, offeredSetUp(sheet.worksheet, offer(prefix)))
    if (!change) throw new Error('Nothing changes.')
    sheet.apply(change)
  }
  const names = (sheet: Sheet): string[] => sheet.cells.filter(isNamed).map(({ name }) => name)
  const filled = (sheet: Sheet, name: string, value: string): void => {
    const cell = sheet.named(name) as Given
    sheet.apply({ do: 'replace', cell: { ...cell, value } })
  }
  const figureIn = (sheet: Sheet, name: string): unknown => {
    const cell = sheet.named(name)
    const outcome = cell && sheet.outcome(cell.id)
    return outcome?.state === 'value' ? outcome.value : undefined
  }

  it.each(PARTS.setUps.map(({ prefix }) => prefix))('starts from the first, under names of its own: %s', (prefix) => {
    const sheet = opened(prefix === 'overview' ? 'in-tiles' : 'flat-sheet')
    const before = sheet.worksheet
    filled(sheet, 'aperture', 'f/11')
    withOne(sheet, prefix)
    expect(names(sheet)).toEqual([...new Set(names(sheet))])
    expect(names(sheet).some((name) => name.startsWith(`${prefix}_`))).toBe(true)
    expect(figureIn(sheet, 'aperture')).toBe(11)
    // A piece of kit fills in the givens of its own set-up.
    for (const cell of sheet.cells)
      if (cell.kind === 'given' && cell.name.startsWith(`${prefix}_`))
        for (const target of Object.values(cell.fills ?? {})) {
          expect(names(sheet)).toContain(target)
          if (names(sheet).includes(`${prefix}_${target}`)) expect(target).toContain(prefix)
        }
    // A light panel asks for the same aperture under another part: by name it stays.
    expect(figureIn(sheet, `${prefix}_aperture`)).toBe(11)
    const inError = sheet.cells
      .filter(isNamed)
      .filter((cell) => cell.kind !== 'check' && sheet.outcome(cell.id).state === 'error')
    expect(inError.map(({ name }) => name)).toEqual([])
    // One step of undo.
    sheet.undo()
    sheet.undo()
    expect(sheet.worksheet).toBe(before)
  })

  it('goes on as it was filled in when parts are added, and comes back when it is added again', () => {
    const sheet = opened('flat-sheet')
    withOne(sheet, 'raking')
    filled(sheet, 'raking_aperture', 'f/5.6')
    filled(sheet, 'raking_illuminance', '')
    added(sheet, 'rights-and-light')
    expect(figureIn(sheet, 'raking_aperture')).toBe(5.6)
    expect(sheet.named('raking_illuminance')).toMatchObject({ value: '' })
    expect(names(sheet)).toContain('all_dose')
    const { change } = withoutSetUp(PARTS, sheet.worksheet, 'raking')
    if (change) sheet.apply(change)
    expect(names(sheet).filter((name) => name.startsWith('raking_'))).toEqual([])
    expect(names(sheet)).not.toContain('all_dose')
    expect(setUpsOf(sheet.worksheet)).toEqual([])
    withOne(sheet, 'raking')
    expect(figureIn(sheet, 'raking_aperture')).toBe(5.6)
  })

  it('adds up light received and pictures, and a file of it opens the same', () => {
    const sheet = opened('bound-volume')
    const before = figureIn(sheet, 'frames_all') as number
    withOne(sheet, 'raking')
    expect(figureIn(sheet, 'frames_all')).toBe(2 * before)
    withOne(sheet, 'uv')
    expect(figureIn(sheet, 'frames_all')).toBe(3 * before)
    const read = readDocument(writeDocument(sheet.worksheet))
    expect(read.setups?.map(({ name }) => name)).toEqual(['raking', 'uv'])
    expect(withSetUp(PARTS, read, setUpsOf(read)[1] as never).change).toBeUndefined()
  })

  it('twice the same gets a number', () => {
    const sheet = opened('flat-sheet')
    withOne(sheet, 'raking')
    withOne(sheet, 'raking')
    expect(setUpsOf(sheet.worksheet).map(({ title }) => title)).toEqual(['Raking light', 'Raking light 2'])
    expect(names(sheet)).toContain('raking2_aperture')
  })

  it('has no cell of a sheet’s own lose its name', () => {
    const sheet = opened('flat-sheet')
    sheet.apply({ do: 'add', at: 3, cell: { ...result('raking_aperture', '2 * focal'), id: 'own_cell' } })
    withOne(sheet, 'raking')
    expect(sheet.cell('own_cell')).toMatchObject({ name: 'raking_aperture', formula: '2 * focal' })
    expect(names(sheet)).toEqual([...new Set(names(sheet))])
  })
})

describe('a sheet saved while each set-up had its own given for what they share', () => {
  const shared = [...PARTS.names].flatMap(([name, { in_every_set_up }]) => (in_every_set_up ? name : []))
  const prefixes = ['raking', 'second']

  /** The worksheet as it was: every set-up with a given of its own, which its cells read. */
  function asBefore(worksheet: Worksheet, value: (prefix: string, name: string) => string): Worksheet {
    const givens = worksheet.cells.filter((cell): cell is Given => cell.kind === 'given' && shared.includes(cell.name))
    const cells = worksheet.cells.flatMap((cell): Cell[] => {
      const prefix = prefixes.find((one) => cell.id.startsWith(`${one}_`))
      if (!prefix) return [cell]
      const own = new Map(givens.map(({ name }) => [name, `${prefix}_${name}`]))
      const next = followNames(cell, own, worksheet.cells)
      const read = givens.filter(({ name }) => readBy(cell).has(name))
      return [
        ...read.map((one) => ({
          ...one,
          id: `${prefix}_${one.name}`,
          name: `${prefix}_${one.name}`,
          value: value(prefix, one.name),
        })),
        next,
      ]
    })
    return { ...worksheet, cells: cells.filter(({ id }, at) => cells.findIndex((one) => one.id === id) === at) }
  }

  it('has one of each when a section is added, with the figure of the first that says one, and nothing in error', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...PARTS.parts.keys()), { minLength: 4, maxLength: 9 }),
        fc.constantFrom(...PARTS.parts.keys()),
        fc.constantFrom('first', 'later', 'none'),
        (ids, more, said) => {
          const { worksheet } = compose(PARTS, {
            title: 'Before',
            parts: set(...ids),
            setUps: prefixes.map((prefix) => ({
              prefix,
              title: prefix,
              parts: prefix === 'raking' ? [{ part: 'raking', by: 'hand' as const }] : [],
            })),
            givens: READ,
          })
          const filled = worksheet.cells.map((cell) =>
            said !== 'first' && cell.kind === 'given' && shared.includes(cell.name) ? { ...cell, value: '' } : cell,
          )
          const now: Worksheet = { ...worksheet, cells: filled }
          const of = (name: string): string => {
            const cell = worksheet.cells.find((one) => one.kind === 'given' && one.name === name)
            return cell?.kind === 'given' ? cell.value : ''
          }
          const before = asBefore(now, (prefix, name) => (said === 'later' && prefix === 'second' ? of(name) : ''))
          const next = withParts(PARTS, before, [{ part: more, by: 'hand' }])
          const names = next.cells.filter(isNamed).map(({ name }) => name)
          for (const name of shared)
            for (const prefix of prefixes) expect(names, `${ids}, ${more}`).not.toContain(`${prefix}_${name}`)
          expect(names).toEqual([...new Set(names)])
          expect(errorsOf({ ...before, cells: [...next.cells] })).toEqual([])
          const read = new Set(
            before.cells.flatMap((cell) =>
              cell.kind === 'given' && cell.name.startsWith('second_') ? cell.name.slice(7) : [],
            ),
          )
          for (const cell of next.cells) {
            if (cell.kind !== 'given' || !read.has(cell.name) || !shared.includes(cell.name)) continue
            if (said === 'later') expect(cell.value, cell.name).toBe(of(cell.name))
          }
        },
      ),
      { numRuns: 24 },
    )
  }, 120_000)
})
