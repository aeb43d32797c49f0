import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readSize, splitSize } from '../../src/units/read-size.ts'

const figure = fc.integer({ min: 1, max: 99_999 }).map(String)
const unit = fc.constantFrom('', ' mm', ' cm', ' px', ' in')
const cross = fc.constantFrom(' x ', ' × ', '×', ' * ', ' by ')

test('a size is split where it is read', () => {
  fc.assert(
    fc.property(figure, figure, unit, cross, (width, height, unit, cross) => {
      const sides = splitSize(`${width}${unit}${cross}${height}${unit}`)
      expect(sides).toEqual([`${width}${unit}`, `${height}${unit}`])
      if (unit) expect(() => readSize(`${width}${unit}${cross}${height}${unit}`)).not.toThrow()
    }),
  )
})

test('a size without its height yet is split too, and a unit that ends in x is no sign', () => {
  fc.assert(
    fc.property(figure, fc.constantFrom(' x', ' × ', 'x', '×'), (width, cross) => {
      expect(splitSize(`${width}${cross}`)).toEqual([width, ''])
      expect(splitSize(`${width} px`)).toBeUndefined()
      expect(splitSize(width)).toBeUndefined()
    }),
  )
  expect(splitSize(' × 297')).toEqual(['', '297'])
})
