import gates from '../../../shared/reference/film-gates.json'
import { type FunctionRecord, level, number, Refusal, record, TEXT } from '../../language/index.ts'
import { LENGTH, LUMINANCE, nearest, ReadError, readSize, STOP } from '../../units/index.ts'
import { METER_K } from '../../units/stops.ts'
import { fitMagnification } from '../camera/fit.ts'
import { length, NOT_NEGATIVE, PLAIN, POSITIVE, parameter, positiveLength, RATIO, STOPS } from '../maths/parameters.ts'

const GATE = record('film gate', { width: number(LENGTH), height: number(LENGTH) })
const GATES: Readonly<Record<string, { readonly width_mm: number; readonly height_mm: number }>> = gates.gates

/** A gate written as a size with its unit. */
function ownGate(format: string): { width: number; height: number } {
  const refuse = (): never => {
    const near = nearest(format, Object.keys(GATES))
    throw new Refusal(
      `“format” names no film here: "${format}".${near ? ` Did you mean "${near}"?` : ''} For another size write width and height with their unit, such as "118 mm x 82 mm".`,
      'format',
    )
  }
  let size: ReturnType<typeof readSize>
  try {
    size = readSize(format)
  } catch (error) {
    if (error instanceof ReadError) return refuse()
    throw error
  }
  const { width, height } = size
  if (width.dimension !== LENGTH || !(width.value > 0 && height.value > 0)) return refuse()
  return { width: width.value, height: height.value }
}

/** Transparent originals. */
export const FILM: readonly FunctionRecord[] = [
  {
    name: 'panel_exposure',
    subject: 'film',
    about: 'The exposure for film on a light panel.',
    also: ['light table', 'light box', 'lightbox', 'slide'],
    parameters: [
      parameter('luminance', number(LUMINANCE), 'of the bare panel', { range: POSITIVE }),
      parameter('density', PLAIN, 'of the part of the film that is placed: its clear base', {
        default: '0',
        range: NOT_NEGATIVE,
      }),
      parameter('placement', number(STOP), 'how far that is above the metered mid-tone', {
        default: '0 stop',
        range: STOPS,
      }),
      parameter('constant', PLAIN, 'the meter’s K in cd s/m²', { default: `${METER_K}`, range: POSITIVE }),
    ],
    result: level(STOP),
    formula: 'log2(100 L 10^(−D)/K) − placement',
    source: 'ISO 2720 for K (10.6 to 13.4); derived: a density D lets 10^(−D) through',
    validity: 'An exposure value at ISO 100, the magnification’s extension not counted.',
    safety: ['Warm panels curl and fade film: light it only for the frame.'],
    examples: [
      // log2(100 · 1000 · 0.794328/12.5) = 12.6336, less 2.32.
      { formula: 'panel_exposure(1000 [cd/m^2], 0.1, 2.32 stop)', gives: '10.3136 stop', within: '0.0001 stop' },
      { formula: 'panel_exposure(0 [cd/m^2])', refuses: 'luminance' },
    ],
    compute: (luminance: number, density: number, placement: number, constant: number) =>
      Math.log2((100 * luminance) / constant) - density / Math.log10(2) - placement,
  },
  {
    name: 'film_magnification',
    subject: 'film',
    about: 'The magnification that fits a film’s image on the sensor.',
    also: ['reproduction ratio', 'slide', 'negative', 'transparency'],
    parameters: [
      positiveLength('film_width', 'of the image on the film (its gate)'),
      positiveLength('film_height', 'of the image on the film (its gate)'),
      positiveLength('sensor_width', 'width of the sensor'),
      positiveLength('sensor_height', 'height of the sensor'),
      length('border', 'of film left showing all around', { default: '0 mm' }),
    ],
    result: RATIO,
    formula: 'the larger over both ways round of min(sw/(w + 2b), sh/(h + 2b))',
    source: 'derived: as fit_magnification',
    validity: 'By the image’s own size, not the nominal name of the format: film_gate has a table.',
    examples: [
      { formula: 'film_magnification(56 mm, 84 mm, 36 mm, 24 mm)', gives: '0.4285714', within: '0.0000001' },
      { formula: 'film_magnification(36 mm, 24 mm, 36 mm, 24 mm)', gives: '1:1' },
      { formula: 'film_magnification(0 mm, 24 mm, 36 mm, 24 mm)', refuses: 'film_width' },
    ],
    compute: (width: number, height: number, sensorWidth: number, sensorHeight: number, border: number) =>
      fitMagnification(width, height, sensorWidth, sensorHeight, border, true),
  },
  {
    name: 'film_gate',
    subject: 'film',
    about: 'The size of the image on film of a format.',
    also: ['film format', 'negative size', 'slide size'],
    parameters: [
      parameter('format', TEXT, 'name of the format, or any other size, such as "118 mm x 82 mm"', {
        choices: Object.keys(GATES),
        open: true,
      }),
    ],
    result: GATE,
    formula: 'from the table; any other size as written, width first',
    source: 'published tables of frame sizes (film to ISO 732 and ISO 1007); sheet film from memory',
    validity: 'The image, not the nominal name; gates differ by half a millimetre or so from camera to camera.',
    examples: [
      { formula: 'film_gate("6x9").width', gives: '84 mm' },
      { formula: 'film_gate("135").height', gives: '24 mm' },
      { formula: 'film_gate("118 mm x 82 mm").width', gives: '118 mm' },
      { formula: 'film_gate("6x5")', refuses: 'format' },
      { formula: 'film_gate("constructor")', refuses: 'format' },
    ],
    compute: (format: string) => {
      const gate = Object.hasOwn(GATES, format) ? GATES[format] : undefined
      return gate ? { width: gate.width_mm / 1000, height: gate.height_mm / 1000 } : ownGate(format)
    },
  },
  {
    name: 'panel_margin',
    subject: 'film',
    about: 'How far a light panel must reach past the film.',
    parameters: [
      length('half_width', 'half the width of the film’s image'),
      length('gap', 'from the film down to the panel'),
      positiveLength('entrance_distance', 'from the entrance pupil to the film'),
      length('pupil_diameter', 'of the entrance pupil'),
      length('falloff', 'by which the panel’s own edge is dim', { default: '0 mm' }),
    ],
    result: number(LENGTH),
    formula: 'gap (w + pupil/2)/distance + falloff',
    source: 'derived: the ray from the pupil’s far rim past the film’s edge, carried on to the panel',
    validity: 'The least; mask the rest of the panel against flare.',
    examples: [
      { formula: 'panel_margin(42 mm, 50 mm, 200 mm, 16 mm, 5 mm)', gives: '17.5 mm' },
      { formula: 'panel_margin(42 mm, 50 mm, 0 mm, 16 mm)', refuses: 'entrance_distance' },
    ],
    compute: (halfWidth: number, gap: number, distance: number, pupil: number, falloff: number) =>
      (gap * (halfWidth + pupil / 2)) / distance + falloff,
  },
]
