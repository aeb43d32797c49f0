import { clampRgb, converter, formatHex, modeLab, modeRgb, useMode } from 'culori/fn'
import { listText } from '../../units/plural.ts'
import { Canvas } from '../canvas/canvas.ts'
import { type Box, corners, point } from '../canvas/geometry.ts'
import { hatch } from '../canvas/hatch.ts'
import { ASCENT } from '../canvas/lettering.ts'
import { type Drawing, element, type Node } from '../canvas/tree.ts'
import { fittedText } from '../plots/fitted-text.ts'
import { FRAME_DRAWING_WORDS as WORDS } from './words.ts'

export interface PatchPair {
  readonly name: string
  /** L*, a*, b* for D50, as measured and as referenced. */
  readonly measured: readonly [number, number, number]
  readonly reference: readonly [number, number, number]
  readonly difference: number
}

useMode(modeLab)
useMode(modeRgb)
const toRgb = converter('rgb')

/** The nearest colour a screen shows; what lies outside sRGB is cut off. */
const shown = ([l, a, b]: readonly [number, number, number]): string =>
  formatHex(clampRgb(toRgb({ mode: 'lab', l, a, b })))

const PAD = 4
const NARROWEST = 240
const CELL = 58
const SWATCH = 28
const BAND = 9
const LINE = 15
const ROW = LINE + SWATCH + BAND + LINE + 6
const HEAD = 18

/** Distance of hatch lines, px, from the smallest difference they mark. */
const DENSITIES = [
  { from: 4, spacing: 2.4 },
  { from: 2, spacing: 4.5 },
  { from: 1, spacing: 9 },
] as const

/** Draws each patch as measured beside its reference, with their difference as a figure and as a hatch. */
export function drawPatchPairs(pairs: readonly PatchPair[], room: number): Drawing | undefined {
  if (pairs.length === 0) return undefined
  const width = Math.max(NARROWEST, room)
  const columns = Math.max(1, Math.floor((width - 2 * PAD) / CELL))
  const rows = Math.ceil(pairs.length / columns)
  const height = PAD + HEAD + rows * ROW + HEAD + PAD
  const paper = { left: 0, right: width, top: 0, bottom: height }
  const canvas = new Canvas(width)
  const colours: Node[] = []
  const letter = (text: string, left: number, baseline: number, most: number): void => {
    const lettering = { text: fittedText(text, most), at: point(left, baseline), anchor: 'start' as const }
    canvas.placeText('patch-text', [{ lettering }], paper)
  }
  letter(WORDS.patchesHead, PAD, PAD + ASCENT, width - 2 * PAD)
  for (const [i, pair] of pairs.entries()) {
    const [left, top] = [PAD + (i % columns) * CELL, PAD + HEAD + Math.floor(i / columns) * ROW]
    const box: Box = { left, right: left + CELL - 8, top: top + LINE, bottom: top + LINE + SWATCH }
    const middle = (box.left + box.right) / 2
    letter(pair.name, left, top + ASCENT, CELL - 8)
    colours.push(
      filled({ ...box, right: middle }, shown(pair.measured)),
      filled({ ...box, left: middle }, shown(pair.reference)),
    )
    canvas.outline('thin', 'swatch', corners(box))
    canvas.line('thin', 'swatch', point(middle, box.top), point(middle, box.bottom))
    const band = corners({ ...box, top: box.bottom, bottom: box.bottom + BAND })
    canvas.outline('thin', 'band', band)
    const density = DENSITIES.find(({ from }) => pair.difference >= from)
    if (density)
      canvas.lines(
        'hatch',
        `difference-${density.from}`,
        hatch(band, { spacing: density.spacing, angle: Math.PI / 4, around: [] }),
      )
    letter(pair.difference.toFixed(2), left, box.bottom + BAND + 3 + ASCENT, CELL - 8)
  }
  letter(WORDS.patchesKey, PAD, height - PAD - 4, width - 2 * PAD)
  const title = WORDS.patches
  const description = WORDS.patchesDescribed(
    listText(pairs.map(({ name, difference }) => WORDS.patch(name, difference.toFixed(2)))),
  )
  const { children, ...drawn } = canvas.node(height, title, description)
  const [first, second, ...rest] = children
  const node = { ...drawn, children: [first as Node, second as Node, ...colours, ...rest] }
  return { node, title, description, omissions: [], width, height }
}

const filled = ({ left, right, top, bottom }: Box, fill: string): Node =>
  element('rect', { class: 'colour', x: left, y: top, width: right - left, height: bottom - top, fill })
