import { describe, expect, it, test } from 'vitest'
import type { SetUp } from '../../../src/worksheet/compose/compose.ts'
import {
  isComposed,
  merged,
  offeredSetUp,
  partsBeside,
  partsInSetUp,
  partsOf,
  type Recomposed,
  setUpsOf,
  withoutSetUp,
  withParts,
  withSetUp,
} from '../../../src/worksheet/compose/recompose.ts'
import { rowsMark } from '../../../src/worksheet/document/rows-mark.ts'
import type { Cell, Given, Worksheet } from '../../../src/worksheet/index.ts'
import { given, note, result } from '../make.ts'
import { asks, cellOf, computes, invented, orderOf, says, sheetOf, typed } from './invented.ts'

const LIST = { kind: 'table' as const, name: 'list', columns: [{ name: 'width' }] }
const LIBRARY = invented({
  roles: ['original', { role: 'optics', in_set_up: true }, { role: 'light', in_set_up: true }, 'count'],
  phases: ['do'],
  names: {
    size: { role: 'original', example: '4' },
    focal: { role: 'optics', example: '60' },
    rise: { role: 'light', usual: '3' },
    reach: { role: 'light', in_every_set_up: true },
  },
  parts: {
    sheet: { cells: [asks('size'), computes('area', 'size * size')], steps: [{ phase: 'do', text: 'Lay it.' }] },
    lens: { role: 'optics', cells: [computes('scale', 'focal / size')] },
    zoom: { role: 'optics', rank: 1, cells: [computes('scale', '2 * focal / size'), computes('focal', '35')] },
    pair: { role: 'light', cells: [computes('lit', 'rise * 2')], steps: [{ phase: 'do', text: 'Light it.' }] },
    lamp: { role: 'light', rank: 1, cells: [computes('near', 'reach * 2')] },
    lots: { role: 'count', cells: [LIST], example_rows: { list: [['1']] } },
    alike: { role: 'count', rank: 1, cells: [says('Alike.')], instead: { beside: 'optics', part: 'lots' } },
  },
})
const setUp = (prefix: string, ...ids: readonly string[]): SetUp => ({
  prefix,
  title: `In ${prefix}`,
  parts: ids.map((part) => ({ part, by: 'hand' })),
})
const opened = (...ids: readonly string[]): Worksheet => sheetOf(LIBRARY, ids, { givens: typed({ size: '5' }) })

/** The worksheet once a change is made. */
const applied = (worksheet: Worksheet, { change, cells }: Recomposed): Worksheet => {
  if (change?.do !== 'arrange') throw new Error('Nothing changes.')
  expect(change.cells).toBe(cells)
  const { parts, setups = [], given: kept } = change
  return { ...worksheet, cells: [...cells], parts, given: kept, ...(setups.length > 0 ? { setups } : {}) }
}
const added = (worksheet: Worksheet, ...ids: readonly string[]): Worksheet =>
  applied(
    worksheet,
    withParts(
      LIBRARY,
      worksheet,
      ids.map((part) => ({ part })),
    ),
  )
const replaced = (worksheet: Worksheet, id: string, more: object): Worksheet => ({
  ...worksheet,
  cells: worksheet.cells.map((cell) => (cell.id === id ? ({ ...cell, ...more } as Cell) : cell)),
})

describe('a composed worksheet', () => {
  const worksheet = {
    ...opened('sheet'),
    parts: [
      ...[
        { part: 'sheet', by: 'lead' },
        { part: 'lens', by: 'hand' },
        { part: 'pair', by: 'somebody' },
      ],
      ...[
        { part: 'lamp', by: 'hand', setup: 'raking' },
        { part: 'zoom', setup: 'uv' },
      ],
    ],
    setups: [{ name: 'raking', title: 'Raking light' }, { name: 'uv' }],
  }

  it('is recognised by its parts', () => {
    expect(isComposed(worksheet)).toBe(true)
    const { parts: _, ...plain } = worksheet
    expect(isComposed(plain)).toBe(false)
    expect(partsOf(plain)).toEqual([])
    expect(setUpsOf(opened('sheet'))).toEqual([])
  })

  it('knows the parts of each set-up, and by whom they were chosen', () => {
    expect(partsOf(worksheet)).toStrictEqual([
      { part: 'sheet', by: 'lead' },
      { part: 'lens', by: 'hand' },
      { part: 'pair' },
    ])
    expect(setUpsOf(worksheet)).toStrictEqual([
      { prefix: 'raking', title: 'Raking light', parts: [{ part: 'lamp', by: 'hand' }] },
      { prefix: 'uv', title: 'uv', parts: [{ part: 'zoom' }] },
    ])
    expect(partsInSetUp(LIBRARY, worksheet, 'raking').map(({ id }) => id)).toEqual(['sheet', 'lens', 'lamp'])
  })
})

describe('parts added', () => {
  it('bring their cells, ask for what they need, and leave what is filled in', () => {
    const before = opened('sheet')
    const next = withParts(LIBRARY, before, [{ part: 'lens' }])
    expect(orderOf(applied(before, next))).toEqual([
      '[Part sheet]',
      'size',
      'area',
      '[Part lens]',
      'focal',
      'scale',
      'steps_work',
    ])
    expect(next.asks).toMatchObject([{ name: 'focal', value: '' }])
    expect(cellOf(applied(before, next), 'size')).toMatchObject({ value: '5', from: { kind: 'typed' } })
    expect(next.first).toBe('heading_optics_0')
    expect(next.change).toMatchObject({
      parts: [{ part: 'lens' }, { part: 'sheet' }],
      setups: [],
      given: { size: { value: '5', from: 'typed' } },
    })
  })

  it('bring no rows of an example', () => {
    expect(cellOf(added(opened('sheet'), 'lots'), 'list')).toStrictEqual({ ...LIST, id: 'list', rows: [] })
  })

  it('ask for nothing that has a usual value', () => {
    expect(withParts(LIBRARY, opened('sheet'), [{ part: 'pair' }]).asks).toEqual([])
  })

  it('say which part of the sheet gives way, of those that were there to those that are new', () => {
    const before = opened('sheet', 'lens')
    expect(withParts(LIBRARY, before, [{ part: 'zoom' }]).replaced).toEqual([{ part: 'lens', by: 'zoom' }])
    expect(withParts(LIBRARY, opened('zoom'), [{ part: 'lens' }]).replaced).toEqual([])
    expect(withParts(LIBRARY, opened('lens', 'zoom'), [{ part: 'pair' }]).replaced).toEqual([])
  })

  it('change nothing where they are there', () => {
    expect(withParts(LIBRARY, opened('sheet', 'lens'), [{ part: 'lens' }]).change).toBeUndefined()
    const first = withParts(LIBRARY, opened('sheet', 'lens'), [{ part: 'lens' }]).first
    expect(first).toBeUndefined()
  })

  it('chosen by hand take the place of what was chosen by hand for their role', () => {
    const hand = (part: string) => ({ part, by: 'hand' as const })
    const before = applied(opened('sheet'), withParts(LIBRARY, opened('sheet'), [hand('lens'), hand('pair')]))
    const next = applied(before, withParts(LIBRARY, before, [hand('zoom')]))
    expect(next.parts).toEqual([{ part: 'lens' }, hand('pair'), { part: 'sheet' }, hand('zoom')])
    const again = applied(next, withParts(LIBRARY, next, [hand('lens')]))
    expect(orderOf(again)).toContain('focal')
    const without = applied(before, withParts(LIBRARY, before, [{ part: 'zoom' }]))
    expect(without.parts).toEqual([hand('lens'), hand('pair'), { part: 'sheet' }, { part: 'zoom' }])
  })

  it('go to a later set-up alone', () => {
    const two = applied(opened('lens', 'pair'), withSetUp(LIBRARY, opened('lens', 'pair'), setUp('raking')))
    const three = applied(two, withSetUp(LIBRARY, two, setUp('uv')))
    const next = applied(three, withParts(LIBRARY, three, [{ part: 'lamp', by: 'hand' }], 'uv'))
    expect(next.parts).toEqual([{ part: 'lens' }, { part: 'pair' }, { part: 'lamp', by: 'hand', setup: 'uv' }])
    expect(orderOf(next)).toEqual(expect.arrayContaining(['lit', 'raking_lit', 'uv_near']))
    expect(orderOf(next)).not.toContain('uv_lit')
  })

  it('of a job are others where the sheet has what one would ask for itself', () => {
    const beside = (...ids: readonly string[]) =>
      partsBeside(LIBRARY, opened(...ids), [{ part: 'alike', by: 'lead' }, { part: 'pair' }])
    expect(beside('lens')).toEqual([{ part: 'lots', by: 'lead' }, { part: 'pair' }])
    expect(beside('sheet')).toEqual([{ part: 'alike', by: 'lead' }, { part: 'pair' }])
  })
})

describe('where to look first', () => {
  it('is the heading of the new part, though it brings no cell that computes', () => {
    expect(withParts(LIBRARY, opened('sheet'), [{ part: 'alike' }]).first).toBe('heading_count_0')
  })

  it('is the heading above what is new, where no heading is, or else that itself', () => {
    const hand = [{ part: 'pair', by: 'hand' }] as const
    const before = opened('sheet', 'pair', 'lamp')
    expect(withParts(LIBRARY, before, hand).first).toBe('heading_light_0')
    const bare = { ...before, cells: before.cells.filter(({ kind }) => kind !== 'note') }
    expect(withParts(LIBRARY, bare, hand).first).toBe('rise')
  })

  it('is the heading of a new set-up', () => {
    expect(withSetUp(LIBRARY, opened('lens', 'pair'), setUp('raking', 'lamp')).first).toBe('raking_heading_optics_0')
  })
})

describe('another set-up', () => {
  const lenses = opened('lens', 'pair')
  const two = applied(lenses, withSetUp(LIBRARY, lenses, setUp('raking', 'lamp')))

  it('is added behind the others, or in the place of one of its prefix', () => {
    const next = withSetUp(LIBRARY, two, setUp('uv')).change
    expect(next).toMatchObject({
      setups: [
        { name: 'raking', title: 'In raking' },
        { name: 'uv', title: 'In uv' },
      ],
    })
    const again = withSetUp(LIBRARY, two, { ...setUp('raking'), title: 'Otherwise' }).change
    expect(again).toMatchObject({
      setups: [{ name: 'raking', title: 'Otherwise' }],
      parts: [{ part: 'lens' }, { part: 'pair' }],
    })
    expect(withSetUp(LIBRARY, two, setUp('raking', 'lamp')).change).toBeUndefined()
  })

  it('is taken away, and what was filled in for it is remembered', () => {
    const filled = replaced(two, 'raking_focal', { value: '35' })
    const { change } = withoutSetUp(LIBRARY, filled, 'raking')
    expect(change).toMatchObject({
      setups: [],
      parts: [{ part: 'lens' }, { part: 'pair' }],
      given: { raking_focal: { value: '35', from: 'typed' } },
    })
    expect(withoutSetUp(LIBRARY, two, 'uv').change).toBeUndefined()
  })

  it('that is left empty stays so, though the first is filled in', () => {
    const filled = replaced(replaced(two, 'focal', { value: '60' }), 'raking_focal', { value: '' })
    const next = added(filled, 'sheet')
    expect([cellOf(next, 'focal'), cellOf(next, 'raking_focal')]).toMatchObject([{ value: '60' }, { value: '' }])
  })

  it('that is offered takes a prefix and a title that are free', () => {
    const offered = { prefix: 'raking', title: 'Raking light', about: '', parts: ['lamp', 'pair'] }
    const parts = [
      { part: 'lamp', by: 'hand' },
      { part: 'pair', by: 'hand' },
    ]
    expect(offeredSetUp(lenses, offered)).toEqual({ prefix: 'raking', title: 'Raking light', parts })
    expect(offeredSetUp(two, offered)).toEqual({ prefix: 'raking2', title: 'Raking light 2', parts })
    const third = { ...two, setups: ['raking', 'raking2', 'uv', 'raking4'].map((name) => ({ name })) }
    expect(offeredSetUp(third, offered)).toMatchObject({ prefix: 'raking3', title: 'Raking light 3' })
    expect(offeredSetUp({ ...two, setups: [{ name: 'raking2' }] }, offered)).toMatchObject({ prefix: 'raking' })
  })
})

describe('what is filled in', () => {
  it('stays with where it came from, for as long as it is that', () => {
    const piece = { focal: '60' }
    const before = replaced(opened('sheet', 'lens'), 'focal', { value: '60', from: { kind: 'kit', text: '60' }, piece })
    expect(cellOf(added(before, 'pair'), 'focal')).toMatchObject({
      value: '60',
      from: { kind: 'kit', text: '60' },
      piece,
    })
    const changed = replaced(before, 'focal', { value: '61', piece: undefined })
    expect(cellOf(added(changed, 'pair'), 'focal')).toMatchObject({ value: '61', from: { kind: 'typed', text: '61' } })
    expect(cellOf(added(changed, 'pair'), 'focal')).not.toHaveProperty('piece')
  })

  it('comes back when the part that computes it goes', () => {
    const before = replaced(opened('sheet', 'lens'), 'focal', { value: '61' })
    const computed = added(before, 'zoom')
    expect(cellOf(computed, 'focal')).toMatchObject({ kind: 'result' })
    const back = applied(computed, withParts(LIBRARY, computed, [{ part: 'lens', by: 'hand' }]))
    expect(cellOf(back, 'focal')).toMatchObject({ kind: 'given', value: '61' })
  })

  it('is not the example’s once the rows of a table are others', () => {
    const before = opened('sheet', 'lots')
    expect(cellOf(before, 'list')).toMatchObject({ rows: [['1']], from: { kind: 'example' } })
    expect(cellOf(added(before, 'pair'), 'list')).toMatchObject({
      rows: [['1']],
      from: { kind: 'example', text: rowsMark([['1']]) },
    })
    const typedIn = replaced(before, 'list', { rows: [['2']] })
    expect(cellOf(added(typedIn, 'pair'), 'list')).toMatchObject({
      rows: [['2']],
      from: { kind: 'typed', text: rowsMark([['2']]) },
    })
    const bare = replaced(before, 'list', { from: undefined })
    expect(cellOf(added(bare, 'pair'), 'list')).toMatchObject({ rows: [['1']], from: { kind: 'typed' } })
  })

  it('stays of a step: that it is done, and how many frames are taken', () => {
    const before = opened('sheet', 'pair')
    const steps = [
      { phase: 'do', text: 'Lay it.', done: true, taken: 3 },
      { phase: 'do', text: 'Light it.' },
    ]
    const next = added(replaced(before, 'steps_work', { steps }), 'lens')
    expect(cellOf(next, 'steps_work')).toMatchObject({ steps })
    expect(cellOf(next, 'steps_work')).not.toHaveProperty('steps.1.done')
    expect(cellOf(next, 'steps_work')).not.toHaveProperty('steps.1.taken')
  })
})

describe('a sheet composed again', () => {
  const heading = (id: string, more: object = {}): Cell => ({ kind: 'note', id, role: 'heading', text: id, ...more })
  const ids = (cells: readonly Cell[]): string[] => cells.map(({ id }) => id)
  const [a, b, c] = ['a', 'b', 'c'].map((id) => result(id, '1')) as [Cell, Cell, Cell]

  test('takes the new form of a cell that was left as it was', () => {
    expect(merged([a, b], [a, b], [result('a', '2'), c])).toEqual([result('a', '2'), c])
  })

  test('keeps a cell that was edited, and does without one that was removed', () => {
    const edited = result('a', '5')
    expect(merged([edited], [a, b], [result('a', '2'), result('b', '2'), c])).toEqual([edited, c])
    // The order in which a cell says things is no edit.
    const { kind, id, name, formula } = a as ReturnType<typeof result>
    expect(merged([{ formula, name, id, kind }], [a], [result('a', '2')])).toEqual([result('a', '2')])
  })

  test('keeps added cells behind what they followed', () => {
    const [x, y, z] = ['x', 'y', 'z'].map((id) => note(id, id)) as [Cell, Cell, Cell]
    expect(ids(merged([x, a, y, z, b], [a, b], [c, a, b]))).toEqual(['x', 'c', 'a', 'y', 'z', 'b'])
    // The one it followed is gone: behind the one before that.
    expect(ids(merged([a, b, x], [a, b], [a, c]))).toEqual(['a', 'x', 'c'])
  })

  test('leaves a name to the added cell that has it', () => {
    const own = { ...result('c', '9'), id: 'own' }
    expect(ids(merged([a, own], [a], [a, c, note('n', 'c')]))).toEqual(['a', 'own', 'n'])
  })

  test('keeps what is folded, locked, measured and read', () => {
    const under = { text: '5 mm', when: '2026-11-28T14:02:00' }
    const state = { locked: true, measured: '5 mm', measured_under: under }
    const kept = merged(
      [heading('h', { folded: true }), { ...a, ...state } as Cell, given('g', '1', { locked: true })],
      [heading('h'), a, given('g', '2')],
      [heading('h', { about: 'New' }), result('a', '2'), given('g', '3', { hint: 'New' })],
    )
    expect(kept).toEqual([
      heading('h', { about: 'New', folded: true }),
      { ...result('a', '2'), ...state },
      given('g', '3', { hint: 'New', locked: true }),
    ])
    const plain = [heading('h'), a, given('g', '1')]
    expect(merged(plain, plain, plain)).toStrictEqual(plain)
  })

  test('forgets what a reading was taken under that is another now', () => {
    const stale = { ...a, measured: '6 mm', measured_under: { text: '5 mm', when: '2026-11-28T14:02:00' } } as Cell
    expect(merged([stale], [a], [a])[0]).not.toHaveProperty('measured_under')
  })
})

describe('a sheet saved while each set-up had a given of its own for what they share', () => {
  const givenOf = (name: string, value: string, more: Partial<Given> = {}): Given => given(name, value, more)

  function older(values: Readonly<Record<string, string>>, kept: Worksheet['given'] = {}): Worksheet {
    const now = sheetOf(LIBRARY, ['lens', 'lamp'], { setUps: [setUp('raking'), setUp('uv')] })
    const own = (prefix: string): readonly Cell[] => [
      givenOf(`${prefix}_reach`, values[prefix] ?? '', {
        from: { kind: 'kit', text: values[prefix] ?? '' },
        piece: { reach: 'x' },
      }),
      { ...result(`${prefix}_near`, `${prefix}_reach * 2`) },
    ]
    return {
      ...now,
      given: kept,
      cells: now.cells.flatMap((cell) => {
        if (cell.id === 'reach') return [givenOf('reach', values.first ?? '')]
        const prefix = ['raking', 'uv'].find((one) => cell.id === `${one}_near`)
        return prefix ? own(prefix) : [cell]
      }),
    }
  }
  const reach = (worksheet: Worksheet) => {
    const next = applied(worksheet, withParts(LIBRARY, worksheet, [{ part: 'sheet' }]))
    expect(orderOf(next).filter((id) => id.endsWith('reach'))).toEqual(['reach'])
    expect(cellOf(next, 'raking_near')).toMatchObject({ formula: 'reach * 2' })
    return cellOf(next, 'reach')
  }

  it('has one of each with the first figure that is filled in', () => {
    expect(reach(older({ first: '1', raking: '2', uv: '3' }))).toMatchObject({ value: '1', from: { kind: 'typed' } })
    expect(reach(older({ first: ' ', raking: '2', uv: '3' }))).toMatchObject({
      value: '2',
      from: { kind: 'kit' },
      piece: { reach: 'x' },
    })
    expect(reach(older({ uv: '3' }))).toMatchObject({ value: '3' })
    expect(reach(older({}))).toMatchObject({ value: '' })
  })

  it('remembers the first’s before the others’', () => {
    const kept = {
      reach: { value: '1', from: 'typed' },
      raking_reach: { value: '2', from: 'typed' },
      uv_reach: { value: '3', from: 'typed' },
    } as const
    const bare = (given: Worksheet['given']): Worksheet => ({
      ...sheetOf(LIBRARY, ['lens', 'pair'], { setUps: [setUp('raking'), setUp('uv')] }),
      ...(given ? { given } : {}),
    })
    const value = (given: Worksheet['given']) => cellOf(added(bare(given), 'lamp'), 'reach')
    expect(value(kept)).toMatchObject({ value: '1' })
    expect(value({ raking_reach: kept.raking_reach, uv_reach: kept.uv_reach })).toMatchObject({ value: '2' })
    expect(value(undefined)).toMatchObject({ value: '' })
  })
})

describe('cells composed anew', () => {
  const pixels = { width: 600, height: 400, bits: 8, channels: 3, encoding: 'sRGB' }
  const frame: Cell = {
    ...{ kind: 'frame', id: 'f', name: 'card', read_under: ['height'] },
    areas: [{ kind: 'patch', name: 'grey' }],
  }

  it('have the picture that was measured, with the places of its areas', () => {
    const measured = {
      picture: { name: 'card.tif', size: 9, digest: 'd', pixels, taken: null },
      readings: { grey: { light: 1 } },
      measured_under: { text: 'd', figures: { height: '500' }, by: 'R.S.' },
      areas: [{ kind: 'patch' as const, name: 'grey', box: [1, 2, 3, 4] }],
    }
    const next: Cell = { ...frame, read_under: ['height', 'aperture'] }
    expect(merged([{ ...frame, ...measured }], [frame], [next])).toStrictEqual([{ ...next, ...measured }])
    expect(merged([frame], [frame], [next])).toStrictEqual([next])
  })

  it('are not put in the place of a drawing that was fed otherwise by hand', () => {
    const drawing = (height: string): Cell => ({ kind: 'drawing', id: 'd', drawing: 'set-up', from: { height } })
    expect(merged([drawing('mine')], [drawing('height')], [drawing('lens_height')])).toEqual([drawing('mine')])
    expect(merged([drawing('height')], [drawing('height')], [drawing('lens_height')])).toEqual([drawing('lens_height')])
  })

  it('are folded and locked as they were', () => {
    const locked: Cell = given('a', '1', { locked: true })
    expect(merged([locked], [given('a', '1')], [given('a', '1', { unit: 'mm' })])).toEqual([{ ...locked, unit: 'mm' }])
  })
})
