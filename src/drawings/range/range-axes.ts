import { allMarks, type DisplayUnit, showQuantity } from '../../units/index.ts'
import type { RangeTable } from '../../worksheet/analysis/followed.ts'
import { labelOf } from '../../worksheet/document/label.ts'
import { textWidth } from '../canvas/lettering.ts'
import { figureText } from '../canvas/text-figures.ts'
import { type Axis, apertureAxis, linearAxis, logAxis, type Span, type Tick } from '../plots/axes.ts'
import { momentAxis } from './moment-axis.ts'
import { RANGE_WORDS as WORDS } from './words.ts'

/** Results with a larger ratio of greatest to least get a logarithmic axis. */
const FAR = 200

/** A quantity with its unit: `Blur, px`. What the figures on the axis say themselves is left out. */
function axisHeading(label: string, unit: DisplayUnit | undefined): string {
  const behind = unit?.notation === 'f-number' ? WORDS.apertureUnit : (unit?.symbol ?? '')
  if (unit?.notation === 'ratio') return label
  return behind === '' ? label : label === '' ? behind : WORDS.withUnit(label, behind)
}

/** As many words of a text as fit into a space in pixels. */
export function shortened(text: string, room: number): string {
  const words = text.split(' ')
  while (words.length > 1 && textWidth(words.join(' ')) > room - 60) words.pop()
  return words.length === text.split(' ').length ? text : `${words.join(' ')} …`
}

/** A figure with the sign of its notation: `f/8`, `1:13.2`, `20 mm`. */
export function withNotation(figure: number, unit: DisplayUnit | undefined): string {
  if (unit?.notation === 'shutter') return showQuantity(figure, unit.dimension, { unit }).text
  const text = figureText(figure)
  if (unit?.notation === 'f-number') return `f/${text}`
  if (unit?.notation === 'ratio') return figure >= 1 || figure <= 0 ? `1:${text}` : `${figureText(1 / figure)}:1`
  return [text, unit?.symbol].filter(Boolean).join(' ')
}

/** The axis of what is varied, in the notation of its quantity, with equal steps where its marks have them. */
export function axisAcross(
  {
    figures,
    unit,
    present,
    byFactors,
    varied,
    moments,
  }: Pick<RangeTable, 'figures' | 'unit' | 'present' | 'byFactors' | 'varied' | 'moments'>,
  span: Span,
): Axis {
  const all = present === undefined ? figures : [...figures, present]
  const ends: readonly [number, number] = [Math.min(...all), Math.max(...all)]
  const heading = axisHeading(shortened(labelOf(varied), Math.abs(span[1] - span[0])), unit)
  return moments ? momentAxis(ends, span, heading, moments) : inNotation(ends, span, heading, unit, byFactors)
}

/** The axis of a result. */
export function axisUp(
  { figures, present, unit }: Pick<RangeTable['followed'][number], 'figures' | 'present' | 'unit'>,
  span: Span,
  further: readonly number[] = [],
): Axis {
  const known = [...figures, present, ...further].filter((one): one is number => one !== undefined)
  const [least, most] = [Math.min(...known), Math.max(...known)]
  return inNotation([least, most], span, axisHeading('', unit), unit, least > 0 && most / least > FAR)
}

function inNotation(
  [from, to]: readonly [number, number],
  span: Span,
  heading: string,
  unit: DisplayUnit | undefined,
  byFactors: boolean,
): Axis {
  if (unit?.notation === 'f-number' && from > 0) return apertureAxis([from, to], span, heading)
  if (unit?.notation === 'shutter' && from > 0) return shutterAxis([from, to], span, heading)
  const axis = byFactors && from > 0 ? logAxis([from, to], span, heading) : linearAxis([from, to], span, heading)
  if (unit?.notation !== 'ratio') return axis
  return withTicks(
    axis,
    axis.ticks.map(({ value, text }) => ({ value, ...(text ? { text: withNotation(value, unit) } : {}) })),
  )
}

const withTicks = (axis: Axis, ticks: readonly Tick[]): Axis => ({ ...axis, ticks })

/** An axis of exposure times, equal distances for equal stops, with the marks of a shutter. */
function shutterAxis(ends: readonly [number, number], span: Span, heading: string): Axis {
  const axis = logAxis(ends, span, heading)
  const marks = allMarks('time').filter(({ exact }) => exact >= axis.from * 0.96 && exact <= axis.to * 1.04)
  if (marks.length < 2) return axis
  return withTicks(
    axis,
    marks.map(({ exact, text }) => (isFullStop(exact) ? { value: exact, text } : { value: exact })),
  )
}

const isFullStop = (time: number): boolean => Math.abs(Math.log2(time) - Math.round(Math.log2(time))) < 1e-6
