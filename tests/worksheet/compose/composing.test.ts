import { describe, expect, it } from 'vitest'
import type { ChosenPart } from '../../../src/worksheet/compose/choose-parts.ts'
import { compose, partsOfSetUp } from '../../../src/worksheet/compose/compose.ts'
import { composeJob, JOB_FORMAT, type Job } from '../../../src/worksheet/compose/job.ts'
import { withoutExample } from '../../../src/worksheet/compose/without-example.ts'
import { FORMAT, type Given, VERSION, type Worksheet } from '../../../src/worksheet/index.ts'
import { asks, cellOf, computes, invented, orderOf, parts, says, sheetOf, typed } from './invented.ts'

const hand = (part: string): ChosenPart => ({ part, by: 'hand' })
const lead = (part: string): ChosenPart => ({ part, by: 'lead' })

describe('a sheet composed of parts', () => {
  const library = invented({
    roles: ['original', 'optics', 'light'],
    names: { size: { example: '4', usual: '3' }, focal: { role: 'optics', example: '60' } },
    parts: {
      sheet: { cells: [asks('size'), computes('area', 'size * size'), says('Mind it.')] },
      lens: { role: 'optics', cells: [computes('scale', 'focal / size'), says('Mind it.'), says('Look.')] },
      zoom: { role: 'optics', rank: 1, cells: [computes('scale', 'focal')] },
      pair: { role: 'light', cells: [says('Mind it.'), computes('lit', 'scale')] },
    },
  })

  it('is a document of this version with its title and job', () => {
    const { worksheet } = compose(library, { title: 'A map', job: 'No. 3', parts: parts('sheet') })
    expect(worksheet).toMatchObject({ format: FORMAT, version: VERSION, title: 'A map', job: 'No. 3' })
    expect(worksheet).not.toHaveProperty('setups')
    expect(sheetOf(library, ['sheet'])).not.toHaveProperty('job')
  })

  it('lists its parts by name, each once, with the choice that comes first', () => {
    const listed = (...set: readonly ChosenPart[]) => sheetOf(library, set).parts
    expect(listed({ part: 'sheet' }, { part: 'lens' })).toStrictEqual([{ part: 'lens' }, { part: 'sheet' }])
    for (const [one, other, best] of [
      [hand('lens'), lead('lens'), hand('lens')],
      [hand('lens'), { part: 'lens' }, hand('lens')],
      [lead('lens'), { part: 'lens' }, lead('lens')],
    ] as const) {
      expect(listed(one, other)).toStrictEqual([best])
      expect(listed(other, one)).toStrictEqual([best])
    }
  })

  it('says which part gives way', () => {
    expect(compose(library, { title: 'A map', parts: parts('lens', 'zoom') }).replaced).toEqual([
      { part: 'lens', by: 'zoom' },
    ])
  })

  it('says a remark of several parts once, but every heading', () => {
    const { cells } = sheetOf(library, ['sheet', 'lens', 'pair'])
    expect(cells.flatMap((cell) => (cell.kind === 'note' ? [cell.text] : []))).toEqual([
      ...['Part sheet', 'Mind it.', 'Part lens', 'Look.', 'Part pair'],
    ])
  })

  it('takes examples where nothing else is said', () => {
    const focal = (more: object) => cellOf(sheetOf(library, ['sheet', 'lens'], more), 'focal')
    expect(focal({})).toMatchObject({ value: '60', from: { kind: 'example', text: '60' } })
    expect(focal({ examples: false })).toMatchObject({ value: '' })
    expect(focal({ examples: false, givens: typed({ focal: '35' }) })).toMatchObject({ value: '35' })
  })
})

describe('the parts of a later set-up', () => {
  const library = invented({
    roles: [
      'original',
      { role: 'optics', in_set_up: true },
      { role: 'light', in_set_up: true },
      { role: 'glare', in_set_up: true },
    ],
    parts: {
      sheet: {},
      book: { rank: 1 },
      lens: { role: 'optics' },
      zoom: { role: 'optics', rank: 1 },
      pair: { role: 'light', rank: 1 },
      lamp: { role: 'light', leaves_where_chosen: ['glare', 'light'] },
      foil: { role: 'glare' },
      hood: { role: 'glare', rank: 1, leaves_where_chosen: ['optics'] },
    },
  })
  const ids = (first: readonly ChosenPart[], own: readonly ChosenPart[]): string[] =>
    partsOfSetUp(library, first, own).map(({ id }) => id)
  const FIRST = parts('sheet', 'lens', 'pair', 'foil')

  it('are those of the first where it chooses none', () => {
    expect(ids(FIRST, [])).toEqual(['sheet', 'lens', 'pair', 'foil'])
  })

  it('are its own of the roles that each has for itself, and the first’s of those all share', () => {
    expect(ids(FIRST, [{ part: 'zoom' }, { part: 'book' }])).toEqual(['sheet', 'zoom', 'pair', 'foil'])
  })

  it('are chosen before what was chosen by hand for the first, where they are chosen by somebody', () => {
    const first = [...parts('sheet', 'pair'), hand('zoom')]
    expect(ids(first, [hand('lens')])).toContain('lens')
    expect(ids(first, [lead('lens')])).toContain('lens')
    expect(ids([...parts('sheet'), hand('lens')], [{ part: 'zoom' }])).toContain('lens')
    // What was chosen by hand for another role stays.
    expect(ids([hand('lens'), { part: 'zoom' }], [hand('lamp')])).toContain('lens')
  })

  it('leave out the roles that a part goes without, where the set-up has chosen it for itself', () => {
    expect(ids([...FIRST, hand('lamp')], [])).toEqual(['sheet', 'lens', 'lamp', 'foil'])
    expect(ids(FIRST, [hand('lamp')])).toEqual(['sheet', 'lens', 'lamp'])
    expect(ids(FIRST, [hand('lamp'), { part: 'foil' }])).toEqual(['sheet', 'lens', 'lamp', 'foil'])
    expect(ids(FIRST, [{ part: 'hood' }])).toEqual(['sheet', 'pair', 'hood'])
    // Chosen, but another comes before it.
    expect(ids(FIRST, [{ part: 'lamp' }])).toEqual(['sheet', 'lens', 'pair', 'foil'])
  })
})

describe('a job', () => {
  const library = invented({
    roles: ['original', 'count'],
    names: {
      size: { example: '4' },
      noted: { reading: true },
      usual: { usual: '2', example: '9' },
      left: { example: '5' },
    },
    parts: {
      sheet: { cells: [asks('size'), computes('area', 'size * noted * usual * left')] },
      lots: {
        role: 'count',
        cells: [{ kind: 'table', name: 'list', columns: [{ name: 'a' }] }],
        example_rows: { list: [['1']] },
      },
    },
  })
  const job: Job = {
    ...{ format: JOB_FORMAT, title: 'A map', parts: ['sheet', 'lots'], lead: 'lots' },
    example: { size: '7' },
    readings: { noted: '8' },
  }

  it('opens worked out, with its example and what was read in it', () => {
    const worksheet = composeJob(library, job)
    expect(worksheet).toMatchObject({ title: 'A map', parts: [lead('lots'), { part: 'sheet' }] })
    for (const [id, value] of [
      ['size', '7'],
      ['noted', '8'],
      ['left', '5'],
    ] as const)
      expect(cellOf(worksheet, id)).toMatchObject({ value, from: { kind: 'example' } })
    expect(cellOf(worksheet, 'list')).toMatchObject({ rows: [['1']], from: { kind: 'example' } })
    for (const key of ['job', 'shelf']) expect(worksheet).not.toHaveProperty(key)
  })

  it('may have a reference, rows of its own, and what the shelf shows', () => {
    const worksheet = composeJob(library, { ...job, job: 'No. 3', rows: { list: [['2'], ['3']] }, shelf: { order: 4 } })
    expect(worksheet).toMatchObject({ job: 'No. 3', shelf: { order: 4 } })
    expect(cellOf(worksheet, 'list')).toMatchObject({ rows: [['2'], ['3']], from: { kind: 'example' } })
  })

  it('started for the user’s own figures is empty, but for usual values and what was changed', () => {
    const opened = composeJob(library, { ...job, job: 'No. 3' })
    const mine = withoutExample(opened)
    expect(orderOf(mine)).toEqual(orderOf(opened))
    expect(mine).not.toHaveProperty('job')
    for (const id of ['size', 'noted', 'left']) {
      expect(cellOf(mine, id)).toMatchObject({ value: '' })
      for (const key of ['from', 'piece']) expect(cellOf(mine, id)).not.toHaveProperty(key)
    }
    expect(cellOf(mine, 'usual')).toBe(cellOf(opened, 'usual'))
    expect(cellOf(mine, 'list')).toMatchObject({ rows: [] })
    expect(cellOf(mine, 'list')).not.toHaveProperty('from')
  })

  it('keeps figures and rows that are no longer the example’s', () => {
    const opened = composeJob(library, job)
    const changed: Worksheet = {
      ...opened,
      cells: opened.cells.map((cell) =>
        cell.id === 'size'
          ? ({ ...cell, value: '6' } as Given)
          : cell.kind === 'table'
            ? { ...cell, rows: [['9']] }
            : cell,
      ),
    }
    const mine = withoutExample(changed)
    expect(cellOf(mine, 'size')).toMatchObject({ value: '6' })
    expect(cellOf(mine, 'list')).toMatchObject({ rows: [['9']] })
  })
})
