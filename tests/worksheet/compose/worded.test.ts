import { expect, test } from 'vitest'
import { readParts } from '../../../src/cli/part-files.ts'
import { isPlace } from '../../../src/worksheet/compose/part-library.ts'
import { worksheetOf } from '../../model/trace.ts'

test('advice that a part gives otherwise is said in the words of the name it is about', () => {
  const { parts, names } = readParts()
  let met = 0
  for (const part of parts.values())
    for (const cell of part.cells) {
      if (!isPlace(cell) || !cell.advice) continue
      const beside = ['camera', 'one-frame', part.id]
      const given = worksheetOf(beside.join(' '), beside).cells.find(
        (one) => one.kind === 'given' && one.name === cell.given,
      )
      const own = cell.advice as Readonly<Record<string, unknown>>
      const { more, less, to } = names.get(cell.given)?.advice ?? {}
      for (const [key, words] of Object.entries({ more, less, to })) {
        if (words === undefined) continue
        met++
        expect(given, part.id).toMatchObject({ advice: { [key]: own[key] ?? words } })
      }
    }
  expect(met).toBeGreaterThan(0)
})
