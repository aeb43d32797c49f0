import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sidesOf, sizeText, widthTyped, withoutPrefix, withPrefix } from '../../../src/cells/touch/touch-fields.ts'
import { readDisplayUnit, readQuantity, readSize } from '../../../src/units/index.ts'

test.each([
  ['420 x 297', ['420', '297']],
  ['420×297', ['420', '297']],
  ['42 by 29.7 cm', ['42', '29.7 cm']],
  ['', ['', '']],
  ['420', undefined],
  ['1 × 2 × 3', undefined],
])('the sides of “%s”', (text, sides) => {
  expect(sidesOf(text)).toEqual(sides)
})

test('two boxes give the size that one field gives, whatever is typed into them', () => {
  const unit = readDisplayUnit('mm')
  const side = fc.integer({ min: 1, max: 99999 }).map((tenths) => String(tenths / 10))
  fc.assert(
    fc.property(side, side, (width, height) => {
      const text = sizeText(width, height)
      expect(sidesOf(text)).toEqual([width, height])
      const read = readSize(text, unit)
      expect([read.width.value, read.height.value]).toEqual([
        readQuantity(width, unit).value,
        readQuantity(height, unit).value,
      ])
    }),
  )
})

test('a whole size typed into the first box fills both, and the sign alone leaves the second as it is', () => {
  expect(widthTyped('420 x 297', '100')).toEqual(['420', '297'])
  expect(widthTyped('420×', '100')).toEqual(['420', '100'])
  expect(widthTyped('420', '100')).toEqual(['420', '100'])
})

test.each(['f/', '1/', '1:'])('a bare figure takes the sign %s, and the field shows it without', (prefix) => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 8000 }).map(String), (figure) => {
      const text = withPrefix(figure, prefix)
      expect(text).toBe(`${prefix}${figure}`)
      expect(withoutPrefix(text, prefix)).toBe(figure)
    }),
  )
})

test('what is not a bare figure says itself what it is', () => {
  expect(withPrefix('0.5 s', '1/')).toBe('0.5 s')
  expect(withPrefix('8 ± 0.3', 'f/')).toBe('8 ± 0.3')
  expect(withoutPrefix('0.5 s', '1/')).toBeUndefined()
  expect(withoutPrefix('125', '1/')).toBeUndefined()
})

test.each([
  ['0.5 s', '1/'],
  ['8 ± 0.3', 'f/'],
  ['125', '1/'],
])('typed key by key, %s is never changed by the field', (text, prefix) => {
  for (let at = 1; at <= text.length; at += 1) {
    const typed = text.slice(0, at)
    const value = withPrefix(typed, prefix)
    expect(withoutPrefix(value, prefix) ?? value).toBe(typed)
  }
})
