import { encode } from 'uqr'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { toLink } from '../../storage/exchange/link.ts'
import { bareFigures, minimalFigures } from '../../storage/figures/bare-figures.ts'
import { figuresOnly, isFiguresOnly } from '../../storage/figures/figures-only.ts'
import type { Sheet } from '../../worksheet/index.ts'

/** What the largest QR code holds, in bytes. */
const MOST_BYTES = 2_953
/** Readers want four light modules around. */
const BORDER = 4

/** An address as a QR code; undefined where it is too large for one. */
export function qrOf(address: string): Node | undefined {
  if (new TextEncoder().encode(address).length > MOST_BYTES) return undefined
  const { data, size } = encode(address, { ecc: 'L', border: BORDER })
  const runs = data.flatMap((row, y) =>
    [
      ...row
        .map((dark) => (dark ? '1' : '0'))
        .join('')
        .matchAll(/1+/g),
    ].map(({ 0: run, index }) => `M${index} ${y}h${run.length}v1h-${run.length}z`),
  )
  return element(
    'svg',
    {
      class: 'qr',
      viewBox: `0 0 ${size} ${size}`,
      width: size,
      height: size,
      role: 'img',
      'shape-rendering': 'crispEdges',
    },
    element('title', {}, 'QR code of a link to this sheet'),
    element('rect', { width: size, height: size, fill: '#fff' }),
    element('path', { d: runs.join(''), fill: '#000' }),
  )
}

/** A code, how many modules wide, and what it holds. */
export interface SheetCode {
  readonly node: Node
  readonly modules: number
  readonly address: string
  readonly words: string
}

/** The fullest link to a sheet that a QR code can hold; undefined where not even its bare figures fit. */
export async function codeFor(
  sheet: Sheet,
  addressOf: (fragment: string) => string,
  formulas = true,
): Promise<SheetCode | undefined> {
  const frozen = isFiguresOnly(sheet.worksheet)
  const figures = frozen ? sheet.worksheet : figuresOnly(sheet)
  const whole = { worksheet: sheet.worksheet, words: 'The whole sheet, with its formulas.' }
  const tries = [
    ...(formulas && !frozen ? [whole] : []),
    { worksheet: figures, words: 'Results and givens only.' },
    {
      worksheet: bareFigures(figures),
      words: 'Results and givens only, without drawings and hints, which are too large for a QR code.',
    },
    {
      worksheet: minimalFigures(figures),
      words: 'Results, givens and checks to look at, without what is seldom known, which is too large for a QR code.',
    },
  ]
  for (const { worksheet, words } of tries) {
    const address = addressOf(await toLink(worksheet))
    const node = qrOf(address)
    if (node) return { node, modules: Number(node.attributes.width), address, words }
  }
  return undefined
}
