import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { planJoin } from '../../src/worksheet/compose/join.ts'
import { type Cell, type Given, isNamed, Sheet, STAGES, type Stage } from '../../src/worksheet/index.ts'
import { Filled, readTemplate } from './open.ts'

interface Shelf {
  readonly order: number
  readonly moment: Stage
}

const shelfOf = (name: string): Shelf => (readTemplate(name) as unknown as { shelf: Shelf }).shelf

/** The templates in the order they stand on the shelf: by the moment of use. */
const NAMES = readdirSync(new URL('../../templates/', import.meta.url))
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace(/\.json$/, ''))
  .map((name) => ({ name, ...shelfOf(name) }))
  .sort((a, b) => STAGES.indexOf(a.moment) - STAGES.indexOf(b.moment) || a.order - b.order)
  .map(({ name }) => name)

/** Neighbours, started from either. */
const PAIRS = NAMES.slice(1).flatMap((name, at): (readonly [string, string])[] => {
  const before = NAMES[at] as string
  return [
    [before, name],
    [name, before],
  ]
})

/** One template set into a sheet started from another. */
function joined(first: string, second: string) {
  let made = 0
  const sheet = new Sheet(readTemplate(first), LIBRARY)
  const { title, cells } = readTemplate(second)
  const before = sheet.cells
  const plan = planJoin(
    sheet,
    { key: second, title, cells, stage: shelfOf(second).moment },
    {
      freshId: () => `new_${++made}`,
    },
  )
  if (plan.change) sheet.apply(plan.change)
  return { sheet, before, ...plan }
}

const givens = (cells: readonly Cell[]): Given[] => cells.filter((cell): cell is Given => cell.kind === 'given')

describe.each(PAIRS)('%s, then %s', (first, second) => {
  test('no name clashes', () => {
    const { meetings } = joined(first, second)
    const clashing = meetings.filter(({ clashes }) => clashes).map(({ name, why }) => (why ? `${name}: ${why}` : name))
    expect(clashing, 'to be in shared/vocabulary.json, or to be named apart').toEqual([])
  })

  test('nothing is asked twice', () => {
    const { before, cells } = joined(first, second)
    const asked = new Map(givens(before).map(({ label, name }) => [label, name]))
    const twice = givens(cells).filter(({ label }) => asked.has(label))
    expect(twice.map(({ label, name }) => `«${label}» as ${name} and as ${asked.get(label)}`)).toEqual([])
  })

  test('all of it computes, under names of its own', () => {
    const { sheet } = joined(first, second)
    expect(new Filled(sheet.worksheet).troubles).toEqual([])
    const names = sheet.cells.filter(isNamed).map(({ name }) => name)
    expect(names).toEqual([...new Set(names)])
  })
})
