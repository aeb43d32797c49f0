import { describe, expect, it, test } from 'vitest'
import { type JoinPlan, planJoin, type Resolution } from '../../../src/worksheet/compose/join.ts'
import { placeFor } from '../../../src/worksheet/compose/join-place.ts'
import { type Cell, type Given, isNamed, type Result, type Sheet, type Stage } from '../../../src/worksheet/index.ts'
import { check, given, note, result, seen, sheetOf } from '../make.ts'

const heading = (text: string, stage?: Stage): Cell => ({
  kind: 'note',
  id: text,
  role: 'heading',
  text,
  ...(stage ? { stage } : {}),
})

/** Ids that tell the order they were made in. */
function ids(): () => string {
  let n = 0
  return () => `new_${++n}`
}

function plan(sheet: Sheet, cells: readonly Cell[], choices: Readonly<Record<string, Resolution>> = {}): JoinPlan {
  const coming = { key: 'a-template', title: 'A template', cells }
  return planJoin(sheet, coming, { choices: new Map(Object.entries(choices)), freshId: ids() })
}

/** Sets cells in, and gives what became of each name. */
function join(sheet: Sheet, cells: readonly Cell[], choices: Readonly<Record<string, Resolution>> = {}): JoinPlan {
  const made = plan(sheet, cells, choices)
  if (made.change) sheet.apply(made.change)
  return made
}

const order = (sheet: Sheet): string[] =>
  sheet.cells.map((cell) => (cell.kind === 'note' ? cell.text : isNamed(cell) ? cell.name : cell.kind))

const focal = (value: string) => given('focal', value, { unit: 'mm', label: 'Focal length' })

describe('a published name joins', () => {
  it('given to given: the sheet’s stays and is asked once', () => {
    const sheet = sheetOf([focal('60'), result('twice', '2 * focal')])
    const { meetings } = join(sheet, [heading('More'), focal('100'), result('thrice', '3 * focal')])
    expect(meetings).toMatchObject([{ name: 'focal', way: 'keep', ways: ['keep'], clashes: false }])
    expect(order(sheet)).toEqual(['focal', 'twice', 'More', 'thrice'])
    expect(seen(sheet, sheet.named('thrice')?.id as string)).toBe('180 mm')
  })

  it('a result of the sheet before a given of the template', () => {
    const sheet = sheetOf([result('magnification', '1 / 4', { unit: '1:' })])
    join(sheet, [
      heading('More'),
      given('magnification', '1:10', { unit: '1:' }),
      result('size', 'magnification * 40 mm'),
    ])
    expect(order(sheet)).toEqual(['magnification', 'More', 'size'])
    expect(seen(sheet, sheet.named('size')?.id as string)).toBe('10 mm')
  })

  it('a given of the sheet becomes the measured value of the template’s result, in the template’s place', () => {
    const sheet = sheetOf([
      given('lens_height', '90', { unit: 'cm', hint: 'With a rule.' }),
      result('double', 'lens_height * 2'),
    ])
    const { meetings } = join(sheet, [
      heading('More'),
      given('rise', '400 mm'),
      result('lens_height', '2 * rise', { unit: 'mm', more_exact: true }),
    ])
    expect(meetings).toMatchObject([{ way: 'measured', ways: ['measured', 'computed', 'keep'], clashes: false }])
    expect(order(sheet)).toEqual(['double', 'More', 'rise', 'lens_height'])
    const cell = sheet.named('lens_height') as Cell
    // In the result’s unit a bare 90 would be millimetres.
    expect(cell).toMatchObject({ kind: 'result', measured: '90 cm', measure: 'With a rule.' })
    expect(cell).not.toHaveProperty('more_exact')
    expect(seen(sheet, 'double')).toBe('1800 mm')
    expect(sheet.outcome(cell.id)).toMatchObject({ measured: { difference: '100 mm over' } })
  })

  it('or is let go, or stays as it is, as one chooses', () => {
    const cells = [heading('More'), given('rise', '400 mm'), result('lens_height', '2 * rise', { unit: 'mm' })]
    const open = () => sheetOf([given('lens_height', '900', { unit: 'mm' }), result('double', 'lens_height * 2')])
    const computed = open()
    join(computed, cells, { lens_height: 'computed' })
    expect(computed.named('lens_height')).not.toHaveProperty('measured')
    expect(seen(computed, 'double')).toBe('1600 mm')
    const saved = open()
    join(saved, cells, { lens_height: 'keep' })
    // What only the working asked for is not asked.
    expect(order(saved)).toEqual(['lens_height', 'double'])
  })

  it('an empty given asks nothing: the result takes its place', () => {
    const sheet = sheetOf([given('lens_height', '', { unit: 'mm' }), result('double', 'lens_height * 2')])
    const { meetings } = join(sheet, [heading('More'), result('lens_height', '2 * 400 mm', { unit: 'mm' })])
    expect(meetings[0]?.way).toBe('computed')
    expect(seen(sheet, 'double')).toBe('1600 mm')
  })

  it('never so that a figure would be computed from itself', () => {
    const sheet = sheetOf([given('lens_height', '900 mm'), result('ppi', 'lens_height / 3 mm')])
    const { meetings } = join(sheet, [
      heading('More'),
      given('ppi', '400'),
      result('lens_height', 'ppi * 2 mm'),
      result('after', 'lens_height'),
    ])
    expect(meetings.map(({ name, way }) => [name, way])).toEqual([
      ['ppi', 'keep'],
      ['lens_height', 'keep'],
    ])
    expect(sheet.checkSummary.errors).toBe(0)
    expect(seen(sheet, sheet.named('after')?.id as string)).toBe('900 mm')
  })

  it('a given that a lamp is dragged by stays a given', () => {
    const sheet = sheetOf([
      given('lens_height', '900 mm'),
      { kind: 'drawing', id: 'd', drawing: 'set-up', from: {}, moves: ['lens_height'] },
    ])
    const { meetings } = join(sheet, [heading('More'), result('lens_height', '800 mm')])
    expect(meetings[0]?.ways).toEqual(['keep'])
  })

  it('nor so that two figures that both give way would be computed from each other', () => {
    const sheet = sheetOf([given('lens_height', '900 mm'), given('focal', '60 mm'), result('twice', 'focal * 2')])
    const { meetings } = join(
      sheet,
      [heading('More'), given('twice', ''), result('lens_height', 'twice + 1 mm'), result('focal', 'lens_height / 9')],
      { twice: 'keep' },
    )
    expect(meetings.map(({ name, way }) => [name, way])).toEqual([
      ['twice', 'keep'],
      ['lens_height', 'measured'],
      ['focal', 'keep'],
    ])
    expect(seen(sheet, sheet.named('lens_height')?.id as string)).toBe('900 mm')
  })

  it('a given that cannot be read stays, unless one chooses the result', () => {
    const coming = [heading('More'), result('lens_height', '800 mm', { unit: 'mm' })]
    const open = () => sheetOf([given('lens_height', 'high', { unit: 'mm' })])
    expect(plan(open(), coming).meetings[0]).toMatchObject({ way: 'keep', ways: ['keep', 'computed'] })
    const sheet = open()
    join(sheet, coming, { lens_height: 'computed' })
    expect(seen(sheet, sheet.named('lens_height')?.id as string)).toBe('800 mm')
  })

  it('though one asked for both: nothing of one meaning is there twice', () => {
    const { meetings } = plan(sheetOf([focal('60')]), [focal('100')], { focal: 'both' })
    expect(meetings).toMatchObject([{ way: 'keep', ways: ['keep'] }])
    expect(meetings[0]).not.toHaveProperty('newName')
  })

  it('with how it is measured, and that it is read at the stand, of either', () => {
    const inPlace = (there: Partial<Given>, coming: Partial<Result>): Cell => {
      const sheet = sheetOf([given('lens_height', '900', { unit: 'mm', ...there })])
      join(sheet, [heading('More'), result('lens_height', '800 mm', { unit: 'mm', ...coming })])
      return sheet.named('lens_height') as Cell
    }
    expect(inPlace({}, {})).toMatchObject({ measured: '900' })
    for (const key of ['measure', 'stand']) expect(inPlace({}, {})).not.toHaveProperty(key)
    expect(inPlace({ hint: 'With a rule.' }, { measure: 'With a tape.' })).toMatchObject({ measure: 'With a tape.' })
    expect(inPlace({ stand: true }, {})).toMatchObject({ stand: true })
    expect(inPlace({}, { stand: true })).toMatchObject({ stand: true })
  })

  it.each<Cell>([
    { kind: 'steps', id: 's', steps: [{ text: 'Read it', reading: 'rise' }] },
    { kind: 'range', id: 'r', of: 'rise', results: ['lens_height'] },
    { kind: 'variants', id: 'v', sets: [{ title: 'Far', values: { rise: '1' } }], results: ['lens_height'] },
  ])('$kind alone do not have a given asked that was asked for what stays out', (lists) => {
    const sheet = sheetOf([result('lens_height', '800 mm')])
    join(sheet, [heading('More'), given('rise', '400 mm'), result('lens_height', 'rise * 2'), lists])
    expect(sheet.named('rise')).toBeUndefined()
  })

  it('a given that only the sheet reads from now on is asked', () => {
    const sheet = sheetOf([result('lens_height', '800 mm'), result('twice', 'rise * 2')])
    join(sheet, [heading('More'), given('rise', '400 mm'), given('lens_height', ''), given('unread', '1')])
    expect(order(sheet)).toEqual(['lens_height', 'twice', 'More', 'rise', 'unread'])
  })

  it('a check to a check', () => {
    const sheet = sheetOf([check('depth_holds', '1 < 2')])
    join(sheet, [heading('More'), check('depth_holds', '3 < 4'), note('n', 'Words.')])
    expect(order(sheet)).toEqual(['depth_holds', 'More', 'Words.'])
  })
})

describe('a name that clashes', () => {
  const coming: Cell[] = [
    heading('More'),
    given('girth', '5 mm'),
    result('far', 'girth * 2'),
    check('near', 'girth < 1 m', { message: '{girth} of {far}; girth is a word', passes: '{2 * girth}' }),
    { kind: 'drawing', id: 'd', drawing: 'set-up', from: { field_width: 'girth + far' }, moves: ['girth'] },
    { kind: 'steps', id: 's', steps: [{ text: 'Read it', reading: 'girth' }] },
    {
      kind: 'table',
      id: 'list',
      name: 'list',
      columns: [
        { name: 'width', unit: 'mm' },
        { name: 'more', formula: 'width + girth', foot: [{ figure: 'count', where: 'more > girth' }] },
      ],
      rows: [['10', '']],
    },
    { kind: 'range', id: 'r', of: 'girth', results: ['far'] },
    { kind: 'variants', id: 'v', sets: [{ title: 'Far', values: { girth: '9 mm' } }], results: ['far'] },
    { kind: 'run', id: 'run', of: 'list', from: { width: 'width', gap: 'girth' } },
  ]

  it('is added beside the other under a name that follows wherever it is used', () => {
    const sheet = sheetOf([given('girth', '3 m'), given('girth_2', '1 m'), given('far', '1 s')])
    const { meetings, cells } = join(sheet, coming)
    expect(meetings).toMatchObject([
      { name: 'girth', way: 'both', ways: ['both', 'keep'], newName: 'girth_3', clashes: true },
      { name: 'far', way: 'both', newName: 'far_2', ways: ['both'], why: 'yours is a time, the other a length' },
    ])
    expect(cells.slice(1)).toMatchObject([
      { name: 'girth_3' },
      { name: 'far_2', formula: 'girth_3 * 2' },
      { condition: 'girth_3 < 1 m', message: '{girth_3} of {far_2}; girth is a word', passes: '{2 * girth_3}' },
      { from: { field_width: 'girth_3 + far_2' }, moves: ['girth_3'] },
      { steps: [{ reading: 'girth_3' }] },
      { columns: [{}, { formula: 'width + girth_3', foot: [{ where: 'more > girth_3' }] }] },
      { of: 'girth_3', results: ['far_2'] },
      { sets: [{ values: { girth_3: '9 mm' } }], results: ['far_2'] },
      { of: 'list', from: { width: 'width', gap: 'girth_3' } },
    ])
    expect(sheet.checkSummary.errors).toBe(0)
  })

  it('takes a name that no cell has, and no column', () => {
    const list: Cell = { kind: 'table', id: 'l', name: 'l', columns: [{ name: 'far_2' }], rows: [] }
    const sheet = sheetOf([given('far', '1'), given('far_1', '2')])
    const { meetings } = plan(sheet, [given('far', '3'), given('far_1', '4'), list])
    expect(meetings.map(({ newName }) => newName)).toEqual(['far_3', 'far_4'])
  })

  it('joins where one says so', () => {
    const sheet = sheetOf([given('girth', '3 m')])
    const { meetings } = join(sheet, coming, { girth: 'keep' })
    expect(meetings[0]).toMatchObject({ way: 'keep', clashes: true })
    expect(seen(sheet, sheet.named('far')?.id as string)).toBe('6000 mm')
  })

  it('cannot join what is another kind of thing, though it be asked for', () => {
    const sheet = sheetOf([given('focal', 'wide', { entry: 'text' })])
    const { meetings } = join(sheet, [heading('More'), focal('60'), result('twice', '2 * focal')], { focal: 'keep' })
    expect(meetings[0]).toMatchObject({ way: 'both', clashes: true, why: 'yours is text, the other a length' })
    expect(sheet.checkSummary.errors).toBe(0)
  })

  it('a choice that lacks what the other offers is another choice', () => {
    const choice = (options: string[]) =>
      given('scheme', options[0] as string, { entry: 'choice', options, label: 'Table' })
    const sheet = sheetOf([choice(['one', 'two'])])
    const { meetings } = plan(sheet, [choice(['one', 'three']), result('a', 'scheme = "three"')])
    expect(meetings[0]?.why).toBe('yours has no option “three”')
  })

  it('a table joins one with the same columns, and is distinguished from one without', () => {
    const table = (...names: string[]): Cell => ({
      kind: 'table',
      id: 'list',
      name: 'list',
      columns: names.map((name) => ({ name, unit: 'mm' })),
      rows: [],
    })
    const sheet = sheetOf([table('width', 'height')])
    expect(plan(sheet, [table('width')], { list: 'keep' }).meetings[0]?.way).toBe('keep')
    expect(plan(sheet, [table('depth')]).meetings[0]?.why).toBe('yours has no column “depth”')
  })
})

describe('where a section goes', () => {
  const sheet = [
    heading('Frame', 'frame'),
    note('a', 'a'),
    heading('Of the frame too'),
    heading('Light', 'light'),
    note('b', 'b'),
    heading('Hand over', 'deliver'),
  ]
  test.each([
    ['receive', 0],
    ['frame', 3],
    ['light', 5],
    ['sharp', 5],
    ['deliver', 6],
    [undefined, 6],
  ] as const)('%s', (stage, at) => {
    expect(placeFor(stage, sheet)).toBe(at)
  })

  it('is behind what has no stage yet, and behind its own stage wherever that is', () => {
    const first = [heading('Before'), note('a', 'a'), heading('Light', 'light'), note('b', 'b')]
    expect(placeFor('frame', first)).toBe(2)
    expect(placeFor('receive', [...first, heading('Receive', 'receive')])).toBe(5)
  })

  it('is the end of a sheet without stages', () => {
    expect(placeFor('frame', [heading('One'), note('a', 'a'), heading('Two')])).toBe(3)
    expect(placeFor('frame', [])).toBe(0)
  })

  it('follows the stage of each heading, and the headings know their template', () => {
    const open = sheetOf(sheet)
    const { cells, first } = join(open, [
      heading('Closer', 'frame'),
      note('c', 'c'),
      heading('Closer still'),
      note('d', 'd'),
      heading('Reckon', 'sharp'),
      note('e', 'e'),
    ])
    expect(order(open)).toEqual(
      'Frame,a,Of the frame too,Closer,c,Closer still,d,Light,b,Reckon,e,Hand over'.split(','),
    )
    expect(cells[2]).toMatchObject({ text: 'Closer still', template: 'a-template', stage: 'frame' })
    expect(first).toBe(cells[0]?.id)
  })
})

describe('what is there already', () => {
  it('is not said twice: cautions, notes and drawings', () => {
    const caution = (id: string, text: string): Cell => ({ kind: 'note', id, role: 'caution', text })
    const drawing = (id: string): Cell => ({ kind: 'drawing', id, drawing: 'set-up', from: { field_width: 'focal' } })
    const sheet = sheetOf([focal('60'), caution('1', 'Hot lamps: let them cool.'), drawing('d')])
    const { cells } = join(sheet, [
      heading('More'),
      caution('2', 'Hot lamps:\nlet them cool. '),
      drawing('e'),
      note('n', 'New.'),
    ])
    expect(cells.map(({ kind }) => kind)).toEqual(['note', 'note'])
  })

  it('leaves no heading over nothing, and no change where there is nothing to do', () => {
    const sheet = sheetOf([focal('60')])
    expect(plan(sheet, [heading('More'), focal('60')])).toMatchObject({
      meetings: [{ name: 'focal' }],
      cells: [],
      change: undefined,
      first: undefined,
    })
  })

  it('keeps a section that was empty in the template', () => {
    const { cells } = plan(sheetOf([focal('60')]), [heading('More'), focal('60'), heading('Notes'), heading('Last')])
    expect(cells).toMatchObject([{ text: 'Notes' }, { text: 'Last' }])
  })

  it('heads cells that come without a heading by the template’s title', () => {
    const sheet = sheetOf([])
    join(sheet, [note('n', 'New.')])
    expect(order(sheet)).toEqual(['A template', 'New.'])
    const more = plan(sheet, [note('n', 'Newer.'), heading('More'), note('m', 'Newest.')]).cells
    expect(more).toMatchObject([{ text: 'A template' }, { text: 'Newer.' }, { text: 'More' }, { text: 'Newest.' }])
    expect(more[0]).toEqual({
      ...{ kind: 'note', id: 'new_1', role: 'heading', text: 'A template', template: 'a-template' },
    })
  })

  it('opens each section, in the stage of the template where its heading says none', () => {
    const coming = [{ ...heading('Folded'), folded: true }, note('n', 'New.')]
    const made = planJoin(
      sheetOf([heading('Frame', 'frame'), heading('Light', 'light')]),
      { key: 'k', title: 'T', cells: coming, stage: 'frame' },
      { freshId: ids() },
    )
    expect(made.cells[0]).toEqual({
      ...{ kind: 'note', id: 'new_1', role: 'heading', text: 'Folded', template: 'k', stage: 'frame' },
    })
    expect(made.change).toMatchObject({ changes: [{ do: 'insert', at: 1 }] })
  })
})

it('is one step of undo', () => {
  const sheet = sheetOf([given('lens_height', '900 mm'), heading('Frame', 'frame'), heading('Light', 'light')])
  const before = sheet.worksheet
  join(sheet, [heading('One', 'frame'), result('lens_height', '800 mm'), heading('Two', 'light'), given('x', '')])
  expect(order(sheet)).toEqual(['Frame', 'One', 'lens_height', 'Light', 'Two', 'x'])
  sheet.undo()
  expect(sheet.worksheet).toBe(before)
  expect(sheet.canUndo).toBe(false)
  sheet.redo()
  expect(sheet.named('lens_height')).toMatchObject({ measured: '900 mm' })
})
