import { lengthIn } from '../canvas/drawing-unit.ts'
import { apertureText, figureText, ratioText } from '../canvas/text-figures.ts'
import type { Table } from '../canvas/tree.ts'
import { apertureMarks } from '../plots/axes.ts'
import type { DepthFigures } from './depth-figures.ts'
import { DEPTH_WORDS as WORDS } from './words.ts'

/** The description of the plot: every figure it shows in sentences. `shown` converts metres to `unit`. */
export function describeDepth(figures: DepthFigures, shown: (metres: number) => number, unit: string): string {
  const { depth, magnification, aperture, best, bestMark, allowed, needed, pitch } = figures
  const blur = (metres: number): string => `${figureText(shown(metres))} ${unit}`
  const partsAt = (number: number): string => {
    const { defocus, diffraction, together } = figures.blurAt(number)
    const parts = [
      ...(depth === undefined ? [] : [WORDS.part(WORDS.defocus, blur(defocus))]),
      WORDS.part(WORDS.diffraction, blur(diffraction)),
      ...(pitch === undefined ? [] : [WORDS.part(WORDS.pixelCurve, blur(pitch))]),
    ]
    return WORDS.parts(parts.join(', '), blur(together))
  }
  const [from, to] = figures.range
  const sentences = [WORDS.introduction(apertureText(from), apertureText(to), ratioText(magnification))]
  if (depth !== undefined) sentences.push(WORDS.depthRequired(lengthIn('mm')(depth)))
  if (aperture !== undefined) sentences.push(WORDS.atAperture(apertureText(aperture), partsAt(aperture)))
  if (best !== undefined) {
    const outside = best < from || best > to
    sentences.push(WORDS.atBest(outside ? WORDS.outsidePlot(apertureText(best)) : apertureText(best), partsAt(best)))
    if (bestMark !== undefined) sentences.push(WORDS.nearestMark(bestMark))
  }
  if (allowed !== undefined)
    sentences.push(
      needed === undefined
        ? WORDS.defocusAllowed(blur(allowed))
        : WORDS.defocusNeeds(blur(allowed), apertureText(needed)),
    )
  return sentences.join(' ')
}

/** The blur at each marked aperture of the lens. */
export function depthTable(figures: DepthFigures, shown: (metres: number) => number, unit: string): Table {
  const blur = (metres: number): string => figureText(shown(metres))
  return {
    head: WORDS.table(unit),
    rows: apertureMarks(figures.range[0], figures.range[1]).map(({ text, exact }) => {
      const { defocus, diffraction, together } = figures.blurAt(exact)
      return [text, figures.depth === undefined ? '' : blur(defocus), blur(diffraction), blur(together)]
    }),
  }
}
