import { describe, expect, test } from 'vitest'
import { bandsOf } from '../../src/app/open/bands.ts'
import { sectionsOf } from '../../src/app/open/sections.ts'
import { readParts } from '../../src/cli/part-files.ts'
import { type Cell, isNamed, type NamedCell, type Worksheet } from '../../src/worksheet/index.ts'
import { Filled, JOBS, open, readTemplate } from './open.ts'

const NAMES = JOBS

const PARTS = readParts()

const templates: ReadonlyMap<string, Worksheet> = new Map(NAMES.map((name) => [name, readTemplate(name)]))
const cellsOf = (name: string): readonly Cell[] => (templates.get(name) as Worksheet).cells
const namedIn = (name: string): NamedCell[] => cellsOf(name).filter(isNamed)

/** Everything of a cell that a reader sees or the engine reads, as one text. */
const words = (cell: Cell): string => Object.values(cell).flat().map(String).join(' ')

test('there are templates to hold to this', () => {
  expect(NAMES.length).toBeGreaterThanOrEqual(10)
})

describe.each(NAMES)('%s', (name) => {
  test('computes at its defaults, with one check failing at most', () => {
    const sheet = open(name)
    expect(sheet.problems).toEqual([])
    expect(sheet.failing.length).toBeLessThanOrEqual(1)
  })

  test('says at its defaults nothing that is left open', () => {
    const sheet = open(name)
    for (const check of sheet.checks) {
      expect(sheet.message(check)).not.toMatch(/—|[{}]/)
      expect(sheet.message(check)).toMatch(/\.$/)
    }
  })

  test.each(['yes', 'no'])(
    'shows no dash for a figure where a check passes, whichever given is left empty; glossy: %s',
    (glossy) => {
      const worksheet = templates.get(name) as Worksheet
      const answered = worksheet.cells.map((cell) =>
        cell.kind === 'given' && cell.name === 'glossy' ? { ...cell, value: glossy } : cell,
      )
      for (const given of answered) {
        if (given.kind !== 'given') continue
        const { sheet } = new Filled({
          ...worksheet,
          cells: answered.map((cell) => (cell === given ? { ...given, value: '' } : cell)),
        })
        for (const { kind, id } of answered)
          if (kind === 'check' && sheet.checkState(id) === 'pass')
            expect(sheet.check(id).message, `without ${given.name}`).not.toContain('—')
      }
    },
  )

  test('waits, and is not in error, while nothing is filled in', () => {
    const worksheet = templates.get(name) as Worksheet
    const cells = worksheet.cells.map((cell) => (cell.kind === 'given' ? { ...cell, value: '' } : cell))
    const { sheet } = new Filled({ ...worksheet, cells })
    expect(sheet.checkSummary.errors).toBe(0)
    expect(sheet.checkSummary.fail).toBe(0)
  })

  test('names no two cells alike', () => {
    const all = namedIn(name).map((cell) => cell.name)
    expect(all).toEqual([...new Set(all)])
  })

  test('labels no two cells alike: a list of what fails or is needed has only labels', () => {
    const labels = namedIn(name).map(({ label }) => label)
    expect(labels).toEqual([...new Set(labels)])
  })

  test('labels every cell shortly, in sentence case', () => {
    for (const cell of namedIn(name)) {
      const label = cell.label ?? ''
      expect(label, cell.name).toMatch(/^(\p{Lu}|f-)/u)
      expect(label, cell.name).not.toMatch(/[.:]$/)
      expect(label.length, `${cell.name}: ${label}`).toBeLessThanOrEqual(46)
      // Sentence case: no capital after the first word, but for names of measures and processes.
      expect(label.split(' ').slice(1).join(' '), cell.name).not.toMatch(/(?<![A-Z])\b(?!ISO\b|LED\b|L\*)[A-Z][a-z]/)
    }
  })

  test('names a quantity in every label, which is also read outside its section, or says what to set', () => {
    for (const cell of namedIn(name)) {
      const label = cell.label ?? ''
      expect(label, cell.name).not.toMatch(/\b(it|its|them|they|this(?! year| morning)|that)\b/i)
      expect(label, cell.name).not.toMatch(/^(At|In|On|By|All|And|Or|Then)\b/)
      if (!/^(Set|Put|Raise|Aim)\b/.test(label))
        expect(label, cell.name).not.toMatch(/ (by|to|for|from|than|is|reads|reaches|takes)$/)
    }
  })

  test('asks nothing twice: no two givens of a section have one label', () => {
    const seen = new Set<string>()
    for (const cell of cellsOf(name)) {
      if (cell.kind === 'note' && cell.role === 'heading') seen.clear()
      if (cell.kind !== 'given') continue
      expect(seen.has(cell.label ?? ''), cell.label).toBe(false)
      seen.add(cell.label ?? '')
    }
  })

  test('uses every given: what nothing reads is not asked', () => {
    for (const given of cellsOf(name).filter((cell) => cell.kind === 'given')) {
      // A piece of kit is asked for the givens it fills in.
      if (given.entry === 'kit') {
        const filled = Object.values(given.fills ?? {})
        expect(filled, given.name).not.toEqual([])
        for (const one of filled) expect(namedIn(name).map((cell) => cell.name)).toContain(one)
        continue
      }
      const reader = new RegExp(`(?<![A-Za-z0-9_])${given.name}(?![A-Za-z0-9_])`)
      const read = cellsOf(name).some(
        (cell) =>
          (cell.kind === 'result' && reader.test(cell.formula)) ||
          (cell.kind === 'check' && reader.test(`${cell.condition} ${cell.message}`)) ||
          ((cell.kind === 'drawing' || cell.kind === 'run') && reader.test(Object.values(cell.from).join(' '))) ||
          (cell.kind === 'table' && cell.columns.some(({ formula = '' }) => reader.test(formula))),
      )
      expect(read, given.name).toBe(true)
    }
  })

  test('has each check say what it found and what to do', () => {
    for (const cell of namedIn(name)) {
      if (cell.kind !== 'check') continue
      expect(cell.passes, cell.name).toBeTruthy()
      expect(cell.message, cell.name).not.toBe(cell.passes)
      expect(cell.message.length, cell.name).toBeGreaterThan(30)
      expect(cell.label, cell.name).toBeTruthy()
    }
  })

  test('says of every quantity what unit it is in, or that it is a plain number', () => {
    for (const cell of cellsOf(name))
      if (cell.kind === 'given' && ['quantity', 'list'].includes(cell.entry ?? 'quantity'))
        expect(cell.unit, cell.name).toBeTruthy()
  })

  test('asks what a reading is taken under before the reading, which a later answer would make older', () => {
    const { sheet } = open(name)
    const { order, needs } = sheet.engine.layout
    const late: string[] = []
    // As the page asks: the fine adjustments of a band follow what else it asks.
    const asked = bandsOf(sectionsOf(cellsOf(name))).flatMap(({ sections }) => [
      ...sections.flatMap(({ givens }) => givens),
      ...sections.flatMap(({ fineGivens }) => fineGivens),
    ])
    const placeOf = (id: string): number => asked.findIndex((cell) => cell.id === id)
    for (const reading of cellsOf(name)) {
      if (reading.kind !== 'given' || !reading.read_under) continue
      const seen = new Set<number>()
      const visit = (at: number): void => {
        const cell = order[at]?.cell
        if (!cell || seen.has(at)) return
        seen.add(at)
        if (cell.kind !== 'given') needs[at]?.forEach(visit)
        else if (placeOf(cell.id) > placeOf(reading.id)) late.push(`${cell.name} after ${reading.name}`)
      }
      for (const under of reading.read_under) visit(order.findIndex(({ cell }) => cell.name === under))
    }
    expect(late).toEqual([])
  })

  test('is on the shelf', () => {
    const shelf = (templates.get(name) as { shelf?: Record<string, unknown> }).shelf
    expect(shelf?.answer).toMatch(/^\p{Lu}.*[^.]$/u)
    expect(shelf?.about).toMatch(/^\p{Lu}.*\.$/u)
    expect(shelf?.order).toBeTypeOf('number')
    const words = shelf?.words as readonly string[]
    expect(words.length).toBeGreaterThanOrEqual(4)
    for (const word of words) expect(word).toMatch(/^\p{L}[\p{L} -]+$/u)
  })

  test('begins with a heading, as every section does', () => {
    expect(cellsOf(name)[0]).toMatchObject({ kind: 'note', role: 'heading' })
  })
})

test('no two templates are at one place of the shelf, or answer alike', () => {
  const shelves = NAMES.map((name) => (templates.get(name) as unknown as { shelf: Record<string, unknown> }).shelf)
  for (const key of ['order', 'answer'] as const)
    expect(new Set(shelves.map((shelf) => shelf[key])).size).toBe(NAMES.length)
})

describe('the published names', () => {
  const uses = new Map<string, { readonly template: string; readonly cell: NamedCell }[]>()
  for (const template of NAMES)
    for (const cell of namedIn(template)) uses.set(cell.name, [...(uses.get(cell.name) ?? []), { template, cell }])

  test('has no two names for one label: what is asked alike is one thing', () => {
    const names = new Map<string, Set<string>>()
    for (const [name, cells] of uses)
      for (const { cell } of cells)
        if (cell.kind === 'given') names.set(cell.label ?? '', (names.get(cell.label ?? '') ?? new Set()).add(name))
    const several = [...names].filter(([, of]) => of.size > 1).map(([label, of]) => `“${label}”: ${[...of].join(', ')}`)
    expect(several).toEqual([])
  })

  test.each([...PARTS.names].filter(([, { entry }]) => entry !== undefined && entry !== 'kit'))(
    '%s is asked for in one way wherever it is asked',
    (name, { entry, unit }) => {
      for (const { template, cell } of uses.get(name) ?? []) {
        if (cell.kind !== 'given') continue
        expect(cell.entry ?? 'quantity', template).toBe(entry)
        expect(cell.unit, template).toBe(unit)
      }
    },
  )

  test('has givens of one name share their range, but for zero where a part may be flat or dark', () => {
    for (const [name, cells] of uses) {
      const ranges = cells.flatMap(({ cell }) =>
        cell.kind === 'given' ? [`${cell.least ?? ''}..${cell.most ?? ''}`] : [],
      )
      if (name !== 'unevenness') expect(new Set(ranges).size, `${name}: ${ranges.join(', ')}`).toBeLessThanOrEqual(1)
    }
  })
})

describe('cautions are where harm may be done', () => {
  const harms: readonly (readonly [what: string, where: RegExp, said: RegExp])[] = [
    ['hot lamps', /\blamp\(|\blamp_current\(/, /\bhot\b/],
    ['the mains', /\bcircuit_share\(/, /licensed electrician/],
    ['flash capacitors', /\bguide_aperture\(/, /dangerous charge/],
    ['a camera above the original', /\bcolumn_height\(|\boverhang_moment\(/, /[Tt]ether/],
    ['a carriage that moves', /\bmirror_tilt\(|\btube_choices\(|\bcolumn_height\(/, /\b[Ll]ock the (carriage|column)/],
    ['light on what fades', /\blight_dose\(|\blamp\(/, /[Ll]ight (damage adds up|does lasting damage)/],
    ['a page pressed flat', /\bpage_bulge\(/, /Never press/],
    ['a stand that tips', /\boverhang_moment\(/, /under it/],
  ]

  test.each(harms)('%s', (_, where, said) => {
    const touched = NAMES.filter((name) => cellsOf(name).some((cell) => where.test(words(cell))))
    expect(touched).not.toEqual([])
    for (const name of touched) {
      const cautions = cellsOf(name).flatMap((cell) =>
        cell.kind === 'note' && cell.role === 'caution' ? [cell.text] : [],
      )
      expect(cautions.join(' '), name).toMatch(said)
    }
  })
})

test('no maker, brand, program or person is named: capitals inside a sentence are units, standards or our own scenario', () => {
  const ours = new Set([
    'ISO',
    'CIE',
    'CIEDE2000',
    'FADGI',
    'EV',
    'Hz',
    'LED',
    'L',
    'D50',
    'TIFF',
    'BigTIFF',
    'GiB',
    'JPEG',
    'PNG',
    'SHA',
    'EUR',
    'S',
    'Ferry',
    'Lane',
    'Two',
    'A',
    'B',
  ])
  const stray = NAMES.flatMap((name) => {
    const { title, job = '' } = templates.get(name) as Worksheet
    const shelf = (templates.get(name) as unknown as { shelf: { answer: string; about: string } }).shelf
    const said = cellsOf(name).flatMap((cell) =>
      ['label', 'hint', 'text', 'about', 'message', 'pass', 'title'].flatMap((key) =>
        typeof cell[key] === 'string' ? [(cell[key] as string).replace(/\{[^}]*\}/g, '0')] : [],
      ),
    )
    return [title, job, shelf.answer, shelf.about, ...said]
      .flatMap((text) => [...text.matchAll(/(?<=[\p{Ll}\d,;:“(] ?)(?<![\p{L}])\p{Lu}[\p{L}\d]*/gu)])
      .filter(([word]) => !ours.has(word))
      .map(([word]) => `${name}: ${word}`)
  })
  expect(stray).toEqual([])
})
