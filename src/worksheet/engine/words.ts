import { listText, shortList } from '../../units/plural.ts'

/** Sentences about the outcome of cells. Each says what is wrong and what to do. */

export const sameName = (name: string): string =>
  `Another cell above is already named “${name}”. Give this one another name.`
export const fixFirst = (label: string, why: string): string => `Fix “${label}” first. ${why}`.trim()
export const cycle = (path: readonly string[]): string =>
  `These cells depend on each other in a cycle: ${path.join(' → ')}. Break it in one of them.`
export const needsCondition = 'A condition must be true or false, such as “width > 300 mm”.'

export const toBeMeasured = (labels: readonly string[]): string => `needs ${shortList(labels)} to be measured.`
export const noCondition = 'it has no condition yet.'
export const formulaLoading = 'its formula is still loading.'
export const waitsFor = (labels: readonly string[]): string => `needs ${shortList(labels, 4)}.`
export const needs = (labels: readonly string[]): string => `needs ${listText(labels)}`
export const inError = 'has an error'

const EXAMPLE = 'Write a share of the limit, such as 5 %.'
const margin = (why: string): string => `Warning margin: ${why} ${EXAMPLE}`
export const marginUnreadable = (why: string): string => margin(why)
export const marginNotPercent = (text: string): string => margin(`“${text}” is not a percentage.`)
export const marginWithLimits = (text: string): string => margin(`“${text}” has limits after “±”.`)
export const marginBelowZero = (text: string): string => margin(`“${text}” is below zero.`)
/** A part of what a cell holds: `Original, width`. */
export const partOf = (label: string, part: string): string => `${label}, ${part.replaceAll('_', ' ')}`
