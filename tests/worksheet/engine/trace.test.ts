import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Value } from '../../../src/language/index.ts'
import type { Layout } from '../../../src/worksheet/engine/engine-view.ts'
import type { Node } from '../../../src/worksheet/engine/node.ts'
import {
  areAllComputed,
  computeInto,
  downstreamOf,
  upstreamOf,
} from '../../../src/worksheet/engine/partial-recompute.ts'
import { trace } from '../../../src/worksheet/engine/trace.ts'
import { countingLibrary, given, result, sheetOf } from '../make.ts'

type State = 'value' | 'waiting' | 'error' | 'faulty'

/** Half a dozen to a dozen cells in dependency order, each with a state, and whether it has a program. */
const sheet = fc
  .array(
    fc.record({
      needs: fc.uniqueArray(fc.nat(11), { maxLength: 3 }),
      state: fc.constantFrom<State>('value', 'waiting', 'error', 'faulty'),
      computed: fc.boolean(),
    }),
    { minLength: 6, maxLength: 12 },
  )
  .map((cells) => cells.map((cell, i) => ({ ...cell, needs: cell.needs.filter((need) => need < i) })))

type Cells = ReturnType<(typeof sheet)['generate']>['value']

const traced = (cells: Cells) =>
  trace({
    size: cells.length,
    needs: cells.map(({ needs }) => Int32Array.from(needs)),
    isWaiting: (i) => cells[i]?.state === 'waiting',
    awaited: (i) => Int32Array.from((cells[i]?.needs ?? []).filter((need) => cells[need]?.state === 'waiting')),
    isErroneous: (i) => cells[i]?.state === 'error' || cells[i]?.state === 'faulty',
    isFaulty: (i) => cells[i]?.state === 'faulty',
  })

/** All that is reached from a place through what passes, itself among it. */
function reached(start: readonly number[], next: (at: number) => readonly number[]): Set<number> {
  const found = new Set<number>()
  const open = [...start]
  for (let at = open.pop(); at !== undefined; at = open.pop())
    if (!found.has(at)) {
      found.add(at)
      open.push(...next(at))
    }
  return found
}

describe('what has no value', () => {
  test('waits in the end for what waits for nothing else, by whatever way', () => {
    fc.assert(
      fc.property(sheet, (cells) => {
        const { ends } = traced(cells)
        const waitingNeeds = (at: number) => (cells[at]?.needs ?? []).filter((need) => cells[need]?.state === 'waiting')
        for (const [at, { state }] of cells.entries()) {
          const expected = [...reached([at], waitingNeeds)].filter((one) => waitingNeeds(one).length === 0)
          expect(ends[at]?.toSorted(), `${at}`).toEqual(state === 'waiting' ? expected.toSorted() : undefined)
        }
      }),
    )
  })

  test('leads to where its error started: in itself, or where that of the first it needs did', () => {
    fc.assert(
      fc.property(sheet, (cells) => {
        const { origins } = traced(cells)
        for (const [at, { state, needs }] of cells.entries()) {
          const wrong = needs.find((need) => cells[need]?.state === 'error' || cells[need]?.state === 'faulty')
          const origin = state === 'faulty' || wrong === undefined ? at : origins[wrong]
          expect(origins[at]).toBe(state === 'error' || state === 'faulty' ? origin : -1)
        }
      }),
    )
  })

  test('names at most a hundred that it waits for', () => {
    const cells: Cells = Array.from({ length: 151 }, (_, i) => ({
      needs: i < 150 ? [] : Array.from({ length: 150 }, (_, need) => need),
      state: 'waiting' as const,
      computed: true,
    }))
    expect(traced(cells).ends[150]).toHaveLength(100)
    expect(traced(cells.with(150, { needs: [0, 1], state: 'waiting', computed: true })).ends[150]).toEqual([0, 1])
  })
})

describe('a part of a sheet', () => {
  const layoutOf = (cells: Cells): Layout =>
    ({
      order: cells,
      needs: cells.map(({ needs }) => Int32Array.from(needs)),
      programs: cells.map(({ computed }) => (computed ? () => 0 : undefined)),
      dependants: cells.map((_, at) => cells.flatMap(({ needs }, i) => (needs.includes(at) ? [i] : []))),
    }) as unknown as Layout

  test('is all that some cells are computed from, in order; what was measured is computed from none', () => {
    fc.assert(
      fc.property(sheet, fc.uniqueArray(fc.nat(11), { minLength: 1, maxLength: 3 }), (cells, some) => {
        const targets = some.filter((at) => at < cells.length)
        const expected = reached(targets, (at) => (cells[at]?.computed ? (cells[at]?.needs ?? []) : []))
        expect(upstreamOf(layoutOf(cells), targets)).toEqual([...expected].sort((a, b) => a - b))
      }),
    )
  })

  test('is all that would be computed anew, but not what it starts from, unless it comes round another way', () => {
    fc.assert(
      fc.property(sheet, fc.uniqueArray(fc.nat(11), { minLength: 1, maxLength: 3 }), (cells, some) => {
        const sources = some.filter((at) => at < cells.length)
        const dependants = (at: number) =>
          cells.flatMap(({ needs, computed }, i) => (computed && needs.includes(at) ? [i] : []))
        const expected = reached(sources.flatMap(dependants), dependants)
        expect(
          [...downstreamOf(layoutOf(cells), sources).entries()].flatMap(([at, mark]) => (mark ? [at] : [])),
        ).toEqual([...expected].sort((a, b) => a - b))
      }),
    )
  })
})

describe('a part of a sheet, computed with other values,', () => {
  /** Computes some cells with another `a`; what they are then, or that they do not compute. */
  function computed(a: number, names: readonly string[], library = countingLibrary().library): Value[] | false {
    const { engine } = sheetOf(
      [
        given('a', '2'),
        given('b', '3'),
        result('sum', 'a + b'),
        result('twice', '2 * sum'),
        result('share', '6 / (a - 1)'),
        result('counted_length', 'counted(a * 1 mm)'),
        result('large', 'a + a'),
        result('side', 'a * 1 m'),
        result('wide', 'size(side + side, 1 m)'),
        result('depth', 'depth_of_field(f/8, 20 um, 1 / (a * 10), 50 mm)'),
        result('seen', 'min(depth.behind, 100 m)'),
        result('read', 'a', { measured: '7' }),
      ],
      library,
    )
    const at = (name: string): number => engine.positionOf(engine.named(name) as Node)
    const { layout } = engine
    const values = layout.values.slice()
    values[at('a')] = a
    return computeInto(values, layout, names.map(at)) && names.map((name) => values[at(name)] as Value)
  }

  test('is computed in order, given and measured cells as they are', () => {
    expect(computed(5, ['a', 'sum', 'twice'])).toEqual([5, 8, 16])
    // What is not asked for keeps its value.
    expect(computed(5, ['twice'])).toEqual([10])
    expect(computed(5, ['read', 'sum'])).toEqual([7, 8])
  })

  test('is not where one of the cells does not compute, or gives what is no figure', () => {
    expect(computed(1, ['sum', 'share'])).toBe(false)
    expect(computed(1, ['sum'])).toEqual([4])
    expect(computed(8e307, ['large'])).toEqual([1.6e308])
    expect(computed(9e307, ['large'])).toBe(false)
    expect(computed(8e307, ['side', 'wide'])).toEqual([8e307, { width: 1.6e308, height: 1 }])
    expect(computed(9e307, ['side', 'wide'])).toBe(false)
    expect(computed(-1, ['depth'])).toBe(false)
  })

  test('may be infinite where that is meant', () => {
    expect(computed(300, ['depth', 'seen'])).toMatchObject([{ behind: Number.POSITIVE_INFINITY }, 100])
  })

  test('does not hide an error of ours', () => {
    let isBroken = false
    const { library } = countingLibrary(() => {
      if (isBroken) throw new TypeError('broken')
    })
    expect(computed(5, ['counted_length'], library)).toEqual([0.005])
    const sheet = sheetOf([given('a', '2 mm'), result('b', 'counted(a)')], library)
    const { layout } = sheet.engine
    isBroken = true
    expect(() => computeInto(layout.values.slice(), layout, [...layout.order.keys()])).toThrow('broken')
  })

  test('is there where all of it has values', () => {
    const { engine } = sheetOf([given('a', '2'), given('b', ''), result('sum', 'a + b'), result('twice', '2 * a')])
    const at = (...names: string[]) => names.map((name) => engine.positionOf(engine.named(name) as Node))
    expect(areAllComputed(engine.layout, at('a', 'twice'))).toBe(true)
    expect(areAllComputed(engine.layout, at('a', 'sum'))).toBe(false)
    expect(areAllComputed(engine.layout, [])).toBe(true)
  })
})
