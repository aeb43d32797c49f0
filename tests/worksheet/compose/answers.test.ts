import { describe, expect, it, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import {
  type Answers,
  type FromAnswers,
  fromAnswers,
  mayBeSeveral,
} from '../../../src/worksheet/compose/from-answers.ts'
import type { OriginalKind } from '../../../src/worksheet/compose/part-library.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import { Sheet } from '../../../src/worksheet/index.ts'
import { asks, cellOf, computes, type Invented, invented, judges, says, typed } from './invented.ts'

/** A sheet in a frame; tiles where that is too small, foil where it is glossy, a hood and a ring where the lens is near. */
const OF: Invented = {
  roles: ['original', 'camera', 'framing', 'glare', 'near', 'ring', 'count'],
  names: {
    original: { entry: 'size', unit: 'mm', example: '1 x 1' },
    glossy: { entry: 'yes or no' },
    wanted: { role: 'framing', unit: 'mm' },
    border: { role: 'framing', unit: 'mm', usual: '10 mm' },
    overlap: { role: 'framing', unit: 'mm', usual: '30 mm' },
    scale: { role: 'near', unit: '1:' },
    items_in: { role: 'count', unit: '1' },
  },
  parts: {
    sheet: {
      cells: [
        asks('original'),
        computes('shiny', 'when(glossy, 1, 0)'),
        computes('area', 'original.width * original.height'),
      ],
    },
    film: { cells: [says('Film.')] },
    camera: { role: 'camera', cells: [computes('by_camera', '1')] },
    phone: { role: 'camera', rank: 1, cells: [computes('by_phone', '1')] },
    'one-frame': {
      role: 'framing',
      cells: [computes('covers', 'original.width + 2 * border', { unit: 'mm' }), judges('fits', 'covers <= wanted')],
    },
    tiles: {
      role: 'framing',
      rank: 1,
      cells: [computes('tile_short', '80 mm'), computes('step', 'tile_short - overlap')],
    },
    foil: { role: 'glare', cells: [says('Foil.')] },
    better_foil: { role: 'glare', rank: 1, cells: [says('Better.')] },
    magnifier: { role: 'near', cells: [computes('near', 'scale * 1')] },
    hood: { role: 'near', rank: 1, cells: [computes('near', 'scale * 2')] },
    ring: { role: 'ring', cells: [says('Ring.')] },
    alike: { role: 'count', cells: [computes('count', 'items_in')] },
    lots: {
      role: 'count',
      rank: 1,
      cells: [{ kind: 'table', name: 'list', columns: [{ name: 'width', unit: 'mm' }] }],
      example_rows: { list: [['1']] },
    },
  },
  choosing: {
    kinds: [
      { kind: 'loose', title: 'A loose sheet', about: '', parts: ['sheet', 'camera', 'one-frame'], lead: 'sheet' },
      { kind: 'film', title: 'Film', about: '', parts: ['film', 'better_foil'] },
      { kind: 'near', title: 'Near', about: '', parts: ['sheet', 'magnifier'] },
      { kind: 'list', title: 'A list', about: '', parts: ['sheet', 'lots'] },
    ],
    phone: 'phone',
    several: 'alike',
    rules: [
      { part: 'tiles', where: { fails: 'fits' }, because: 'It covers {covers} of {wanted}{nothing}.' },
      { part: 'foil', where: { given: 'glossy', is: 'yes' }, because: 'It is glossy.' },
      { part: 'hood', with: ['ring'], where: { result: 'scale', over: 0.5, beside: 'near' }, because: 'At {scale}.' },
    ],
  },
}
const PARTS = invented(OF)

const open = (worksheet: ConstructorParameters<typeof Sheet>[0]): Sheet => new Sheet(worksheet, LIBRARY)
const answered = (texts: Readonly<Record<string, string>> = {}, more: Answers = {}, library = PARTS): FromAnswers =>
  fromAnswers(library, { givens: typed(texts), ...more }, open)
const partsOf = ({ worksheet }: FromAnswers): string[] =>
  worksheet.cells.flatMap((cell) => (cell.kind === 'note' && typeof cell.part === 'string' ? [cell.part] : []))

describe('the parts to start from', () => {
  it('are those of the kind, or of the first where none is answered', () => {
    expect(answered()).toMatchObject({
      worksheet: {
        title: 'A loose sheet',
        parts: [{ part: 'camera' }, { part: 'one-frame' }, { part: 'sheet', by: 'lead' }],
      },
    })
    expect(partsOf(answered({}, { kind: 'unheard of' }))).toEqual(['sheet', 'camera', 'one-frame'])
    expect(partsOf(answered({}, { kind: 'near' }))).toEqual(['sheet', 'magnifier'])
    expect(answered({}, { kind: 'near' }).worksheet.title).toBe('Near')
  })

  it('have a phone in the place of the camera where that is all there is', () => {
    expect(partsOf(answered({}, { byPhone: true }))).toEqual(['sheet', 'phone', 'one-frame'])
    expect(partsOf(answered({}, { byPhone: false }))).toEqual(['sheet', 'camera', 'one-frame'])
  })

  it('count several, but for a kind that counts them itself', () => {
    expect(partsOf(answered({}, { several: true }))).toEqual(['sheet', 'camera', 'one-frame', 'alike'])
    expect(answered({}, { several: true, kind: 'list' }).worksheet.parts).toEqual([{ part: 'lots' }, { part: 'sheet' }])
    const kinds = PARTS.choosing.kinds.map((kind) => [kind.kind, mayBeSeveral(PARTS, kind)])
    expect(kinds).toEqual([
      ['loose', true],
      ['film', true],
      ['near', true],
      ['list', false],
    ])
  })
})

describe('the sheet', () => {
  it('has the title and the job that are answered, without spaces round them', () => {
    expect(answered({}, { title: ' A map ', job: ' No. 3 ' }).worksheet).toMatchObject({ title: 'A map', job: 'No. 3' })
    const blank = answered({}, { title: ' ', job: ' ' }).worksheet
    expect(blank.title).toBe('A loose sheet')
    expect(blank).not.toHaveProperty('job')
  })

  it('has what is answered, what is usual, and no example', () => {
    const { worksheet, sheet } = answered({ wanted: '500', border: ' ' })
    expect(cellOf(worksheet, 'wanted')).toMatchObject({ value: '500', from: { kind: 'typed' } })
    expect(cellOf(worksheet, 'border')).toMatchObject({ value: '10 mm', from: { kind: 'usual' } })
    expect(cellOf(worksheet, 'original')).toMatchObject({ value: '' })
    expect(sheet.worksheet).toBe(worksheet)
  })

  it('has no rows but those that are answered', () => {
    const rows = (more: Answers) => cellOf(answered({}, { kind: 'list', ...more }).worksheet, 'list')
    expect(rows({})).toMatchObject({ rows: [] })
    expect(rows({ rows: new Map([['list', { rows: [['5']], from: 'typed' }]]) })).toMatchObject({ rows: [['5']] })
  })
})

describe('a part is chosen', () => {
  it('where a check fails without it, with the figures that decided', () => {
    const { chosen, worksheet } = answered({ original: '400 x 300', wanted: '300' })
    expect(chosen).toEqual([{ part: 'tiles', why: 'It covers 420 mm of 300 mm.' }])
    expect(worksheet.parts).toContainEqual({ part: 'tiles' })
    expect(partsOf({ worksheet } as FromAnswers)).toEqual(['sheet', 'camera', 'tiles'])
    expect(answered({ original: '400 x 300', wanted: '500' }).chosen).toEqual([])
    expect(answered({ original: '400 x 300' }).chosen).toEqual([])
  })

  it('where a given has a value', () => {
    expect(answered({ glossy: 'yes' }).chosen).toEqual([{ part: 'foil', why: 'It is glossy.' }])
    expect(answered({ glossy: 'no' }).chosen).toEqual([])
  })

  it('not where another fills its role', () => {
    const glossy = { ...OF, parts: { ...OF.parts, film: { cells: [computes('shiny', 'when(glossy, 1, 0)')] } } }
    const one = answered({ glossy: 'yes' }, { kind: 'film' }, invented(glossy))
    expect(one.chosen).toEqual([])
    expect(one.worksheet.parts).toEqual([{ part: 'better_foil' }, { part: 'film' }])
  })

  it('where a result beside a cell is over a figure, with the parts that come with it', () => {
    const near = answered({ scale: '1:1' }, { kind: 'near' })
    expect(near.chosen).toEqual([{ part: 'hood', why: 'At 1:1.' }])
    expect(partsOf(near)).toEqual(['sheet', 'hood', 'ring'])
    for (const scale of ['1:2', '1:10', '']) expect(answered({ scale }, { kind: 'near' }).chosen).toEqual([])
    expect(answered({ scale: '1:1' }).chosen).toEqual([])
  })

  test.each<[string, Invented['choosing']]>([
    ['a check that is not there', { rules: [{ part: 'ring', where: { fails: 'unheard_of' }, because: '' }] }],
    ['a result in the place of a check', { rules: [{ part: 'ring', where: { fails: 'covers' }, because: '' }] }],
    ['a given that is not there', { rules: [{ part: 'ring', where: { given: 'unheard_of', is: '' }, because: '' }] }],
    [
      'a result in the place of a given',
      { rules: [{ part: 'ring', where: { given: 'covers', is: '' }, because: '' }] },
    ],
    [
      'a check in the place of a result',
      { rules: [{ part: 'ring', where: { result: 'fits', over: 0, beside: 'fits' }, because: '' }] },
    ],
    [
      'a size in the place of a figure',
      { rules: [{ part: 'ring', where: { result: 'original', over: 0, beside: 'fits' }, because: '' }] },
    ],
    [
      'a result that is not there',
      { rules: [{ part: 'ring', where: { result: 'unheard_of', over: 0, beside: 'fits' }, because: '' }] },
    ],
    [
      'a cell beside that is not there',
      { rules: [{ part: 'ring', where: { result: 'covers', over: 0, beside: 'unheard_of' }, because: '' }] },
    ],
  ])('not by %s', (_, rules) => {
    const library = invented({ ...OF, choosing: { ...OF.choosing, ...rules } })
    expect(answered({ original: '400 x 300', wanted: '300' }, {}, library).chosen).toEqual([])
  })

  it('by the sheet that the rules before it made', () => {
    const rules = [
      { part: 'tiles', where: { fails: 'fits' }, because: '' },
      { part: 'ring', where: { result: 'step', over: 0, beside: 'tile_short' }, because: 'By {tile_short}.' },
      { part: 'foil', where: { fails: 'fits' }, because: '' },
    ]
    const library = invented({ ...OF, choosing: { ...OF.choosing, rules } })
    expect(answered({ original: '400 x 300', wanted: '300' }, {}, library).chosen.map(({ part }) => part)).toEqual([
      'tiles',
      'ring',
    ])
  })
})

describe('what is usual is in proportion', () => {
  const usual = (name: string, texts: Readonly<Record<string, string>>): unknown => {
    const cell = cellOf(answered(texts).worksheet, name)
    return cell?.kind === 'given' ? [cell.value, cell.from?.kind] : undefined
  }

  test.each<[string, string, string]>([
    ['100 x 100', '10 mm', 'as it is round 100 mm'],
    ['99 x 300', '9 mm', 'a tenth of the shorter side'],
    ['300 x 50', '5 mm', 'whichever that is'],
    ['58 x 300', '5 mm', 'in whole millimetres'],
    ['5 x 300', '1 mm', 'and one at least'],
    ['', '10 mm', 'as it is where the size is not known'],
  ])('the border of %s is %s: %s', (original, border) => {
    expect(usual('border', { original })).toEqual([border, 'usual'])
  })

  it('but a border that is typed stays, and one that is narrow enough', () => {
    expect(usual('border', { original: '50 x 50', border: '10 mm' })).toEqual(['10 mm', 'typed'])
    const narrow = invented({ ...OF, names: { ...OF.names, border: { role: 'framing', unit: 'mm', usual: '4 mm' } } })
    const cell = cellOf(answered({ original: '50 x 50' }, {}, narrow).worksheet, 'border')
    expect(cell).toMatchObject({ value: '4 mm' })
    const wide = invented({ ...OF, names: { ...OF.names, border: { role: 'framing', unit: 'mm', usual: '30 mm' } } })
    expect(cellOf(answered({ original: '200 x 200' }, {}, wide).worksheet, 'border')).toMatchObject({ value: '30 mm' })
  })

  it('the overlap of tiles is a quarter of their shorter side at most', () => {
    expect(usual('overlap', { original: '400 x 300', wanted: '300' })).toEqual(['20 mm', 'usual'])
    expect(usual('overlap', { original: '400 x 300', wanted: '300', overlap: '30 mm' })).toEqual(['30 mm', 'typed'])
    const overlap = (short: string, name = 'tile_short') => {
      const tiles = { ...OF.parts?.tiles, cells: [computes(name, short), computes('step', `${name} - overlap`)] }
      const { worksheet } = answered(
        { original: '50 x 300', wanted: '30' },
        {},
        invented({ ...OF, parts: { ...OF.parts, tiles } }),
      )
      // The border of an original so small is narrower as well.
      const cells = ['overlap', 'border'].map((id) => cellOf(worksheet, id))
      return cells.map((cell) => (cell?.kind === 'given' ? cell.value : ''))
    }
    expect(overlap('120 mm')).toEqual(['30 mm', ''])
    expect(overlap('100 mm', 'frame_short')).toEqual(['25 mm', ''])
  })

  it('both at once', () => {
    const tiles = {
      ...OF.parts?.tiles,
      cells: [computes('tile_short', '80 mm'), computes('step', 'tile_short - overlap + border')],
    }
    const library = invented({ ...OF, parts: { ...OF.parts, tiles } })
    const { worksheet } = answered({ original: '50 x 300', wanted: '30' }, {}, library)
    expect(cellOf(worksheet, 'overlap')).toMatchObject({ value: '20 mm' })
    expect(cellOf(worksheet, 'border')).toMatchObject({ value: '5 mm' })
  })
})

describe('the means of coming closer', () => {
  /** Each means fails as many of two checks as it says. */
  const closer = (fails: Readonly<Record<string, number>>): Invented => ({
    ...{
      roles: ['near'],
      choosing: { kinds: [{ kind: 'k', title: 'K', about: '', parts: ['closer'] }] as OriginalKind[] },
    },
    names: {
      closer_by: { entry: 'choice', options: ['tubes', 'close-up lens', 'both'] },
      ...Object.fromEntries(
        ['tubes', 'powers', 'both_tube', 'both_power'].map((name) => [name, { entry: 'text' as const }]),
      ),
    },
    parts: {
      closer: {
        cells: [
          computes(
            'fails',
            `when(closer_by = "tubes", ${fails.tubes ?? 0}, when(closer_by = "both", ${fails.both ?? 0}, ${fails.lens ?? 0}))`,
          ),
          judges('one', 'fails < 1'),
          judges('two', 'fails < 2'),
          ...['tubes', 'powers', 'both_tube', 'both_power'].map((name) => computes(`of_${name}`, `${name} = "x"`)),
        ],
      },
    },
  })
  const way = (fails: Readonly<Record<string, number>>, texts: Readonly<Record<string, string>>): unknown => {
    const cell = cellOf(answered(texts, {}, invented(closer(fails))).worksheet, 'closer_by')
    return cell?.kind === 'given' ? [cell.value, cell.from?.kind] : undefined
  }
  const all = { tubes: '20', powers: '4', both_tube: '20', both_power: '4' }

  it('is what there is', () => {
    expect(way({}, { tubes: '20' })).toEqual(['tubes', 'usual'])
    expect(way({}, { powers: '4' })).toEqual(['close-up lens', 'usual'])
    expect(way({}, { both_tube: '20', both_power: '4' })).toEqual(['both', 'usual'])
    for (const none of [{}, { both_tube: '20' }, { both_power: '4' }]) expect(way({}, none)).toEqual(['', undefined])
  })

  it('is the first that fails the fewest checks', () => {
    expect(way({}, all)).toEqual(['tubes', 'usual'])
    expect(way({ tubes: 1, lens: 0, both: 0 }, all)).toEqual(['close-up lens', 'usual'])
    expect(way({ tubes: 2, lens: 1, both: 0 }, all)).toEqual(['both', 'usual'])
    expect(way({ tubes: 2, lens: 2, both: 2 }, all)).toEqual(['tubes', 'usual'])
  })

  it('is what was chosen, whatever fails', () => {
    expect(way({ tubes: 2 }, { ...all, closer_by: 'tubes' })).toEqual(['tubes', 'typed'])
  })

  it('is not asked for where nothing comes closer', () => {
    const { worksheet } = answered({ tubes: '20' })
    expect(cellOf(worksheet, 'closer_by')).toBeUndefined()
  })
})

test('the order of the answers makes no difference', () => {
  const texts: readonly (readonly [string, Filled])[] = [
    ...typed({ original: '400 x 300', wanted: '300', glossy: 'yes' }),
  ]
  const [one, other] = [texts, texts.toReversed()].map(
    (list) => fromAnswers(PARTS, { givens: new Map(list) }, open).worksheet,
  )
  expect(JSON.stringify(one)).toBe(JSON.stringify(other))
})
