import { describe, expect, it } from 'vitest'
import { FUNCTIONS, LIBRARY } from '../../src/functions/index.ts'
import {
  ComputeError,
  checkFormula,
  computable,
  computeOnce,
  type Example,
  emptyScope,
  type Value,
} from '../../src/language/index.ts'

const SCOPE = emptyScope(LIBRARY)

function compute(formula: string): Value {
  const checked = checkFormula(formula, SCOPE)
  if (!checked.root) throw new ComputeError(checked.diagnostics.map(({ message }) => message).join(' '))
  return computeOnce(computable(checked.root, checked.mayBeInfinite), () => {
    throw new Error('An example uses no cells.')
  }).value
}

function expectNear(found: Value, expected: Value, within: number | undefined, formula: string): void {
  if (typeof expected === 'number' && typeof found === 'number') {
    const allowed = within ?? Math.max(1e-9 * Math.abs(expected), 1e-12)
    expect(Math.abs(found - expected), `${formula} gave ${found}, not ${expected}`).toBeLessThanOrEqual(allowed)
  } else if (Array.isArray(expected) && Array.isArray(found)) {
    expect(found.length, formula).toBe(expected.length)
    for (const [i, item] of expected.entries()) expectNear(found[i] as Value, item, within, formula)
  } else expect(found, formula).toEqual(expected)
}

function run(example: Example): void {
  if (example.refuses !== undefined) {
    expect(() => compute(example.formula), example.formula).toThrowError(example.refuses)
    return
  }
  const expected = compute(example.gives as string)
  const within = example.within === undefined ? undefined : (compute(example.within) as number)
  expectNear(compute(example.formula), expected, within, example.formula)
}

it('every function has a name of its own', () => {
  const names = FUNCTIONS.map(({ name }) => name)
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
})

describe.each(FUNCTIONS.map((record) => [record.name, record] as const))('%s', (_, record) => {
  it.each(record.examples.map((example) => [example.formula, example] as const))(
    'works its example %s',
    (_, example) => {
      expect(example.gives ?? example.refuses).toBeDefined()
      run(example)
    },
  )

  it('has a worked example that gives a figure', () => {
    expect(record.examples.some(({ gives }) => gives !== undefined)).toBe(true)
  })

  it('says what it is, its formula and its source', () => {
    for (const text of [record.about, record.formula, record.source]) expect(text.trim()).not.toBe('')
    for (const parameter of record.parameters) expect(parameter.about.trim()).not.toBe('')
  })
})
