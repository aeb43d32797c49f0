import type { Subject } from '../../language/index.ts'

/** The headings of the function guide, in its order. */
export const SUBJECT_TITLES: Readonly<Record<Subject, string>> = {
  'close-focus': 'Size on the sensor, the column, getting closer',
  sampling: 'Sampling and tiles',
  depth: 'Depth, diffraction, aperture',
  exposure: 'Exposure, filters, flash',
  lighting: 'Light and evenness',
  squareness: 'Square and level',
  colour: 'Tone and colour acceptance',
  care: 'Care of the original, of people and of the room',
  run: 'The run',
  film: 'Transparent originals',
  maths: 'Plain mathematics and lists',
}
