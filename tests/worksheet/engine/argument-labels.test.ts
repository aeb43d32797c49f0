import { expect, test } from 'vitest'
import { FUNCTIONS } from '../../../src/functions/index.ts'
import type { Cell } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

/** What a cell in error says, or what its function advises. */
function said(cells: readonly Cell[]): string {
  const outcome = sheetOf(cells).outcome('out')
  if (outcome.state === 'error') return outcome.diagnostics[0]?.message ?? ''
  return outcome.state === 'value' ? outcome.warnings.map(({ message }) => message).join(' ') : ''
}

const cells = [
  given('focal', '60 mm', { unit: 'mm', label: 'Focal length' }),
  given('aperture', 'f/32', { unit: 'f/', label: 'Aperture set' }),
  given('page', '0.001 x 100', { entry: 'size', unit: 'mm', label: 'Page' }),
  result('ratio', '-1', { label: 'Size on the sensor' }),
]
test.each([
  ['effective_aperture(aperture, ratio)', /^“Size on the sensor” must be/],
  ['effective_aperture(magnification: ratio, aperture: aperture)', /^“Size on the sensor” must be/],
  ['effective_aperture(max(1, 2), ratio)', /^“Size on the sensor” must be/],
  // What is not one cell keeps the name of the argument.
  ['effective_aperture(f/8, ratio * 2)', /^“magnification” must be/],
  ['effective_aperture(f/8, -1)', /^“magnification” must be/],
  // Two calls with different cells would leave open which is meant.
  ['effective_aperture(aperture, ratio) + effective_aperture(aperture, ratio * 2)', /^“magnification” must be/],
  ['focus_for_limits(page.height, page.width)', /^“Page, width” is nearer than “Page, height”/],
])('%s names the cells it is given by their labels', (formula, message) => {
  expect(said([...cells, result('out', formula)])).toMatch(message)
})

/** The arguments of a call, apart at its own commas. */
function apart(formula: string): string[] {
  const inside = formula.slice(formula.indexOf('(') + 1, -1)
  const ends = [...inside].reduce<{ depth: number; at: number[] }>(
    ({ depth, at }, sign, i) => ({
      depth: depth + ('([{'.includes(sign) ? 1 : ')]}'.includes(sign) ? -1 : 0),
      at: sign === ',' && depth === 0 ? [...at, i] : at,
    }),
    { depth: 0, at: [] },
  ).at
  return [...ends, inside.length].map((end, i) => inside.slice(i === 0 ? 0 : (ends[i - 1] as number) + 1, end).trim())
}

test('of all functions, a refusal names no argument that a cell was given for', () => {
  let compared = 0
  for (const { name, parameters, examples } of FUNCTIONS)
    for (const { formula, refuses } of examples) {
      if (refuses === undefined || !formula.startsWith(`${name}(`) || !formula.endsWith(')')) continue
      const plain = said([result('out', formula)])
      const written = apart(formula)
      const places = written.map((text, i) => {
        const named = /^([a-z_]\w*): /.exec(text)
        const at = named ? parameters.findIndex((one) => one.name === named[1]) : i
        return { parameter: parameters[at]?.name, prefix: named?.[0] ?? '', value: text.slice(named?.[0].length ?? 0) }
      })
      const given = places.map(({ value }, i) => result(`a${i}`, value, { label: `Cell ${i}` }))
      const call = `${name}(${places.map(({ prefix }, i) => `${prefix}a${i}`).join(', ')})`
      const sheet = sheetOf([...given, result('out', call)])
      // Infinity cannot come from a cell, and a written text is checked before anything is computed.
      if (given.some(({ id, formula: text }) => text.startsWith('"') || sheet.outcome(id).state !== 'value')) continue
      const expected = places.reduce(
        (text, { parameter }, i) => text.replaceAll(`“${parameter}”`, `“Cell ${i}”`),
        plain,
      )
      if (expected === plain) continue
      expect(said([...given, result('out', call)]), call).toBe(expected)
      compared++
    }
  expect(compared).toBeGreaterThan(100)
})
