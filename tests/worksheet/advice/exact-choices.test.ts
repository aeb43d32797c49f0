import { describe, expect, it } from 'vitest'
import { variablesOf } from '../../../src/worksheet/advice/choices.ts'
import { withExactChoices } from '../../../src/worksheet/advice/exact-choices.ts'
import { filledByKit } from '../../../src/worksheet/advice/kit-suggestions.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

/** What is added to what may be typed, by given, so that a result hits a target; and what is set now. */
function added(cells: readonly Cell[], id: string, target: number): Record<string, { more: string[]; now: string }> {
  const sheet = sheetOf(cells)
  const before = variablesOf(sheet, [])
  const after = withExactChoices(sheet, before, id, target)
  expect(after.map(({ name }) => name)).toEqual(before.map(({ name }) => name))
  return Object.fromEntries(
    after.map((variable, at) => {
      const values = variable.choices.map(({ values: [value] }) => value as number)
      if (variable.ordered) expect(values).toEqual(values.toSorted((a, b) => a - b))
      const known = new Set(before[at]?.choices)
      const more = variable.choices.filter((choice) => !known.has(choice)).map(({ cells: [cell] }) => cell?.value ?? '')
      return [variable.name, { more, now: variable.choices[variable.now]?.cells[0]?.value ?? '' }]
    }),
  )
}

describe('figures between those that are tried', () => {
  const length = given('length', '100', { unit: 'mm' })

  it('are typed in as few digits as hit the target', () => {
    expect(added([length, result('twice', 'length * 2')], 'twice', 0.2468)).toEqual({
      length: { more: ['123.4'], now: '100' },
    })
    expect(added([length, result('twice', 'length * 2')], 'twice', 0.246)).toMatchObject({ length: { more: ['123'] } })
    expect(added([length, result('third', 'length / 3')], 'third', 0.045454545)).toMatchObject({
      length: { more: ['136.4'] },
    })
  })

  it('are none where a figure that is tried hits it, or none can', () => {
    const twice = [length, result('twice', 'length * 2')]
    expect(added(twice, 'twice', 0.24)).toMatchObject({ length: { more: [] } })
    expect(added(twice, 'twice', 0.9)).toMatchObject({ length: { more: [] } })
    expect(added([length, result('other', '3 mm')], 'other', 0.004)).toMatchObject({ length: { more: [] } })
  })

  it('are found where the result falls, wherever it crosses the target', () => {
    expect(added([length, result('less', '1 m - length')], 'less', 0.8765)).toMatchObject({
      length: { more: ['123.5'] },
    })
    const bent = result('bent', '(length - 100 mm)^2')
    expect(added([length, bent], 'bent', 0.0235 ** 2)).toMatchObject({
      length: { more: ['76.5', '123.5'], now: '100' },
    })
  })

  it('are none of what has marks, of a jump, or of a result that is no number or not there', () => {
    const stop = given('stop', 'f/8', { unit: 'f/' })
    expect(added([stop, result('hole', '60 mm / stop')], 'hole', 0.0077)).toMatchObject({
      stop: { more: [], now: 'f/8' },
    })
    expect(added([length, result('jump', 'when(length > 123.4 mm, 1, 0)')], 'jump', 0.5)).toMatchObject({
      length: { more: [] },
    })
    expect(added([length, result('long', 'length > 1 m')], 'long', 0.1)).toMatchObject({ length: { more: [] } })
    expect(added([length], 'unheard_of', 0.1234)).toMatchObject({ length: { more: [] } })
  })

  it('are none that its field does not take', () => {
    const narrow = { ...length, most: '123 mm' }
    expect(added([narrow, result('twice', 'length * 2')], 'twice', 0.2468)).toMatchObject({ length: { more: [] } })
  })

  it('change what always takes the same text along', () => {
    const one = { ...length, advice: { change: 'freely' as const, within: 2, with: 'other' } }
    const other = given('other', '100', { unit: 'mm', fixed: true })
    expect(added([one, other, result('both', 'length + other')], 'both', 0.2468)).toEqual({
      length: { more: ['123.4'], now: '100' },
    })
  })
})

describe('the givens that a piece of kit fills in', () => {
  const kit = (value: string, fills?: Record<string, string>) =>
    given('lens', value, { entry: 'kit', sort: 'lens', ...(fills ? { fills } : {}) })

  it('are those of pieces that are chosen', () => {
    const cells = [kit('Mine', { focal: 'focal', widest: 'widest_stop' }), given('other', '1', { fills: { a: 'b' } })]
    expect([...filledByKit(cells)]).toEqual(['focal', 'widest_stop'])
    expect([...filledByKit([kit(' ', { focal: 'focal' }), kit('Mine'), result('r', '1')])]).toEqual([])
  })
})
