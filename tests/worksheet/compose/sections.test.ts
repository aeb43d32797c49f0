import { describe, expect, it, test } from 'vitest'
import type { Part, PublishedName } from '../../../src/worksheet/compose/part-library.ts'
import { rowsMark } from '../../../src/worksheet/document/rows-mark.ts'
import { asks, cellOf, computes, type Invented, invented, judges, orderOf, says, sheetOf, typed } from './invented.ts'

type Names = Readonly<Record<string, Partial<PublishedName>>>

describe('the sections of a sheet', () => {
  const library = invented({
    roles: ['original', { role: 'optics', stage: 'sharp' }, 'light'],
    names: { size: {}, curl: {}, focal: { role: 'optics' }, reach: { role: 'optics', derive: 'focal * 2' } },
    parts: {
      sheet: { cells: [asks('size'), says('A word.'), computes('area', 'size * 2')] },
      pair: { role: 'light', stage: 'accept', cells: [computes('field', 'size * reach * curl')] },
    },
  })

  it('follow the order of roles, each asking for what is its own and read', () => {
    expect(orderOf(sheetOf(library, ['pair', 'sheet']))).toEqual([
      ...['[Part sheet]', 'size', 'curl', 'note_original_3', 'area'],
      ...['[Title of optics]', 'focal', 'reach', '[Part pair]', 'field'],
    ])
    expect(orderOf(sheetOf(library, ['sheet']))).toEqual(['[Part sheet]', 'size', 'note_original_2', 'area'])
  })

  it('open with the heading of their part, or of their role where no part fills it', () => {
    const sheet = sheetOf(library, ['pair', 'sheet'])
    expect(cellOf(sheet, 'heading_light_0')).toEqual({
      ...{ kind: 'note', role: 'heading', text: 'Part pair', about: 'About pair', stage: 'accept' },
      ...{ fills_role: 'light', part: 'pair', id: 'heading_light_0' },
    })
    expect(cellOf(sheet, 'heading_optics_0')).toStrictEqual({
      ...{ kind: 'note', role: 'heading', text: 'Title of optics', stage: 'sharp', fills_role: 'optics' },
      id: 'heading_optics_0',
    })
  })

  it('have each given where the part places it, and what it does not place behind those', () => {
    const of = (cells: Part['cells']) =>
      orderOf(
        sheetOf(invented({ roles: ['original'], names: { a: {}, b: {}, c: {} }, parts: { sheet: { cells } } }), [
          'sheet',
        ]),
      ).slice(1)
    const sum = computes('sum', 'a + b + c')
    expect(of([asks('b'), sum, asks('a')])).toEqual(['b', 'c', 'sum', 'a'])
    expect(of([sum])).toEqual(['a', 'b', 'c', 'sum'])
    expect(of([asks('b'), asks('a')])).toEqual(['b'])
    expect(of([asks('nowhere'), computes('sum', 'c')])).toEqual(['c', 'sum'])
  })

  it('place what belongs to a role that their part decides as well', () => {
    const claiming = (claims?: readonly string[]) =>
      sheetOf(
        invented({
          roles: ['optics', 'light'],
          names: { lamp: { role: 'light' } },
          parts: { macro: { ...(claims ? { claims } : {}), cells: [computes('field', 'lamp'), asks('lamp')] } },
        }),
        ['macro'],
      )
    expect(orderOf(claiming(['light']))).toEqual(['[Part macro]', 'field', 'lamp'])
    expect(orderOf(claiming())).toEqual(['[Part macro]', 'field', '[Title of light]', 'lamp'])
    expect(orderOf(claiming(['other']))).toEqual(['[Part macro]', 'field', '[Title of light]', 'lamp'])
  })

  it('name cells by what they compute, else by their key, else by their role', () => {
    const drawing = { kind: 'drawing' as const, drawing: 'depth', from: {} }
    const sheet = sheetOf(
      invented({
        roles: ['optics'],
        parts: { lens: { cells: [drawing, { ...drawing, key: 'far' }, says('Mind it.', { role: 'caution' })] } },
      }),
      ['lens'],
    )
    expect(orderOf(sheet).slice(1)).toEqual(['drawing_optics', 'drawing_far', 'caution_optics_3'])
    expect(cellOf(sheet, 'drawing_far')).not.toHaveProperty('key')
  })

  it('say nothing of how they were composed', () => {
    const cells = [
      computes('a', '1', { if_read: true, only_if: { no: 'light', or: 'flash' } }),
      judges('b', 'a > 0', { if_provided: true }),
      computes('c', '2', { unless: 'nothing' }),
      computes('d', 'size', {}),
      computes('e', '3', { needs_given: 'size' }),
      { kind: 'drawing' as const, key: 'f', drawing: 'depth', from: {}, optional: ['two'] },
    ]
    const sheet = sheetOf(invented({ roles: ['optics'], names: { size: {} }, parts: { lens: { cells } } }), ['lens'])
    expect(orderOf(sheet)).toEqual(['[Part lens]', 'size', 'a', 'b', 'c', 'd', 'e', 'drawing_f'])
    for (const cell of sheet.cells)
      for (const key of ['if_read', 'if_provided', 'unless', 'needs_given', 'optional', 'only_if'])
        expect(cell).not.toHaveProperty(key)
  })
})

describe('a given of a sheet', () => {
  const given = (names: Names, more: Partial<Part> = {}, others: Readonly<Record<string, Partial<Part>>> = {}) => {
    const library = invented({
      roles: ['optics', 'light'],
      names,
      parts: { lens: { cells: [computes('field', 'focal')], ...more }, ...others },
    })
    return cellOf(sheetOf(library, [...library.parts.keys()]), 'focal')
  }

  it('says what its name says, and no more', () => {
    expect(given({ focal: {} })).toStrictEqual({ kind: 'given', id: 'focal', name: 'focal', value: '' })
    const said = {
      ...{ label: 'Focal length', unit: 'mm', options: ['35', '60'], more_exact: true, hint: 'On the ring.' },
      ...{ least: '1 mm', most: '1 m', fixed: true, stand: true, reading: true },
    }
    expect(given({ focal: { ...said, entry: 'list', means: 'not said', aliases: ['f'] } })).toStrictEqual({
      ...{ kind: 'given', id: 'focal', name: 'focal', value: '', entry: 'list' },
      ...said,
    })
    expect(given({ focal: { entry: 'quantity' } })).not.toHaveProperty('entry')
  })

  it('says what its own part says otherwise where it places it', () => {
    const one = given(
      { focal: { label: 'Focal length', stand: true } },
      {
        cells: [asks('focal', { label: 'Near', stand: false }), computes('field', 'focal')],
      },
    )
    expect(one).toMatchObject({ label: 'Near' })
    expect(one).not.toHaveProperty('stand')
    expect(one).not.toHaveProperty('given')
  })

  it('says what parts of other roles say otherwise, in labels or where they would place it', () => {
    const names: Names = { focal: { label: 'Focal length', hint: 'Look.' }, other: {} }
    const own = { cells: [asks('focal'), computes('field', 'focal')] }
    expect(
      given(names, own, { pair: { role: 'light', labels: { focal: { label: 'Far' }, other: { hint: 'No.' } } } }),
    ).toMatchObject({ label: 'Far', hint: 'Look.' })
    const placed = given(names, own, {
      pair: { role: 'light', cells: [asks('focal', { hint: 'Ask.' }), asks('other', { hint: 'No.' })] },
    })
    expect(placed).toMatchObject({ label: 'Focal length', hint: 'Ask.' })
    expect(placed).not.toHaveProperty('given')
    // Its own part says it where it places it.
    expect(given(names, { ...own, labels: { focal: { label: 'Far' } } })).toMatchObject({ label: 'Focal length' })
  })

  it('may be changed as its name says, in the words of the name where a part gives other advice', () => {
    const advice = { change: 'freely', more: 'Raise to {}', less: 'Lower to {}', to: 'Take {}', step: 2 } as const
    expect(given({ focal: { advice } })).toMatchObject({ advice })
    const changed = given(
      { focal: { advice } },
      {
        cells: [computes('field', 'focal'), asks('focal', { advice: { change: 'agree', less: 'Less' } })],
      },
    )
    expect(changed).toMatchObject({ advice: { change: 'agree', more: 'Raise to {}', less: 'Less', to: 'Take {}' } })
    expect(changed).not.toHaveProperty('advice.step')
    const only = given(
      { focal: { advice } },
      { cells: [computes('field', 'focal'), asks('focal', { change: 'by kit' })] },
    )
    expect(only).toMatchObject({ advice: { ...advice, change: 'by kit' } })
    expect(only).not.toHaveProperty('change')
    expect(given({ focal: {} })).not.toHaveProperty('advice')
    const first = given(
      { focal: {} },
      { cells: [computes('field', 'focal'), asks('focal', { advice: { change: 'freely' } })] },
    )
    expect(first).toHaveProperty('advice', { change: 'freely' })
  })

  it('that may never change is fixed, and says what would have to be there in its place', () => {
    expect(given({ focal: { advice: { change: 'never', more: 'More' } } })).toStrictEqual({
      ...{ kind: 'given', id: 'focal', name: 'focal', value: '', fixed: true },
    })
    const advice = { change: 'never', otherwise: 'a lens of {}', more: 'More' } as const
    expect(given({ focal: { advice } })).toMatchObject({
      fixed: true,
      advice: { change: 'never', otherwise: 'a lens of {}' },
    })
    expect(given({ focal: { advice } })).not.toHaveProperty('advice.more')
    expect(given({ focal: { advice: { change: 'freely' } } })).not.toHaveProperty('fixed')
  })
})

describe('a piece of kit', () => {
  const kit = { entry: 'kit', sort: 'lens', fills: { focal: 'focal', widest: 'widest' } } as const
  const sheet = (cells: Part['cells'], more: Partial<PublishedName> = {}) =>
    sheetOf(
      invented({
        roles: ['optics'],
        names: { lens: { ...kit, ...more }, focal: {}, widest: {} },
        parts: { one: { cells } },
      }),
      ['one'],
      { givens: new Map([['lens', { value: 'Mine', from: 'kit', piece: { focal: '60' } }]]) },
    )

  it('fills in those of its figures that are asked', () => {
    const one = sheet([asks('lens'), computes('field', 'focal')], { advice: { change: 'freely' } })
    expect(cellOf(one, 'lens')).toStrictEqual({
      ...{ kind: 'given', id: 'lens', name: 'lens', entry: 'kit', sort: 'lens', value: 'Mine' },
      ...{ from: { kind: 'kit', text: 'Mine' }, piece: { focal: '60' }, fills: { focal: 'focal' } },
    })
  })

  it('is left out where none is, or no part places it', () => {
    expect(orderOf(sheet([asks('lens'), computes('field', '1')]))).toEqual(['[Part one]', 'field'])
    expect(orderOf(sheet([computes('field', 'focal')]))).toEqual(['[Part one]', 'focal', 'field'])
    expect(orderOf(sheet([asks('lens'), computes('field', 'focal')], { fills: {} }))).not.toContain('lens')
  })
})

describe('what a given is filled in with', () => {
  const value = (names: Names, parts: Invented['parts'], more: Parameters<typeof sheetOf>[2] = {}) => {
    const library = invented({
      roles: ['optics', 'light', 'stand'],
      names,
      parts: { pair: { role: 'light', cells: [computes('field', 'focal')] }, ...parts },
    })
    const cell = cellOf(sheetOf(library, [...library.parts.keys()], more), 'focal')
    if (cell?.kind !== 'given') throw new Error('It is not asked.')
    return [cell.value, cell.from?.kind]
  }

  it('is what is typed, else what is usual, else an example', () => {
    const names: Names = { focal: { usual: '60', example: '100' } }
    expect(value(names, {}, { givens: typed({ focal: '35' }) })).toEqual(['35', 'typed'])
    expect(value(names, {})).toEqual(['60', 'usual'])
    expect(value({ focal: { example: '100' } }, {})).toEqual(['100', 'example'])
    expect(value({ focal: {} }, {})).toEqual(['', undefined])
  })

  it('is no example where none is wanted, nor of a reading or a piece', () => {
    expect(value({ focal: { example: '100' } }, {}, { examples: false })).toEqual(['', undefined])
    expect(value({ focal: { example: '100', usual: '60' } }, {}, { examples: false })).toEqual(['60', 'usual'])
    expect(value({ focal: { example: '100', reading: true } }, {})).toEqual(['', undefined])
  })

  it('is usual by its own part, then by another, then by its name', () => {
    const names: Names = { focal: { usual: '60' } }
    const lens = { usual: { focal: '1' } }
    const high = { role: 'stand', usual: { focal: '2' } }
    expect(value(names, { high, lens })).toEqual(['1', 'usual'])
    expect(value(names, { lens: {}, high })).toEqual(['2', 'usual'])
    expect(value(names, { high })).toEqual(['2', 'usual'])
    expect(value(names, { lens: { usual: { other: '3' } } })).toEqual(['60', 'usual'])
  })

  it('is an example of its own part, and of another only where nobody fills its role', () => {
    const names: Names = { focal: { example: '60' } }
    const lens = { example: { focal: '1' } }
    const high = { role: 'stand', example: { focal: '2' } }
    expect(value(names, { high, lens })).toEqual(['1', 'example'])
    expect(value(names, { lens: {}, high })).toEqual(['60', 'example'])
    expect(value(names, { high })).toEqual(['2', 'example'])
  })
})

describe('light that is typed in another unit', () => {
  const constants = (entry: PublishedName['entry'], unit: string, asked: string) => {
    const library = invented({
      roles: ['light'],
      names: {
        lit: { unit, ...(entry ? { entry } : {}) },
        flat_constant: { converts: 'C' },
        spot_constant: { converts: 'K' },
        other: {},
      },
      parts: { pair: { cells: [computes('field', `lit + ${asked}`), computes('there', '1', { unit })] } },
    })
    const sheet = sheetOf(library, ['pair'])
    return ['lit', 'there'].map((id) => (cellOf(sheet, id) as { constants?: unknown }).constants)
  }
  const flat = { C: 'flat_constant' }
  const spot = { K: 'spot_constant' }

  test.each<[string, string, object | undefined]>([
    ['lx', 'flat_constant', flat],
    ['lx', 'flat_constant + spot_constant', flat],
    ['lx', 'spot_constant', undefined],
    ['cd/m²', 'flat_constant + spot_constant', spot],
    ['EV', 'flat_constant + spot_constant', { ...flat, ...spot }],
    ['EV', 'spot_constant', spot],
    ['EV', 'other', undefined],
    ['mm', 'flat_constant + spot_constant', undefined],
  ])('in %s, with %s', (unit, asked, expected) => {
    expect(constants(undefined, unit, asked)).toEqual([expected, expected])
  })

  it('as a quantity or a list of them', () => {
    expect(constants('quantity', 'lx', 'flat_constant')[0]).toEqual(flat)
    expect(constants('list', 'lx', 'flat_constant')[0]).toEqual(flat)
    expect(constants('choice', 'lx', 'flat_constant')[0]).toBeUndefined()
  })

  it('is converted for a result or a given that has a unit alone', () => {
    const library = invented({
      roles: ['light'],
      names: { flat_constant: { converts: 'C' }, bare: {} },
      parts: {
        pair: { cells: [computes('field', 'bare + flat_constant'), judges('holds', 'field > 1', { unit: 'lx' })] },
      },
    })
    for (const cell of sheetOf(library, ['pair']).cells) expect(cell).not.toHaveProperty('constants')
  })
})

describe('what a reading is taken under', () => {
  const names: Names = {
    lit: { read_under: ['lamps', 'camera', 'unheard_of'] },
    lens: { entry: 'kit', fills: { focal: 'focal' } },
    other_lens: { entry: 'kit', fills: { reach: 'reach' } },
    ...{ focal: {}, reach: {}, aperture: {} },
  }
  const settings = {
    lamps: ['lamp_out', 'lamp_height', 'aperture'],
    camera: ['lens', 'other_lens', 'aperture', 'focal'],
  }
  const sheet = (more: Partial<Invented>, ...cells: Part['cells']) =>
    sheetOf(invented({ roles: ['light'], names, settings, parts: { pair: { cells } }, ...more }), ['pair'])

  it('is what the sheet has of it, each once', () => {
    const one = sheet(
      {},
      asks('lens'),
      computes('lamp_height', '1'),
      computes('field', 'lit + focal + aperture + lamp_height'),
    )
    expect(cellOf(one, 'lit')).toMatchObject({ read_under: ['lamp_height', 'aperture', 'lens', 'focal'] })
  })

  it('is nothing where the sheet has none of it', () => {
    expect(cellOf(sheet({}, computes('field', 'lit')), 'lit')).not.toHaveProperty('read_under')
    expect(cellOf(sheet({ names: { lit: {} } }, computes('field', 'lit')), 'lit')).not.toHaveProperty('read_under')
  })

  it('of a picture is said by its part', () => {
    const picture = { kind: 'frame' as const, name: 'picture', settings: ['camera'] }
    const one = sheet({}, picture, computes('field', 'focal'))
    expect(cellOf(one, 'picture')).toStrictEqual({
      kind: 'frame',
      id: 'picture',
      name: 'picture',
      read_under: ['lens', 'focal'],
    })
    expect(cellOf(sheet({}, picture), 'picture')).toStrictEqual({ kind: 'frame', id: 'picture', name: 'picture' })
  })
})

describe('the rows of a table', () => {
  const list = { kind: 'table' as const, name: 'list', columns: [{ name: 'a' }] }
  const example = { list: [['1'], ['2']] }
  const rows = (more: Parameters<typeof sheetOf>[2] = {}, parts: Invented['parts'] = {}) =>
    cellOf(sheetOf(invented({ roles: ['count'], parts: { run: { cells: [list] }, ...parts } }), ['run'], more), 'list')

  it('are those that are there, else the example of any part that has one, else none', () => {
    expect(rows({ rows: new Map([['list', { rows: [['3']], from: 'typed' }]]) })).toMatchObject({
      rows: [['3']],
      from: { kind: 'typed', text: rowsMark([['3']]) },
    })
    expect(rows({}, { other: {}, lots: { role: 'elsewhere', example_rows: example } })).toMatchObject({
      rows: example.list,
      from: { kind: 'example', text: rowsMark(example.list) },
    })
    expect(rows()).toStrictEqual({ ...list, id: 'list', rows: [] })
  })

  it('may have been emptied by hand', () => {
    const emptied = new Map([['list', { rows: [], from: 'typed' as const }]])
    expect(rows({ rows: emptied }, { lots: { example_rows: example } })).toMatchObject({
      rows: [],
      from: { kind: 'typed' },
    })
  })
})

describe('the drawing of the set-up', () => {
  const NAMES: Invented['names'] = { lamp: { role: 'light' }, lamps: { role: 'light' }, size: {} }
  const library = (drawing: Invented['drawing'], ids: readonly string[], cells: Part['cells'] = [], names = NAMES) =>
    sheetOf(
      invented({
        roles: ['optics', 'framing', 'light', 'stand'],
        names,
        drawing: { needs: ['field'], any: ['lamp', 'rise'], ...drawing },
        parts: {
          lens: { cells: [computes('field', 'size')] },
          tiles: { role: 'framing', cells: [computes('rise', '1'), says('One.'), says('Two.')] },
          pair: { role: 'light', cells: [computes('lit', 'lamp'), ...cells] },
          easel: { role: 'stand', cells: [computes('tall', '2')] },
        },
      }),
      ids,
    )

  it('stands in the first section of framing, closeness and light, before the notes at its end', () => {
    const order = [
      '[Part lens]',
      'size',
      'field',
      '[Part tiles]',
      'rise',
      'drawing_set_up',
      'note_framing_2',
      'note_framing_3',
    ]
    expect(orderOf(library({}, ['lens', 'tiles']))).toEqual(order)
    expect(orderOf(library({}, ['lens', 'tiles', 'pair']))).toEqual([...order, '[Part pair]', 'lamp', 'lit'])
    expect(orderOf(library({}, ['lens', 'pair']))).toEqual([
      ...['[Part lens]', 'size', 'field', '[Part pair]', 'lamp', 'lit', 'drawing_set_up'],
    ])
  })

  it('stands at the end where there is none of them', () => {
    expect(orderOf(library({ any: ['tall'] }, ['lens', 'easel'])).at(-1)).toBe('drawing_set_up')
  })

  it('is there where all it needs is, and one of what it may show', () => {
    expect(orderOf(library({}, ['lens']))).not.toContain('drawing_set_up')
    expect(orderOf(library({}, ['tiles']))).not.toContain('drawing_set_up')
    expect(orderOf(library({ needs: ['field', 'rise'] }, ['lens', 'pair']))).not.toContain('drawing_set_up')
  })

  it('shows the inputs that the sheet has, and that it is upright on an easel', () => {
    const drawing = { title: 'It', from: { a: 'field', b: 'lamp * 2', c: 'rise + field', d: '3 mm' } }
    expect(cellOf(library(drawing, ['lens', 'tiles']), 'drawing_set_up')).toStrictEqual({
      ...{ kind: 'drawing', id: 'drawing_set_up', title: 'It', drawing: 'set-up' },
      from: { a: 'field', c: 'rise + field', d: '3 mm' },
    })
    expect(cellOf(library(drawing, ['lens', 'pair', 'easel']), 'drawing_set_up')).toMatchObject({
      from: { upright: 'yes', a: 'field', b: 'lamp * 2', d: '3 mm' },
    })
  })

  it('shows what a name stands for that is no cell', () => {
    const names = { ...NAMES, laid: { inline: 'field' } }
    expect(cellOf(library({ from: { a: 'laid' } }, ['lens', 'tiles'], [], names), 'drawing_set_up')).toMatchObject({
      from: { a: 'field' },
    })
  })

  it('moves the givens that are asked, where there are lamps', () => {
    const drawing = { moves: ['lamp', 'lit', 'size', 'gone'] }
    expect(cellOf(library(drawing, ['lens', 'pair']), 'drawing_set_up')).not.toHaveProperty('moves')
    const lit = computes('more', 'lamps')
    expect(cellOf(library(drawing, ['lens', 'pair'], [lit]), 'drawing_set_up')).toMatchObject({
      moves: ['lamp', 'size'],
    })
    expect(cellOf(library({}, ['lens', 'pair'], [lit]), 'drawing_set_up')).not.toHaveProperty('moves')
  })
})
