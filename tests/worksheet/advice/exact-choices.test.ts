import { describe, expect, test } from 'vitest'
import { type Variable, variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { withExactChoices } from '../../../src/worksheet/advice/exact-choices.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

/** The texts that bring `r` to a target and were not among the choices before, by the name of their given. */
function added(cells: readonly Cell[], target: number, id = 'r'): Record<string, string[]> {
  const sheet = sheetOf(cells)
  const before = variablesOf(sheet, [])
  const after = withExactChoices(sheet, before, id, target)
  expect(after).toHaveLength(before.length)
  return Object.fromEntries(
    after.map((variable, at) => {
      const texts = (one: Variable | undefined) => one?.choices.map((choice) => choice.cells[0]?.value ?? '') ?? []
      const known = new Set(texts(before[at]))
      // What is set now stays so, and the choices stay in order.
      expect(variable.choices[variable.now]).toEqual(before[at]?.choices[before[at]?.now ?? -1])
      const values = variable.choices.map(({ values: [value] }) => value as number)
      if (variable.ordered) expect(values).toEqual([...values].sort((a, b) => a - b))
      return [variable.name, texts(variable).filter((text) => !known.has(text))]
    }),
  )
}

describe('the figures that bring a result to a target', () => {
  test('are added between round ones, in the fewest digits that hit it', () => {
    const cells = [given('a', '10', { unit: 'mm' }), result('r', '2 * a', { unit: 'mm' })]
    // 12.34 mm: 12.3 is off by a third of a per cent, 12.34 is exact.
    expect(added(cells, 0.02468)).toEqual({ a: ['12.34'] })
    expect(added(cells, 0.0246)).toEqual({ a: ['12.3'] })
    expect(added(cells, 0.0246913)).toEqual({ a: ['12.35'] })
    // A round figure hits by itself.
    expect(added(cells, 0.024)).toEqual({ a: [] })
    expect(added(cells, 1)).toEqual({ a: [] })
  })

  test('are found where the result falls as the figure rises, and on both sides of where it turns', () => {
    expect(added([given('a', '10'), result('r', '1 / a')], 1 / 12.34)).toEqual({ a: ['12.34'] })
    expect(added([given('a', '10'), result('r', '(a - 12)^2')], 2.25)).toEqual({ a: ['10.5', '13.5'] })
  })

  test('are each by one given, with the others as they are', () => {
    const cells = [given('a', '10'), given('b', '10'), given('c', '10'), result('r', 'a + 2 * b')]
    expect(added(cells, 32.46)).toEqual({ a: ['12.46'], b: ['11.23'], c: [] })
  })

  test('are none of what has marks, steps or options', () => {
    const cells = [
      given('stop', 'f/8', { unit: 'f/' }),
      given('step', '10', { advice: { change: 'freely', step: 1, least: 1, most: 20 } }),
      given('listed', '10', { options: ['5', '10', '20'] }),
      given('yes', 'yes', { entry: 'yes or no' }),
      result('r', 'when(yes, stop + step + listed, 0)'),
    ]
    expect(added(cells, 30.3)).toEqual({ stop: [], step: [], listed: [], yes: [] })
  })

  test('are in the range of their field, and where the result computes', () => {
    const cells = (most: string) => [given('a', '10', { most }), result('r', 'sqrt(a - 9)')]
    expect(added(cells('20'), Math.sqrt(3.34))).toEqual({ a: ['12.34'] })
    expect(added(cells('12.3'), Math.sqrt(3.34))).toEqual({ a: [] })
  })

  test('are none where the result is not there', () => {
    expect(added([given('a', '10'), result('r', '2 * a')], 24.68, 'nowhere')).toEqual({ a: [] })
  })

  test('move what always moves together', () => {
    const cells = [
      given('left', '10', { advice: { change: 'agree', within: 2, with: 'right' } }),
      given('right', '10', { advice: { change: 'agree', within: 2 } }),
      result('r', 'left + right'),
    ]
    expect(added(cells, 24.68)).toEqual({ left: ['12.34'] })
  })
})
