import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exampleNames, idsOnExamples } from '../../../src/worksheet/analysis/provenance.ts'
import { type Cell, withMeasured } from '../../../src/worksheet/index.ts'
import { given, result, sheetOf } from '../make.ts'

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
