import { type FunctionRecord, number, Refusal, record } from '../../language/index.ts'
import { LENGTH, NONE, PIXEL, PIXEL_PITCH, RECIPROCAL_LENGTH } from '../../units/index.ts'
import { F_NUMBER, POSITIVE, parameter, positiveLength } from '../maths/parameters.ts'
import {
  APERTURE,
  BLUR,
  ceilGuarded,
  EFFECTIVE_APERTURE,
  FOCAL,
  inMillimetres,
  MAGNIFICATION,
  MAGNIFICATION_OR_NONE,
  PUPIL_RATIO,
  WAVELENGTH,
} from './lens-parameters.ts'
import { halfAngleOfArc } from './page-curve.ts'

const AIRY = 2.44
const GEOMETRIC = 'Geometric blur alone, for a lens without aberrations; diffraction comes on top.'
const DIFFRACTION_ALONE = 'A lens without aberrations, a round opening, light of one wavelength.'
const DEPTH = positiveLength('depth', 'depth to be sharp, from the nearest part to the farthest')

/** Depth, diffraction and the best aperture. */
export const DEPTH_OF_FIELD: readonly FunctionRecord[] = [
  {
    name: 'effective_aperture',
    subject: 'depth',
    about: 'Working f-number up close, where the lens is farther from the sensor.',
    also: ['bellows factor', 'working aperture', 'working f-number', 'effective f-number'],
    parameters: [APERTURE, MAGNIFICATION_OR_NONE, PUPIL_RATIO],
    result: F_NUMBER,
    formula: 'Nₑ = N (1 + m/p)',
    source:
      'derived: distance over diameter of the exit pupil, f (p + m)/(p f/N); also in Ray, Applied Photographic Optics',
    cautions: [
      'The magnification is that of the lens as focused and extended; a close-up lens in front does not count.',
    ],
    examples: [
      { formula: 'effective_aperture(f/8, 1:1)', gives: 'f/16' },
      { formula: 'effective_aperture(f/8, 1:4, 0.8)', gives: 'f/10.5' },
      { formula: 'effective_aperture(f/8, -1)', refuses: 'magnification' },
    ],
    compute: (aperture: number, magnification: number, pupilRatio: number) =>
      aperture * (1 + magnification / pupilRatio),
  },
  {
    name: 'depth_of_field',
    subject: 'depth',
    about: 'How far the sharp zone reaches in front of and behind the plane in focus.',
    also: ['circle of confusion', 'coc', 'dof', 'sharpness', 'zone of sharpness', 'near limit', 'far limit'],
    parameters: [APERTURE, BLUR, MAGNIFICATION, FOCAL, PUPIL_RATIO],
    result: record('depth of field', { in_front: number(LENGTH), behind: number(LENGTH), total: number(LENGTH) }),
    formula: 'k = N c/(m f), u = f (1/m + 1/p): in front u k/(1 + k), behind u k/(1 − k), total 2 u k/(1 − k²)',
    source:
      'derived: the cone from the entrance pupil, f/N wide, cut by the plane in focus; total ≈ 2 N c (1 + m/p)/m² for small k',
    validity: `${GEOMETRIC} From k = 1 on it reaches to infinity.`,
    mayBeInfinite: true,
    examples: [
      {
        formula: 'depth_of_field(f/11, blur: 12 um, magnification: 1:4, focal: 60 mm).total',
        gives: '5.28041 mm',
        within: '0.00001 mm',
      },
      { formula: 'depth_of_field(f/8, 20 um, 1:10, 50 mm).in_front', gives: '17.0542636 mm', within: '0.0000001 mm' },
      { formula: 'depth_of_field(f/8, 20 um, 1:10, 50 mm).behind', gives: '18.1818182 mm', within: '0.0000001 mm' },
      { formula: 'depth_of_field(f/8, 0 um, 1:10, 50 mm)', refuses: 'blur' },
    ],
    compute: (aperture: number, blur: number, magnification: number, focal: number, pupilRatio: number) => {
      const k = (aperture * blur) / (magnification * focal)
      const u = focal * (1 / magnification + 1 / pupilRatio)
      const inFront = (u * k) / (1 + k)
      // To a part in 10¹²: an aperture set for exactly infinity must not miss it by rounding.
      const behind = k >= 1 - 1e-12 ? Number.POSITIVE_INFINITY : (u * k) / (1 - k)
      return { in_front: inFront, behind, total: inFront + behind }
    },
  },
  {
    name: 'hyperfocal',
    subject: 'depth',
    about: 'The distance to focus on for a depth of field that just reaches infinity.',
    also: ['hyperfocal distance', 'circle of confusion', 'infinity focus'],
    parameters: [FOCAL, APERTURE, BLUR],
    result: number(LENGTH),
    formula: 'H = f²/(N c) + f',
    source: 'derived: depth_of_field reaches infinity at k = N c/(m f) = 1, so m = N c/f and H = f (1 + 1/m)',
    validity: `${GEOMETRIC} From the front principal plane. Sharp from about half of it to infinity.`,
    examples: [
      // 50² / (8 · 0.033) + 50
      { formula: 'hyperfocal(50 mm, f/8, 0.033 mm)', gives: '9519.69697 mm', within: '0.00001 mm' },
      { formula: 'hyperfocal(50 mm, f/8, 0 mm)', refuses: 'blur' },
    ],
    compute: (focal: number, aperture: number, blur: number) => focal ** 2 / (aperture * blur) + focal,
  },
  {
    name: 'focus_for_limits',
    subject: 'depth',
    about: 'The distance to focus on for equal sharpness of the nearest and the farthest part.',
    also: ['near and far', 'zone of sharpness', 'dof'],
    parameters: [positiveLength('near', 'to the nearest part'), positiveLength('far', 'to the farthest part')],
    result: number(LENGTH),
    formula: '2 D d/(D + d)',
    source: 'derived: equal blur of both limits, D and d from the entrance pupil',
    validity: 'All three from the entrance pupil. Nearer than half-way between the limits.',
    examples: [
      { formula: 'focus_for_limits(1 m, 3 m)', gives: '1.5 m' },
      { formula: 'focus_for_limits(1 m, infinity)', gives: '2 m' },
      { formula: 'focus_for_limits(3 m, 1 m)', refuses: '“far”' },
    ],
    compute: (near: number, far: number) => {
      if (far < near) throw new Refusal('“far” is nearer than “near”. Swap the two distances.', 'far')
      return far === Number.POSITIVE_INFINITY ? 2 * near : (2 * far * near) / (far + near)
    },
  },
  {
    name: 'blur_from_pixels',
    subject: 'depth',
    about: 'Acceptable blur as a number of pixels.',
    also: ['circle of confusion', 'coc', 'sharpness', 'blur disc'],
    parameters: [
      parameter('pixel_pitch', number(PIXEL_PITCH), 'length of one pixel on the sensor', { range: POSITIVE }),
      parameter('count', number(PIXEL), 'pixels the blur may cover', { range: POSITIVE, default: '2 px' }),
    ],
    result: number(LENGTH),
    formula: 'c = count × pitch',
    source: 'common practice: two pixels, the finest pattern sampled',
    examples: [
      { formula: 'blur_from_pixels(6 [um/px])', gives: '12 um' },
      { formula: 'blur_from_pixels(6 [um/px], 0 px)', refuses: 'count' },
    ],
    compute: (pitch: number, count: number) => pitch * count,
  },
  {
    name: 'blur_from_print',
    subject: 'depth',
    about: 'Acceptable blur at the sensor from the blur a viewer of the print would not notice.',
    also: ['circle of confusion', 'coc', 'sharpness', 'viewing distance'],
    parameters: [
      positiveLength('sensor_width', 'side of the sensor'),
      positiveLength('print_width', 'the same side of the print'),
      positiveLength('print_blur', 'blur accepted on a print seen from 250 mm', { default: '0.2 mm' }),
      positiveLength('viewing_distance', 'from the eye to the print', { default: '250 mm' }),
    ],
    result: number(LENGTH),
    formula: 'c = print blur (viewing distance/250 mm) sensor/print',
    source: 'common practice: 0.2 mm at 250 mm, about the 2.7′ at which a soft point begins to show',
    examples: [
      { formula: 'blur_from_print(36 mm, 300 mm)', gives: '24 um' },
      { formula: 'blur_from_print(36 mm, 300 mm, 0.1 mm, 500 mm)', gives: '24 um' },
      { formula: 'blur_from_print(36 mm, 0 mm)', refuses: 'print_width' },
    ],
    compute: (sensor: number, print: number, blur: number, distance: number) =>
      (((blur * distance) / 0.25) * sensor) / print,
  },
  {
    name: 'airy_diameter',
    subject: 'depth',
    about: 'Diameter of the diffraction spot at the sensor, to its first dark ring.',
    also: ['diffraction', 'airy disc', 'sharpness', 'blur spot'],
    parameters: [EFFECTIVE_APERTURE, WAVELENGTH],
    result: number(LENGTH),
    formula: '2.44 λ Nₑ',
    source:
      'Airy pattern: first zero of J₁ at 1.22 π, twice the radius 1.22 λ N (Hecht, Optics; Born and Wolf, Principles of Optics)',
    validity: DIFFRACTION_ALONE,
    examples: [
      { formula: 'airy_diameter(f/16)', gives: '21.472 um' },
      { formula: 'airy_diameter(0)', refuses: 'effective_aperture' },
    ],
    compute: (aperture: number, wavelength: number) => AIRY * wavelength * aperture,
  },
  {
    name: 'diffraction_cutoff',
    subject: 'depth',
    about: 'Finest pattern at the sensor of which diffraction leaves any contrast.',
    also: ['diffraction limit', 'resolution', 'mtf', 'sharpness'],
    parameters: [EFFECTIVE_APERTURE, WAVELENGTH],
    result: number(RECIPROCAL_LENGTH),
    formula: '1/(λ Nₑ); at the original m times that',
    source: 'Goodman, Introduction to Fourier Optics: cut-off of incoherent imaging by a round pupil',
    validity: DIFFRACTION_ALONE,
    examples: [
      { formula: 'diffraction_cutoff(f/10, 500 nm)', gives: '200 [lp/mm]' },
      { formula: 'diffraction_cutoff(0)', refuses: 'effective_aperture' },
    ],
    compute: (aperture: number, wavelength: number) => 1 / (wavelength * aperture),
  },
  {
    name: 'aperture_for_depth',
    subject: 'depth',
    about: 'f-number that makes the sharp zone as deep as required.',
    also: ['depth of field', 'circle of confusion', 'dof', 'stopping down', 'hyperfocal'],
    parameters: [DEPTH, BLUR, MAGNIFICATION, FOCAL, PUPIL_RATIO],
    result: F_NUMBER,
    formula: 'u = f (1/m + 1/p), k = D/(u + √(u² + D²)), N = k m f/c',
    source: 'derived: 2 u k/(1 − k²) = D solved for k',
    validity: GEOMETRIC,
    examples: [
      { formula: 'aperture_for_depth(5.28 mm, 12 um, 1:4, 60 mm)', gives: '10.999148', within: '0.00001' },
      { formula: 'aperture_for_depth(0 mm, 12 um, 1:4, 60 mm)', refuses: 'depth' },
    ],
    compute: (depth: number, blur: number, magnification: number, focal: number, pupilRatio: number) => {
      const u = focal * (1 / magnification + 1 / pupilRatio)
      const k = depth / (u + Math.hypot(u, depth))
      return (k * magnification * focal) / blur
    },
  },
  {
    name: 'best_aperture',
    subject: 'depth',
    about: 'f-number that keeps the ends of a depth sharpest, defocus and diffraction taken together.',
    also: ['sharpest aperture', 'sweet spot', 'sharpness', 'diffraction', 'optimum aperture'],
    parameters: [DEPTH, MAGNIFICATION, PUPIL_RATIO, WAVELENGTH],
    result: F_NUMBER,
    formula: 'Nₑ = m √(D/(4.88 λ)), N = Nₑ/(1 + m/p)',
    source:
      'derived: defocus m² D/(2 Nₑ) equal to the Airy diameter 2.44 λ Nₑ, which makes both their sum and their root-sum-square least',
    validity: 'Focused at mid-depth; a depth small compared with the distance; a lens without aberrations.',
    cautions: ['Real lenses have a sharpest aperture of their own: test before stopping down to less than that.'],
    examples: [
      { formula: 'best_aperture(10 mm, 1:4)', gives: '12.2078375', within: '0.00001' },
      { formula: 'best_aperture(0 mm, 1:4)', refuses: 'depth' },
    ],
    compute: (depth: number, magnification: number, pupilRatio: number, wavelength: number) =>
      (magnification * Math.sqrt(depth / (2 * AIRY * wavelength))) / (1 + magnification / pupilRatio),
  },
  {
    name: 'contrast_at',
    subject: 'depth',
    about: 'Contrast that diffraction leaves of a pattern at the sensor, from 1 down to 0.',
    also: ['mtf', 'modulation transfer', 'sharpness', 'sfr'],
    parameters: [
      parameter('frequency', number(RECIPROCAL_LENGTH), 'line pairs per length at the sensor', { range: { least: 0 } }),
      EFFECTIVE_APERTURE,
      WAVELENGTH,
    ],
    result: number(NONE),
    formula: '(2/π)(acos ν − ν √(1 − ν²)), ν = frequency λ Nₑ; 0 from ν = 1 on',
    source: 'Goodman, Introduction to Fourier Optics: optical transfer function of a round pupil',
    validity: DIFFRACTION_ALONE,
    examples: [
      { formula: 'contrast_at(100 [lp/mm], f/10, 500 nm)', gives: '0.391002218956', within: '1e-11' },
      { formula: 'contrast_at(400 [lp/mm], f/10, 500 nm)', gives: '0' },
      { formula: 'contrast_at(-1 [lp/mm], f/10)', refuses: 'frequency' },
    ],
    compute: (frequency: number, aperture: number, wavelength: number) => {
      const nu = frequency * wavelength * aperture
      return nu >= 1 ? 0 : (2 / Math.PI) * (Math.acos(nu) - nu * Math.sqrt(1 - nu * nu))
    },
    advise: (frequency: number, aperture: number, wavelength: number) =>
      frequency * wavelength * aperture > 1
        ? '“frequency” is beyond the diffraction cut-off, so the sensor gets none of this pattern. Open the aperture.'
        : undefined,
  },
  {
    name: 'focus_steps',
    subject: 'depth',
    about: 'How many frames, each focused a step deeper, cover a depth.',
    also: ['focus stacking', 'focus bracketing', 'stack'],
    parameters: [
      DEPTH,
      positiveLength('depth_of_field', 'total depth of field of one frame'),
      parameter('overlap', number(NONE), 'share of each depth of field that the next one repeats', {
        range: { least: 0, below: 1 },
        default: '0.2',
      }),
    ],
    result: number(NONE),
    formula: 'max(1, 1 + ⌈(D − dof)/(dof (1 − overlap))⌉)',
    source: 'derived: the first frame covers its depth of field, each further one the part that does not overlap',
    validity: 'A depth of field that stays the same through the depth; the same size in every frame is not given.',
    examples: [
      { formula: 'focus_steps(20 mm, 5 mm)', gives: '5' },
      { formula: 'focus_steps(3 mm, 5 mm)', gives: '1' },
      { formula: 'focus_steps(20 mm, 5 mm, 1)', refuses: 'overlap' },
    ],
    compute: (depth: number, sharp: number, overlap: number) =>
      depth <= sharp ? 1 : Math.max(1, 1 + ceilGuarded((depth - sharp) / (sharp * (1 - overlap)))),
  },
  {
    name: 'page_bulge',
    subject: 'depth',
    about: 'How high a curved page rises above its edges, from its width straight across and over the curve.',
    also: ['gutter', 'book curvature', 'curvature'],
    parameters: [
      positiveLength('chord', 'straight across, from edge to edge'),
      positiveLength('arc', 'over the curve, as a tape lies'),
    ],
    result: number(LENGTH),
    formula: 'sin φ/φ = chord/arc solved for φ; (chord/2) tan(φ/2)',
    source: 'derived: chord 2 R sin φ, arc 2 R φ, height R (1 − cos φ)',
    validity: 'A page curved as part of a circle.',
    safety: ['Never press a page flatter than its binding allows: ask the custodian.'],
    examples: [
      { formula: 'page_bulge(200 mm, 210 mm)', gives: '27.6 mm', within: '0.05 mm' },
      { formula: 'page_bulge(200 mm, 200 mm)', gives: '0 mm' },
      { formula: 'page_bulge(210 mm, 200 mm)', refuses: 'shorter' },
    ],
    compute: (chord: number, arc: number) => {
      if (arc < chord)
        throw new Refusal(
          `“arc”, ${inMillimetres(arc)} over the curve, is shorter than the ${inMillimetres(chord)} straight across. Check whether the two are swapped.`,
          'arc',
        )
      return (chord / 2) * Math.tan(halfAngleOfArc(chord, arc) / 2)
    },
  },
]
