import { describe, expect, test } from 'vitest'
import { frameOnPaper } from '../../../src/app/paper/frame-on-paper.ts'
import type { Node } from '../../../src/drawings/canvas/tree.ts'
import type { Frame } from '../../../src/worksheet/index.ts'

const wholeText = (node: Node | string): string =>
  typeof node === 'string' ? node : node.children.map(wholeText).join(' ')
const tags = (node: Node | string): string[] =>
  typeof node === 'string' ? [] : [node.tag, ...node.children.flatMap(tags)]

const FRAME: Frame = {
  kind: 'frame',
  id: 'f',
  name: 'card',
  label: 'Card',
  areas: [
    { kind: 'evenness', name: 'light', columns: 2, rows: 2 },
    { kind: 'edge', name: 'edge', box: [10, 10, 40, 40] },
    { kind: 'chart', name: 'chart', patches: [{ name: 'A1', box: [60, 60, 9, 9], lab: [50, 0, 0] }] },
    { kind: 'rule', name: 'rule', from: [0, 0], to: [90, 0], length: '10 mm' },
  ],
  picture: {
    name: 'card.tif',
    size: 1,
    digest: 'ab',
    pixels: { width: 100, height: 80, bits: 16, channels: 3, encoding: 'sRGB' },
    taken: null,
  },
  readings: {
    light: {
      light: [
        [1, 0.9],
        [0.8, 0.7],
      ],
      spread: 0.51,
      uniformity: 0.8,
      corner: [0, 0, 0, 0],
    },
    edge: {
      sfr: [
        [0, 1],
        [0.5, 0.3],
        [1, 0],
      ],
      mtf50: 0.36,
      mtf10: 0.83,
      efficiency: 1,
      greatest: 1,
    },
    chart: { patches: [{ name: 'A1', lab: [51, 1, 0], delta_e_2000: 1.7 }], mean: 1.7, percentile_90: 1.7, worst: 1.7 },
  },
}

describe('a frame on paper', () => {
  test('shows the picture with its areas, the map, the curve and the patches, each with its figures', () => {
    const nodes = frameOnPaper(FRAME)
    expect(nodes.filter(({ tag }) => tag === 'figure')).toHaveLength(4)
    const text = nodes.map(wholeText).join(' ')
    for (const said of ['card.tif: 100 × 80 px', 'spread 0.51 stop', 'one half at 0.36', 'A1 1.70', 'light 0.51 stop'])
      expect(text).toContain(said)
    expect(nodes.flatMap(tags)).not.toContain('image')
  })

  test('of readings that are no figures shows no drawing, and throws nothing', () => {
    const readings = { light: { light: 'bright' }, edge: { sfr: 3 }, chart: { patches: [null, { lab: 'red' }] } }
    const nodes = frameOnPaper({ ...FRAME, readings: readings as NonNullable<Frame['readings']> })
    expect(nodes.map(wholeText).join(' ')).toContain('card.tif')
  })

  test('without a picture says so', () => {
    const { picture: _, ...bare } = FRAME
    expect(frameOnPaper(bare).map(wholeText).join()).toBe('Card: Nothing measured yet')
  })
})
