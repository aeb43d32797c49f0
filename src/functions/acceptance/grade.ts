import { Refusal } from '../../language/index.ts'
import { aKind, type Dimension, NONE } from '../../units/index.ts'
import { meanOf, percentileOf } from './samples.ts'
import { type Grading, grades, gradingOf, type Limit } from './tables.ts'

/** The class of a value that meets no limit. */
const BELOW = 'below'

/** A limit typed as 1.5 and a value computed as 1.5000000000000002 count as equal. */
const slackOf = (limit: number): number => 1e-9 * Math.abs(limit)

function meets(value: number, { below, above, most, least }: Limit): boolean {
  return (
    (below === undefined || value < below - slackOf(below)) &&
    (above === undefined || value > above + slackOf(above)) &&
    (most === undefined || value <= most + slackOf(most)) &&
    (least === undefined || value >= least - slackOf(least))
  )
}

/** The place of the best class whose limit the value meets, counted from 0; the number of classes where none. */
function placeOf(value: number, { limits, signed, classes }: Grading): number {
  const size = signed ? Math.abs(value) : value
  const place = limits.findIndex((limit) => limit !== null && meets(size, limit))
  return place < 0 ? classes.length : place
}

const kindOfUnit = ({ dimension, unit }: Grading): string =>
  dimension === NONE ? `as a plain number${unit === '%' ? ' or in %' : ''}` : `in ${unit}`

/**
 * The best class whose limit a value meets, else `below`.
 * @param value in coherent SI, of the given dimension
 * @throws Refusal where the table has no such metric, or the value is of another kind than its limits.
 */
export function gradeValue(
  metric: string,
  value: number,
  dimension: Dimension,
  scheme: string,
  material: string,
): string {
  const grading = gradingOf(metric, scheme, material)
  if (grading.dimension !== dimension)
    throw new Refusal(
      `“value” is ${aKind(dimension)}, and "${metric}" is graded ${kindOfUnit(grading)}. Give it ${kindOfUnit(grading)}.`,
      'value',
    )
  return grading.classes[placeOf(value, grading)] ?? BELOW
}

/** The metrics of colour accuracy, each with the figure that it takes of a target’s differences. */
const COLOUR_METRICS: readonly (readonly [string, (differences: readonly number[]) => number])[] = [
  ['colour mean', meanOf],
  ['colour 90th percentile', (differences) => percentileOf(differences, 0.9)],
  ['colour greatest', (differences) => percentileOf(differences, 1)],
]

const gradedColour = (scheme: string, material: string) =>
  COLOUR_METRICS.filter(([metric]) => grades(metric, scheme, material))

/**
 * The class of a target’s colour differences: the worst over all colour metrics of the table.
 * @param differences colour differences of the patches, at least one
 */
export function gradeColour(differences: readonly number[], scheme: string, material: string): string {
  const graded = gradedColour(scheme, material)
  if (graded.length === 0)
    throw new Refusal(
      `“scheme” grades no colour. Use a table with one of ${COLOUR_METRICS.map(([metric]) => `"${metric}"`).join(', ')}.`,
      'scheme',
    )
  const places = graded.map(([metric, figureOf]) => {
    const grading = gradingOf(metric, scheme, material)
    if (grading.dimension !== NONE)
      throw new Refusal(`The limits of "${metric}" are in ${grading.unit}. A colour difference has no unit.`, 'scheme')
    return { place: placeOf(figureOf(differences), grading), classes: grading.classes }
  })
  const worst = places.reduce((one, other) => (other.place > one.place ? other : one))
  return worst.classes[worst.place] ?? BELOW
}

/** What to check about the limits of a metric before relying on a class; nothing where they were read in the document. */
export const gradingCaution = (metric: string, scheme: string, material: string): string | undefined =>
  gradingOf(metric, scheme, material).provenance

/** The same of the colour metrics together. */
export const colourCaution = (scheme: string, material: string): string | undefined =>
  gradedColour(scheme, material)
    .map(([metric]) => gradingOf(metric, scheme, material).provenance)
    .find((provenance) => provenance !== undefined)
