import { encode } from 'uqr'
import { element, type Node } from '../../drawings/canvas/tree.ts'
import { toLink } from '../../storage/exchange/link.ts'
import type { BaseSheet } from '../../storage/exchange/sheet-on-bases.ts'
import { bareFigures, minimalFigures } from '../../storage/figures/bare-figures.ts'
import { figuresOnly, isFiguresOnly } from '../../storage/figures/figures-only.ts'
import type { Sheet } from '../../worksheet/index.ts'
import { paperWords as words } from './words.ts'

/** The capacity of the largest QR code, in bytes (ISO/IEC 18004, version 40-L). */
const MOST_BYTES = 2_953
/** With more cells not even the bare figures fit, so a long sheet is not packed in vain at every pause in typing. */
const MOST_CELLS = 1_500
/** The quiet zone around a code, in modules (ISO/IEC 18004). */
const BORDER = 4

/** An address as a QR code; undefined where it is too large for one. */
function qrOf(address: string): Node | undefined {
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
    element('title', {}, words.code),
    element('rect', { width: size, height: size, fill: '#fff' }),
    element('path', { d: runs.join(''), fill: '#000' }),
  )
}

/** A QR code, its width in modules, and what it contains. */
export interface SheetCode {
  readonly node: Node
  readonly modules: number
  readonly words: string
}

interface CodeOptions {
  readonly addressOf: (fragment: string) => string
  /** False: figures in the place of formulas. */
  readonly formulas?: boolean
  /** Further keys of the document in the link. */
  readonly along?: object
  /** Jobs the sheet may have been made from, which make a shorter link. */
  readonly bases?: readonly BaseSheet[]
}

/** The fullest link to a sheet that a QR code can hold; undefined where not even its bare figures fit. */
export async function codeFor(
  sheet: Sheet,
  { addressOf, formulas = true, along = {}, bases = [] }: CodeOptions,
): Promise<SheetCode | undefined> {
  if (sheet.worksheet.cells.length > MOST_CELLS) return undefined
  const frozen = isFiguresOnly(sheet.worksheet)
  const figures = frozen ? sheet.worksheet : figuresOnly(sheet)
  const whole = { worksheet: sheet.worksheet, words: words.whole }
  const tries = [
    ...(formulas && !frozen ? [whole] : []),
    { worksheet: figures, words: words.figuresOnly },
    {
      worksheet: bareFigures(figures),
      words: words.withoutDrawings,
    },
    {
      worksheet: minimalFigures(figures),
      words: words.withoutFine,
    },
  ]
  for (const { worksheet, words: content } of tries) {
    const node = qrOf(addressOf(await toLink({ ...worksheet, ...along }, bases)))
    if (node) return { node, modules: Number(node.attributes.width), words: content }
  }
  return undefined
}
