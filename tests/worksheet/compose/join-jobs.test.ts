import fc from 'fast-check'
import { expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { planJoin } from '../../../src/worksheet/compose/join.ts'
import { isNamed, Sheet } from '../../../src/worksheet/index.ts'
import { JOBS_OF_VERSION_1, ofVersion1 } from '../schema/version-1.ts'

/** What is wrong with the text of cells: names, units, circles; not that a figure is refused. */
const faults = (sheet: Sheet): string[] =>
  sheet.cells.filter(isNamed).flatMap(({ id, name }) => {
    const node = sheet.engine.node(id)
    if (!node) return [`${name} is not computed`]
    const wrong = [...node.errors.map(({ message }) => message)]
    if (sheet.engine.isDuplicate(node)) wrong.push('bears a name twice')
    if (sheet.engine.cycle(node)) wrong.push('is in a cycle')
    return wrong.map((one) => `${name}: ${one}`)
  })

test('any templates joined in any order give a sheet that names nothing twice and breaks nothing', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.constantFrom(...JOBS_OF_VERSION_1), { minLength: 2, maxLength: 4 }), (names) => {
      let made = 0
      const freshId = () => `new_${++made}`
      const [first, ...others] = names as [string, ...string[]]
      const sheet = new Sheet(ofVersion1(first), LIBRARY)
      for (const key of others) {
        const { title, cells } = ofVersion1(key)
        const { change, meetings } = planJoin(sheet, { key, title, cells }, { freshId })
        const before = sheet.cells
        if (change) sheet.apply(change)
        // Nothing of the sheet is lost: a cell stays, or gives way to the result that takes its name.
        for (const cell of before)
          if (!sheet.cells.includes(cell)) expect(meetings.find(({ there }) => there === cell)?.way).toMatch(/ed$/)
      }
      expect(faults(sheet), names.join(' + ')).toEqual([])
      const all = sheet.cells.filter(isNamed).map(({ name }) => name)
      expect(all).toEqual([...new Set(all)])
    }),
    { numRuns: 40 },
  )
})
