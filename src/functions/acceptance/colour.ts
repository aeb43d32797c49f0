import { type FunctionRecord, number, Refusal, record, TEXT, type Type, YES_NO } from '../../language/index.ts'
import { NONE, STOP } from '../../units/index.ts'
import { RAW_OR_LINEAR } from '../maths/cautions.ts'
import { COUNT, NOT_NEGATIVE, PLAIN, PLAIN_NUMBERS, POSITIVE, parameter, SHARE } from '../maths/parameters.ts'
import { deltaE76, deltaE2000, labFromSrgb, lightness, luminanceOf, srgbLinear } from './colour-space.ts'
import { gradeValue, SCHEMES } from './grade.ts'
import { inspectionCount } from './inspection.ts'
import { percentile } from './percentile.ts'

const LAB = record('Lab colour', { L: PLAIN, a: PLAIN, b: PLAIN })
const GREY_OFFSET = record('grey offset', { shift: number(STOP), lightness: PLAIN })
const ANY = { kind: 'any' } as const
const LIST_OF_ANY = { kind: 'list of any' } as const

const labOf = (n: 1 | 2, which: string) => [
  parameter(`L${n}`, PLAIN, `L* of ${which}`, { range: NOT_NEGATIVE }),
  parameter(`a${n}`, PLAIN, `a* of ${which}`),
  parameter(`b${n}`, PLAIN, `b* of ${which}`),
]
const TWO_LABS = [...labOf(1, 'the aim'), ...labOf(2, 'the sample')]

const channel = (name: string, about: string) => parameter(name, PLAIN, about, { range: SHARE })
const linearChannel = (name: string, about: string) => parameter(name, PLAIN, about, { range: POSITIVE })

const ENCODINGS: Readonly<Record<string, (share: number) => number>> = {
  sRGB: srgbLinear,
  'gamma 1.8': (share) => share ** 1.8,
  'gamma 2.2': (share) => share ** 2.2,
  'L*': (share) => luminanceOf(100 * share),
  linear: (share) => share,
}

/** The kind of quantity a list holds, or of a plain argument, without its notation. */
const like = ([first]: readonly Type[]): Type => {
  const type = first?.kind === 'list' ? first.of : first
  return type?.kind === 'number' ? number(type.dimension) : PLAIN
}

function needValues(values: readonly number[]): void {
  if (values.length === 0) throw new Refusal('The list is empty: give at least one value.', 'values')
}

/** Section 9 of the trade: tone and colour acceptance. */
export const COLOUR: readonly FunctionRecord[] = [
  {
    name: 'delta_e_76',
    subject: 'colour',
    about: 'Colour difference of two Lab colours, CIE 1976.',
    parameters: TWO_LABS,
    result: PLAIN,
    formula: 'sqrt(ΔL² + Δa² + Δb²)',
    source: 'ISO/CIE 11664-4',
    validity: 'Lab values to one white point and one observer; instrument and target both D50 as a rule.',
    examples: [
      { formula: 'delta_e_76(50, 0, 0, 53, 4, 0)', gives: '5' },
      { formula: 'delta_e_76(-1, 0, 0, 53, 4, 0)', refuses: 'L1' },
    ],
    compute: (L1: number, a1: number, b1: number, L2: number, a2: number, b2: number) =>
      deltaE76({ L: L1, a: a1, b: b1 }, { L: L2, a: a2, b: b2 }),
  },
  {
    name: 'delta_e_2000',
    subject: 'colour',
    about: 'Colour difference of two Lab colours, CIEDE2000.',
    parameters: [
      ...TWO_LABS,
      parameter('lightness_weighting', YES_NO, 'weight lightness by S_L; no sets S_L to 1', { default: 'yes' }),
    ],
    result: PLAIN,
    formula: 'sqrt((ΔL′/S_L)² + (ΔC′/S_C)² + (ΔH′/S_H)² + R_T (ΔC′/S_C)(ΔH′/S_H))',
    source: 'ISO/CIE 11664-6; checked against the 34 pairs of Sharma, Wu and Dalal, 2005',
    validity: 'k_L = k_C = k_H = 1. Made for differences up to about 5.',
    cautions: ['Imaging guidelines may set S_L to 1: read which the limit was set for before you compare.'],
    examples: [
      {
        formula: 'delta_e_2000(50, 2.6772, -79.7751, 50, 0, -82.7485)',
        gives: '2.0425',
        within: '0.00005',
        source: 'Sharma, Wu and Dalal 2005, pair 1',
      },
      // Two greys differ in lightness alone: S_L = 1 leaves their ΔL.
      { formula: 'delta_e_2000(20, 0, 0, 23, 0, 0, lightness_weighting: no)', gives: '3', within: '0.000000001' },
      { formula: 'delta_e_2000(50, 0, 0, -1, 0, 0)', refuses: 'L2' },
    ],
    compute: (L1: number, a1: number, b1: number, L2: number, a2: number, b2: number, lightnessWeighting: boolean) =>
      deltaE2000({ L: L1, a: a1, b: b1 }, { L: L2, a: a2, b: b2 }, lightnessWeighting),
  },
  {
    name: 'srgb_linear',
    subject: 'colour',
    about: 'The linear value behind an sRGB value.',
    parameters: [channel('value', 'encoded, 0 to 1')],
    result: PLAIN,
    formula: 'v/12.92 up to 0.04045; ((v + 0.055)/1.055)^2.4 above',
    source: 'IEC 61966-2-1',
    examples: [
      { formula: 'srgb_linear(0.5)', gives: '0.2140411', within: '0.0000001' },
      { formula: 'srgb_linear(0.04)', gives: '0.0030959752', within: '0.0000000001' },
      { formula: 'srgb_linear(128)', refuses: 'value' },
    ],
    compute: srgbLinear,
  },
  {
    name: 'lab_from_srgb',
    subject: 'colour',
    about: 'CIELAB of an sRGB colour.',
    parameters: [
      channel('r', 'red, encoded, 0 to 1'),
      channel('g', 'green, encoded, 0 to 1'),
      channel('b', 'blue, encoded, 0 to 1'),
      parameter('white', TEXT, 'white point of the Lab values', { default: '"D50"', choices: ['D50', 'D65'] }),
    ],
    result: LAB,
    formula: 'IEC 61966-2-1 to XYZ; Bradford to D50; ISO/CIE 11664-4',
    source: 'IEC 61966-2-1 and ISO/CIE 11664-4; Bradford adaptation as ICC profiles use it',
    validity: 'Values in sRGB; target data are D50. 8-bit codes are divided by 255 first.',
    examples: [
      { formula: 'lab_from_srgb(1, 1, 1).L', gives: '100', within: '0.0001' },
      // A grey keeps its luminance under any white: 116 · 0.2140411^(1/3) − 16.
      { formula: 'lab_from_srgb(0.5, 0.5, 0.5).L', gives: '53.38896', within: '0.0001' },
      { formula: 'lab_from_srgb(1, 0, 0).a', gives: '80.81', within: '0.05' },
      { formula: 'lab_from_srgb(255, 0, 0)', refuses: 'r' },
    ],
    compute: (r: number, g: number, b: number, white: 'D50' | 'D65') => ({ ...labFromSrgb(r, g, b, white) }),
  },
  {
    name: 'white_balance_gains',
    subject: 'colour',
    about: 'Channel gains that make a grey card neutral.',
    parameters: [
      linearChannel('r', 'red of the grey card, linear'),
      linearChannel('g', 'green of the grey card, linear'),
      linearChannel('b', 'blue of the grey card, linear'),
    ],
    result: PLAIN_NUMBERS,
    formula: '{g/r, 1, g/b}',
    source: 'derived: equal products in all channels, green left alone',
    cautions: [RAW_OR_LINEAR],
    examples: [
      { formula: 'white_balance_gains(0.1, 0.2, 0.16)', gives: '{2, 1, 1.25}' },
      { formula: 'white_balance_gains(0, 0.2, 0.16)', refuses: 'r' },
    ],
    compute: (r: number, g: number, b: number) => [g / r, 1, g / b],
  },
  {
    name: 'grey_offset',
    subject: 'colour',
    about: 'How far a grey card came out from what was intended.',
    parameters: [
      parameter('measured', PLAIN, 'linear value of the card in the frame, 0 to 1', { range: { above: 0, most: 1 } }),
      parameter('intended', PLAIN, 'its reflectance, or the linear value aimed at', { range: { above: 0, most: 1 } }),
    ],
    result: GREY_OFFSET,
    formula: 'shift = log2(measured/intended); lightness = L*(measured) − L*(intended)',
    source: 'derived: a stop is a factor of two; L* of ISO/CIE 11664-4',
    validity: 'Full scale 1 stands for a perfect white; positive is too light.',
    cautions: [RAW_OR_LINEAR],
    examples: [
      { formula: 'grey_offset(0.36, 0.18).shift', gives: '1 stop' },
      // L*(0.2) = 51.8372, L*(0.18) = 49.4961.
      { formula: 'grey_offset(0.2, 0.18).lightness', gives: '2.34108', within: '0.0001' },
      { formula: 'grey_offset(0, 0.18)', refuses: 'measured' },
    ],
    compute: (measured: number, intended: number) => ({
      shift: Math.log2(measured / intended),
      lightness: lightness(measured) - lightness(intended),
    }),
    advise: (measured: number) =>
      measured >= 1
        ? 'The reading is at full scale: it may be clipped, so give less exposure and read again.'
        : undefined,
  },
  {
    name: 'linear_from_code',
    subject: 'colour',
    about: 'The linear value, 0 to 1, behind a code read off the screen.',
    parameters: [
      parameter('code', PLAIN, 'the code read', { range: NOT_NEGATIVE }),
      parameter('full_scale', PLAIN, 'the code of full white: 255 for 8 bits', { range: POSITIVE }),
      parameter('encoding', TEXT, 'how the picture is encoded', {
        default: '"sRGB"',
        choices: Object.keys(ENCODINGS),
      }),
    ],
    result: PLAIN,
    formula: 'decode(code/full scale)',
    source: 'IEC 61966-2-1; ISO/CIE 11664-4 for L*; power laws derived',
    validity: 'A picture developed without a tone curve of its own, in the encoding named.',
    cautions: ['A tone curve in the raw converter spoils this: develop the frame linear, without one.'],
    examples: [
      { formula: 'linear_from_code(118, 255)', gives: '0.1811642', within: '0.0000001' },
      { formula: 'linear_from_code(50, 100, "L*")', gives: '0.1841865', within: '0.0000001' },
      { formula: 'linear_from_code(32768, 65536, "linear")', gives: '0.5' },
      { formula: 'linear_from_code(300, 255)', refuses: 'code' },
    ],
    compute: (code: number, fullScale: number, encoding: string) => {
      if (code > fullScale)
        throw new Refusal('The code is over full scale: 255 is that of 8 bits, 65535 that of 16.', 'code')
      return (ENCODINGS[encoding] as (share: number) => number)(code / fullScale)
    },
  },
  {
    name: 'sample_mean',
    subject: 'colour',
    about: 'The mean of a list.',
    parameters: [parameter('values', LIST_OF_ANY, 'the values')],
    result: like,
    formula: 'Σ x/n',
    source: 'derived: arithmetic mean',
    examples: [
      { formula: 'sample_mean({1, 2, 6})', gives: '3' },
      { formula: 'sample_mean({10 mm, 20 mm})', gives: '15 mm' },
    ],
    compute: (values: readonly number[]) => {
      needValues(values)
      // Dividing first keeps the sum of very large values finite.
      return values.reduce((sum, value) => sum + value / values.length, 0)
    },
  },
  {
    name: 'percentile',
    subject: 'colour',
    about: 'The value that a share of a list does not exceed.',
    parameters: [
      parameter('values', LIST_OF_ANY, 'the values'),
      parameter('share', PLAIN, 'the share: 90 %', { range: SHARE }),
    ],
    result: like,
    formula: 'in order x₁ … xₙ, linear between the neighbours of 1 + share (n − 1)',
    source: 'common practice, no source: linear interpolation between order statistics, as spreadsheets do',
    examples: [
      { formula: 'percentile({4, 1, 3, 2, 5}, 50 %)', gives: '3' },
      // Place 1 + 0.9 · 4 = 4.6: from 4 six tenths of the way to 5.
      { formula: 'percentile({4, 1, 3, 2, 5}, 90 %)', gives: '4.6' },
      { formula: 'percentile({4, 1, 3}, 90)', refuses: 'share' },
    ],
    compute: (values: readonly number[], share: number) => {
      needValues(values)
      return percentile(values, share)
    },
  },
  {
    name: 'drift',
    subject: 'colour',
    about: 'How far a reading has moved since the baseline.',
    parameters: [
      parameter('now', ANY, 'the last reading: a target frame at the day’s end'),
      parameter('baseline', ANY, 'the same reading of the day’s first frame'),
    ],
    result: like,
    formula: 'now − baseline',
    source: 'derived: a difference',
    validity: 'Readings alike in kind: L*, stops, code values, lux. For a ratio in stops use evenness_stops.',
    examples: [{ formula: 'drift(10.1 EV, 10.3 EV)', gives: '-0.2 stop' }],
    compute: (now: number, baseline: number) => now - baseline,
  },
  {
    name: 'inspect_count',
    subject: 'colour',
    about: 'How many frames of a lot to inspect to find a fault that a few have.',
    parameters: [
      parameter('lot', PLAIN, 'frames in the lot', { range: { ...COUNT, most: 10_000_000 } }),
      parameter('bad', PLAIN, 'faulty frames one would not want to miss', { range: COUNT }),
      parameter('confidence', PLAIN, 'chance of finding at least one: 95 %', { range: { above: 0, most: 1 } }),
    ],
    result: PLAIN,
    formula: 'least n with 1 − C(lot − bad, n)/C(lot, n) ≥ confidence',
    source: 'derived: hypergeometric distribution, sampling without replacement',
    validity: 'Frames picked at random from the whole lot, each fault seen when looked at.',
    examples: [
      { formula: 'inspect_count(340, 4, 95 %)', gives: '179' },
      // One bad in ten: n/10 ≥ 0.5.
      { formula: 'inspect_count(10, 1, 50 %)', gives: '5' },
      { formula: 'inspect_count(10, 11, 95 %)', refuses: 'bad' },
    ],
    compute: (lot: number, bad: number, confidence: number) => {
      if (bad > lot) throw new Refusal('There cannot be more bad frames than the lot holds.', 'bad')
      return inspectionCount(lot, bad, confidence)
    },
  },
  {
    name: 'grade',
    subject: 'colour',
    about: 'The class a measured value reaches in a published table or in the studio’s own.',
    parameters: [
      parameter('metric', TEXT, 'what was measured: "tone", "colour mean", "sampling" …'),
      parameter('value', ANY, 'the measured value'),
      parameter('scheme', TEXT, `${SCHEMES.map((scheme) => `"${scheme}"`).join(', ')}, or the studio’s own table`, {
        default: '"FADGI"',
      }),
      parameter('material', TEXT, 'class of original in the table', { default: '"general"' }),
    ],
    result: TEXT,
    formula: 'the best class whose inclusive limit holds, else "below"',
    source: 'FADGI (2023) and ISO 19264-1:2021, read in a published comparison; each cell’s source in shared/reference',
    validity:
      'A studio’s own table is a text: the classes, best first, then each metric with a limit a class, parted by semicolons: "A, B; tone: 2, 3; sampling: >= 400 ppi, 300 ppi".',
    cautions: ['A class here is not a certificate: check the limits against the document your contract names.'],
    examples: [
      { formula: 'grade("tone", 2.4, "FADGI", "general")', gives: '"3 star"' },
      { formula: 'grade("sampling", 400 ppi, "FADGI")', gives: '"4 star"' },
      { formula: 'grade("colour mean", 5, "ISO 19264-1")', gives: '"B"' },
      { formula: 'grade("tone", -2.5, "fine, fair; tone: 2, 3; sampling: >= 400 ppi, 300 ppi")', gives: '"fair"' },
      { formula: 'grade("tone", 9, "fine, fair; tone: 2, 3")', gives: '"below"' },
      { formula: 'grade("gloss", 9, "FADGI")', refuses: 'gloss' },
      { formula: 'grade("sampling", 400, "FADGI")', refuses: 'ppi' },
    ],
    compute: (metric: string, value: number, scheme: string, material: string) =>
      gradeValue(metric, value, NONE, scheme, material),
    computeFor: ([, value]) => {
      const dimension = value?.kind === 'number' ? value.dimension : NONE
      return (metric: string, measured: number, scheme: string, material: string) =>
        gradeValue(metric, measured, dimension, scheme, material)
    },
  },
]
