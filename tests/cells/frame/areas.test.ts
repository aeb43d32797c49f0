import { describe, expect, test } from 'vitest'
import { copiedAreas } from '../../../src/cells/frame/area-copies.ts'
import { type FrameArea, withPlace } from '../../../src/cells/frame/area-shapes.ts'
import { readingLines } from '../../../src/cells/frame/reading-lines.ts'

const pixels = { width: 300, height: 200, bits: 8, channels: 3, encoding: 'sRGB' }
const picture = { name: 'a.png', size: 1, digest: '', pixels, taken: null }

describe('areas copied to another frame', () => {
  const areas: FrameArea[] = [
    { kind: 'patch', name: 'grey', box: [30, 20, 60, 40] },
    { kind: 'rule', name: 'rule', from: [0, 0], to: [300, 200], length: '100 mm' },
    {
      kind: 'square',
      name: 'card',
      corners: [
        [0, 0],
        [300, 0],
        [300, 200],
        [0, 200],
      ],
      size: '3 x 2 mm',
    },
    { kind: 'chart', name: 'chart', patches: [{ name: 'a', box: [3, 2, 6, 4], lab: [50, 0, 0] }] },
  ]

  test('lie at the same shares of a picture of another size', () => {
    expect(copiedAreas({ areas, picture }, { width: 600, height: 800 })).toEqual([
      { kind: 'patch', name: 'grey', box: [60, 80, 120, 160] },
      { kind: 'rule', name: 'rule', from: [0, 0], to: [600, 800], length: '100 mm' },
      {
        kind: 'square',
        name: 'card',
        corners: [
          [0, 0],
          [600, 0],
          [600, 800],
          [0, 800],
        ],
        size: '3 x 2 mm',
      },
      { kind: 'chart', name: 'chart', patches: [{ name: 'a', box: [6, 8, 12, 16], lab: [50, 0, 0] }] },
    ])
  })

  test('stay as they are where neither size is known', () => {
    expect(copiedAreas({ areas }, undefined)).toEqual(areas)
    expect(copiedAreas({ areas, picture }, undefined)).toEqual(areas)
  })
})

test('an area that came with a sheet gets a place; one that has a place, or needs none, stays', () => {
  const size = { width: 300, height: 300 }
  expect(withPlace({ kind: 'patch', name: 'grey' }, size)).toEqual({
    kind: 'patch',
    name: 'grey',
    box: [100, 100, 100, 100],
  })
  expect(withPlace({ kind: 'square', name: 'card', size: '4 x 3 mm' }, size)).toMatchObject({
    corners: [
      [100, 100],
      [200, 100],
      [200, 200],
      [100, 200],
    ],
    size: '4 x 3 mm',
  })
  for (const area of [
    { kind: 'edge', name: 'edge', box: [1, 2, 3, 4] },
    { kind: 'evenness', name: 'light' },
    { kind: 'chart', name: 'chart', patches: [] },
  ] as FrameArea[])
    expect(withPlace(area, size)).toBe(area)
})

test('an evenness says what its correction costs: a spread of one stop a gain of two, and √2 in noise', () => {
  expect(readingLines('evenness', { spread: 1, uniformity: 0.7, corner: [] }).at(-1)?.[1]).toBe(
    'gains from 1 to 2.00; noise at the dimmest field 1.41 times',
  )
})
