import { describe, expect, test } from 'vitest'
import { namesIn, renameAllIn, renameIn, renamePartIn } from '../../src/language/index.ts'
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

test('several cells are renamed at once, so that two may change names', () => {
  const names = new Map([
    ['a', 'b'],
    ['b', 'a'],
  ])
  expect(renameAllIn('a - b * max(a, c)', names)).toBe('b - a * max(b, c)')
  expect(renameAllIn('a - b', new Map())).toBe('a - b')
})

test('a space is put in only where the new name would be read otherwise', () => {
  expect(renameIn('play/8', 'play', 'g')).toBe('g/8')
  expect(renameIn('play/8', 'play', 'f')).toBe('f /8')
  expect(renameIn('play * 8', 'play', 'f')).toBe('f * 8')
  expect(renameIn('10 mm/x', 'x', 'm')).toBe('10 mm/ m')
  expect(renameIn('10 mm/x', 'x', 'depth')).toBe('10 mm/depth')
  expect(renameIn('10 mm * x', 'x', 'm')).toBe('10 mm * m')
})

describe('renaming a part of a cell’s record', () => {
  test.each([
    ['originals.width + width', 'originals.breadth + width'],
    ['sum(originals.width) / max(originals.width)', 'sum(originals.breadth) / max(originals.breadth)'],
    ['others.width + originals.width', 'others.width + originals.breadth'],
    ['originals.widths + originals.height', 'originals.widths + originals.height'],
    ['best(originals).width', 'best(originals).width'],
    ['originals.size.width', 'originals.size.width'],
    ['"originals.width"', '"originals.width"'],
    ['(originals.width +', '(originals.breadth +'],
    ['1 + 2', '1 + 2'],
  ])('in “%s” gives “%s”', (before, after) => {
    expect(renamePartIn(before, 'originals', 'width', 'breadth')).toBe(after)
  })

  test('leaves a formula that is too long to be read as it is', () => {
    const long = `originals.width${' + 1'.repeat(600)}`
    expect(renamePartIn(long, 'originals', 'width', 'breadth')).toBe(long)
    expect(namesIn(long)).toEqual([])
  })
})

test('names are found with their places, functions, arguments and parts left out', () => {
  expect(namesIn('min(a, b: c.d) + yes')).toEqual([
    { name: 'a', from: 4, to: 5 },
    { name: 'c', from: 10, to: 11 },
  ])
})
