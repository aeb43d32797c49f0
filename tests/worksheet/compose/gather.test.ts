import { describe, expect, it, test } from 'vitest'
import { type Gathering, type GatheringOptions, gather, Unpublished } from '../../../src/worksheet/compose/gather.ts'
import type { Part, PartLibrary } from '../../../src/worksheet/compose/part-library.ts'
import { asks, computes, type Invented, invented, judges, says } from './invented.ts'

/** What parts give, all of the library where none is named. */
function gathered(of: Invented | PartLibrary, options?: GatheringOptions, ids?: readonly string[]): Gathering {
  const library = 'aliases' in of ? of : invented(of)
  const all = ids ? ids.map((id) => library.parts.get(id) as Part) : [...library.parts.values()]
  return gather(library, all, options)
}

/** The names of cells in the section of a part, and what is placed there. */
const section = ({ sections }: Gathering, part: string): unknown[] =>
  [...sections].flatMap(([{ id }, cells]) => (id === part ? cells.map((cell) => cell.name ?? cell.given) : []))

const names = (gathering: Gathering): string[] => [...gathering.names].sort()

describe('what the cells of a part read', () => {
  it('is computed by a part, else derived, else asked', () => {
    const one = gathered({
      roles: ['optics', 'light'],
      names: {
        focal: {},
        twice: { derive: '2 * focal', label: 'Twice', unit: 'mm', hint: 'Look.', more_exact: true, stand: true },
        unread: {},
      },
      parts: {
        lens: { cells: [computes('field', 'twice * scale')] },
        pair: { role: 'light', cells: [computes('scale', 'focal / 3')] },
      },
    })
    expect(names(one)).toEqual(['field', 'focal', 'scale', 'twice'])
    expect([...one.asked]).toEqual(['focal'])
    expect(one.derived.get('twice')).toEqual({
      ...{ kind: 'result', name: 'twice', formula: '2 * focal', label: 'Twice', unit: 'mm', hint: 'Look.' },
      ...{ more_exact: true, stand: true },
    })
    expect(section(one, 'lens')).toEqual(['field'])
    expect(section(one, 'pair')).toEqual(['scale'])
  })

  it('is derived with no more than its name says', () => {
    const { derived } = gathered({
      roles: ['optics'],
      names: { one: { derive: '1' } },
      parts: { lens: { cells: [computes('field', 'one')] } },
    })
    expect(derived.get('one')).toStrictEqual({ kind: 'result', name: 'one', formula: '1' })
  })

  it('is computed by the first part that does, where two would', () => {
    const { sections } = gathered({
      roles: ['optics', 'light'],
      parts: {
        lens: { cells: [computes('scale', '1', { if_read: true })] },
        pair: { role: 'light', cells: [computes('scale', '2', { if_read: true }), computes('field', 'scale')] },
      },
    })
    expect([...sections.values()].flat().map(({ formula }) => formula)).toEqual(['1', 'scale'])
  })

  it('is derived only beside what it is derived from, where its name says so, and else asked', () => {
    const of = (...cells: Part['cells']) =>
      gathered({
        roles: ['optics'],
        names: { scale: { derive: '1', unless_asked: ['focal', 'reach'] } },
        parts: { lens: { cells: [computes('field', 'scale'), ...cells] } },
      })
    expect([...of().asked]).toEqual(['scale'])
    expect(of(computes('reach', '2')).derived.has('scale')).toBe(true)
  })

  it('has to be published', () => {
    const of = { roles: ['optics'], parts: { lens: { cells: [computes('field', 'nowhere')] } } }
    expect(() => gathered(of)).toThrow(new Unpublished('nowhere'))
    expect(() => gathered(of)).toThrow('Nothing computes “nowhere”, and no section asks for it.')
    expect(new Unpublished('nowhere')).toMatchObject({ name: 'Unpublished', missing: 'nowhere' })
  })

  it('is in another set-up where that provides it', () => {
    const one = gathered(
      { roles: ['optics'], parts: { lens: { cells: [computes('field', 'there')] } } },
      { elsewhere: new Set(['there']) },
    )
    expect(names(one)).toEqual(['field'])
    expect([...one.asked]).toEqual([])
  })

  it('may be a column of a table of any part', () => {
    const one = gathered({
      roles: ['optics', 'count'],
      names: { border: {} },
      parts: {
        lens: { cells: [{ kind: 'run', key: 'run', of: 'list', from: { width: 'width + border' } }] },
        list: {
          role: 'count',
          cells: [asks('border'), { kind: 'table', name: 'list', columns: [{ name: 'width' }], rows: [] }],
        },
      },
    })
    expect(names(one)).toEqual(['border', 'list'])
  })
})

describe('a cell of a part is there', () => {
  const of = (cells: Part['cells'], other: Part['cells'] = []) =>
    gathered({
      roles: ['optics', 'light'],
      names: { given: {}, other: {}, half: { derive: '1 / 2' }, of_given: { derive: 'given / 2' } },
      parts: { lens: { cells }, pair: { role: 'light', cells: other } },
    })

  test('where something reads it, if it says so', () => {
    const read = computes('read', 'deeper', { if_read: true })
    const deeper = computes('deeper', '1', { if_read: true })
    expect(names(of([read, deeper, computes('field', '2')]))).toEqual(['field'])
    expect(names(of([read, deeper, computes('field', 'read')]))).toEqual(['deeper', 'field', 'read'])
    expect(names(of([read, deeper], [computes('field', 'read')]))).toEqual(['deeper', 'field', 'read'])
  })

  test.each<[string, Part['cells'], boolean]>([
    ['where what it reads is in the sheet', [computes('scale', 'given'), computes('there', '1')], true],
    [
      'where a part would compute it',
      [computes('there', 'deep', { if_read: true }), computes('deep', '1', { if_read: true })],
      true,
    ],
    ['where it would be derived', [computes('there', 'half', { if_read: true })], true],
    ['where it would be asked, not', [computes('there', 'given', { if_read: true })], false],
    ['where what derives it would be asked, not', [computes('there', 'half + of_given', { if_read: true })], false],
    ['where one of two would be asked, not', [computes('there', 'half + given', { if_read: true })], false],
    [
      'where it depends on itself, not',
      [computes('there', 'other_way', { if_read: true }), computes('other_way', 'there', { if_read: true })],
      false,
    ],
  ])('%s', (_, cells, there) => {
    const one = of([...cells, judges('holds', 'there > half', { if_provided: true })])
    expect(one.names.has('holds')).toBe(there)
    expect(section(one, 'lens').includes('holds')).toBe(there)
  })

  test('provided, with the cells it reads', () => {
    const one = of([computes('there', '1', { if_read: true }), judges('holds', 'there > 0', { if_provided: true })])
    expect(section(one, 'lens')).toEqual(['there', 'holds'])
  })

  test('where a name is asked, and not where that is computed', () => {
    const more = computes('more', '2', { needs_given: 'given' })
    expect(section(of([more, computes('field', 'given')]), 'lens')).toEqual(['more', 'field'])
    expect(section(of([more, computes('field', 'other')]), 'lens')).toEqual(['field'])
    expect(section(of([more, computes('given', '3')]), 'lens')).toEqual(['given'])
  })

  test('where the sheet does not have another', () => {
    const more = computes('more', '2', { unless: 'given' })
    expect(section(of([more, computes('field', 'given')]), 'lens')).toEqual(['field'])
    expect(section(of([more, computes('field', 'other')]), 'lens')).toEqual(['more', 'field'])
  })

  test('where no part fills a role, or one fills another', () => {
    const compared = computes('compared', '1', { only_if: { no: 'light', or: 'flash' } })
    const library = invented({
      roles: ['optics', 'light', 'flash'],
      parts: { lens: { cells: [compared] }, pair: { role: 'light' }, studio: { role: 'flash' } },
    })
    const there = (...ids: readonly string[]) => section(gathered(library, {}, ids), 'lens')
    expect(there('lens')).toEqual(['compared'])
    expect(there('lens', 'pair')).toEqual([])
    expect(there('lens', 'studio')).toEqual(['compared'])
    expect(there('lens', 'pair', 'studio')).toEqual(['compared'])
  })

  test('without a name, with what it reads', () => {
    const one = of([says('A word.'), { kind: 'range', key: 'r', of: 'given', results: [] }, asks('other')])
    expect([...one.asked]).toEqual(['given'])
    expect([...one.sections.values()][0]?.map(({ kind, given }) => kind ?? given)).toEqual(['note', 'range', 'other'])
  })
})

describe('a part that only asks', () => {
  const of = (cells: Part['cells']) =>
    gathered({ roles: ['original'], names: { size: {}, curl: {} }, parts: { sheet: { cells } } })

  it('asks for the first it places, although nothing reads it', () => {
    expect([...of([asks('size'), asks('curl')]).asked]).toEqual(['size'])
    expect([...of([computes('area', 'size', { if_read: true }), asks('curl')]).asked]).toEqual(['curl'])
  })

  it('asks for nothing where it has a cell, or places nothing', () => {
    expect([...of([asks('size'), says('A word.')]).asked]).toEqual([])
    expect([...of([computes('area', '1', { if_read: true })]).asked]).toEqual([])
  })
})

describe('the text of an implicit name', () => {
  const formulaOf = (of: Invented, options?: GatheringOptions, ids?: readonly string[]) => {
    const { sections } = gathered(of, options, ids)
    return [...sections.values()].flat().find(({ name }) => name === 'field')?.formula
  }
  const field = computes('field', '2 * rise')

  it('is put in its place, and the name is no cell', () => {
    const of = { roles: ['optics'], names: { rise: { inline: 'a + 1' }, a: {} }, parts: { lens: { cells: [field] } } }
    expect(formulaOf(of)).toBe('2 * (a + 1)')
    expect(names(gathered(of))).toEqual(['a', 'field'])
    expect(gathered(of).texts).toEqual(new Map([['rise', '(a + 1)']]))
  })

  it('may hold implicit names in turn', () => {
    const of = {
      roles: ['optics'],
      names: {
        rise: { inline: 'b' },
        b: { inline: 'c * 2' },
        c: { inline: 'g / d' },
        d: { inline: 'e + 1' },
        e: { inline: 'f' },
        f: {},
        g: {},
      },
      parts: { lens: { cells: [field] } },
    }
    expect(formulaOf(of)).toBe('2 * ((g / (f + 1)) * 2)')
  })

  it('is put into what is derived', () => {
    const { derived } = gathered({
      roles: ['optics'],
      names: { rise: { inline: 'a' }, half: { derive: 'rise / 2' }, a: {} },
      parts: { lens: { cells: [computes('field', 'half')] } },
    })
    expect(derived.get('half')).toMatchObject({ formula: 'a / 2' })
  })

  it('is a part’s own before the name’s, a later part’s before an earlier one’s, and what is given before all', () => {
    const of = {
      roles: ['optics', 'light', 'stand'],
      names: { rise: { inline: '7' } },
      parts: {
        lens: { cells: [field] },
        low: { role: 'light', inline: { rise: '2' } },
        high: { role: 'stand', inline: { rise: '3' } },
      },
    }
    expect(formulaOf(of, {}, ['lens'])).toBe('2 * 7')
    expect(formulaOf(of, {}, ['lens', 'low'])).toBe('2 * 2')
    expect(formulaOf(of, {}, ['lens', 'low', 'high'])).toBe('2 * 3')
    expect(formulaOf(of, { texts: new Map([['rise', '4']]) })).toBe('2 * 4')
  })

  it('gives way to a part that computes the name', () => {
    const of = {
      roles: ['optics', 'light'],
      names: { rise: { inline: '7' } },
      parts: { lens: { cells: [field] }, high: { role: 'light', cells: [asks('rise'), computes('rise', '3')] } },
    }
    expect(formulaOf(of)).toBe('2 * rise')
    expect(formulaOf(of, {}, ['lens'])).toBe('2 * 7')
  })

  it('is another where a set-up has chosen the part for itself, whoever computes the name', () => {
    const of = {
      roles: ['optics', 'light'],
      parts: {
        lens: { cells: [field] },
        high: { role: 'light', inline_where_chosen: { rise: '5' }, cells: [computes('rise', '3')] },
      },
    }
    expect(formulaOf(of)).toBe('2 * rise')
    expect(formulaOf(of, { chosen: new Set(['lens']) })).toBe('2 * rise')
    expect(formulaOf(of, { chosen: new Set(['high']) })).toBe('2 * 5')
  })
})

describe('what other set-ups read', () => {
  const of: Invented = {
    roles: ['optics'],
    names: {
      dose: { over_set_ups: 'sum' },
      most: { over_set_ups: 'greatest' },
      half: { over_set_ups: 'greatest', derive: '1 / 2' },
      frames: { inline: 'across * down * width', over_set_ups: 'sum' },
      across: {},
    },
    parts: {
      lens: {
        cells: [
          computes('field', '1'),
          computes('down', '2', { if_read: true }),
          computes('worst', '3', { if_read: true }),
          { kind: 'table', name: 'list', columns: [{ name: 'width' }], rows: [] },
        ],
      },
    },
  }
  const read = (...list: readonly string[]) => {
    const { names: all, asked, derived } = gathered(of, { readElsewhere: new Set(list) })
    const more = [...all].filter((name) => name !== 'field' && name !== 'list').sort()
    return { more, asked: [...asked], derived: [...derived.keys()] }
  }

  it('is there as well', () => {
    expect(read()).toEqual({ more: [], asked: [], derived: [] })
    expect(read('dose', 'worst')).toEqual({ more: ['dose', 'worst'], asked: ['dose'], derived: [] })
  })

  it('of an implicit name is what its text reads, without the columns of a table', () => {
    expect(read('frames')).toEqual({ more: ['across', 'down'], asked: ['across'], derived: [] })
  })

  it('is not asked for the greatest of several alone', () => {
    expect(read('most')).toEqual({ more: [], asked: [], derived: [] })
    expect(read('half')).toEqual({ more: ['half'], asked: [], derived: ['half'] })
  })

  it('is nothing the library does not know', () => {
    expect(read('unheard_of')).toEqual({ more: [], asked: [], derived: [] })
  })
})

describe('parts that are not gathered for themselves', () => {
  const of: Invented = {
    roles: ['optics', 'original'],
    names: { size: { role: 'original' }, limit: { role: 'original' } },
    parts: {
      lens: { cells: [computes('field', 'area * 2')] },
      sheet: {
        role: 'original',
        cells: [
          asks('size'),
          computes('area', 'size', { needs_given: 'nothing' }),
          computes('rim', '4'),
          judges('flat', 'field > limit'),
          judges('fits', 'field > area'),
          judges('free', 'limit > 0'),
        ],
      },
    },
  }
  const only = ({ id }: Part): boolean => id === 'lens'

  it('have the cells that something reads, and no others', () => {
    const one = gathered(of, { only })
    expect(section(one, 'sheet')).toEqual(['size', 'area'])
    expect(names(one)).toEqual(['area', 'field', 'size'])
  })

  it('have the checks by which each set-up is judged, where nothing would have to be asked for them', () => {
    const judged = new Set(['flat', 'fits', 'free'])
    expect(section(gathered(of, { only, judged }), 'sheet')).toEqual(['size', 'area', 'fits'])
    const shared = gathered(of, { only, judged, shared: new Set(['limit']) })
    expect(section(shared, 'sheet')).toEqual(['size', 'area', 'flat', 'fits', 'free'])
    const elsewhere = gathered(of, { only, judged, elsewhere: new Set(['limit']) })
    expect(section(elsewhere, 'sheet')).toEqual(['size', 'area', 'flat', 'fits', 'free'])
    expect(names(elsewhere)).not.toContain('limit')
  })

  it('do not ask for one at least', () => {
    const alone = {
      ...of,
      parts: { lens: { cells: [says('A word.')] }, sheet: { role: 'original', cells: [asks('size')] } },
    }
    expect([...gathered(alone, { only }).asked]).toEqual([])
    expect([...gathered(alone).asked]).toEqual(['size'])
  })
})

describe('a drawing of a part', () => {
  const drawn = (more: object, ...cells: Part['cells']) => {
    const drawing = { kind: 'drawing' as const, key: 'd', drawing: 'depth', from: { one: 'a', two: 'b * 2' }, ...more }
    const { sections, asked } = gathered({
      roles: ['optics'],
      names: { a: {}, b: {} },
      parts: { lens: { cells: [drawing, ...cells] } },
    })
    return { from: [...sections.values()].flat().find(({ kind }) => kind === 'drawing')?.from, asked: [...asked] }
  }

  it('asks for its inputs, but for those that it can do without', () => {
    expect(drawn({})).toEqual({ from: { one: 'a', two: 'b * 2' }, asked: ['a', 'b'] })
    expect(drawn({ optional: ['two'] })).toEqual({ from: { one: 'a' }, asked: ['a'] })
    expect(drawn({ from: { one: 'a', two: 'a * b' }, optional: ['two'] })).toEqual({ from: { one: 'a' }, asked: ['a'] })
  })

  it('has them where the sheet has what they read', () => {
    const one = drawn({ optional: ['two'] }, computes('field', 'b'))
    expect(one).toEqual({ from: { one: 'a', two: 'b * 2' }, asked: ['a', 'b'] })
  })
})
