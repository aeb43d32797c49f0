import { showValue } from '../../language/index.ts'
import { listText } from '../../units/plural.ts'
import { declaredUnit, type Result, type ValueOutcome } from '../../worksheet/index.ts'
import type { Study } from '../../worksheet/simulation/study.ts'
import { amountText } from './amount-text.ts'
import { simulationWords as words } from './words.ts'

const MOST_INFLUENCES = 4
/** Shares below this are not worth naming. */
const LEAST_SHARE = 0.005

/** A share in per cent. All and none are said only where it is all and none. */
export function shareText(share: number): string {
  const percent = 100 * share
  if (share > 0 && percent < 0.1) return words.lessThan('0.1 %')
  if (share < 1 && percent > 99.9) return words.moreThan('99.9 %')
  return `${Number(percent.toPrecision(3))} %`
}

/** A value of a result as it is shown. */
export const valueText = (cell: Result, { type }: ValueOutcome, value: number): string =>
  showValue(value, type, declaredUnit(cell.unit).unit).text

/** What a study says of a result, in sentences. */
export function studyText(
  cell: Result,
  outcome: ValueOutcome,
  { tries, figures, seed }: Study,
  called: (name: string) => string,
): string[] {
  const figure = figures.get(cell.name)
  if (!figure) return [words.none]
  const { mean, sd, low95, high95, failed, influences } = figure
  if (sd === 0) return [words.still]
  const show = (value: number): string => valueText(cell, outcome, value)
  const named = influences.filter(({ share }) => share >= LEAST_SHARE).slice(0, MOST_INFLUENCES)
  return [
    words.figures(tries, show(mean), amountText(cell, outcome, sd), show(low95), show(high95)),
    ...(failed > 0 ? [words.failed(failed)] : []),
    ...(named.length > 0
      ? [
          words.influences(
            listText(named.map(({ name, share }) => words.influence(called(name), `${Math.round(100 * share)} %`))),
          ),
        ]
      : []),
    words.method(seed),
  ]
}
