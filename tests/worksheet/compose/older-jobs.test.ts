import { describe, expect, it, test } from 'vitest'
import { arranged, fingerprint, type OlderJobs, olderJob, olderJobsIn } from '../../../src/worksheet/compose/arrange.ts'
import { rowsMark } from '../../../src/worksheet/document/rows-mark.ts'
import { type Cell, FORMAT, type Given, type Worksheet } from '../../../src/worksheet/index.ts'
import { check, given, note, result } from '../make.ts'
import { asks, cellOf, computes, invented, parts } from './invented.ts'

const worksheet = (...cells: readonly Cell[]): Worksheet => ({
  format: FORMAT,
  version: 1,
  title: 'A map',
  cells: [...cells],
})
const heading = (text: string): Cell => ({ kind: 'note', id: text, role: 'heading', text })
const table = (rows: readonly string[][], id = 'list'): Cell => ({
  ...{ kind: 'table', id, name: 'list', columns: [{ name: 'width' }] },
  rows: [...rows],
})

describe('a cell of an earlier version', () => {
  test.each<[string, Cell, object]>([
    ['filled in otherwise', given('a', '1'), { value: '2', from: { kind: 'typed', text: '2' }, piece: { a: '2' } }],
    ['measured and locked', result('a', '1'), { measured: '2', measured_under: { text: '2' }, locked: true }],
    ['folded, of another template and stage', heading('a'), { folded: true, template: 'b', stage: 'light' }],
    ['with other rows', table([]), { rows: [['1']] }],
    ['of another id', result('a', '1'), { id: 'b' }],
    ['that says things in another order', given('a', '1', { unit: 'mm', label: 'A' }), { label: undefined }],
  ])('%s is known again', (_, cell, more) => {
    const { label: _label, unit: _unit, ...rest } = cell as Given
    const other = { ...rest, ...more, ...('unit' in cell ? { label: 'A', unit: 'mm' } : {}) } as Cell
    expect(fingerprint(other)).toBe(fingerprint(cell))
  })

  const steps = (...list: readonly object[]): Cell => ({ kind: 'steps', id: 's', steps: list as { text: string }[] })

  test('that is ticked off is known again, and not one that says or reads something else', () => {
    const mark = fingerprint(steps({ text: 'Read', reading: 'a' }, { text: 'Write' }))
    expect(fingerprint(steps({ text: 'Read', reading: 'a', done: true }, { text: 'Write', taken: 2 }))).toBe(mark)
    expect(fingerprint(steps({ text: 'Read', reading: 'b' }, { text: 'Write' }))).not.toBe(mark)
    expect(fingerprint(steps({ text: 'Read', reading: 'a' }, { text: 'Draw' }))).not.toBe(mark)
    expect(fingerprint(steps({ text: 'Read', reading: 'a' }))).not.toBe(mark)
  })

  test('that is another is not', () => {
    const mark = fingerprint(result('a', '1'))
    for (const other of [result('b', '1'), result('a', '2'), result('a', '1', { unit: 'mm' }), check('a', '1')])
      expect(fingerprint(other)).not.toBe(mark)
  })
})

describe('a job of an earlier version', () => {
  it('is known by its cells, with its example and its rows', () => {
    const [size, area, list] = [given('size', '4'), result('area', 'size * size'), table([['1']])]
    const job = worksheet(size, area, { ...area, id: 'again' }, list)
    expect(olderJob(job)).toEqual({
      cells: [size, area, list].map(fingerprint),
      example: { size: '4' },
      rows: { list: rowsMark([['1']]) },
    })
    expect(olderJob(worksheet(size))).toStrictEqual({ cells: [fingerprint(size)], example: { size: '4' } })
  })

  const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((name) => result(name, '1')) as [Cell, Cell, Cell, Cell]
  const jobs = (lists: Readonly<Record<string, readonly Cell[]>>): OlderJobs => ({
    jobs: Object.fromEntries(Object.entries(lists).map(([name, cells]) => [name, olderJob(worksheet(...cells))])),
  })

  it('is found where half of its cells are there, and not where fewer are', () => {
    expect(olderJobsIn(worksheet(a, b), jobs({ one: [a, b, c, d] }))).toEqual(['one'])
    expect(olderJobsIn(worksheet(a), jobs({ one: [a, b, c] }))).toEqual([])
    expect(olderJobsIn(worksheet(a, { ...a, id: 'again' }), jobs({ one: [a, b, c] }))).toEqual([])
  })

  it('is found in the order of the sheet', () => {
    const two = jobs({ one: [c, d], other: [a, b] })
    expect(olderJobsIn(worksheet(a, c, b, d), two)).toEqual(['other', 'one'])
    expect(olderJobsIn(worksheet(c, a, b, d), two)).toEqual(['one', 'other'])
    expect(olderJobsIn(worksheet(d, a, b, { ...d, id: 'again' }), two)).toEqual(['one', 'other'])
  })

  it('is not looked for in a sheet that is composed already', () => {
    expect(olderJobsIn({ ...worksheet(a), parts: [] }, jobs({ one: [a] }))).toEqual([])
  })
})

describe('a sheet of an earlier version, arranged by parts', () => {
  const library = invented({
    roles: ['original', 'optics', 'count'],
    names: {
      size: {},
      curl: { usual: '2' },
      focal: { role: 'optics', aliases: ['lens_focal'] },
      far: { role: 'optics', aliases: ['lens_focal'] },
    },
    parts: {
      sheet: { cells: [asks('size'), computes('area', 'size * curl')] },
      lens: { role: 'optics', cells: [computes('scale', 'focal / size + far')] },
      lots: { role: 'count', cells: [{ kind: 'table', name: 'list', columns: [{ name: 'width' }] }] },
    },
  })
  const size = { ...given('size', '4'), id: 'c1' }
  const old = { ...given('lens_focal', '60'), id: 'c2' }
  const gone = { ...result('gone', 'size * 3'), id: 'c3' }
  const area = { ...result('area', 'size + 1'), id: 'c4' }
  const list = table([['1']], 'c5')
  const job = [heading('Then'), size, old, gone, area]
  const OLDER: OlderJobs = {
    jobs: {
      map: olderJob(worksheet(...job)),
      lots: olderJob(worksheet({ ...size, value: '9' }, list, result('counted', '2'))),
    },
  }
  const PARTS = new Map([
    ['map', parts('sheet', 'lens')],
    ['lots', parts('lots')],
  ])
  const arrange = (...cells: readonly Cell[]) => {
    const next = arranged(library, worksheet(...cells), OLDER, PARTS)
    if (next.change?.do !== 'arrange') throw new Error('Nothing changes.')
    return { ...next, ...worksheet(...next.cells), change: next.change }
  }
  const ids = (cells: readonly Cell[]): string[] => cells.map(({ id }) => id)

  it('has the cells of the parts in the place of its own, with what was filled in', () => {
    const next = arrange(...job)
    expect(ids(next.cells)).toEqual([
      ...['heading_original_0', 'size', 'curl', 'area', 'heading_optics_0', 'focal', 'far', 'scale'],
    ])
    expect(next.change.parts).toEqual([{ part: 'lens' }, { part: 'sheet' }])
    expect(next.change.cells).toEqual(next.cells)
    expect(cellOf(next, 'size')).toMatchObject({ value: '4', from: { kind: 'example', text: '4' } })
    expect(cellOf(next, 'area')).toMatchObject({ formula: 'size * curl' })
    expect(next.first).toBe('heading_original_0')
    expect(next.replaced).toEqual([])
  })

  it('has the figure of an older name under each that took its place', () => {
    const next = arrange(...job)
    expect([cellOf(next, 'focal'), cellOf(next, 'far')]).toMatchObject([{ value: '60' }, { value: '60' }])
    expect(next.change.given).toEqual({
      size: { value: '4', from: 'example' },
      focal: { value: '60', from: 'example' },
      far: { value: '60', from: 'example' },
    })
  })

  it('asks for what is not filled in and has no usual value', () => {
    expect(arrange(heading('Then'), { ...size, value: ' ' }, gone, area).asks.map(({ name }) => name)).toEqual([
      ...['size', 'focal', 'far'],
    ])
  })

  it('has what is usual where nothing was filled in', () => {
    const before = worksheet(...job, { ...given('curl', ' '), id: 'c8' })
    const next = arranged(library, before, { jobs: { map: olderJob(before) } }, PARTS)
    expect(next.cells.find(({ id }) => id === 'curl')).toMatchObject({ value: '2', from: { kind: 'usual' } })
  })

  it('has what was typed as typed, with its piece', () => {
    const piece = { focal: '35' }
    const next = arrange(heading('Then'), size, { ...old, value: '35', piece }, gone, area)
    expect(cellOf(next, 'focal')).toMatchObject({ value: '35', from: { kind: 'typed', text: '35' }, piece })
    expect(cellOf(next, 'size')).not.toHaveProperty('piece')
  })

  it('has what is measured, locked and folded', () => {
    const next = arrange(heading('Then'), { ...size, locked: true }, old, gone, { ...area, measured: '7' })
    expect(cellOf(next, 'area')).toMatchObject({ formula: 'size * curl', measured: '7' })
    expect(cellOf(next, 'size')).toMatchObject({ locked: true })
  })

  it('is made of all its jobs, where the first example counts', () => {
    const counted = { ...result('counted', '2'), id: 'c6' }
    const next = arrange(...job, list, counted)
    expect(next.change.parts).toEqual([{ part: 'lens' }, { part: 'lots' }, { part: 'sheet' }])
    expect(cellOf(next, 'size')).toMatchObject({ from: { kind: 'example' } })
    expect(cellOf(next, 'list')).toMatchObject({ rows: [['1']], from: { kind: 'example' } })
    const other = arrange(list, counted, ...job)
    expect(cellOf(other, 'size')).toMatchObject({ from: { kind: 'typed' } })
    expect(cellOf(arrange(...job, table([['2']], 'c5'), counted), 'list')).toMatchObject({
      rows: [['2']],
      from: { kind: 'typed' },
    })
  })

  it('keeps the cells that were added or edited where they were, with what they read', () => {
    const mine = { ...result('mine', 'gone + size + lens_focal'), id: 'c9' }
    const edited = { ...area, formula: 'size + 2' }
    const next = arrange(heading('Then'), size, mine, old, gone, edited, note('my_note', 'My own words.'))
    expect(cellOf(next, 'c9')).toEqual(mine)
    // What an added cell reads and the parts do not have stays as well.
    expect([cellOf(next, 'c3'), cellOf(next, 'c2')]).toEqual([gone, old])
    expect(cellOf(next, 'c4')).toEqual(edited)
    expect(cellOf(next, 'area')).toBeUndefined()
    expect(ids(next.cells)).toEqual([
      ...[
        'heading_original_0',
        'size',
        'c9',
        'c2',
        'c3',
        'c4',
        'my_note',
        'curl',
        'heading_optics_0',
        'focal',
        'far',
        'scale',
      ],
    ])
  })

  it('keeps what those read in turn', () => {
    const deep = { ...result('deep', 'gone / 2'), id: 'c6' }
    const older: OlderJobs = { jobs: { map: olderJob(worksheet(...job, deep)) } }
    const next = arranged(library, worksheet(...job, deep, { ...result('mine', 'deep'), id: 'c9' }), older, PARTS)
    expect(ids(next.cells)).toEqual(expect.arrayContaining(['c9', 'c6', 'c3']))
  })

  it('gives an added cell another id where a part has it', () => {
    const next = arrange(...job, { ...result('mine', '3'), id: 'focal' }, { ...result('more', '4'), id: 'focal_2' })
    expect(next.cells.filter(({ id }) => id.startsWith('focal'))).toMatchObject([
      { id: 'focal_3', name: 'mine' },
      { id: 'focal_2', name: 'more' },
      { id: 'focal', name: 'focal' },
    ])
    expect(new Set(ids(next.cells)).size).toBe(next.cells.length)
  })

  it('leaves out a job whose parts are not there', () => {
    const next = arranged(
      library,
      worksheet(...job, list, result('counted', '2')),
      OLDER,
      new Map([['map', parts('sheet', 'lens')]]),
    )
    expect(next.change).toMatchObject({ parts: [{ part: 'lens' }, { part: 'sheet' }] })
    expect(ids(next.cells)).toContain('c5')
  })
})
