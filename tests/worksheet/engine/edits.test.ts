import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Cell, Change, Sheet } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

const NAMES = ['a', 'b', 'c', 'd', 'e'] as const
const name = fc.constantFrom(...NAMES)

/** A formula with what it means, so that it can be worked out without the engine. */
interface Formula {
  readonly text: string
  readonly names: readonly string[]
  readonly of: (figure: (name: string) => number) => number
}
const formula: fc.Arbitrary<Formula> = fc.oneof(
  fc.tuple(name, name).map(([x, y]): Formula => ({ text: `${x} + ${y}`, names: [x, y], of: (at) => at(x) + at(y) })),
  fc
    .tuple(name, name)
    .map(([x, y]): Formula => ({ text: `${x} - 2 * ${y}`, names: [x, y], of: (at) => at(x) - 2 * at(y) })),
  name.map((x): Formula => ({ text: `6 / ${x}`, names: [x], of: (at) => 6 / at(x) })),
  name.map((x): Formula => ({ text: `${x} + gone`, names: [x, 'gone'], of: () => Number.NaN })),
  name.map((x): Formula => ({ text: `${x} ± 1`, names: [x], of: (at) => at(x) })),
  fc.constant<Formula>({ text: '4', names: [], of: () => 4 }),
)
type Made = { readonly cell: Cell; readonly formula?: Formula; readonly typed?: string }
const made: fc.Arbitrary<Made> = fc.oneof(
  fc
    .tuple(name, fc.constantFrom('', '0', '1', '2', '3', '3 ± 1', '2 x'))
    .map(([id, typed]) => ({ cell: given(id, typed, { unit: '1' }), typed })),
  fc.tuple(name, formula).map(([id, one]) => ({ cell: result(id, one.text), formula: one })),
  fc
    .tuple(name, formula, fc.constantFrom('5', 'nonsense'))
    .map(([id, one, measured]) => ({ cell: result(id, one.text, { measured }), formula: one, typed: measured })),
)

const WAITING = 'waiting'
const ERROR = 'error'
type Worked = number | typeof WAITING | typeof ERROR

/** What each cell is, worked out from the formulas by themselves. */
function workedOut(all: readonly Made[]): ReadonlyMap<string, Worked> {
  const byName = new Map(all.map((one) => [one.cell.id, one]))
  const leadsTo = (from: string, to: string, seen = new Set<string>()): boolean =>
    (byName.get(from)?.formula?.names ?? []).some(
      (next) => next === to || (!seen.has(next) && leadsTo(next, to, seen.add(next))),
    )
  /** Whether it is known what kind of quantity a cell is: only then can what was measured be read. */
  const isKnown = (id: string): boolean =>
    byName.has(id) && !leadsTo(id, id) && (byName.get(id)?.formula?.names ?? []).every(isKnown)
  const found = new Map<string, Worked>()
  const work = (id: string): Worked => {
    const known = found.get(id)
    if (known !== undefined) return known
    const { formula: own, typed } = byName.get(id) ?? {}
    const value = ((): Worked => {
      if (!own)
        return typed === undefined || typed === '2 x' ? ERROR : typed === '' ? WAITING : Number.parseFloat(typed)
      if (leadsTo(id, id) || own.names.some((one) => !byName.has(one))) return ERROR
      if (typed === '5' && isKnown(id)) return 5
      const needs = own.names.map(work)
      if (needs.includes(ERROR)) return ERROR
      if (needs.includes(WAITING)) return WAITING
      const figure = own.of((one) => work(one) as number)
      return Number.isFinite(figure) ? figure : ERROR
    })()
    found.set(id, value)
    return value
  }
  for (const { cell } of all) work(cell.id)
  return found
}

const seenIn = (sheet: Sheet): ReadonlyMap<string, Worked> =>
  new Map(
    sheet.cells.map(({ id }) => {
      const outcome = sheet.outcome(id)
      return [id, outcome.state === 'value' ? (outcome.value as number) : outcome.state]
    }),
  )

/** All that is said of each cell. */
const saidIn = (sheet: Sheet): ReadonlyMap<string, string> => {
  // Tests run on busy machines: no limits are left out for taking long.
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  return new Map(sheet.cells.map(({ id }) => [id, JSON.stringify(sheet.outcome(id))]))
}

type Step = { readonly put: Made } | { readonly remove: string } | { readonly move: string; readonly to: number }
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 5, arbitrary: made.map((put) => ({ put })) },
  { weight: 1, arbitrary: name.map((remove) => ({ remove })) },
  { weight: 1, arbitrary: fc.tuple(name, fc.nat(4)).map(([move, to]) => ({ move, to })) },
)

test('after any edits each cell is what its formula gives, waits for what is empty, or is in error, as in a fresh sheet', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(made, { selector: ({ cell }) => cell.id, minLength: 2 }),
      fc.array(step, { maxLength: 10 }),
      (first, steps) => {
        const sheet = sheetOf(first.map(({ cell }) => cell))
        let all = [...first]
        expect(seenIn(sheet)).toEqual(workedOut(all))
        for (const one of steps) {
          const before = saidIn(sheet)
          const reported: ('all' | ReadonlySet<string>)[] = []
          const stop = sheet.watch((changed) => reported.push(changed))
          sheet.apply(changeOf(one, all))
          stop()
          all =
            'put' in one
              ? [...all.filter(({ cell }) => cell.id !== one.put.cell.id), one.put]
              : 'remove' in one
                ? all.filter(({ cell }) => cell.id !== one.remove)
                : all
          const after = seenIn(sheet)
          expect(after).toEqual(workedOut(all))
          const isReported = (id: string): boolean => reported.some((ids) => ids === 'all' || ids.has(id))
          const now = saidIn(sheet)
          expect(now).toEqual(saidIn(sheetOf(sheet.cells)))
          for (const [id, said] of now) if (before.get(id) !== said) expect(isReported(id), `${id}: ${said}`).toBe(true)
          for (const [id, value] of after) if (value === WAITING) expectWaiting(sheet, id, all, after)
        }
      },
    ),
  )
})

/** What waits names, in the end, empty givens alone: those its formula leads to. */
function expectWaiting(sheet: Sheet, id: string, all: readonly Made[], now: ReadonlyMap<string, Worked>): void {
  const ends = (from: string): string[] => {
    const own = all.find(({ cell }) => cell.id === from)?.formula
    return own ? own.names.filter((one) => now.get(one) === WAITING).flatMap(ends) : [from]
  }
  const outcome = sheet.outcome(id)
  const expected = [...new Set(ends(id))].filter((end) => end !== id)
  expect(outcome.state === 'waiting' && [...outcome.on].sort()).toEqual(expected.sort())
}

/** A step as a change of the sheet; what is there already is replaced, what is not is added, nothing removed or moved. */
function changeOf(one: Step, all: readonly Made[]): Change {
  const isThere = (id: string): boolean => all.some(({ cell }) => cell.id === id)
  if ('put' in one) {
    const { cell } = one.put
    return isThere(cell.id) ? { do: 'replace', cell } : { do: 'add', cell, at: 0 }
  }
  if ('remove' in one) return isThere(one.remove) ? { do: 'remove', id: one.remove } : { do: 'title', title: 'Same' }
  return isThere(one.move)
    ? { do: 'move', id: one.move, to: Math.min(one.to, all.length - 1) }
    : { do: 'title', title: 'Same' }
}
