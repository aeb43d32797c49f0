import { plural } from '../../units/plural.ts'
import { overRange, overTwo } from '../../worksheet/analysis/words.ts'

/** The texts in and below a plot of results over a range. */
export const RANGE_WORDS = {
  title: overRange,
  nothingToPlot: 'there are no figures to plot.',
  noFigures: (label: string) => `${label} is not plotted: it has no figures over this range.`,
  someMissing: (label: string, missing: number, of: number) =>
    `${label} has no figure at ${missing} of ${plural(of, 'value')}; the line is interrupted there.`,
  measured: (label: string) =>
    `${label} was measured, so it does not change. Clear the measured value to see it change.`,
  scales: { left: 'left scale', right: 'right scale', outer: 'outer right scale' },
  onScale: (label: string, scale: string) => `${label}: ${scale}`,
  apertureUnit: 'f/',
  withUnit: (label: string, unit: string) => `${label}, ${unit}`,
  labelNow: (label: string, value: string) => `${label}, now ${value}`,
  now: (value: string) => `now ${value}`,
  isNow: (value: string) => `${value} (now)`,

  mapTitle: overTwo,
  mapHead: (result: string, least: string, most: string) => `${result}, ${least} to ${most}`,
  mapGaps: (result: string) => `${result} has no figure in a part of this map; no line is drawn there.`,
  mapDescription: (result: string, across: string, up: string, least: string, most: string) =>
    `${result} over ${across} from left to right and ${up} from bottom to top: from ${least} to ${most}. Each line joins places where it is the same.`,

  followed: (label: string, from: string, to: string) => `${label} from ${from} to ${to}`,
  description: (label: string, from: string, to: string, values: number, list: string) =>
    `${label} from ${from} to ${to}, at ${plural(values, 'value')}: ${list}.`,
  present: (value: string) => `Its current value is ${value}.`,
  presentNotShown: 'Its current value is not one of them.',
}
