import { lengthIn } from '../canvas/drawing-unit.ts'
import { figureText } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import { apertureMarks } from '../plots/axes.ts'
import type { DepthFigures } from './depth-figures.ts'

/** The plot in sentences, with every figure it shows. */
export function describeDepth(depth: DepthFigures, shown: (metres: number) => number, unit: string): string {
  const { magnification, aperture, best, bestMark, allowed, needed, pitch } = depth
  const figure = (metres: number): string => `${figureText(shown(metres))} ${unit}`
  const ratio = magnification >= 1 ? `${figureText(magnification)}:1` : `1:${figureText(1 / magnification)}`
  const at = (number: number): string => {
    const { defocus, diffraction, together } = depth.blurAt(number)
    const parts = [
      ...(depth.depth === undefined ? [] : [`defocus ${figure(defocus)}`]),
      `diffraction ${figure(diffraction)}`,
      ...(pitch === undefined ? [] : [`pixel ${figure(pitch)}`]),
    ]
    return `${parts.join(', ')}, together ${figure(together)}`
  }
  const [from, to] = depth.range
  const sentences = [
    `Diameter of the blur at the sensor against the aperture, f/${figureText(from)} to f/${figureText(to)}, at ${ratio}; the parts are added as the root of the sum of their squares.`,
  ]
  if (depth.depth !== undefined)
    sentences.push(
      `The depth wanted is ${lengthIn('mm')(depth.depth)}, focused at its middle; defocus is that at both its ends, for a depth that is small beside the distance.`,
    )
  if (aperture !== undefined) sentences.push(`At the aperture set, f/${figureText(aperture)}: ${at(aperture)}.`)
  if (best !== undefined) {
    const outside = best < from || best > to ? ', beyond what is drawn' : ''
    sentences.push(
      `At the best aperture, f/${figureText(best)}${outside}: ${at(best)}.${bestMark === undefined ? '' : ` The nearest mark is ${bestMark}.`}`,
    )
  }
  if (allowed !== undefined)
    sentences.push(
      needed === undefined
        ? `Of defocus ${figure(allowed)} is allowed.`
        : `Of defocus ${figure(allowed)} is allowed; it takes f/${figureText(needed)} or smaller.`,
    )
  return sentences.join(' ')
}

/** The blur at each mark of the lens. */
export function depthTable(depth: DepthFigures, shown: (metres: number) => number, unit: string): Table {
  const figure = (metres: number): string => figureText(shown(metres))
  return {
    head: ['Mark', `Defocus, ${unit}`, `Diffraction, ${unit}`, `Together, ${unit}`],
    rows: apertureMarks(depth.range[0], depth.range[1]).map(({ text, exact }) => {
      const { defocus, diffraction, together } = depth.blurAt(exact)
      return [text, depth.depth === undefined ? '' : figure(defocus), figure(diffraction), figure(together)]
    }),
  }
}
