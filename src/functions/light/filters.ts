import { type FunctionRecord, number, Refusal, record } from '../../language/index.ts'
import { ANGLE, LENGTH, NONE, RECIPROCAL_TEMPERATURE, STOP, TEMPERATURE } from '../../units/index.ts'
import { length, POSITIVE, parameter, positiveLength, SHARE } from '../maths/parameters.ts'

/** What is between the light and the sensor: filters, polarisers and glass. */
export const FILTERS: readonly FunctionRecord[] = [
  {
    name: 'filter_shift',
    subject: 'exposure',
    about: 'Extra exposure for a filter of a given factor.',
    also: ['filter factor', 'nd filter', 'neutral density'],
    parameters: [
      parameter('factor', number(NONE), 'filter factor: how many times the exposure', { range: { least: 1 } }),
    ],
    result: number(STOP),
    formula: 'log₂ factor',
    source: 'definition of a stop',
    cautions: ['A reading through the lens and its filter already includes it.'],
    examples: [
      { formula: 'filter_shift(8)', gives: '3 stop' },
      { formula: 'filter_shift(0.5)', refuses: 'factor' },
    ],
    compute: (factor: number) => Math.log2(factor),
  },
  {
    name: 'density_shift',
    subject: 'exposure',
    about: 'Extra exposure for a neutral filter of a given optical density.',
    also: ['nd filter', 'neutral density', 'optical density'],
    parameters: [parameter('density', number(NONE), 'optical density', { range: { least: 0 } })],
    result: number(STOP),
    formula: 'D/log₁₀ 2',
    source: 'derived: density is −log₁₀ of transmittance (ISO 5-1), a stop its log₂',
    examples: [
      { formula: 'density_shift(0.3)', gives: '0.996578 stop', within: '0.000001 stop' },
      { formula: 'density_shift(-0.1)', refuses: 'density' },
    ],
    compute: (density: number) => density * Math.log2(10),
  },
  {
    name: 'transmittance_shift',
    subject: 'exposure',
    about: 'Extra exposure for a filter that lets a share of the light through.',
    also: ['transmission', 'neutral density'],
    parameters: [parameter('T', number(NONE), 'transmittance', { range: { above: 0, most: 1 } })],
    result: number(STOP),
    formula: '−log₂ T',
    source: 'definition of a stop',
    examples: [
      { formula: 'transmittance_shift(25 %)', gives: '2 stop' },
      { formula: 'transmittance_shift(0)', refuses: 'T' },
    ],
    compute: (transmittance: number) => Math.log2(1 / transmittance),
  },
  {
    name: 'crossed_polariser_shift',
    subject: 'exposure',
    about: 'Extra exposure for polarisers over the lamps, crossed by one over the lens.',
    also: ['polarizer', 'polarizing filter', 'cross polarization', 'glare'],
    parameters: [
      parameter('lamp_transmittance', number(NONE), 'of the lamp filter, for unpolarised light', {
        range: { above: 0, most: 1 },
        default: '0.5',
      }),
      parameter('lens_transmittance', number(NONE), 'of the lens filter, for unpolarised light', {
        range: { above: 0, most: 1 },
        default: '0.5',
      }),
      parameter('depolarised', number(NONE), 'share of the light that the surface depolarises', {
        range: SHARE,
        default: '1',
      }),
      parameter('leak', number(NONE), 'transmittance of the crossed lens filter for light still polarised', {
        range: SHARE,
        default: '0',
      }),
    ],
    result: number(STOP),
    formula: '−log₂(T₁ (d T₂ + (1 − d) leak))',
    source: 'derived: depolarised light passes the second filter as unpolarised light does',
    validity: 'A grey card measured with and without the filters decides.',
    examples: [
      { formula: 'crossed_polariser_shift()', gives: '2 stop' },
      { formula: 'crossed_polariser_shift(0.42, 0.42)', gives: '2.503077 stop', within: '0.000001 stop' },
      { formula: 'crossed_polariser_shift(0.5, 0.5, 0)', refuses: 'no light' },
    ],
    compute: (lamp: number, lens: number, depolarised: number, leak: number) => {
      const passed = lamp * (depolarised * lens + (1 - depolarised) * leak)
      if (!(passed > 0))
        throw new Refusal(
          '“depolarised” is 0 and nothing leaks, so no light gets through at all. Give the share that the surface depolarises, such as 0.8.',
          'depolarised',
        )
      return Math.log2(1 / passed)
    },
  },
  {
    name: 'polariser_angle',
    subject: 'exposure',
    about: 'The angle between two polarisers that lets a share of the greatest light through.',
    also: ['polarizer', 'malus', 'polarizing filter'],
    parameters: [
      parameter('share', number(NONE), 'share of the light that passes with the two parallel', { range: SHARE }),
    ],
    result: number(ANGLE),
    formula: 'acos √share',
    source: 'Malus’s law, I = I₀ cos² θ (OpenStax, University Physics 3, 1.7)',
    validity: 'Ideal polarisers. Real ones leak a little when crossed.',
    examples: [
      { formula: 'polariser_angle(50 %)', gives: '45 deg' },
      { formula: 'polariser_angle(0)', gives: '90 deg' },
      { formula: 'polariser_angle(1.1)', refuses: 'share' },
    ],
    compute: (share: number) => Math.acos(Math.sqrt(share)),
  },
  {
    name: 'brewster_angle',
    subject: 'exposure',
    about: 'The angle of incidence at which a polariser takes away all glare of varnish or glass.',
    also: ['polarizer', 'glare', 'reflection', 'polarizing angle'],
    parameters: [
      parameter('index', number(NONE), 'refractive index: 1.5 for glass and varnish', { range: { least: 1 } }),
    ],
    result: number(ANGLE),
    formula: 'atan n',
    source: 'Brewster’s law (OpenStax, University Physics 3, 1.7)',
    validity: 'From the perpendicular, in air. A smooth surface that does not conduct; metal keeps its glare.',
    examples: [
      {
        formula: 'brewster_angle(1.52)',
        gives: '56.7 deg',
        within: '0.05 deg',
        source: 'OpenStax, University Physics 3',
      },
      { formula: 'brewster_angle(0.9)', refuses: 'index' },
    ],
    compute: (index: number) => Math.atan(index),
  },
  {
    name: 'mired',
    subject: 'exposure',
    about: 'Reciprocal colour temperature, in which filters add.',
    also: ['colour temperature', 'color temperature', 'kelvin', 'cct'],
    parameters: [parameter('temperature', number(TEMPERATURE), 'colour temperature', { range: POSITIVE })],
    result: number(RECIPROCAL_TEMPERATURE),
    formula: '1/T, shown in mired = 10⁻⁶ K⁻¹',
    source: 'definition of the mired, micro reciprocal degree',
    examples: [
      { formula: 'mired(5000 K)', gives: '200 mired' },
      { formula: 'mired(0 K)', refuses: 'temperature' },
    ],
    compute: (temperature: number) => 1 / temperature,
  },
  {
    name: 'mired_shift',
    subject: 'exposure',
    about: 'Filter that turns one colour temperature into another; negative cools, positive warms.',
    also: ['colour temperature', 'gel', 'conversion filter', 'ctb', 'cto'],
    parameters: [
      parameter('from', number(TEMPERATURE), 'colour temperature of the lamp', { range: POSITIVE }),
      parameter('to', number(TEMPERATURE), 'colour temperature to reach', { range: POSITIVE }),
    ],
    result: number(RECIPROCAL_TEMPERATURE),
    formula: '1/to − 1/from',
    source: 'definition of the mired, micro reciprocal degree',
    validity: 'Light near that of a black body; LED and discharge lamps only roughly.',
    examples: [
      { formula: 'mired_shift(3200 K, 5500 K)', gives: '-130.681818 mired', within: '0.000001 mired' },
      { formula: 'mired_shift(3200 K, 0 K)', refuses: 'to' },
    ],
    compute: (from: number, to: number) => 1 / to - 1 / from,
  },
  {
    name: 'cover_glass',
    subject: 'exposure',
    about: 'What a sheet of glass over the original does to focus and exposure.',
    also: ['glass', 'focus shift', 'glazing'],
    parameters: [
      length('thickness', 'thickness of the glass'),
      parameter('index', number(NONE), 'refractive index', { range: { least: 1 }, default: '1.52' }),
    ],
    result: record('cover glass', { nearer: number(LENGTH), shift: number(STOP) }),
    formula: 'nearer = t (1 − 1/n); shift = −4 log₂(1 − ((n − 1)/(n + 1))²)',
    source:
      'derived: paraxial refraction at a plane-parallel plate; Fresnel reflection at four surfaces, light in and light out',
    validity: 'Looking straight down; plain uncoated glass, what it absorbs and reflects back and forth left out.',
    cautions: ['Glass reflects lamps, camera and ceiling: check them against the mirror zone.'],
    examples: [
      { formula: 'cover_glass(3 mm).nearer', gives: '1.0263158 mm', within: '0.0000001 mm' },
      { formula: 'cover_glass(3 mm).shift', gives: '0.2511 stop', within: '0.0001 stop' },
      { formula: 'cover_glass(3 mm, 0.9)', refuses: 'index' },
    ],
    compute: (thickness: number, index: number) => ({
      nearer: thickness * (1 - 1 / index),
      shift: -4 * Math.log2(1 - ((index - 1) / (index + 1)) ** 2) + 0,
    }),
  },
  {
    name: 'natural_falloff',
    subject: 'exposure',
    about: 'How many stops darker than the centre a point of the frame is, by the lens alone.',
    also: ['vignetting', 'cos4', 'cosine fourth', 'corner darkening', 'light falloff'],
    parameters: [
      length('radius', 'from the middle of the frame, at the sensor'),
      positiveLength('exit_distance', 'the distance of perspective on the sensor side, from exit_distance'),
    ],
    result: number(STOP),
    formula: '−4 log₂ cos(atan(r/d)) = 2 log₂(1 + (r/d)²)',
    source: 'cosine-fourth law (Ray, Applied Photographic Optics; Kingslake, Optics in Photography)',
    validity:
      'Without vignetting or distortion, and pupils that keep their size as seen from the side; real lenses differ.',
    cautions: ['An evenly lit field is not an even frame: a flat-field frame shows both together.'],
    examples: [
      { formula: 'natural_falloff(21.6 mm, 75 mm)', gives: '0.229917 stop', within: '0.000001 stop' },
      { formula: 'natural_falloff(21.6 mm, 0 mm)', refuses: 'exit_distance' },
    ],
    compute: (radius: number, distance: number) => 2 * Math.log2(1 + (radius / distance) ** 2),
  },
]
