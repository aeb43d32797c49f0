import { describe, expect, test } from 'vitest'
import { namesIn, renameIn } from '../../src/language/index.ts'
import { computed, shown, WITH_F } from './make.ts'

describe('renaming a cell in a formula', () => {
  test.each([
    ['width + width^2 * min(width, 1)', 'w + w^2 * min(w, 1)'],
    ['3 width', '3 width'],
    ['widths + width', 'widths + w'],
    ['mask_size(width: width, lens_height: 1)', 'mask_size(width: w, lens_height: 1)'],
    ['sensor.width / width', 'sensor.width / w'],
    ['"width" = width', '"width" = w'],
    ['width.part', 'w.part'],
    ['width(3)', 'width(3)'],
    ['(width +', '(w +'],
    ['5 [width] + width', '5 [width] + w'],
    ['µ width', 'µ w'],
  ])('in “%s” gives “%s”', (before, after) => {
    expect(renameIn(before, 'width', 'w')).toBe(after)
  })

  test('keeps a division a division where the new name reads otherwise', () => {
    expect(computed(renameIn('play/8', 'play', 'f'), WITH_F).value).toBe(0.06 / 8)
    expect(shown(renameIn('10 mm/x', 'x', 'm'))).toBe('40 mm')
    expect(shown(renameIn('10 mm/x^2', 'x', 'm'))).toBe('160 mm')
  })
})

test('names are found with their places, functions, arguments and parts left out', () => {
  expect(namesIn('min(a, b: c.d) + yes')).toEqual([
    { name: 'a', from: 4, to: 5 },
    { name: 'c', from: 10, to: 11 },
  ])
})
