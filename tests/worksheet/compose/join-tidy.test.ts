import { describe, expect, it, test } from 'vitest'
import { tidied } from '../../../src/worksheet/compose/join-tidy.ts'
import type { Cell, Drawing } from '../../../src/worksheet/index.ts'
import { given, note, result } from '../make.ts'

const drawing = (from: Record<string, string>, more: Partial<Drawing> = {}): Cell => ({
  kind: 'drawing',
  id: 'd',
  drawing: 'set-up',
  from,
  ...more,
})
const steps = (...list: readonly { text: string; reading?: string; sets?: string[] }[]): Cell => ({
  kind: 'steps',
  id: 's',
  steps: [...list],
})
const heading: Cell = { kind: 'note', id: 'h', role: 'heading', text: 'Light' }

describe('what says the same comes once', () => {
  test.each<[string, Cell, Cell]>([
    [
      'a note, whatever its spaces and capitals',
      note('a', 'Hot lamps: let them cool.'),
      note('b', ' hot  LAMPS:\nlet them cool.'),
    ],
    ['a drawing, whatever the order of its inputs', drawing({ a: 'x', b: 'y' }), drawing({ b: 'y', a: 'x' })],
    [
      'a list of steps',
      steps({ text: 'Read', reading: 'x' }, { text: 'Write' }),
      steps({ text: 'Read', reading: 'x' }, { text: 'Write' }),
    ],
  ])('%s', (_, one, other) => {
    expect(tidied([one], [other])).toEqual([])
    expect(tidied([one, other], [])).toHaveLength(1)
  })

  test.each<[string, Cell, Cell]>([
    ['another text', note('a', 'One'), note('b', 'Two')],
    ['words apart', note('a', 'note book'), note('b', 'notebook')],
    ['headings', heading, { ...heading, id: 'other' }],
    ['a drawing fed otherwise', drawing({ a: 'x' }), drawing({ a: 'y' })],
    ['another drawing', drawing({ a: 'x' }), drawing({ a: 'x' }, { drawing: 'depth' })],
    ['steps that read something else', steps({ text: 'Read', reading: 'x' }), steps({ text: 'Read', reading: 'y' })],
    ['more steps', steps({ text: 'Read' }), steps({ text: 'Read' }, { text: 'Write' })],
    ['results', result('x', '1'), result('x', '1')],
    ['a note and steps of its text', note('a', 'Read undefined'), steps({ text: 'Read' })],
  ])('but not %s', (_, one, other) => {
    expect(tidied([one], [other])).toHaveLength(1)
    expect(tidied([one, other], [])).toHaveLength(2)
  })
})

describe('a list of names keeps those that still are what it lists', () => {
  const there: readonly Cell[] = [
    given('g', '1'),
    result('r', '2'),
    { kind: 'table', id: 't', name: 't', columns: [{ name: 'c' }], rows: [] },
  ]
  const only = (cell: Cell): Cell | undefined => tidied([cell], there)[0]

  it('of a piece of kit, the givens it fills in', () => {
    const kit = given('k', '', { entry: 'kit', fills: { one: 'g', two: 'r', three: 'gone' } })
    expect(only(kit)).toMatchObject({ fills: { one: 'g' } })
    expect(only(kit)).not.toHaveProperty('fills.two')
    expect(only(given('k', ''))).not.toHaveProperty('fills')
  })

  it('of a drawing, the givens it moves', () => {
    expect(only(drawing({}, { moves: ['g', 'r', 'gone'] }))).toMatchObject({ moves: ['g'] })
    expect(only(drawing({}))).not.toHaveProperty('moves')
  })

  it('of a step, what is read at it and what is set', () => {
    const list = steps(
      { text: 'One', reading: 'g', sets: ['g', 'gone', 'r'] },
      { text: 'Two', reading: 'r' },
      { text: 'Three', reading: 't' },
      { text: 'Four', reading: 'gone', sets: ['gone'] },
      { text: 'Five' },
    )
    expect(only(list)).toEqual(
      steps(
        { text: 'One', reading: 'g', sets: ['g', 'r'] },
        { text: 'Two', reading: 'r' },
        { text: 'Three' },
        { text: 'Four' },
        { text: 'Five' },
      ),
    )
  })

  it('of a picture, the givens its measures go to', () => {
    const picture: Cell = { kind: 'frame', id: 'f', name: 'f', fills: { one: 'g', two: 'r' } }
    expect(only(picture)).toEqual({ ...picture, fills: { one: 'g' } })
    expect(only({ kind: 'frame', id: 'f', name: 'f' })).not.toHaveProperty('fills')
  })

  it('of variants, the givens they change and what they show', () => {
    const variants: Cell = {
      kind: 'variants',
      id: 'v',
      sets: [{ title: 'Far', values: { g: '9', r: '3', gone: '4' } }],
      results: ['r', 'gone', 'g'],
    }
    expect(only(variants)).toEqual({ ...variants, sets: [{ title: 'Far', values: { g: '9' } }], results: ['r', 'g'] })
  })

  it('of a range, what it shows', () => {
    const range: Cell = { kind: 'range', id: 'a', of: 'g', results: ['r', 'gone'] }
    expect(only(range)).toEqual({ ...range, results: ['r'] })
    expect(only({ kind: 'range', id: 'a', results: ['r'] })).toEqual({ kind: 'range', id: 'a', results: ['r'] })
  })

  it('leaves out a range that has nothing to vary', () => {
    expect(only({ kind: 'range', id: 'a', of: 'r', results: ['r'] })).toBeUndefined()
    expect(only({ kind: 'range', id: 'a', of: 'gone', results: ['r'] })).toBeUndefined()
    expect(only({ kind: 'range', id: 'a', of: 'gone.width', results: ['r'] })).toBeUndefined()
  })

  it('keeps a range over a side of a given, over a second given, or of the columns of a table', () => {
    for (const range of [
      { kind: 'range', id: 'a', of: 'g.width', results: ['r'] },
      { kind: 'range', id: 'a', of: 'g', second: { of: 'g.height', count: 3 }, results: ['r'] },
      { kind: 'range', id: 'a', of: 'g', values: 't.c', results: ['r'] },
      { kind: 'range', id: 'a', of: 't.c', columns: ['c'], results: [] },
    ] as const)
      expect(only(range as unknown as Cell)).toEqual(range)
  })

  it('leaves out what a range varies besides where that is no given, or has no values', () => {
    const range: Cell = { kind: 'range', id: 'a', of: 'g', second: { of: 'r' }, values: 'gone.c', results: ['r'] }
    expect(only(range)).toEqual({ kind: 'range', id: 'a', of: 'g', results: ['r'] })
  })

  it('leaves any other cell as it is', () => {
    const cell = result('x', 'g + gone')
    expect(only(cell)).toBe(cell)
  })
})
