import fc from 'fast-check'
import { FORMAT, VERSION } from '../../src/worksheet/format/format.ts'
import { JOBS, readTemplate } from '../templates/open.ts'

/** Quantities a technician types, each with its unit. */
const QUANTITIES = [
  ['60 mm', 'mm'],
  ['420 mm ± 2 mm', 'mm'],
  ['1.2 m', 'mm'],
  ['f/8', 'f/'],
  ['1/125 s', 's'],
  ['400', 'ppi'],
  ['45°', '°'],
  ['5600 K', 'K'],
  ['1:4', '1:'],
  ['0.5 stop', 'stop'],
  ['3', ''],
] as const

const quantity = fc.constantFrom(...QUANTITIES)
const factor = fc.constantFrom('2', '0.5', '1000', '1e-9', '0', '-1')

/** Formulas that compute, over the givens of a sheet by number, and some that cannot. */
const formulaOver = (names: readonly string[]): fc.Arbitrary<string> => {
  const name = fc.constantFrom(...names)
  return fc.oneof(
    fc.tuple(factor, name).map(([n, a]) => `${n} * ${a}`),
    fc.tuple(name, name).map(([a, b]) => `${a} / ${b}`),
    fc.tuple(name, name).map(([a, b]) => `when(${a} > 0 * ${a}, ${b}, 2 * ${b})`),
    fc.tuple(name, name).map(([a, b]) => `${a} + ${b}`),
    name.map((a) => `sqrt(${a} * ${a})`),
    name.map((a) => `min(${a}, 2 * ${a})`),
  )
}

/**
 * Sheets whose givens are numbers and whose results compute, with ranges, tables, variants, runs and drawings over them;
 * what is typed into these, and every text, may be hostile.
 */
export const numericSheets = (text: fc.Arbitrary<string>, value: fc.Arbitrary<string>): fc.Arbitrary<string> => {
  const typed = fc.oneof(
    { weight: 3, arbitrary: quantity.map(([one]) => one) },
    { weight: 2, arbitrary: value },
    { weight: 1, arbitrary: text },
  )
  const names = ['a', 'b', 'constructor', 'd', 'toString']
  const results = ['r0', 'r1', 'r2']
  const all = fc.constantFrom(...names, ...results, 'missing')
  const formula = formulaOver(names)
  const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })
  return fc
    .record({
      title: text,
      givens: fc.tuple(...names.map(() => quantity)),
      formulas: fc.tuple(...results.map(() => formula)),
      measured: maybe(typed),
      margin: maybe(typed),
      message: text,
      range: fc.record({
        of: fc.constantFrom(...names, 'missing', undefined),
        from: maybe(typed),
        to: maybe(typed),
        by: maybe(fc.constantFrom('even steps', 'stops', 'marks')),
        count: maybe(fc.integer({ min: 1, max: 200 })),
        results: fc.uniqueArray(all, { maxLength: 3 }),
      }),
      sets: fc.array(fc.record({ title: text, values: fc.dictionary(fc.constantFrom(...names, 'missing'), typed) }), {
        maxLength: 3,
      }),
      compared: fc.uniqueArray(all, { maxLength: 4 }),
      rows: fc.array(fc.tuple(text, typed, typed), { maxLength: 6 }),
      rowFormula: fc.oneof(formulaOver(['width', 'a', 'b']), text),
      foot: fc.array(
        fc.record({
          figure: fc.constantFrom('sum', 'mean', 'least', 'greatest', 'percentile', 'count'),
          share: maybe(typed),
          where: maybe(fc.constantFrom('width > 0 mm', 'constructor', '1 / 0')),
        }),
        { maxLength: 2 },
      ),
      differences: fc.oneof(fc.constant('list(1, 2, 3)'), formula),
      filled: fc.dictionary(fc.constantFrom(...names), typed, { maxKeys: 2 }),
    })
    .map((s) => {
      const givens = names.map((name, at) => {
        const [usual, unit] = s.givens[at] as (typeof QUANTITIES)[number]
        const value = Object.hasOwn(s.filled, name) ? s.filled[name] : usual
        return { kind: 'given', id: `g${at}`, name, unit, value, options: at === 0 ? [usual, '1 mm'] : undefined }
      })
      const cells = [
        ...givens,
        ...results.map((name, at) => ({
          kind: 'result',
          id: name,
          name,
          formula: s.formulas[at],
          measured: at === 0 ? s.measured : undefined,
        })),
        { kind: 'check', id: 'c', name: 'c', condition: 'r0 > 0 * r0', message: `${s.message} {r0}`, margin: s.margin },
        {
          kind: 'table',
          id: 't',
          name: 'originals',
          columns: [
            { name: 'title', entry: 'text' },
            { name: 'width', unit: 'mm', foot: s.foot },
            { name: 'constructor', unit: 'mm', may_be_empty: true },
            { name: 'twice', formula: s.rowFormula, foot: s.foot },
          ],
          rows: s.rows.map((row) => [...row, '']),
        },
        { kind: 'result', id: 'of', name: 'of_table', formula: 'sum(originals.width)' },
        { kind: 'range', id: 'x', ...s.range },
        { kind: 'variants', id: 'v', sets: s.sets, results: s.compared },
        { kind: 'run', id: 'run', of: 'originals', from: { width: 'width', height: 'width' } },
        { kind: 'drawing', id: 'p', drawing: 'patches', from: { differences: s.differences } },
      ]
      return JSON.stringify({ format: FORMAT, version: VERSION, title: s.title.slice(0, 400), cells })
    })
}

const templates = JOBS.map((name) => readTemplate(name) as unknown as { cells: Record<string, unknown>[] })

const KEYS = ['value', 'formula', 'condition', 'message', 'label', 'unit', 'least', 'most', 'measured', 'hint'] as const

/** Templates with some of their texts put out of order, and a range and variants over their own numeric givens. */
export const spoiledTemplates = (text: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc
    .record({
      template: fc.constantFrom(...templates),
      spoilt: fc.array(fc.tuple(fc.nat(), fc.constantFrom(...KEYS), text), { maxLength: 4 }),
      of: fc.nat(),
      ends: fc.tuple(text, text),
      results: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }),
    })
    .map(({ template, spoilt, of, ends, results }) => {
      const cells = template.cells.map((cell) => ({ ...cell }))
      for (const [at, key, one] of spoilt) {
        const cell = cells[at % cells.length] as Record<string, unknown>
        if (typeof cell[key] === 'string') cell[key] = one
      }
      const named = (kind: string) => cells.filter((cell) => cell.kind === kind).map(({ name }) => name as string)
      const givens = named('given')
      const found = named('result')
      const given = givens[of % Math.max(1, givens.length)]
      const compared = [...new Set(results.map((at) => found[at % Math.max(1, found.length)]))].filter(Boolean)
      const added = [
        { kind: 'range', id: 'hostile-range', of: given, from: ends[0], to: ends[1], results: compared },
        {
          kind: 'variants',
          id: 'hostile-variants',
          sets: given === undefined ? [] : [{ title: ends[0], values: { [given]: ends[1] } }],
          results: compared,
        },
      ]
      return JSON.stringify({ ...template, cells: [...cells, ...added] })
    })

/** Backups, with sheets and dates of every kind in them. */
export const backups = (sheet: fc.Arbitrary<string>): fc.Arbitrary<string> => {
  const time = fc.oneof(
    fc.constantFrom<unknown>(0, -1, 1e300, 9e15, 8.64e15, null, 'now', Date.UTC(2100, 0), Number.MAX_VALUE),
    fc.integer({ min: 1, max: 2 ** 40 }),
  )
  const worksheet = fc.oneof(
    sheet.map((json) => JSON.parse(json) as unknown),
    fc.jsonValue({ maxDepth: 2 }),
  )
  const id = fc.oneof(fc.constantFrom('a', 'b', '__proto__', 'constructor', '../c', ''), fc.string({ maxLength: 70 }))
  const revision = fc.record({ at: time, name: fc.option(fc.string()), why: fc.option(fc.string()), worksheet })
  return fc
    .record({
      format: fc.constant('evenfield-backup'),
      version: fc.constantFrom<unknown>(1, 1, 1, 2, '1'),
      sheets: fc.oneof(
        {
          weight: 5,
          arbitrary: fc.array(
            fc.record({
              id,
              changed: time,
              removed: fc.option(time),
              worksheet,
              revisions: fc.array(revision, { maxLength: 3 }),
            }),
            { maxLength: 4 },
          ),
        },
        { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }) },
      ),
      kit: fc.option(fc.jsonValue({ maxDepth: 2 })),
    })
    .map((backup) => JSON.stringify(backup))
}

/** Kit files, of pieces that are ours, nearly so, or nothing of the kind. */
export const kits = (text: fc.Arbitrary<string>): fc.Arbitrary<string> => {
  const piece = fc.record({
    id: fc.oneof(fc.constantFrom('a', '__proto__', ''), fc.string({ maxLength: 70 })),
    sort: fc.constantFrom('lens', 'camera', 'lamp', 'meter', 'constructor'),
    name: text,
    figures: fc.dictionary(fc.constantFrom('focal', 'constructor', 'power_steps', '__proto__'), text, { maxKeys: 3 }),
    note: fc.option(text, { nil: undefined }),
  })
  return fc
    .record({
      format: fc.constantFrom('evenfield-kit', 'evenfield-kit', 'other'),
      version: fc.constantFrom<unknown>(1, 1, 2),
      pieces: fc.oneof(fc.array(piece, { maxLength: 4 }), fc.jsonValue({ maxDepth: 2 })),
    })
    .map((kit) => JSON.stringify(kit))
}
