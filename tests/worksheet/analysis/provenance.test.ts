import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exampleNames, idsOnExamples } from '../../../src/worksheet/analysis/provenance.ts'
import { type Cell, withMeasured } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

test('a figure rests on the examples of the branch that is taken, and of what decides it', () => {
  const side = fc.record({ example: fc.boolean() })
  fc.assert(
    fc.property(fc.tuple(side, side, side), fc.boolean(), ([decides, first, second], isTrue) => {
      const origin = (one: { readonly example: boolean }, text: string) =>
        one.example ? { from: { kind: 'example', text } as const } : {}
      const sheet = sheetOf([
        given('x', isTrue ? '2' : '1', origin(decides, isTrue ? '2' : '1')),
        given('a', '3', origin(first, '3')),
        given('b', '4', origin(second, '4')),
        result('taken', 'when(x > 1.5, a, b)'),
        result('both', 'x > 1.5 and a > b'),
        result('either', 'x > 1.5 or a > b'),
        result('above', 'when(either, taken, 0) + 1'),
        given('empty', ''),
        result('waiting', 'when(empty > 1, a, b)'),
        result('failing', 'when(x > 0, 1 / (a - 3), b)'),
      ])
      const taken = decides.example || (isTrue ? first : second).example
      const both = decides.example || (isTrue && (first.example || second.example))
      const either = decides.example || (!isTrue && (first.example || second.example))
      const rests = idsOnExamples(sheet)
      const found = sheet.cells.filter(({ id }) => rests.has(id)).map((cell) => ('name' in cell ? cell.name : ''))
      const names = new Set(found)
      expect(names.has('taken')).toBe(taken)
      expect(names.has('both')).toBe(both)
      expect(names.has('either')).toBe(either)
      expect(names.has('above')).toBe(either || (isTrue && taken))
      // Before there is a value, no branch is taken yet.
      expect(names.has('waiting')).toBe(first.example || second.example)
      expect(names.has('failing')).toBe(decides.example || first.example || second.example)
      for (const [name, beneath] of exampleNames(sheet)) expect(beneath.length > 0).toBe(names.has(name))
    }),
  )
})

test('a figure rests on an example as long as any given beneath it does, and nothing between is measured', () => {
  const origin = fc.constantFrom('example', 'typed', 'overtyped')
  const later = fc.array(
    fc.record({ needs: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }), measured: fc.boolean() }),
    {
      maxLength: 12,
    },
  )
  fc.assert(
    fc.property(fc.array(origin, { minLength: 1, maxLength: 4 }), later, (origins, results) => {
      const names: string[] = []
      /** Said again by the definition: from below, one cell after the other. */
      const rests = new Map<string, boolean>()
      const cells: Cell[] = origins.map((kind, at) => {
        const name = `g${at}`
        names.push(name)
        rests.set(name, kind === 'example')
        const from = { kind: 'example', text: kind === 'overtyped' ? '2' : '1' } as const
        return given(name, '1', kind === 'typed' ? {} : { from })
      })
      for (const [at, { needs, measured }] of results.entries()) {
        const used = needs.map((need) => names[need % names.length] as string)
        const name = `r${at}`
        const cell = result(name, used.join(' + '))
        cells.push(measured ? withMeasured(cell, '7') : cell)
        rests.set(name, !measured && used.some((one) => rests.get(one)))
        names.push(name)
      }
      const sheet = sheetOf(cells)
      const expected = names.filter((name) => rests.get(name)).sort()
      expect([...idsOnExamples(sheet)].sort()).toEqual(expected)
      const listed = [...exampleNames(sheet)].filter(([, beneath]) => beneath.length > 0).map(([name]) => name)
      expect(listed.sort()).toEqual(expected)
    }),
  )
})
