import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { fromLink, toLink } from '../../../src/storage/exchange/link.ts'
import { figuresOnly, isFiguresOnly } from '../../../src/storage/figures/figures-only.ts'
import { type Cell, type Outcome, Sheet } from '../../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'
import { check, given, result, sheetOf } from '../../worksheet/make.ts'

const TEMPLATES = JOBS

const shown = (outcome: Outcome): string | undefined =>
  outcome.state === 'value' ? `${outcome.shown.text} ${outcome.shown.mark ?? ''}` : undefined

/** Cells keep their order, behind a first that says what they are. */
const sameIn = (figures: Sheet, at: number): Cell => figures.cells[at + 1] as Cell

/** The sheet of figures, as anyone who opens its link has it. */
const sent = async (sheet: Sheet): Promise<Sheet> =>
  new Sheet(await fromLink(await toLink(figuresOnly(sheet))), LIBRARY)

describe.each(TEMPLATES)('%s as figures only', (name) => {
  const sheet = new Sheet(readTemplate(name), LIBRARY)

  test('shows every result and every check as the sheet did', async () => {
    const figures = await sent(sheet)
    expect(isFiguresOnly(figures.worksheet)).toBe(true)
    for (const [at, cell] of sheet.cells.entries()) {
      const { id } = sameIn(figures, at)
      if (cell.kind === 'given' || cell.kind === 'result') {
        const [was, is] = [shown(sheet.outcome(cell.id)), shown(figures.outcome(id))]
        expect(is?.trim(), cell.name).toBe(was?.trim())
      }
      // A check that waits is no figure.
      if (cell.kind === 'check' && sheet.check(cell.id).state !== 'waiting') {
        const { state, message } = sheet.check(cell.id)
        expect([figures.check(id).state, figures.check(id).message], cell.name).toEqual([state, message])
      }
      if (cell.kind === 'drawing') {
        const { values } = sheet.drawing(cell.id)
        expect(figures.drawing(id).values, cell.id).toEqual(values)
      }
    }
    const { waiting: _, ...judged } = sheet.checkSummary
    expect(figures.checkSummary).toMatchObject(judged)
  })

  test('holds no formula', () => {
    for (const cell of figuresOnly(sheet).cells) {
      const texts = cell.kind === 'result' ? [cell.formula] : cell.kind === 'drawing' ? Object.values(cell.from) : []
      for (const text of texts)
        expect(text.replace(/"[^"]*"|lamp\(|\w+: /g, '')).not.toMatch(/[a-z_]\w*\s*\(|\w\.[a-z]/)
    }
  })
})

test('what a sheet could not compute is left open, and what it could not judge is said', async () => {
  const figures = await sent(
    sheetOf([given('a', '', { unit: 'mm' }), result('b', 'a * 2'), check('c', 'b > 1 mm'), result('d', '2 +')]),
  )
  expect(sameIn(figures, 1)).toMatchObject({ kind: 'given', entry: 'text', value: '' })
  expect(sameIn(figures, 2)).toMatchObject({ kind: 'note' })
  expect(sameIn(figures, 3)).toMatchObject({ kind: 'given', value: '' })
  expect(figures.checkSummary.errors).toBe(0)
})

test('limits, marks and close calls stay', async () => {
  const sheet = sheetOf([
    given('a', '600 mm ± 2 mm', { unit: 'mm' }),
    result('b', 'a * 2 ± 3 mm', { unit: 'mm' }),
    result('t', '1/120 s', { unit: '1/ s' }),
    check('c', 'a < 601 mm', { message: 'It is {a}.', passes: 'Just: {a}.' }),
    check('d', 'a < 500 mm', { message: 'It is {a}, a list {b}.' }),
  ])
  const figures = await sent(sheet)
  for (const [at, id] of ['a', 'b', 't'].entries())
    expect(shown(figures.outcome(sameIn(figures, at).id))).toBe(shown(sheet.outcome(id)))
  expect(figures.check(sameIn(figures, 3).id).state).toBe('marginal')
  expect(figures.check(sameIn(figures, 4).id)).toMatchObject({ state: 'fail', message: sheet.check('d').message })
})

test('what was measured stays beside what was computed', async () => {
  const sheet = sheetOf([given('a', '600 mm', { unit: 'mm' }), result('b', 'a * 2', { unit: 'mm', measured: '1204' })])
  const figures = await sent(sheet)
  const [was, is] = [sheet.outcome('b'), figures.outcome(sameIn(figures, 1).id)]
  expect(is).toMatchObject({ shown: { text: '1204 mm' }, measured: { computed: { shown: { text: '1200 mm' } } } })
  expect(shown(is)).toBe(shown(was))
})

test('steps stay with their ticks, and what is read at them; what is set at the stand stays so', async () => {
  const figures = await sent(
    sheetOf([
      given('a', '2 mm', { unit: 'mm', stand: true }),
      result('b', 'a * 2', { measured: '5 mm', stand: true }),
      result('c', '2 +', { stand: true }),
      check('d', 'b > 1 mm', { stand: true }),
      {
        kind: 'steps',
        id: 's',
        steps: [
          { text: 'One', reading: 'a', done: true },
          { text: 'Two', reading: 'b' },
        ],
      },
    ]),
  )
  for (const at of [0, 1, 2, 3]) expect(sameIn(figures, at)).toMatchObject({ stand: true })
  expect(sameIn(figures, 4)).toMatchObject({
    steps: [
      { text: 'One', reading: 'a', done: true },
      { text: 'Two', reading: 'b' },
    ],
  })
  expect(figures.named('a')).toMatchObject({ value: '2 mm' })
  expect(figures.named('b')).toMatchObject({ measured: '5 mm' })
})

test('ranges and variants become tables of what they were at', async () => {
  const range = { kind: 'range', id: 'r', of: 'a', from: '1', to: '3', count: 2, results: ['b'] } as Cell
  const variants = {
    kind: 'variants',
    id: 'v',
    sets: [{ title: 'More', values: { a: '5' } }],
    results: ['b', 'c'],
  } as Cell
  const figures = await sent(
    sheetOf([
      given('a', '2', { unit: 'mm' }),
      result('b', 'a * 2'),
      check('c', 'b < 9 mm'),
      range,
      variants,
      { ...range, id: 'q' },
    ]),
  )
  expect(sameIn(figures, 3)).toMatchObject({
    kind: 'table',
    label: 'Over a range of a',
    rows: [
      ['1 mm', '2 mm'],
      ['2 mm', '4 mm'],
      ['3 mm', '6 mm'],
    ],
  })
  expect(sameIn(figures, 4)).toMatchObject({
    kind: 'table',
    rows: [
      ['a', '2 mm', '5'],
      ['b', '4 mm', '10 mm, 6 mm over'],
      ['c', 'passes', 'fails'],
    ],
  })
  const names = figures.cells.flatMap((cell) => ('name' in cell ? [cell.name] : []))
  expect(new Set(names).size).toBe(names.length)
  expect(figures.checkSummary.errors).toBe(0)
})
