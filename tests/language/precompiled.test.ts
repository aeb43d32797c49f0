import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { Precompiler } from '../../src/language/compiling/precompile.ts'
import { PrecompiledCompiler, type PrecompiledFormulas } from '../../src/language/evaluating/precompiled.ts'
import {
  type CompileResult,
  type Computable,
  type Condition,
  computeOnce,
  FULL_COMPILER,
  level,
  list,
  number,
  record,
  type Scope,
  TEXT,
  type Type,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { LENGTH, NONE, STOP, TIME } from '../../src/units/index.ts'

type Cells = Readonly<Record<string, readonly [Type | 'unknown', Value]>>

const CELLS: Cells = {
  x: [number(NONE), 3],
  n: [number(NONE, 'f-number'), 8],
  w: [number(LENGTH), 0.6],
  t: [number(TIME), 2],
  ev: [level(STOP), 12],
  stops: [number(STOP), 2],
  lit: [YES_NO, true],
  kind: [TEXT, 'wide'],
  many: [list(number(LENGTH)), [1, 2, 4]],
  sensor: [record('size', { width: number(LENGTH), height: number(LENGTH) }), { width: 0.036, height: 0.024 }],
  lamps: [list(record('lamp', { on: YES_NO, at: number(LENGTH) })), [{ on: true, at: 2 }]],
}

const scopeOf = (cells: Cells, more: Partial<Scope> = {}): Scope => ({
  library: LIBRARY,
  typeOf: (name) => cells[name]?.[0],
  names: () => Object.keys(cells),
  ...more,
})
const SCOPE = scopeOf(CELLS)

/** Formulas as the build prepares them, through JSON as the page gets them. */
function preparedFrom(formulas: readonly string[], scope = SCOPE): PrecompiledFormulas {
  const precompiler = new Precompiler()
  for (const formula of formulas) precompiler.read(formula).check(scope)
  return JSON.parse(JSON.stringify(precompiler.prepared))
}

/** What was prepared, and how often the checker was wanted. */
function opened(...prepared: readonly PrecompiledFormulas[]) {
  const wanted = { times: 0 }
  const compiler = new PrecompiledCompiler(prepared, () => wanted.times++)
  return { compiler, wanted }
}

const FORMULAS = [
  ...['2', 'x', 'x + w / 2 mm', 'x^2 - -x', 'not lit', '1 / 0', 'w', 'f/8', 'n * 2', '1:4', '1/125 s', '"wide"', 'yes'],
  ...['{1 mm, w}', 'sensor', 'sensor.width * 2', 'many', 'many * 2', 'sum(many)', 'lamps', 'item(lamps, 1).at'],
  ...[
    'ev - 1 stop',
    'ev - 12 EV',
    'kind',
    'when(lit, w, 2 mm)',
    'when(x > 2, sqrt(x), 1 / 0)',
    'min(x, 2, 1)',
    'sqrt(w)',
  ],
  ...['w ± 2 mm', 'w ± 1 %', 'lens_to_original(infinity, 1:2)', 'depth_of_field(f/8, 30 um, 1:20, 50 mm).total'],
  ...['x < 4', 'x > 4 or not (w < 1 m and kind = "wide")', 'lit and x >= 3', 'x = 3', '1 / 125 s > 1 [1/s]'],
  ...['lamp_elevation(3 m, 2 m) > 1 rad', 'nothing_in_it'],
]

/** All that can be seen of a formula that is ready to compute. */
function ready(computable: Computable): unknown {
  const { type, inputs, spans, mayBeInfinite } = computable
  let value: unknown
  try {
    value = computeOnce(computable, (name) => CELLS[name]?.[1])
  } catch (error) {
    value = String(error)
  }
  return { type, inputs, spans, mayBeInfinite, value }
}

function parts(condition: Condition): unknown {
  if ('both' in condition) return { both: condition.both, left: parts(condition.left), right: parts(condition.right) }
  const { whole, so, order } = condition
  return {
    whole: ready(whole),
    so,
    order: order && { left: ready(order.left), right: ready(order.right), upward: order.upward },
  }
}

function seen(result: CompileResult | undefined): unknown {
  if (!result?.meaning) return result
  const { meaning, errors, uses } = result
  const { computable, warnings, calls, limits, condition } = meaning
  return {
    errors,
    uses,
    computable: ready(computable),
    warnings,
    calls: calls.map(({ name }) => name),
    limits: limits && { of: ready(limits.of), relative: limits.relative },
    condition: computable.type.kind === 'yes or no' ? parts(condition()) : undefined,
  }
}

describe('a formula prepared by the build', () => {
  test.each(FORMULAS.filter((one) => one !== 'nothing_in_it'))('%s means the same as read anew', (formula) => {
    const { compiler, wanted } = opened(preparedFrom([formula]))
    const read = compiler.read(formula)
    const anew = FULL_COMPILER.read(formula)
    expect(read.mentions).toEqual(anew.mentions)
    expect(seen(read.check(SCOPE))).toEqual(seen(anew.check(SCOPE)))
    expect(wanted.times).toBe(0)
  })

  test('means the same where all were prepared together', () => {
    const { compiler, wanted } = opened(preparedFrom(FORMULAS))
    for (const formula of FORMULAS.slice(0, -1))
      expect(seen(compiler.read(formula).check(SCOPE)), formula).toEqual(seen(FULL_COMPILER.read(formula).check(SCOPE)))
    expect(wanted.times).toBe(0)
  })

  test('says while it is prepared what is said when it is read anew', () => {
    for (const formula of [...FORMULAS, 'x + w', 'x +'])
      expect(seen(new Precompiler().read(formula).check(SCOPE)), formula).toEqual(
        seen(FULL_COMPILER.read(formula).check(SCOPE)),
      )
  })

  test('is not prepared where something is wrong in it, and names its cells all the same', () => {
    const { formulas } = preparedFrom(['x + w', 'nothing + x', 'x * 2'])
    expect(formulas['x + w']).toEqual({ mentions: ['x', 'w'], meanings: [] })
    expect(formulas['nothing + x']).toEqual({ mentions: ['nothing', 'x'], meanings: [] })
    expect(formulas['x * 2']?.meanings).toHaveLength(1)
    const { compiler, wanted } = opened(preparedFrom(['x + w']))
    expect(compiler.read('x + w').mentions).toEqual(['x', 'w'])
    expect(wanted.times).toBe(0)
    expect(compiler.read('x + w').check(SCOPE)).toBeUndefined()
    expect(wanted.times).toBe(1)
  })

  test('names each word that may be a cell once, also one that is none', () => {
    const { compiler } = opened(preparedFrom(['pi * x + x']))
    expect(compiler.read('pi * x + x').mentions).toEqual(['pi', 'x'])
    expect(seen(compiler.read('pi * x + x').check(SCOPE))).toEqual(seen(FULL_COMPILER.read('pi * x + x').check(SCOPE)))
    expect(compiler.read('pi * x + x').check(scopeOf({ ...CELLS, pi: [number(NONE), 3] }))).toBeUndefined()
  })

  test('is made ready once, and a condition is taken apart once', () => {
    const { compiler } = opened(preparedFrom(['x < 4']))
    const meaning = () => compiler.read('x < 4').check(SCOPE)?.meaning
    expect(meaning()).toBe(meaning())
    expect(meaning()?.condition()).toBe(meaning()?.condition())
  })

  test('shares its types with the others', () => {
    const { types } = preparedFrom(['x + 1', 'x - 1', 'sensor.width', 'many', 'w', 'lit', 'kind', 'ev'])
    expect(types).toHaveLength(new Set(types.map((type) => JSON.stringify(type))).size)
    expect(types).toContain('yes or no')
    expect(types).toContain('text')
    expect(types).toContainEqual({ number: STOP.key, level: true })
    const whole = preparedFrom(['n'])
    expect(whole.types).toEqual([{ number: NONE.key, notation: 'f-number' }])
  })
})

describe('what was prepared for other types', () => {
  const changed = (name: string, type: Type | 'unknown'): Scope => scopeOf({ ...CELLS, [name]: [type, 1] })
  const known = (formula: string, scope: Scope): boolean => {
    const { compiler, wanted } = opened(preparedFrom([formula]))
    const found = compiler.read(formula).check(scope)
    expect(wanted.times).toBe(found ? 0 : 1)
    return found !== undefined
  }

  test.each([
    ['x * 2', 'x', number(LENGTH)],
    ['x * 2', 'x', number(NONE, 'ratio')],
    ['n * 2', 'n', number(NONE)],
    ['ev - 1 stop', 'ev', number(STOP)],
    ['stops * 2', 'stops', level(STOP)],
    ['sum(many)', 'many', list(number(TIME))],
    ['sum(many)', 'many', number(LENGTH)],
    ['sensor.width', 'sensor', record('frame', { width: number(LENGTH), height: number(LENGTH) })],
    ['sensor.width', 'sensor', record('size', { width: number(LENGTH) })],
    ['sensor.width', 'sensor', record('size', { width: number(TIME), height: number(LENGTH) })],
    ['lit', 'lit', TEXT],
  ])('%s is not known with another %s', (formula, name, type) => {
    expect(known(formula, changed(name, type))).toBe(false)
    expect(known(formula, SCOPE)).toBe(true)
  })

  test('is not known without a cell or a function it names', () => {
    const { x: _, ...without } = CELLS
    expect(known('x * 2', scopeOf(without))).toBe(false)
    expect(known('sqrt(x)', { ...SCOPE, library: new Map() })).toBe(false)
  })

  test('is left without a result, and without an error of its own, where a cell it names is in error', () => {
    const { compiler, wanted } = opened(preparedFrom(['x + 2 * x']))
    expect(compiler.read('x + 2 * x').check(changed('x', 'unknown'))).toEqual({ errors: [], uses: ['x'] })
    expect(wanted.times).toBe(0)
  })

  test('is known for each of the types it was prepared for', () => {
    const precompiler = new Precompiler()
    const read = precompiler.read('x * 2')
    for (const type of [number(NONE), number(LENGTH), number(NONE)]) read.check(changed('x', type))
    precompiler.read('x * 2').check(changed('x', number(TIME)))
    expect(precompiler.prepared.formulas['x * 2']?.meanings).toHaveLength(3)
    const { compiler } = opened(precompiler.prepared)
    for (const type of [number(NONE), number(LENGTH), number(TIME)])
      expect(compiler.read('x * 2').check(changed('x', type))?.meaning?.computable.type).toEqual(type)
  })

  test('is looked for in all that was prepared', () => {
    const lengths = preparedFrom(['x * 2'], changed('x', number(LENGTH)))
    const others = preparedFrom(['x * 2', 'x * 3'])
    const { compiler, wanted } = opened(lengths, others)
    expect(compiler.read('x * 2').check(SCOPE)?.meaning?.computable.type).toEqual(number(NONE))
    expect(compiler.read('x * 3').check(SCOPE)).toBeDefined()
    expect(wanted.times).toBe(0)
  })

  test('is nothing at all where the formula was not prepared: the checker is wanted', () => {
    const { compiler, wanted } = opened(preparedFrom(['x * 2']))
    for (const formula of ['x * 4', 'constructor', '__proto__']) {
      wanted.times = 0
      const read = compiler.read(formula)
      expect(wanted.times).toBe(1)
      expect(read.mentions).toEqual([])
      expect(read.check(SCOPE)).toBeUndefined()
    }
  })
})

test('a constant that JSON would change is refused by the build', () => {
  expect(() => preparedFrom(['-0'])).toThrow('The constant 0 cannot be written as data.')
  expect(() => preparedFrom(['max({1, 2}, -0)'])).toThrow('cannot be written as data')
  for (const formula of ['"-0"', 'no', '0', '-1', 'lens_to_original(infinity, 1:2)'])
    expect(preparedFrom([formula]).formulas[formula]?.meanings, formula).toHaveLength(1)
})
