import table from '../../../shared/reference/cie-illuminants.json'
import { type FunctionRecord, number, record, TEXT } from '../../language/index.ts'
import { TEMPERATURE } from '../../units/index.ts'
import { PLAIN, parameter } from '../maths/parameters.ts'
import type { Chromaticity } from './colour-space.ts'
import { correlatedColourTemperature } from './colour-temperature.ts'

const ILLUMINANT_XY: Readonly<Record<string, Chromaticity>> = table.illuminants
const COORDINATE = { range: { above: 0, below: 1 } }

/** The colour of light. */
export const ILLUMINANTS: readonly FunctionRecord[] = [
  {
    name: 'cct_from_xy',
    subject: 'colour',
    about: 'The correlated colour temperature of a light, from its chromaticity.',
    parameters: [
      parameter('x', PLAIN, 'CIE 1931 x, as a spectrometer shows it', COORDINATE),
      parameter('y', PLAIN, 'CIE 1931 y', COORDINATE),
    ],
    result: number(TEMPERATURE),
    formula: 'the T whose black body is nearest in CIE 1960 u, v',
    source: 'CIE 15:2004, 9.5; Planck’s law and the CIE 1931 observer, every 5 nm',
    validity:
      'Within 0.05 of the Planckian locus in u, v. Within 2 K of the CIE’s list of illuminants below 7000 K; above, the fourth digit of x and y already moves it by several kelvin.',
    cautions: [
      'A colour temperature does not describe rendering: lamps of the same colour temperature may render colours differently.',
    ],
    examples: [
      { formula: 'cct_from_xy(0.44757, 0.40745)', gives: '2856 K', within: '2 K', source: 'CIE illuminant A' },
      { formula: 'cct_from_xy(0.31271, 0.32902)', gives: '6504 K', within: '2 K', source: 'CIE illuminant D65' },
      { formula: 'cct_from_xy(0.3, 0.6)', refuses: 'Planckian locus' },
      { formula: 'cct_from_xy(31, 32)', refuses: 'x' },
    ],
    compute: correlatedColourTemperature,
  },
  {
    name: 'illuminant_xy',
    subject: 'colour',
    about: 'The chromaticity of a CIE illuminant.',
    parameters: [parameter('name', TEXT, 'its name', { choices: Object.keys(ILLUMINANT_XY) })],
    result: record('chromaticity', { x: PLAIN, y: PLAIN }),
    formula: 'from the table',
    source: 'CIE 15:2004 and 15:2018, 2° observer; read in an open data set that quotes them',
    examples: [
      { formula: 'illuminant_xy("D65").x', gives: '0.3127' },
      { formula: 'illuminant_xy("LED-B3").y', gives: '0.3723' },
      { formula: 'illuminant_xy("D60")', refuses: 'name' },
    ],
    compute: (name: string) => ({ ...(ILLUMINANT_XY[name] as Chromaticity) }),
  },
]
