import fc from 'fast-check'
import { expect, test } from 'vitest'
import { LOADERS } from '../../../src/drawings/loaders.ts'
import { contradictionsOf } from '../../../src/drawings/set-up/contradictions.ts'
import { readSetUp } from '../../../src/drawings/set-up/set-up-inputs.ts'
import { JOBS, open } from '../../templates/open.ts'

const show = (metres: number): string => `${Math.round(metres * 1000)} mm`
const side = fc.integer({ min: 10, max: 2000 }).map((mm) => mm / 1000)

test('an original that does not lie within the field is named, as turned where that is enough', () => {
  fc.assert(
    fc.property(side, side, side, side, (width, height, fieldWidth, fieldHeight) => {
      const setUp = readSetUp(
        { original_width: width, original_height: height, field_width: fieldWidth, field_height: fieldHeight },
        show,
      )
      const [said, ...others] = contradictionsOf(setUp, show)
      expect(others).toEqual([])
      if (width <= fieldWidth && height <= fieldHeight) expect(said).toBeUndefined()
      else if (width <= fieldHeight && height <= fieldWidth) expect(said).toMatch(/only when turned/)
      else expect(said).toMatch(/larger than the field/)
    }),
  )
})

test('nothing is said where a side is not known', () => {
  expect(contradictionsOf(readSetUp({ original_width: 1, field_width: 0.5, field_height: 0.5 }, show), show)).toEqual(
    [],
  )
})

test.each(JOBS)('the example of %s contradicts itself in no drawing', async (name) => {
  const { sheet } = open(name)
  // An original taken in several frames is larger than the field of one.
  if (sheet.cells.some((cell) => cell.kind === 'drawing' && cell.drawing === 'tiles')) return
  for (const cell of sheet.cells)
    if (cell.kind === 'drawing') {
      const draw = await LOADERS[cell.drawing](cell.from)
      expect(draw(sheet.drawing(cell.id).values, { width: 400 }).cautions ?? [], cell.title ?? cell.drawing).toEqual([])
    }
})
