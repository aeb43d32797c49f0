import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { programOf, stepsOf } from '../../src/language/compiling/computable.ts'
import {
  calledBy,
  FUNCTION_TABLE,
  listFunction,
  partFunction,
  recordFunction,
} from '../../src/language/evaluating/call-table.ts'
import {
  type CompiledFormula,
  ComputeError,
  type Condition,
  cautionsOf,
  computeOnce,
  explainFailure,
  FULL_COMPILER,
  type FunctionRecord,
  list,
  NotYet,
  number,
  refusedValue,
  TEXT,
  type Value,
  YES_NO,
} from '../../src/language/index.ts'
import { LENGTH, NONE, TIME } from '../../src/units/index.ts'
import { scopeOf } from './make.ts'

const SCOPE = scopeOf(
  new Map([
    ['a', [number(NONE), 0]],
    ['b', [number(NONE), 0]],
    ['lit', [YES_NO, true]],
    ['w', [number(LENGTH), 0]],
    ['kind', [TEXT, '']],
  ] as const),
)

function meaningOf(text: string): CompiledFormula {
  const { meaning, errors } = FULL_COMPILER.read(text).check(SCOPE) ?? {}
  if (!meaning) throw new Error(`${text}: ${errors?.map(({ message }) => message)}`)
  return meaning
}

/** What a condition comes to, part by part. */
function distinct(condition: Condition, cells: (name: string) => Value): boolean {
  if ('both' in condition) {
    const [left, right] = [distinct(condition.left, cells), distinct(condition.right, cells)]
    return condition.both ? left && right : left || right
  }
  return (computeOnce(condition.whole, cells).value as boolean) === condition.so
}

/** The room each comparison leaves: above zero where it holds by so much. */
function rooms(condition: Condition, cells: (name: string) => Value): number[] {
  if ('both' in condition) return [...rooms(condition.left, cells), ...rooms(condition.right, cells)]
  if (!condition.order) return []
  const { left, right, upward } = condition.order
  return [upward * ((computeOnce(right, cells).value as number) - (computeOnce(left, cells).value as number))]
}

const { condition } = fc.letrec<{ condition: string }>((tie) => ({
  condition: fc.oneof(
    { maxDepth: 4, depthIdentifier: 'condition' },
    fc.constantFrom('lit', 'a < b', 'a <= 2', 'b > 1', '3 >= a', 'a = b', 'a != 1', 'kind = "wide"', 'w > 2 mm'),
    fc
      .tuple(tie('condition'), fc.constantFrom('and', 'or'), tie('condition'))
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    tie('condition').map((a) => `not (${a})`),
  ),
}))
const cells = fc.record({
  a: fc.integer({ min: 0, max: 4 }),
  b: fc.integer({ min: 0, max: 4 }),
  w: fc.constantFrom(0.001, 0.003),
  lit: fc.boolean(),
  kind: fc.constantFrom('wide', 'narrow'),
})

describe('a condition taken apart', () => {
  test('holds where the whole does, and a comparison leaves room where it holds', () => {
    fc.assert(
      fc.property(condition, cells, (text, values) => {
        const value = (name: string) => (values as Record<string, Value>)[name] as Value
        const meaning = meaningOf(text)
        expect(distinct(meaning.condition(), value), text).toBe(computeOnce(meaning.computable, value).value)
      }),
    )
  })

  test.each([
    ['a < b', [2]],
    ['b > a', [2]],
    ['not a >= b', [2]],
    ['not b <= a', [2]],
    ['b <= a', [-2]],
    ['not (a < b or b < 1)', [-2, 2]],
    ['a = b', []],
    ['lit and a < 5', [4]],
  ])('%s leaves %o', (text, expected) => {
    const values: Record<string, Value> = { a: 1, b: 3, lit: true }
    expect(rooms(meaningOf(text).condition(), (name) => values[name] as Value)).toEqual(expected)
  })

  test('is taken apart once', () => {
    const { condition: of } = meaningOf('a < b')
    expect(of()).toBe(of())
  })
})

describe('computing once', () => {
  test('refuses what is no figure, or infinite where nothing may be, in any part of a value', () => {
    const infinite = Number.POSITIVE_INFINITY
    const values: readonly Value[] = [1, 'text', true, [1, 2], { width: 1 }]
    for (const value of values) expect(refusedValue(value, false)).toBeUndefined()
    const within = (x: number): Value[] => [x, [1, x], { width: 1, height: x }, { list: [1, [x]] }]
    for (const value of within(Number.NaN)) {
      expect(refusedValue(value, true)).toBe('The result is not a number.')
      expect(refusedValue(value, false)).toBe('The result is not a number.')
    }
    for (const value of within(infinite)) {
      expect(refusedValue(value, true)).toBeUndefined()
      expect(refusedValue(value, false)).toBe('The result is too large to compute with.')
    }
    const { computable } = meaningOf('a * 1')
    expect(() => computeOnce({ ...computable, program: () => infinite }, () => 1)).toThrow(ComputeError)
    expect(computeOnce({ ...computable, program: () => infinite, mayBeInfinite: true }, () => 1).value).toBe(infinite)
  })

  test('says what functions advise', () => {
    const { computable } = meaningOf('lamp_elevation(3 m, 2 m) > 1 rad')
    expect(computeOnce(computable, () => 0).advice).toEqual([expect.stringContaining('Over 45°')])
    expect(computeOnce(meaningOf('a + 1').computable, () => 1)).toEqual({ value: 2, advice: [] })
  })

  test('explains a failure at its operation, else over the whole text; an error of ours stays one', () => {
    const error = new ComputeError('No.')
    expect(explainFailure(error, 'a + b')).toMatchObject({ severity: 'error', message: 'No.', from: 0, to: 5 })
    error.operation = 1
    const spans = [
      { from: 0, to: 1 },
      { from: 2, to: 4 },
    ]
    expect(explainFailure(error, 'a + b', spans)).toMatchObject({ from: 2, to: 4 })
    expect(explainFailure(error, 'a + b', [])).toMatchObject({ from: 0, to: 5 })
    expect(() => explainFailure(new TypeError('a bug'), 'a')).toThrow(TypeError)
  })

  test('cautions are said once, what may harm apart from them', () => {
    const one = { name: 'one', cautions: ['Mind.', 'Look.'], safety: ['Hot.'] }
    const calls = [one, { name: 'two' }, { name: 'three', cautions: ['Mind.'], safety: ['Hot.', 'Sharp.'] }]
    expect(cautionsOf(calls as unknown as FunctionRecord[])).toEqual({
      cautions: ['Mind.', 'Look.'],
      safety: ['Hot.', 'Sharp.'],
    })
  })
})

describe('what a lowered formula calls', () => {
  const byName = (name: string) => FUNCTIONS.find((one) => one.name === name) as FunctionRecord

  test('has one name for a function, and one for each kind of argument that makes a difference to it', () => {
    const [plain, length, time] = [number(NONE), number(LENGTH), number(TIME)]
    expect(recordFunction(byName('hyperfocal'), [length, plain, length])).toBe(
      recordFunction(byName('hyperfocal'), [length, plain, length]),
    )
    const sqrt = (type = plain) => recordFunction(byName('sqrt'), [type])
    expect(sqrt()).toBe(sqrt())
    expect(new Set([sqrt(), sqrt(length), sqrt(time)]).size).toBe(3)
    const sum = (type: Parameters<typeof list>[0]) => recordFunction(byName('sum'), [list(type)])
    expect(new Set([sum(plain), sum(length), sqrt(length)]).size).toBe(3)
    expect(recordFunction(byName('sum'), [list(length)])).toBe(sum(length))
    expect(recordFunction(byName('polariser_angle'), [plain])).toBe(
      recordFunction(byName('polariser_angle'), [number(NONE, 'ratio')]),
    )
    expect(recordFunction(byName('sqrt'), [plain])).not.toBe(recordFunction(byName('abs'), [plain]))
    const share = (type: Parameters<typeof list>[0]) => recordFunction(byName('percentile'), [list(type), plain])
    expect(share(length)).not.toBe(share(time))
    expect(share(length)).toBe(share(number(LENGTH)))
  })

  test('is known again by its name, with the types it was called for', () => {
    const types = [list(number(LENGTH)), number(NONE)]
    expect(calledBy(recordFunction(byName('percentile'), types))).toEqual({ record: byName('percentile'), types })
    expect([calledBy(listFunction()), calledBy(partFunction())]).toEqual(['list', 'part'])
  })

  test('makes lists, and takes parts of records; of an empty record nothing has been measured yet', () => {
    expect(FUNCTION_TABLE[listFunction()]?.(1, 2)).toEqual([1, 2])
    const part = FUNCTION_TABLE[partFunction()] as (record: Value, name: string) => Value
    expect(part({ width: 2 }, 'width')).toBe(2)
    expect(part({ width: 0, height: false }, 'height')).toBe(false)
    expect(() => part({}, 'width')).toThrow(NotYet)
    expect(() => part({ height: 1 }, 'width')).toThrow('With these figures there is no “width”.')
    expect(() => part({ height: 1 }, 'width')).not.toThrow(NotYet)
  })

  test('is one program for all formulas of one shape', () => {
    const programs = ['a + 1', 'b + 2', 'a - 1'].map((text) => meaningOf(text).computable.program)
    expect(programs[0]).toBe(programs[1])
    expect(programs[0]).not.toBe(programs[2])
    expect(programOf('a0 + a1')).toBe(programs[0])
  })

  test('is refused where it is no formula of ours', () => {
    for (const text of ['a0 +', 'b0', 'a0 b0', 'x = 1', '"text"', 'a0(1)'])
      expect(() => programOf(text), text).toThrow()
    expect(() => stepsOf('a0(a1)')).toThrow('A lowered formula calls what is not a function.')
    expect(() => stepsOf('b0')).toThrow('A lowered formula names a function without calling it.')
    expect(() => stepsOf('1')).toThrow('A lowered formula holds a token of kind INUMBER.')
    expect(stepsOf('a10 + a2')).toEqual([10, 2, '+'])
    expect(stepsOf('-a1 ? (a2) : (a3)')).toEqual([1, '~', [2], [3], '?'])
    expect(stepsOf('not (a0)')).toEqual([0, 'not'])
  })
})

describe('the compiler', () => {
  const found = (text: string) => FULL_COMPILER.read(text).check(SCOPE)

  test('names once what a formula mentions, and says what is wrong in place of a meaning', () => {
    expect(FULL_COMPILER.read('a + a * nothing').mentions).toEqual(['a', 'nothing'])
    const wrong = found('a + a * nothing')
    expect(wrong?.meaning).toBeUndefined()
    expect(wrong?.errors.map(({ severity }) => severity)).toEqual(['error'])
    expect(wrong?.uses).toEqual(['a', 'nothing'])
    expect(found('a + b')?.errors).toEqual([])
  })

  test('names what is doubtful beside what is wrong, and with the meaning where nothing is wrong', () => {
    const doubtful = found('1 / 125 s')
    expect(doubtful?.meaning?.warnings.map(({ message }) => message)).toEqual([
      '“1 / 125 s” is a division and gives a frequency. The exposure time is written 1/125 s.',
    ])
    expect(doubtful?.errors).toEqual([])
    expect(found('1 / 125 s + nothing')?.errors.map(({ message }) => message)).toEqual([
      'There is no cell named “nothing”.',
    ])
    expect(found('? + 1')?.errors).toHaveLength(1)
    expect(found('? + 1')?.meaning).toBeUndefined()
  })

  test('lets a result be infinite only where a function may give one, and any part of a condition', () => {
    const infinite = (text: string) => found(text)?.meaning?.computable.mayBeInfinite
    expect(infinite('a + 1')).toBe(false)
    expect(infinite('hyperfocal(50 mm, f/8, 30 um)')).toBe(false)
    expect(infinite('depth_of_field(f/8, 30 um, 1:20, 50 mm).total')).toBe(true)
    const condition = found('a < b')?.meaning?.condition()
    expect(condition && 'whole' in condition && condition.whole.mayBeInfinite).toBe(true)
    expect(found('w ± 2 mm')?.meaning?.limits?.of.mayBeInfinite).toBe(false)
  })

  test('has limits apart from the value they belong to', () => {
    const limits = (text: string) => {
      const of = found(text)?.meaning?.limits
      return of && [computeOnce(of.of, () => 0).value, of.relative]
    }
    expect(limits('w ± 2 mm')).toEqual([0.002, false])
    expect(limits('w ± 1 %')).toEqual([0.01, true])
    expect(limits('w')).toBeUndefined()
  })

  test('refuses what is nested deeper than its parser goes, and takes a chain of any length', () => {
    const powers = (count: number) => Array<string>(count).fill('a').join(' ^ ')
    expect(found(powers(150))?.errors.map(({ message }) => message)).toEqual([
      expect.stringMatching(/at most 100 deep/),
    ])
    expect(found(powers(150))?.meaning).toBeUndefined()
    expect(found(powers(50))?.errors).toEqual([])
    const sum = found(Array<string>(400).fill('a').join(' + '))?.meaning
    expect(sum && computeOnce(sum.computable, () => 2).value).toBe(800)
  })
})
