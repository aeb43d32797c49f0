import { describe, expect, it, test } from 'vitest'
import { FULL_COMPILER } from '../../../src/language/index.ts'
import { formulasShown, namesShown, triesOthers } from '../../../src/worksheet/document/message-places.ts'
import { isNamed } from '../../../src/worksheet/document/names.ts'
import { type Cell, FORMAT, freeName, readData, VERSION } from '../../../src/worksheet/index.ts'
import { type ByKind, byKind, KINDS, type Kind, type KindTable, kindOf } from '../../../src/worksheet/kinds/index.ts'
import type { CellKind } from '../../../src/worksheet/kinds/kind.ts'
import { followNames } from '../../../src/worksheet/renaming/follow-names.ts'

const read = (cell: unknown): Cell =>
  readData({ format: FORMAT, version: VERSION, title: '', cells: [cell] }).cells[0] as Cell

/** One cell of each kind that refers to `a` wherever it can. */
const REFERRING: Readonly<Record<Kind, Cell>> = {
  given: { kind: 'given', id: '1', name: 'lens', value: '', entry: 'kit', sort: 'lens', fills: { focal: 'a' } },
  result: { kind: 'result', id: '1', name: 'r', formula: '2 * a' },
  check: { kind: 'check', id: '1', name: 'c', condition: 'a > 1', message: '{a}', passes: '{2 * a}' },
  note: { kind: 'note', id: '1', text: 'a' },
  drawing: { kind: 'drawing', id: '1', drawing: 'set-up', from: { height: 'a / 2' }, moves: ['a'] },
  steps: { kind: 'steps', id: '1', steps: [{ text: 'Read a', reading: 'a' }] },
  table: {
    kind: 'table',
    id: '1',
    name: 't',
    columns: [{ name: 'x', formula: 'a + 1', foot: [{ figure: 'count', where: 'x > a' }] }],
    rows: [],
  },
  range: { kind: 'range', id: '1', of: 'a', results: ['a'] },
  variants: { kind: 'variants', id: '1', sets: [{ title: 'One', values: { a: '1' } }], results: ['a'] },
  run: { kind: 'run', id: '1', of: 'a', from: { width: 'a' } },
  frame: { kind: 'frame', id: '1', name: 'f', fills: { focal: 'a' } },
  function: { kind: 'function', id: '1', name: 'g' },
}

/** The names a cell refers to, in formulas and outside them, as its record has them. */
function referredTo(cell: Cell): ReadonlySet<string> {
  const { formulas, shown, listed, sets } = kindOf(cell)
  const texts = [...(formulas?.(cell) ?? []), ...(shown?.(cell) ?? [])]
  const words = texts.flatMap((text) => text.match(/[A-Za-z_]\w*/g) ?? [])
  return new Set([...words, ...(listed?.(cell) ?? []), ...(sets?.(cell) ?? [])])
}

describe.each(Object.keys(KINDS) as Kind[])('the kind %s', (kind) => {
  const cell = REFERRING[kind]

  it('makes an empty cell that the format accepts, if it can be added at all', () => {
    const fresh = KINDS[kind].fresh({ id: 'x', cells: [], freeName: (base) => freeName(base, []) })
    expect(read(fresh as Cell)).toEqual(fresh)
  })

  it('renames every reference it declares, and nothing else', () => {
    expect(read(cell)).toEqual(cell)
    const renamed = followNames(cell, new Map([['a', 'b']]), [cell])
    const before = referredTo(cell)
    expect(referredTo(renamed)).toEqual(new Set([...before].map((name) => (name === 'a' ? 'b' : name))))
    expect(renamed === cell).toBe(!before.has('a'))
    expect(followNames(renamed, new Map([['b', 'a']]), [renamed])).toEqual(cell)
  })

  it('declares a name exactly if it gets a value', () => {
    expect(isNamed(cell)).toBe(KINDS[kind].computed !== undefined)
  })
})

describe('a kind added by one record', () => {
  interface Hologram {
    readonly kind: 'hologram'
    readonly id: string
    readonly depth: string
    readonly beside: readonly string[]
  }
  const HOLOGRAM = {
    title: 'Hologram',
    computed: undefined,
    triesOthers: true,
    fresh: ({ id }) => ({ kind: 'hologram', id, depth: '', beside: [] }) as unknown as Cell,
    shown: (cell) => [(cell as unknown as Hologram).depth],
    listed: (cell) => (cell as unknown as Hologram).beside,
    renamed: (cell, { formula, one }) => {
      const { depth, beside } = cell as unknown as Hologram
      return { ...cell, depth: formula(depth), beside: beside.map(one) }
    },
  } satisfies CellKind
  const kinds = { ...KINDS, hologram: HOLOGRAM } as unknown as KindTable
  const cell = { kind: 'hologram', id: 'h', depth: '2 * width', beside: ['height'] } as unknown as Cell

  it('is shown, tried and renamed by the code that serves every kind', () => {
    expect(kindOf(cell, kinds).title).toBe('Hologram')
    expect(triesOthers(cell, kinds)).toBe(true)
    expect(formulasShown(cell, kinds)).toEqual(['2 * width'])
    expect(namesShown(cell, FULL_COMPILER, kinds)).toEqual(new Set(['width', 'height']))
    const names = new Map([
      ['width', 'w'],
      ['height', 'h'],
    ])
    expect(followNames(cell, names, [cell], kinds)).toMatchObject({ depth: '2 * w', beside: ['h'] })
    expect(followNames(cell, new Map([['depth', 'd']]), [cell], kinds)).toBe(cell)
  })

  test('is required in every record of the upper rooms', () => {
    const WORDS: ByKind<[], string> = {
      ...(Object.fromEntries(Object.keys(KINDS).map((kind) => [kind, () => kind])) as unknown as ByKind<[], string>),
    }
    expect(byKind(WORDS, REFERRING.note)).toBe('note')
    // @ts-expect-error: a record that lacks a kind does not pass the type check.
    const LACKING: ByKind<[], string> = { note: () => 'note' }
    expect(LACKING).toBeDefined()
  })
})
