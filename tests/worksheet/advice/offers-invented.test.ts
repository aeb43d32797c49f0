import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Offer, offersFor } from '../../../src/worksheet/advice/offers.ts'
import type { Part, PartLibrary } from '../../../src/worksheet/compose/part-library.ts'
import { type Cell, type Given, Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { asks, computes, type Invented, invented, judges, sheetOf } from '../compose/invented.ts'
import { later } from '../compose/invented-set-ups.ts'

/** One frame is too small for the original; several frames, which ask how many, are not. */
const ONE: Partial<Part> = {
  role: 'framing',
  title: 'One frame',
  cells: [computes('sampled', '600 / size'), judges('one_sharp', 'sampled >= wanted', { label: 'Sharp in one' })],
}
const TILES: Partial<Part> = {
  role: 'framing',
  title: 'Frames',
  rank: 1,
  offer: 'Several frames',
  press: 'Take it in {frames} frames of {nowhere}{size}',
  answers: { one_sharp: ['tiles_sharp'] },
  cells: [
    asks('across'),
    computes('frames', 'across * across'),
    computes('sampled', '600 * across / size'),
    judges('tiles_sharp', 'sampled >= wanted', { label: 'Sharp in several' }),
  ],
}
const SHEET: Partial<Part> = {
  role: 'original',
  cells: [asks('size'), asks('wanted'), asks('sturdy'), judges('stands', 'sturdy >= 1')],
}
const FIXED = { advice: { change: 'never' as const } }
const NAMES: Invented['names'] = {
  size: { role: 'original', example: '4', ...FIXED },
  wanted: { role: 'original', example: '300', ...FIXED },
  sturdy: { role: 'original', example: '3', ...FIXED },
  across: { role: 'framing', example: '2', ...FIXED },
}

interface Offered {
  readonly of?: Partial<Invented>
  readonly parts?: readonly string[]
  readonly later?: Parameters<typeof later>
  readonly typed?: Readonly<Record<string, string>>
  readonly change?: (worksheet: Worksheet) => Worksheet
}

function offered({ of = {}, parts = ['sheet', 'one'], later: own, typed = {}, change = (one) => one }: Offered = {}) {
  const library: PartLibrary = invented({
    ...of,
    roles: [
      'original',
      { role: 'framing', in_set_up: true },
      { role: 'closeness', in_set_up: true },
      { role: 'light', in_set_up: true },
      'care',
      ...(of.roles ?? []),
    ],
    names: { ...NAMES, ...of.names },
    parts: { sheet: SHEET, one: ONE, tiles: TILES, ...of.parts },
  })
  const made = sheetOf(library, parts, own ? { setUps: [later(...own)] } : {})
  const cells = made.cells.map((cell) =>
    cell.kind === 'given' && typed[cell.name] !== undefined ? { ...cell, value: typed[cell.name] as string } : cell,
  )
  const sheet = new Sheet(change({ ...made, cells }), LIBRARY)
  return { library, sheet, offers: offersFor(library, sheet) }
}
const named = (found: ReadonlyMap<string, readonly Offer[]>): Record<string, string[]> =>
  Object.fromEntries([...found].map(([name, offers]) => [name, offers.map(({ part }) => part)]))

const said = (found: ReadonlyMap<string, readonly Offer[]>, name: string) =>
  found.get(name)?.map((offer) => [offer.part, offer.text, offer.fails, offer.then])

describe('a part that would help', () => {
  test('is offered for the check that it makes pass, with what pressing it does', () => {
    const { offers } = offered()
    expect(named(offers)).toEqual({ one_sharp: ['tiles'] })
    expect(said(offers, 'one_sharp')).toEqual([['tiles', 'Take it in 4 frames of 4', [], '']])
  })

  test('is offered beside others that would', () => {
    const more: Partial<Part> = {
      ...TILES,
      answers: { one_sharp: ['strips_sharp'] },
      cells: [asks('across'), computes('sampled', '600 * across / size'), judges('strips_sharp', 'sampled >= wanted')],
    }
    expect(named(offered({ of: { parts: { strips: more } } }).offers)).toEqual({ one_sharp: ['tiles', 'strips'] })
  })

  test('is not where only one of the checks that take the place of it passes', () => {
    const both = (wide: string): Partial<Part> => ({
      ...TILES,
      answers: { one_sharp: ['tiles_sharp', 'tiles_wide'] },
      cells: [...(TILES.cells ?? []), judges('tiles_wide', wide)],
    })
    expect(named(offered({ of: { parts: { tiles: both('across >= 2') } } }).offers)).toEqual({ one_sharp: ['tiles'] })
    expect(named(offered({ of: { parts: { tiles: both('across >= 3') } } }).offers)).toEqual({})
  })

  test('is not where nothing takes the place of the check that goes with the other part', () => {
    const { answers: _, ...silent } = TILES
    expect(named(offered({ of: { parts: { tiles: silent } } }).offers)).toEqual({})
  })

  test('is offered by what it is called where it says no more', () => {
    const { press: _, ...plain } = TILES
    expect(offered({ of: { parts: { tiles: plain } } }).offers.get('one_sharp')?.[0]?.text).toBe('Several frames')
  })

  test('is not where nothing fails, in a sheet without parts, or where it is there already', () => {
    expect(named(offered({ typed: { size: '1' } }).offers)).toEqual({})
    const own = ({ parts: _, ...rest }: Worksheet) => rest as Worksheet
    expect(named(offered({ change: own }).offers)).toEqual({})
    expect(named(offered({ parts: ['sheet', 'tiles'], typed: { across: '1' } }).offers)).toEqual({})
  })

  test('is not where its own check fails as well', () => {
    expect(named(offered({ typed: { size: '9' } }).offers)).toEqual({})
  })

  test('is not beside what it never goes with', () => {
    const tiles = { ...TILES, never_with: ['lamp', 'book'] }
    const of = { parts: { tiles, book: { role: 'care' }, box: { role: 'care' } } }
    expect(named(offered({ of, parts: ['sheet', 'one', 'book'] }).offers)).toEqual({})
    expect(named(offered({ of, parts: ['sheet', 'one', 'box'] }).offers)).toEqual({ one_sharp: ['tiles'] })
  })

  test('of another role helps only the checks it answers', () => {
    const lit = (answers: Part['answers']) => ({
      role: 'light',
      rank: 1,
      ...(answers ? { answers } : {}),
      cells: [computes('wanted', '100'), judges('bright', 'wanted < 200')],
    })
    const of = (answers?: Part['answers']) => ({
      names: { wanted: { role: 'light', example: '300', ...FIXED } },
      parts: { tiles: { role: 'care' }, lit: lit(answers) as Partial<Part> },
    })
    expect(named(offered({ of: of() }).offers)).toEqual({})
    const way = { ...lit(undefined), role: 'closeness' }
    expect(named(offered({ of: { ...of(), parts: { tiles: { role: 'care' }, way } } }).offers)).toEqual({
      one_sharp: ['way'],
    })
  })

  test('of another role is offered beside a way for the check that it answers', () => {
    const dim: Partial<Part> = { role: 'light', cells: [judges('bright', 'size >= 9')] }
    const strong: Partial<Part> = {
      role: 'light',
      rank: 1,
      answers: { bright: ['bright_enough'] },
      cells: [judges('bright_enough', 'size >= 2')],
    }
    const { offers } = offered({ of: { parts: { dim, strong } }, parts: ['sheet', 'one', 'dim'] })
    expect(named(offers)).toEqual({ one_sharp: ['tiles'], bright: ['strong'] })
  })

  test('is tried with its own example, the usual value, the example of the name, or the first option', () => {
    // What was left empty when the part was there before stays so.
    const change = (worksheet: Worksheet) => ({
      ...worksheet,
      given: { across: { value: '', from: 'typed' as const } },
    })
    const across = (name: object, part: object) =>
      offered({
        change,
        of: { names: { across: { role: 'framing', ...FIXED, ...name } }, parts: { tiles: { ...TILES, ...part } } },
      })
        .offers.get('one_sharp')
        ?.map(({ text }) => text)
    const frames = (count: number) => [`Take it in ${count} frames of 4`]
    const usual = { usual: '3', example: '4' }
    expect(across({ ...usual }, { example: { across: '5' }, usual: { across: '6' } })).toEqual(frames(25))
    expect(across({ ...usual }, { usual: { across: '6' } })).toEqual(frames(36))
    expect(across({ ...usual }, {})).toEqual(frames(9))
    expect(across({ example: '4' }, {})).toEqual(frames(16))
    expect(across({ entry: 'choice', unit: '1', options: ['7', '8'] }, {})).toEqual(frames(49))
    expect(across({}, {})).toBeUndefined()
  })

  test('is judged before anything is measured', () => {
    const tiles = {
      ...TILES,
      cells: [
        ...(TILES.cells ?? []).slice(0, 3),
        judges('tiles_sharp', 'sampled >= wanted', { needs_measured: ['sampled'] }),
      ],
    }
    expect(named(offered({ of: { parts: { tiles } } }).offers)).toEqual({ one_sharp: ['tiles'] })
  })
})

describe('what an offered part makes fail', () => {
  /** Care passes while the original is handled once, and may be relaxed or not. */
  const caring = (advice: NonNullable<Given['advice']>): Partial<Invented> => ({
    names: { gentle: { role: 'care', example: '1', advice } },
    parts: {
      care: {
        role: 'care',
        cells: [asks('gentle'), judges('cared', 'gentle * sampled <= 200', { label: 'Handled little' })],
      },
    },
  })
  const relaxed = { change: 'agree' as const, least: 0.1, most: 1, step: 0.1 }

  test('is said where a suggestion makes it pass again', () => {
    const { offers } = offered({ of: caring(relaxed), parts: ['sheet', 'one', 'care'] })
    expect(said(offers, 'one_sharp')).toEqual([
      ['tiles', 'Take it in 4 frames of 4', ['cared'], 'Handled little then fails.'],
    ])
  })

  test('keeps it from being offered where none does', () => {
    expect(named(offered({ of: caring({ change: 'never' }), parts: ['sheet', 'one', 'care'] }).offers)).toEqual({})
  })

  test('keeps it from being offered where a check of its own fails by what the sheet has already', () => {
    const withOwn = (own: ReturnType<typeof judges>) =>
      named(offered({ of: { parts: { tiles: { ...TILES, cells: [...(TILES.cells ?? []), own] } } } }).offers)
    expect(withOwn(judges('steady', 'sturdy >= 5'))).toEqual({})
    expect(withOwn(judges('steady', 'sturdy >= 2'))).toEqual({ one_sharp: ['tiles'] })
    // What depends on what it asks is not judged: that is still to be filled in.
    expect(withOwn(judges('steady', 'sturdy >= 5 * across'))).toEqual({ one_sharp: ['tiles'] })
    expect(withOwn(judges('steady', 'sturdy >= 5', { needs_measured: ['sturdy'] }))).toEqual({ one_sharp: ['tiles'] })
  })

  test('is not counted where it failed before', () => {
    const of = {
      parts: { care: { role: 'care', cells: [judges('cared', 'sampled <= 100', { label: 'Handled little' })] } },
    }
    const { offers } = offered({ of, parts: ['sheet', 'one', 'care'] })
    expect(offers.get('one_sharp')?.map(({ part, fails }) => [part, fails])).toEqual([['tiles', []]])
  })
})

describe('for a later set-up', () => {
  const two = (typed: Readonly<Record<string, string>>, first = 'one', second = 'one', of: Partial<Invented> = {}) =>
    offered({ of, parts: ['sheet', first], later: ['near', { part: second, by: 'hand' }], typed })

  test('a part is offered to the set-up whose check fails, by its title', () => {
    const { offers, sheet } = two({}, 'tiles')
    expect(sheet.checkState(sheet.named('near_one_sharp')?.id ?? '')).toBe('fail')
    expect(said(offers, 'near_one_sharp')).toEqual([['tiles', 'In near: Take it in 4 frames of 4', [], '']])
    expect(offers.get('near_one_sharp')?.[0]?.setUp).toBe('near')
    expect([...offers.keys()]).toEqual(['near_one_sharp'])
  })

  test('a part is not offered to a set-up that has what it never goes with', () => {
    const of = { parts: { tiles: { ...TILES, never_with: ['wide'] }, wide: { ...ONE, title: 'Wide' } } }
    expect(named(two({}, 'one', 'wide', of).offers)).toEqual({ one_sharp: ['tiles'] })
  })

  test('a part is offered to each that it helps', () => {
    const { offers } = two({})
    expect(named(offers)).toEqual({ one_sharp: ['tiles'], near_one_sharp: ['tiles'] })
    expect(offers.get('one_sharp')?.[0]).not.toHaveProperty('setUp')
    expect(offers.get('near_one_sharp')?.[0]?.text).toBe('In near: Take it in 4 frames of 4')
  })

  test('a part is not offered to a set-up that has it', () => {
    expect(named(two({ near_across: '1' }, 'one', 'tiles').offers)).toEqual({ one_sharp: ['tiles'] })
  })
})

test('an offer leaves the sheet as it is', () => {
  const { library, sheet } = offered()
  const before = JSON.stringify(sheet.worksheet)
  offersFor(library, sheet)
  expect(JSON.stringify(sheet.worksheet)).toBe(before)
  const givens = (cells: readonly Cell[]) => cells.filter((cell): cell is Given => cell.kind === 'given')
  expect(givens(sheet.cells).map(({ name }) => name)).toEqual(['size', 'wanted', 'sturdy'])
})
