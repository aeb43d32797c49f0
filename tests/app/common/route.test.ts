import { expect, test } from 'vitest'
import { readRoute, toNew, toSheet, toStart, withFace } from '../../../src/app/common/route.ts'

test('what is written into the address is read back', () => {
  expect(readRoute(toSheet('a b/c'))).toEqual({ at: 'sheet', id: 'a b/c', face: 'fill' })
  expect(readRoute(withFace(toNew('flat-sheet'), 'build'))).toEqual({
    at: 'new',
    template: 'flat-sheet',
    face: 'build',
  })
  expect(readRoute(withFace(toStart('flat-sheet'), 'stand'))).toEqual({
    at: 'new',
    template: 'flat-sheet',
    face: 'stand',
    own: true,
  })
  expect(readRoute('#s=1.abc_-')).toEqual({ at: 'link', fragment: 's=1.abc_-' })
})

test('a sheet is turned from one face to another', () => {
  const fill = toSheet('a')
  const stand = withFace(fill, 'stand')
  expect(readRoute(stand)).toEqual({ at: 'sheet', id: 'a', face: 'stand' })
  expect(withFace(stand, 'build')).toBe(withFace(fill, 'build'))
  expect(withFace(stand, 'fill')).toBe(fill)
})

test('anything else leads to the shelf', () => {
  for (const hash of ['', '#', '#nowhere', '#sheet', '#sheet/', '#new/'])
    expect(readRoute(hash)).toEqual({ at: 'shelf' })
  expect(readRoute('#sheet/%E0%A4%A')).toEqual({ at: 'sheet', id: '%E0%A4%A', face: 'fill' })
})
