import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readQuantity, readSize } from '../../../src/units/index.ts'
import { typedUnit } from '../../../src/worksheet/analysis/typed-unit.ts'

describe('the unit typed behind figures', () => {
  it.each([
    ['53.4 x 40 mm', '53.4 x 40', 'mm'],
    ['600 ± 2 mm', '600 ± 2', 'mm'],
    ['1,5 cm', '1,5', 'cm'],
    ['3 m²', '3', 'm²'],
    ['2 [lx h]', '2', 'lx h'],
  ])('of %s is found', (text, figures, unit) => {
    expect(typedUnit(text)).toEqual({ figures, unit })
  })

  it.each(['420', 'f/8', '1:4', '1/125 s', '16.5 in x 11.7 in', '5 %', '', 'mm', '3 nothing'])(
    'of %s is none of its own',
    (text) => {
      expect(typedUnit(text)).toBeUndefined()
    },
  )

  it('with its figures reads as the whole text does', () => {
    const figure = fc.integer({ min: 1, max: 99_999 }).map((tenths) => `${tenths / 10}`)
    const gap = fc.constantFrom('', ' ', '\u202f', '\u00a0')
    const texts = fc.tuple(figure, figure, gap, fc.constantFrom('mm', 'cm', 'm', 'in', 'ft'), fc.boolean())
    fc.assert(
      fc.property(texts, ([a, b, space, unit, isSize]) => {
        const figures = isSize ? `${a} x ${b}` : a
        const text = `${figures}${space}${unit}`
        const typed = typedUnit(text)
        expect(typed).toEqual({ figures, unit })
        const again = `${typed?.figures} ${typed?.unit}`
        if (isSize) expect(readSize(again)).toEqual(readSize(text))
        else expect(readQuantity(again).value).toBe(readQuantity(text).value)
      }),
    )
  })
})
