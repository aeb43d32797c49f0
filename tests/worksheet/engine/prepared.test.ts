import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { PrecompiledCompiler, type PrecompiledFormulas } from '../../../src/language/evaluating/precompiled.ts'
import { Sheet as PlainSheet } from '../../../src/worksheet/editing/sheet.ts'
import { type Cell, isNamed, type Sheet, type Worksheet } from '../../../src/worksheet/index.ts'
import { prepare } from '../../../src/worksheet/prepare-templates.ts'
import { FULL_CAPABILITIES } from '../../../src/worksheet/renaming/full-sheet.ts'
import { feedOf } from '../../../src/worksheet/run/feed.ts'
import { footerOf } from '../../../src/worksheet/table/footer.ts'
import { TABLES } from '../../../src/worksheet/table/table-capability.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const TEMPLATES = JOBS.map((name) => [name, readTemplate(name)] as const)

/** As the page gets it: through JSON. */
const preparedFrom = (worksheet: Worksheet): PrecompiledFormulas =>
  JSON.parse(JSON.stringify(prepare([worksheet], LIBRARY)))

/** A sheet that reads from what was prepared alone, and how often it wanted more. */
function opened(worksheet: Worksheet, prepared: PrecompiledFormulas): { sheet: PlainSheet; lacks: () => number } {
  let lacking = 0
  const compiler = new PrecompiledCompiler([prepared], () => lacking++)
  return { sheet: new PlainSheet(worksheet, LIBRARY, { compiler, tables: TABLES }), lacks: () => lacking }
}

/** All that can be seen of a sheet; functions in it are compared by what they compute. */
function allSeen(sheet: Sheet | PlainSheet): unknown {
  sheet.engine.limitsBudget = Number.POSITIVE_INFINITY
  return sheet.cells.map((cell) => {
    if (cell.kind === 'check') return [cell.id, sheet.outcome(cell.id), sheet.check(cell.id)]
    if (cell.kind === 'table') {
      const node = sheet.engine.node(cell.id)
      return [cell.id, sheet.outcome(cell.id), node && footerOf(sheet.engine, node)]
    }
    if (isNamed(cell)) return [cell.id, sheet.outcome(cell.id)]
    if (cell.kind === 'drawing') return [cell.id, sheet.drawing(cell.id)]
    if (cell.kind === 'run') {
      const { list, rig, missing, without } = feedOf(sheet.engine, cell)
      return [cell.id, list, rig, missing, without]
    }
    return cell.id
  })
}

const withCells = (worksheet: Worksheet, change: (cell: Cell, at: number) => Cell): Worksheet => ({
  ...worksheet,
  cells: worksheet.cells.map(change),
})

const withGivens = (worksheet: Worksheet, fill: (value: string, at: number) => string): Worksheet =>
  withCells(worksheet, (cell, at) => (cell.kind === 'given' ? { ...cell, value: fill(cell.value, at) } : cell))

const scaled = (value: string, by: number): string =>
  value.replace(/\d+(?:\.\d+)?/g, (figure) => String(Number((Number(figure) * by).toPrecision(6))))

const isFigure = (value: string): boolean => /^\s*\d+(?:\.\d+)?\s*$/.test(value)

/** The sheet with other givens, and with results measured. */
const FILLINGS: readonly (readonly [string, (worksheet: Worksheet) => Worksheet])[] = [
  ['as it is', (one) => one],
  ['everything a third more', (one) => withGivens(one, (value) => scaled(value, 4 / 3))],
  ['everything a tenth', (one) => withGivens(one, (value) => scaled(value, 0.1))],
  ['nothing filled in', (one) => withGivens(one, () => '')],
  ['every third given empty', (one) => withGivens(one, (value, at) => (at % 3 === 0 ? '' : value))],
  ['every fourth given unreadable', (one) => withGivens(one, (value, at) => (at % 4 === 0 ? '? mm' : value))],
  ['every fifth given zero', (one) => withGivens(one, (value, at) => (at % 5 === 0 ? '0' : value))],
  [
    'limits on some givens',
    (one) => withGivens(one, (value, at) => (at % 6 === 1 && isFigure(value) ? `${value} ± 1 %` : value)),
  ],
  [
    'every fourth result measured',
    (one) =>
      withCells(one, (cell, at) => (cell.kind === 'result' && at % 4 === 0 ? { ...cell, measured: '12' } : cell)),
  ],
  ['a cell gone', (one) => ({ ...one, cells: one.cells.filter((cell, at) => !isNamed(cell) || at % 7 !== 3) })],
]

describe.each(TEMPLATES)('%s', (_, template) => {
  const prepared = preparedFrom(template)

  test('as it is fetched wants neither parser nor checker', () => {
    const { sheet, lacks } = opened(template, prepared)
    allSeen(sheet)
    expect(lacks()).toBe(0)
  })

  test.each(FILLINGS)('gives the same with the checker and without: %s', (_, fill) => {
    const worksheet = fill(template)
    const { sheet, lacks } = opened(worksheet, prepared)
    allSeen(sheet)
    // Another type where a given has no unit of its own, a name gone, or something measured: the rest is fetched.
    if (lacks() > 0 || sheet.hasMeasured) sheet.extend(LIBRARY, FULL_CAPABILITIES)
    const whole = sheetOf(worksheet.cells)
    expect(allSeen(sheet)).toEqual(allSeen(whole))
    expect(sheet.checkSummary).toEqual(whole.checkSummary)
  })

  test('its givens typed one after the other', () => {
    const { sheet, lacks } = opened(template, prepared)
    const whole = sheetOf(template.cells)
    for (const cell of template.cells.filter(({ kind }) => kind === 'given').slice(0, 12)) {
      if (cell.kind !== 'given') continue
      for (const value of ['', scaled(cell.value, 1.01)]) {
        sheet.apply({ do: 'replace', cell: { ...cell, value } })
        whole.apply({ do: 'replace', cell: { ...cell, value } })
        if (lacks() > 0) sheet.extend(LIBRARY, FULL_CAPABILITIES)
      }
    }
    expect(allSeen(sheet)).toEqual(allSeen(whole))
  })
})

const CELLS = [
  given('size', '3'),
  given('length', '2', { unit: 'mm' }),
  result('double', '2 * size'),
  result('same', 'double / size'),
  check('small', 'double < 7', { passes: 'It is {double} and {double * 2}.' }),
]
const WORKSHEET: Worksheet = { format: 'evenfield-worksheet', version: 2, title: 'A test', cells: CELLS }

describe('what was not prepared', () => {
  const prepared = preparedFrom(WORKSHEET)

  test('another type waits until the checker is here, then gives the same', () => {
    const { sheet, lacks } = opened(WORKSHEET, prepared)
    expect(seen(sheet as Sheet, 'same')).toBe('2')
    expect(lacks()).toBe(0)
    sheet.apply({ do: 'replace', cell: given('size', '3 mm') })
    expect(lacks()).toBeGreaterThan(0)
    expect(sheet.outcome('double').state).toBe('waiting')
    expect(seen(sheet as Sheet, 'same')).toBe('waits for double')
    expect(sheet.check('small')).toMatchObject({ state: 'waiting', message: 'needs double.' })
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(seen(sheet as Sheet, 'double')).toBe('6 mm')
    expect(seen(sheet as Sheet, 'same')).toBe('2')
    expect(sheet.check('small').state).toBe('error')
  })

  test('the type it was prepared for is known again', () => {
    const { sheet } = opened(WORKSHEET, prepared)
    sheet.apply({ do: 'replace', cell: given('size', '3 mm') })
    sheet.apply({ do: 'replace', cell: given('size', '4') })
    expect(seen(sheet as Sheet, 'double')).toBe('8')
    expect(sheet.check('small')).toMatchObject({ state: 'fail' })
  })

  test('a formula of the user waits, and so does what depends on it', () => {
    const cells = CELLS.map((cell) => (cell.id === 'double' ? result('double', 'size * 2') : cell))
    const { sheet, lacks } = opened({ ...WORKSHEET, cells }, prepared)
    expect(lacks()).toBeGreaterThan(0)
    expect(seen(sheet as Sheet, 'same')).toBe('waits for double')
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(seen(sheet as Sheet, 'same')).toBe('2')
    expect(sheet.check('small')).toMatchObject({ state: 'pass', message: 'It is 6 and 12.' })
  })

  test('a condition of the user says what it waits for', () => {
    const cells = [...CELLS, check('large', 'size > 2')]
    const { sheet } = opened({ ...WORKSHEET, cells }, prepared)
    expect(sheet.check('large')).toMatchObject({ state: 'waiting', message: 'its formula is still loading.' })
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(sheet.check('large').state).toBe('pass')
  })

  test('a function that is not available is not prepared either', () => {
    const worksheet = { ...WORKSHEET, cells: [given('size', '9'), result('root', 'sqrt(size)')] }
    let lacking = 0
    const compiler = new PrecompiledCompiler([preparedFrom(worksheet)], () => lacking++)
    const sheet = new PlainSheet(worksheet, new Map(), { compiler })
    expect(sheet.outcome('root').state).toBe('waiting')
    expect(lacking).toBe(1)
    sheet.extend(LIBRARY)
    expect(seen(sheet as Sheet, 'root')).toBe('3')
  })

  test('names of every object’s own properties are formulas like any other', () => {
    for (const text of ['constructor', '__proto__', 'toString', 'hasOwnProperty']) {
      const worksheet = { ...WORKSHEET, cells: [result('odd', text)] }
      const { sheet } = opened(worksheet, prepared)
      expect(sheet.outcome('odd').state).toBe('waiting')
      sheet.extend(LIBRARY, FULL_CAPABILITIES)
      expect(allSeen(sheet)).toEqual(allSeen(sheetOf(worksheet.cells)))
    }
  })

  test('a table waits for the part that computes it', () => {
    const table: Cell = {
      kind: 'table',
      id: 'originals',
      name: 'originals',
      label: '',
      columns: [{ name: 'width', label: 'Width', unit: 'mm' }],
      rows: [['100'], ['200']],
    }
    const worksheet = { ...WORKSHEET, cells: [table, result('wide', 'sum(originals.width)', { unit: 'mm' })] }
    const { compiler } = FULL_CAPABILITIES
    const sheet = new PlainSheet(worksheet, LIBRARY, { compiler })
    expect(seen(sheet as Sheet, 'wide')).toBe('waits for originals')
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    expect(seen(sheet as Sheet, 'wide')).toBe('300 mm')
  })

  test('a function of the sheet asks for what defines it, even one that nothing calls', () => {
    const twice: Cell = { kind: 'function', id: 'f', name: 'twice', arguments: [{ name: 'x' }], formula: 'x * 2' }
    for (const calls of [[], [result('called', 'twice(size)')]]) {
      const { sheet, lacks } = opened({ ...WORKSHEET, cells: [given('size', '3'), twice, ...calls] }, prepared)
      expect(lacks()).toBeGreaterThan(0)
      expect(sheet.engine.ownFunctions[0]?.callable).toBeUndefined()
      sheet.extend(LIBRARY, FULL_CAPABILITIES)
      expect(sheet.engine.ownFunctions[0]?.callable?.name).toBe('twice')
      if (calls.length > 0) expect(seen(sheet as Sheet, 'called')).toBe('6')
    }
  })

  test('nothing is renamed without what renames, and nothing is lost', () => {
    const { sheet } = opened(WORKSHEET, prepared)
    expect(() => sheet.apply({ do: 'rename', id: 'size', name: 'measure' })).toThrow(/could not be loaded/)
    expect(sheet.worksheet).toEqual(WORKSHEET)
    sheet.extend(LIBRARY, FULL_CAPABILITIES)
    sheet.apply({ do: 'rename', id: 'size', name: 'measure' })
    expect(seen(sheet as Sheet, 'double')).toBe('6')
  })
})
