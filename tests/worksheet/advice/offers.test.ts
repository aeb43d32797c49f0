import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readJob, readParts } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { passes, statesOf } from '../../../src/worksheet/advice/advise.ts'
import { offersFor } from '../../../src/worksheet/advice/offers.ts'
import { compose, type SetUp } from '../../../src/worksheet/compose/compose.ts'
import { composeJob, type Job, partsOfJob } from '../../../src/worksheet/compose/job.ts'
import { isPlace, type Part, type PartLibrary } from '../../../src/worksheet/compose/part-library.ts'
import { withParts } from '../../../src/worksheet/compose/recompose.ts'
import { type Cell, type Check, type Given, Sheet } from '../../../src/worksheet/index.ts'
import { roomTraced, size } from '../../model/trace.ts'
import { Filled } from '../../templates/open.ts'
import { jobWith as jobTexts } from './jobs.ts'

function jobWith(name: string, texts: Readonly<Record<string, string>>): Sheet {
  const worksheet = composeJob(readParts(), readJob(name) as Job)
  const cells = worksheet.cells.map((cell) =>
    cell.kind === 'given' && texts[cell.name] !== undefined ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new Sheet({ ...worksheet, cells }, LIBRARY)
}

/** Flat sheet with a set-up more. */
function withSetUp(setUp: SetUp, texts: Readonly<Record<string, string>>): Sheet {
  const library = readParts()
  const parts = partsOfJob(readJob('flat-sheet') as Job)
  const { worksheet } = compose(library, { title: 'Two set-ups', parts, setUps: [setUp] })
  const cells = worksheet.cells.map((cell) =>
    cell.kind === 'given' && texts[cell.name] !== undefined ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new Sheet({ ...worksheet, cells }, LIBRARY)
}

describe('parts that would help a later set-up', () => {
  const byHand = (...parts: readonly string[]) => parts.map((part) => ({ part, by: 'hand' as const }))
  const large = { original: '900 x 1300', wanted_sampling: '150' }
  const small = { original: '24 x 30', wanted_sampling: '1200' }
  // The same as for the first: a larger original in frames, a nearer one with tubes; common practice, no source.
  test.each([
    [
      'an overview that falls short of its sampling',
      { prefix: 'overview', title: 'Overview', parts: byHand('one-frame') },
      { ...large, overview_one_frame_sampling: '400' },
      'overview_sharp_enough',
      'tiles',
    ],
    [
      'a second set-up nearer than the lens focuses',
      { prefix: 'second', title: 'Second set-up', parts: byHand('one-frame', 'lens-alone') },
      { ...small, second_one_frame_sampling: '1200' },
      'second_lens_focuses',
      'closer',
    ],
  ] as const)('are offered for %s, in that set-up alone', (_, setUp, texts, check, part) => {
    const library = readParts()
    const sheet = withSetUp(setUp, texts)
    expect(sheet.checkState(sheet.named(check)?.id ?? '')).toBe('fail')
    const offers = offersFor(library, sheet)
    const own = offers.get(check) ?? []
    expect(own.map((one) => one.part)).toContain(part)
    for (const [name, found] of offers)
      for (const offer of found) {
        const isLater = name.startsWith(`${setUp.prefix}_`)
        expect(offer.setUp, name).toBe(isLater ? setUp.prefix : undefined)
        if (isLater) expect(offer.text).toMatch(new RegExp(`^${setUp.title}: [A-Z][^{}]+$`))
        const { change, cells } = withParts(library, sheet.worksheet, byHand(offer.part), offer.setUp)
        expect(change).toBeDefined()
        const after = sheet.trial(cells)
        const answered = after.named(name)
        if (answered) expect(after.checkState(answered.id), name).not.toBe('fail')
      }
  })
})

/** What judges a check that is gone once a part has taken the place of its own: by the figures of the work, not by a check. */
const JUDGED: Readonly<Record<string, (sheet: Filled) => boolean>> = {
  // Some of the tubes make the magnification, the lens focused between far away and its own nearest.
  lens_focuses: (sheet) => {
    const focal = sheet.number('focal')
    let lengths = [0]
    for (const tube of sheet.value('tubes') as number[]) lengths = [...lengths, ...lengths.map((sum) => sum + tube)]
    const lacking = lengths.map((length) => sheet.number('magnification') - length / focal)
    return lacking.some((left) => left >= -1e-9 && left <= sheet.number('lens_greatest') + 1e-9)
  },
  // Of what tubes or close-up lenses are for, the lens is to do all by itself.
  ...Object.fromEntries(
    ['tubes_reach', 'closeup_covers', 'both_cover'].map((check) => [
      check,
      (sheet: Filled) => sheet.number('magnification') <= sheet.number('lens_greatest'),
    ]),
  ),
  // Square to the leaning face, the lens is within what the tripod reaches, and there is room for a person behind it.
  column_reaches: (sheet) => {
    const lean = sheet.number('lean')
    const up = sheet.number('centre_height') + sheet.number('lens_height') * Math.sin(lean)
    const out = sheet.number('sensor_height') * Math.cos(lean) + 0.6
    const isReached = up >= sheet.number('tripod_least') - 1e-3 && up <= sheet.number('tripod_greatest') + 1e-3
    return isReached && out <= sheet.number('floor_free')
  },
  tripod_reaches: (sheet) => sheet.number('carriage') <= sheet.number('column_reach'),
  room_behind: (sheet) => sheet.number('carriage') <= sheet.number('column_reach'),
  // The original with its border is on one sensor, and sampled as required.
  one_frame: (sheet) => {
    const [width, height] = size(sheet, 'original')
    const [long, short] = [Math.max(width, height), Math.min(width, height)]
    const sensor = size(sheet, 'sensor')
    const border = 2 * sheet.number('border')
    const drawn = Math.min(Math.max(...sensor) / (long + border), Math.min(...sensor) / (short + border))
    return drawn * (size(sheet, 'sensor_pixels')[0] / sensor[0]) >= sheet.number('wanted_sampling')
  },
  room_clear: (sheet) =>
    Object.values(roomTraced(sheet, size(sheet, 'original'))).every(
      (traced) => (typeof traced === 'number' ? traced : traced.ifPassed) <= 1.01,
    ),
  ceiling_clear: (sheet) => ['dark cloth', 'a dark room'].includes(sheet.value('opposite') as string),
  wall_clear: (sheet) => sheet.value('wall') === 'black or grey',
}

test('a part that is offered helps the check it is offered for, by the figures of the work', () => {
  const library = readParts()
  const met = new Set<string>()
  for (const [job, texts] of [
    ['flat-sheet', { original: '900 x 1300' }],
    ['flat-sheet', { original: '38 x 24', wanted_sampling: '2000', border: '2' }],
    ['flat-sheet', { original: '640 x 450', lamp_out: '600', lamp_height: '590', aperture: 'f/4' }],
    ['in-tiles', { original: '380 x 260' }],
    ['fixed-arms', { original: '900 x 700' }],
    ['getting-closer', { original: '19 x 14' }],
    ['upright-original', { centre_height: '2300', floor_free: '1100', wall: 'pale', opposite: 'something lit' }],
    ['two-lamps', { wall: 'pale', opposite: 'dark cloth', left_out: '900', right_out: '900' }],
    ['glossy', { wall: 'black or grey', opposite: 'dark cloth', mask: '400 x 300', masked: 'yes' }],
  ] as const) {
    const sheet = jobWith(job, texts)
    for (const [check, offers] of offersFor(library, sheet))
      for (const { part, text } of offers) {
        const said = `${job}: ${part} for ${check}`
        expect(text).toMatch(/^[A-Z][^{}]+$/)
        expect(['original', 'kit', 'light', 'price', 'care']).not.toContain(library.parts.get(part)?.role)
        const { change, cells, asks } = withParts(library, sheet.worksheet, [{ part, by: 'hand' }])
        expect(change, said).toBeDefined()
        const filled = new Filled({ ...sheet.worksheet, cells: cells.map((cell) => worked(library, part, cell, asks)) })
        const judge = JUDGED[check]
        met.add(check)
        if (filled.sheet.named(check)) expect(['pass', 'marginal', 'waiting'], said).toContain(filled.state(check))
        else expect(judge?.(filled), said).toBe(true)
      }
  }
  for (const check of ['sharp_enough', 'lens_focuses', 'column_reaches', 'one_frame']) expect([...met]).toContain(check)
  for (const check of ['even_enough', 'arms_cover', 'lamps_low']) expect([...met]).not.toContain(check)
})

test('another support is offered where the support falls short, and not for what cannot stand upright', () => {
  const library = readParts()
  const offered = (job: string, texts: Readonly<Record<string, string>>) =>
    [...offersFor(library, jobWith(job, texts))].flatMap(([check, offers]) =>
      offers.flatMap(({ part }) => (library.parts.get(part)?.role === 'support' ? [check] : [])),
    )
  const low = { lamp_out: '600', lamp_height: '590' }
  expect(offered('flat-sheet', { ...low, original: '640 x 450' })).toEqual(['column_reaches'])
  for (const job of ['bound-volume', 'small-object'])
    expect(offered(job, { ...low, column_reach: '300' }), job).toEqual([])
})

test('what an offered part makes fail is said: what passed before, and what is its own and depends on nothing it asks', () => {
  const library = readParts()
  let said = 0
  fc.assert(
    fc.property(
      fc
        .constantFrom('flat-sheet', 'getting-closer', 'in-tiles', 'upright-original', 'small-object')
        .chain((job) => jobTexts(job, 2).map((texts) => [job, texts] as const)),
      ([job, texts]) => {
        const sheet = jobWith(job, texts)
        const states = statesOf(sheet)
        for (const offers of offersFor(library, sheet).values())
          for (const { part, fails, then } of offers) {
            const { cells, asks } = withParts(library, sheet.worksheet, [{ part, by: 'hand' }])
            const judged = cells.map((cell) =>
              cell.kind === 'check' ? { ...cell, needs_measured: undefined } : worked(library, part, cell, asks),
            )
            const worked_out = statesOf(sheet.trial(judged as Cell[]))
            const broken = [...states].flatMap(([name, state]) =>
              passes(state) && worked_out.get(name) === 'fail' ? [name] : [],
            )
            // As it is added, with nothing filled in: what waits depends on what it asks.
            const empty = cells.map((cell) =>
              cell.kind === 'given' && asks.some(({ id }) => id === cell.id) ? { ...cell, value: '' } : cell,
            )
            const own = [...statesOf(sheet.trial(empty))].flatMap(([name, state]) =>
              state === 'fail' && !states.has(name) ? [name] : [],
            )
            expect([...fails].sort(), JSON.stringify({ job, texts, part })).toEqual([...broken, ...own].sort())
            expect(then === '').toBe(fails.length === 0)
            for (const name of fails) expect(then).toContain((sheet.trial(judged as Cell[]).named(name) as Check).label)
            said += fails.length
          }
      },
    ),
    { numRuns: 40 },
  )
  expect(said).toBeGreaterThan(0)
})

/** A given that a part asks for, with its example. */
function worked(library: PartLibrary, part: string, cell: Cell, asks: readonly Given[]): Cell {
  if (cell.kind !== 'given' || !asks.some(({ id }) => id === cell.id)) return cell
  const { usual, example } = library.names.get(cell.name) ?? {}
  const own = library.parts.get(part)
  return { ...cell, value: own?.example?.[cell.name] ?? own?.usual?.[cell.name] ?? usual ?? example ?? cell.value }
}

test('every check that a part answers is one of a part it can take the place of, and so are its own', () => {
  const library = readParts()
  const checksOf = ({ cells }: Part) =>
    cells.flatMap((cell) => (!isPlace(cell) && cell.kind === 'check' ? [cell.name] : []))
  for (const part of library.parts.values())
    for (const [gone, own] of Object.entries(part.answers ?? {})) {
      const others = [...library.parts.values()].filter(({ id, role }) => id !== part.id && role === part.role)
      expect(others.flatMap(checksOf), `${part.id}: ${gone}`).toContain(gone)
      for (const name of own) expect(checksOf(part), part.id).toContain(name)
      expect(Object.keys(JUDGED), part.id).toContain(gone)
    }
})

describe('parts that would help', () => {
  // An original larger than a frame at its sampling is photographed in overlapping frames; nearer than a lens focuses, on tubes
  // or with close-up lenses: common practice, no source.
  test.each([
    ['one frame falls short of the sampling', { original: '900 x 1300' }, 'sharp_enough', 'tiles'],
    ['the column is too short for one frame', { original: '900 x 1300' }, 'column_reaches', 'tiles'],
    ['the lens does not focus so close', { original: '24 x 30', wanted_sampling: '2400' }, 'lens_focuses', 'closer'],
  ] as const)('are offered where %s', (_, texts, check, part) => {
    expect(
      offersFor(readParts(), jobWith('flat-sheet', texts))
        .get(check)
        ?.map((one) => one.part),
    ).toContain(part)
  })

  it('say what pressing one does, with its figures', () => {
    const offers = offersFor(readParts(), jobWith('flat-sheet', { original: '900 x 1300' })).get('sharp_enough')
    expect(offers?.find(({ part }) => part === 'tiles')?.text).toMatch(/^Take it in \d+ frames$/)
  })

  it('are none where every check passes, or in a sheet that is not composed of parts', () => {
    const sheet = jobWith('flat-sheet', { wanted_sampling: '300' })
    const failing = sheet.cells.filter((cell) => cell.kind === 'check' && !passes(sheet.checkState(cell.id)))
    expect(failing).toEqual([])
    expect([...offersFor(readParts(), sheet)]).toEqual([])
    const { parts: _, ...own } = jobWith('flat-sheet', {}).worksheet
    expect([...offersFor(readParts(), new Sheet(own, LIBRARY))]).toEqual([])
  })
})
