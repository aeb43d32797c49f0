import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Layout } from '../../../src/worksheet/engine/engine-view.ts'
import { downstreamOf, upstreamOf } from '../../../src/worksheet/engine/partial-recompute.ts'
import { trace } from '../../../src/worksheet/engine/trace.ts'

type State = 'value' | 'waiting' | 'error' | 'faulty'

/** Up to a dozen cells in dependency order, each with a state, and whether it has a program. */
const sheet = fc
  .array(
    fc.record({
      needs: fc.uniqueArray(fc.nat(11), { maxLength: 3 }),
      state: fc.constantFrom<State>('value', 'waiting', 'error', 'faulty'),
      computed: fc.boolean(),
    }),
    { maxLength: 12 },
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
      fc.property(sheet, fc.uniqueArray(fc.nat(11), { maxLength: 3 }), (cells, some) => {
        const targets = some.filter((at) => at < cells.length)
        const expected = reached(targets, (at) => (cells[at]?.computed ? (cells[at]?.needs ?? []) : []))
        expect(upstreamOf(layoutOf(cells), targets)).toEqual([...expected].sort((a, b) => a - b))
      }),
    )
  })

  test('is all that would be computed anew, but not what it starts from, unless it comes round another way', () => {
    fc.assert(
      fc.property(sheet, fc.uniqueArray(fc.nat(11), { maxLength: 3 }), (cells, some) => {
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
