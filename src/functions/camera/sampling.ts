import { type FunctionRecord, number } from '../../language/index.ts'
import { NONE, PIXEL, PIXEL_PITCH, SAMPLING as PIXELS_PER_LENGTH, RECIPROCAL_LENGTH } from '../../units/index.ts'
import { POSITIVE, parameter, positiveLength } from '../maths/parameters.ts'

const PIXELS = parameter('pixels', number(PIXEL), 'pixels along that side', { range: POSITIVE })
const SAMPLING_AT = parameter('sampling', number(PIXELS_PER_LENGTH), 'pixels per length at the original', {
  range: POSITIVE,
})
const RULES_OF_SAMPLING = 'definition of sampling rate, as ISO 19264-1 and the FADGI guidelines use it'

/** Is it sharp enough? */
export const SAMPLING: readonly FunctionRecord[] = [
  {
    name: 'sampling',
    subject: 'sampling',
    about: 'Pixels per length at the original.',
    also: ['dpi', 'ppi', 'resolution', 'scan resolution', 'spatial resolution'],
    parameters: [PIXELS, positiveLength('field', 'what those pixels cover at the original')],
    result: number(PIXELS_PER_LENGTH),
    formula: 'pixels/field',
    source: RULES_OF_SAMPLING,
    cautions: ['The nominal rate: a target shows how much of it the lens and the focus leave.'],
    examples: [
      { formula: 'sampling(6000 px, 508 mm)', gives: '300 ppi' },
      { formula: 'sampling(6000 px, 0 mm)', refuses: 'field' },
    ],
    compute: (pixels: number, field: number) => pixels / field,
  },
  {
    name: 'pixels_needed',
    subject: 'sampling',
    about: 'Pixels that a size at the original takes, not rounded.',
    also: ['dpi', 'ppi', 'resolution', 'pixel count', 'megapixels'],
    parameters: [positiveLength('size', 'size at the original'), SAMPLING_AT],
    result: number(PIXEL),
    formula: 'size × sampling',
    source: RULES_OF_SAMPLING,
    examples: [
      { formula: 'pixels_needed(508 mm, 300 ppi)', gives: '6000 px' },
      { formula: 'pixels_needed(508 mm, 0 ppi)', refuses: 'sampling' },
    ],
    compute: (size: number, sampling: number) => size * sampling,
  },
  {
    name: 'sampling_limit',
    subject: 'sampling',
    about: 'Finest pattern the sampling can record, in line pairs per length at the original.',
    also: ['nyquist', 'resolution', 'line pairs', 'sharpness'],
    parameters: [SAMPLING_AT],
    result: number(RECIPROCAL_LENGTH),
    formula: 'sampling/2 (two pixels a line pair)',
    source: 'sampling theorem (Nyquist, Shannon)',
    validity: 'Along rows and columns. Compare with diffraction at the original, m/(λ Nₑ).',
    examples: [
      { formula: 'sampling_limit(508 ppi)', gives: '10 [lp/mm]' },
      { formula: 'sampling_limit(0 ppi)', refuses: 'sampling' },
    ],
    compute: (sampling: number) => sampling / 2,
  },
  {
    name: 'pixel_pitch',
    subject: 'sampling',
    about: 'Length of one pixel on the sensor.',
    also: ['pixel size', 'pixel spacing'],
    parameters: [positiveLength('sensor_width', 'side of the sensor'), PIXELS],
    result: number(PIXEL_PITCH),
    formula: 'width/pixels',
    source: 'definition',
    examples: [
      { formula: 'pixel_pitch(36 mm, 6000 px)', gives: '6 [µm/px]' },
      { formula: 'pixel_pitch(36 mm, 0 px)', refuses: 'pixels' },
    ],
    compute: (width: number, pixels: number) => width / pixels,
  },
  {
    name: 'enlargement_sampling',
    subject: 'sampling',
    about: 'Pixels per length left when the image is printed larger than the original.',
    also: ['print resolution', 'dpi', 'enlargement'],
    parameters: [
      SAMPLING_AT,
      parameter('enlargement', number(NONE), 'print size over original size', { range: POSITIVE }),
    ],
    result: number(PIXELS_PER_LENGTH),
    formula: 'sampling/enlargement',
    source: 'derived: the same pixels over a longer distance',
    examples: [
      { formula: 'enlargement_sampling(600 ppi, 2)', gives: '300 ppi' },
      { formula: 'enlargement_sampling(600 ppi, 0)', refuses: 'enlargement' },
    ],
    compute: (sampling: number, enlargement: number) => sampling / enlargement,
  },
]
