import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { asMine } from '../../../src/worksheet/analysis/provenance.ts'
import { choose } from '../../../src/worksheet/compose/choose-parts.ts'
import { compose } from '../../../src/worksheet/compose/compose.ts'
import { isPlace } from '../../../src/worksheet/compose/part-library.ts'
import { type Given, Sheet, type Steps } from '../../../src/worksheet/index.ts'
import { composed, errorsOf, namesOf, PART_IDS, PARTS, permutations, READ, set } from './sets.ts'

const pairs = PART_IDS.flatMap((a, at) => PART_IDS.slice(at + 1).map((b) => [a, b] as const))

/** Sixty triples, others at every run. */
const triples = Array.from({ length: 60 }, () => pickThree())

describe('owners', () => {
  const cellsOf = (id: string) => PARTS.parts.get(id)?.cells ?? []

  test('every name that a part computes belongs to one role', () => {
    const owners = new Map<string, Set<string>>()
    for (const id of PART_IDS) {
      const part = PARTS.parts.get(id)
      for (const cell of cellsOf(id)) {
        if (isPlace(cell) || cell.name === undefined) continue
        const published = PARTS.names.get(cell.name)?.role
        const role =
          published !== undefined && (part?.claims ?? []).includes(published) ? published : (part?.role ?? '')
        owners.set(cell.name, (owners.get(cell.name) ?? new Set()).add(published ?? role).add(role))
      }
    }
    expect([...owners].filter(([, roles]) => roles.size > 1).map(([name, roles]) => `${name}: ${[...roles]}`)).toEqual(
      [],
    )
  })

  test('every role is known, and every part fills one', () => {
    const roles = new Set(PARTS.roles.map(({ role }) => role))
    for (const [name, { role }] of PARTS.names) expect(roles, name).toContain(role)
    for (const [id, part] of PARTS.parts) {
      expect(roles, id).toContain(part.role)
      for (const needed of part.needs ?? []) expect(PART_IDS).toContain(needed)
      for (const step of part.steps) expect(PARTS.phases, `${id}: ${step.text}`).toContain(step.phase)
    }
  })

  test('no two parts of a role have one rank', () => {
    const ranks = [...PARTS.parts.values()].map(({ role, rank }) => `${role} ${rank}`)
    expect(new Set(ranks).size).toBe(ranks.length)
  })

  test('an older name means no name that is still in use by the same role', () => {
    for (const [alias, names] of PARTS.aliases) for (const name of names) expect(name, alias).not.toBe(alias)
  })

  test('no two figures of parts that may be in one sheet have one label', () => {
    const named = new Map<string, Map<string, Set<string>>>()
    for (const [id, { cells }] of PARTS.parts)
      for (const cell of cells) {
        const name = isPlace(cell) ? cell.given : cell.kind === 'result' ? cell.name : undefined
        const label = (cell.label as string | undefined) ?? PARTS.names.get(name ?? '')?.label
        if (name === undefined || label === undefined) continue
        const names = named.get(label) ?? new Map<string, Set<string>>()
        named.set(label, names.set(name, (names.get(name) ?? new Set()).add(id)))
      }
    const roleOf = (id: string): string | undefined => PARTS.parts.get(id)?.role
    const mayMeet = (some: ReadonlySet<string>, others: ReadonlySet<string>): boolean =>
      [...some].some((one) => [...others].some((other) => one === other || roleOf(one) !== roleOf(other)))
    const twice = [...named].flatMap(([label, names]) => {
      const all = [...names]
      const meet = all.some(([, some], at) => all.slice(at + 1).some(([, others]) => mayMeet(some, others)))
      return meet ? [`${label}: ${all.map(([name]) => name)}`] : []
    })
    expect(twice).toEqual([])
  })

  test('a usual value is a habit: no reading has one', () => {
    for (const [name, known] of PARTS.names) if (known.reading) expect(known.usual, name).toBeUndefined()
    for (const [id, { usual = {} }] of PARTS.parts)
      for (const name of Object.keys(usual)) expect(PARTS.names.get(name)?.reading, `${id}: ${name}`).toBeUndefined()
  })

  /** What is taken as the trade has it until it is known better: by common practice, no source. */
  const TAKEN_AS: Readonly<Record<string, readonly string[]>> = {
    // Flat, thin and alone, until it is seen to be otherwise.
    original: ['curl', 'original_thickness', 'page_step', 'strip_frames', 'strips'],
    // A symmetrical thin lens, where no data sheet says more.
    kit: ['pupil_ratio', 'principal_gap'],
    support: ['sensor_to_carriage'],
    light: ['rendering_limit', 'colour_limit', 'way'],
    backdrop: ['back_limit'],
    // Of safety, rights and price there is no habit.
    care: [],
    board: [],
    load: [],
    heat: [],
    fluorescence: [],
    price: [],
  }

  test('a usual value is no dimension of equipment, room or original, and no figure of safety, rights or price', () => {
    for (const [role, taken] of Object.entries(TAKEN_AS)) {
      const usual = [...PARTS.names].flatMap(([name, known]) =>
        known.role === role && known.usual !== undefined ? [name] : [],
      )
      expect(usual.sort(), role).toEqual([...taken].sort())
    }
    for (const name of ['per_frame', 'trial_timed', 'insured', 'rights'])
      expect(PARTS.names.get(name)?.usual, name).toBeUndefined()
  })
})

test('flash is compared with lamps where neither is chosen or flash is, and not asked for where there are lamps', () => {
  const flash = ['pop_dose', 'pops_fired', 'modelling', 'flash_gentler', 'flash_ratio']
  const there = (...ids: readonly string[]): string[] =>
    namesOf(composed(set(...ids)).cells).filter((name) => flash.includes(name))
  expect(there('care').sort()).toEqual([...flash].sort())
  expect(there('care', 'flash').sort()).toEqual([...flash].sort())
  expect(there('care', 'flash', 'pair').sort()).toEqual([...flash].sort())
  for (const [id, { role }] of PARTS.parts) if (role === 'light') expect(there('care', id, 'lux'), id).toEqual([])
})

describe.each(PART_IDS)('the part %s alone', (id) => {
  const worksheet = composed(set(id), READ)

  test('computes, and asks for nothing twice', () => {
    expect(errorsOf(worksheet)).toEqual([])
    const names = namesOf(worksheet.cells)
    expect(names).toEqual([...new Set(names)])
    const ids = worksheet.cells.map((cell) => cell.id)
    expect(ids).toEqual([...new Set(ids)])
  })

  const unread = composed(set(id))

  test('takes no reading from an example', () => {
    for (const cell of unread.cells)
      if (cell.kind === 'given' && PARTS.names.get(cell.name)?.reading) expect(cell.value, cell.name).toBe('')
  })

  test('ticks nothing off in the rows of an example, and has nothing counted or timed in them', () => {
    for (const cell of unread.cells) {
      if (cell.kind !== 'table') continue
      const read = cell.columns.flatMap(({ entry, may_be_empty }, at) => (entry === 'tick' || may_be_empty ? [at] : []))
      expect(
        cell.rows.flatMap((row) => read.map((at) => row[at])).filter((text) => text !== ''),
        cell.name,
      ).toEqual([])
    }
  })

  test('says nothing of a figure that is not known', () => {
    const sheet = new Sheet(asMine(unread), LIBRARY)
    for (const cell of unread.cells) {
      if (cell.kind !== 'check') continue
      const { state, message } = sheet.check(cell.id)
      if (state !== 'waiting') expect(message, cell.name).not.toContain('—')
    }
  })
})

describe('sets of parts', { timeout: 300_000 }, () => {
  test('any two parts make the same cells in either order, and adding one again changes nothing', () => {
    for (const [a, b] of pairs) {
      const one = JSON.stringify(composed(set(a, b)).cells)
      expect(JSON.stringify(composed(set(b, a, b)).cells), `${a}, ${b}`).toBe(one)
    }
  })

  test('any three parts make the same cells in every order', () => {
    for (const triple of triples) {
      const [first, ...others] = permutations(triple).map((order) => JSON.stringify(composed(set(...order)).cells))
      for (const other of others) expect(other, triple.join(', ')).toBe(first)
    }
  })

  test('have one set-up drawing at most, one owner of each name, and steps in the order of work', () => {
    for (const [a, b] of pairs) {
      const { cells } = composed(set(a, b))
      const names = namesOf(cells)
      expect(names.length, `${a}, ${b}`).toBe(new Set(names).size)
      const drawings = cells.filter(
        (cell) => cell.kind === 'drawing' && cell.drawing === 'set-up' && cell.id !== 'drawing_back',
      )
      expect(drawings.length, `${a}, ${b}`).toBeLessThanOrEqual(1)
      for (const cell of cells) {
        if (cell.kind !== 'steps') continue
        const phases = (cell as Steps).steps.map((step) => PARTS.phases.indexOf(step.phase as string))
        expect(phases, `${a}, ${b}`).toEqual([...phases].sort((x, y) => x - y))
        const readings = cell.steps.flatMap(({ reading }) => reading ?? [])
        expect(readings, `${a}, ${b}`).toEqual([...new Set(readings)])
      }
      // Examples of one role agree with each other: they are its part's, or the name's.
      const { parts } = choose(PARTS, set(a, b))
      for (const cell of cells) {
        if (cell.kind !== 'given' || cell.from?.kind !== 'example') continue
        const known = PARTS.names.get(cell.name)
        const owner = parts.find(({ role, claims = [] }) => [role, ...claims].includes(known?.role ?? ''))
        if (owner && cell.value !== owner.example?.[cell.name])
          expect(cell.value, `${a}, ${b}: ${cell.name}`).toBe(known?.example)
      }
    }
  })

  test('a part replaced and chosen again leaves the sheet as it was', () => {
    for (const [a, b] of pairs) {
      if (PARTS.parts.get(a)?.role !== PARTS.parts.get(b)?.role) continue
      const before = composed([{ part: a }, { part: b }])
      const changed = composed([{ part: a }, { part: b, by: 'hand' }])
      const back = composed([{ part: a, by: 'hand' }, { part: b }])
      const same = [changed, back].filter((one) => JSON.stringify(one.cells) === JSON.stringify(before.cells))
      expect(same.length, `${a}, ${b}`).toBeGreaterThanOrEqual(1)
    }
  })

  test('what a part needs comes with it', () => {
    expect(choose(PARTS, set('film')).parts.map(({ id }) => id)).toEqual(['film', 'panel', 'panel-exposure'])
  })

  test('says which parts give way', () => {
    expect(choose(PARTS, set('one-frame', 'tiles')).replaced).toEqual([{ part: 'one-frame', by: 'tiles' }])
    expect(choose(PARTS, [{ part: 'one-frame', by: 'hand' }, { part: 'tiles' }]).replaced).toEqual([
      { part: 'tiles', by: 'one-frame' },
    ])
  })
})

describe('set-ups', () => {
  const normal = set(
    'sheet',
    'camera',
    'one-frame',
    'lens-alone',
    'column',
    'pair',
    'lamps-clear',
    'depth',
    'lux',
    'care',
  )
  const two = () =>
    composedWith([{ prefix: 'raking', title: 'Raking light', parts: [{ part: 'one-lamp', by: 'hand' as const }] }])
  const composedWith = (
    setUps: readonly { prefix: string; title: string; parts: readonly { part: string; by: 'hand' }[] }[],
  ) => composeWith(normal, setUps)

  test('the first has bare names, a later one its own under its prefix, and what they share is there once', () => {
    const names = namesOf(two().cells)
    expect(names).toContain('aperture')
    expect(names).toContain('raking_aperture')
    expect(names).toContain('raking_key_elevation')
    expect(names.filter((name) => /original$/.test(name))).toEqual(['original'])
    expect(names.filter((name) => /focal$/.test(name))).toEqual(['focal'])
    expect(names).toEqual([...new Set(names)])
    expect(errorsOf(two())).toEqual([])
  })

  test('the light received adds up over them', () => {
    const { cells } = two()
    expect(cells.find((cell) => cell.id === 'all_dose')).toMatchObject({ formula: 'dose + raking_dose' })
    expect(cells.find((cell) => cell.id === 'session_dose')).toMatchObject({ formula: 'all_dose' })
  })

  test('each has one drawing', () => {
    const drawings = two().cells.filter((cell) => cell.kind === 'drawing' && cell.drawing === 'set-up')
    expect(drawings.map(({ id }) => id)).toEqual(['drawing_set_up', 'raking_drawing_set_up'])
  })

  test('a later one starts from what is filled in for the first', () => {
    const given = two().cells.find((cell): cell is Given => cell.kind === 'given' && cell.name === 'raking_aperture')
    expect(given?.value).toBe('f/8')
  })
})

function composeWith(
  parts: ReturnType<typeof set>,
  setUps: readonly { prefix: string; title: string; parts: readonly { part: string; by: 'hand' }[] }[],
) {
  return compose(PARTS, { title: 'A sheet', parts, setUps, givens: READ }).worksheet
}

function pickThree(): readonly string[] {
  const left = [...PART_IDS]
  return [0, 1, 2].map(() => left.splice(Math.floor(Math.random() * left.length), 1)[0] as string)
}
