import { type FunctionRecord, number, Refusal, record, TEXT } from '../../language/index.ts'
import { STOP } from '../../units/index.ts'
import { RAW_OR_LINEAR } from '../maths/cautions.ts'
import { NOT_NEGATIVE, PLAIN, PLAIN_NUMBERS, POSITIVE, parameter, SHARE } from '../maths/parameters.ts'
import { lightness, luminanceOf } from './colour-space.ts'
import { type Encoding, labFromRgb, RGB_SPACES, srgbLinear } from './rgb-spaces.ts'

const LAB = record('Lab colour', { L: PLAIN, a: PLAIN, b: PLAIN })
const GREY_OFFSET = record('grey offset', { shift: number(STOP), lightness: PLAIN })

const channel = (name: string, about: string) => parameter(name, PLAIN, about, { range: SHARE })
const linearChannel = (name: string, about: string) => parameter(name, PLAIN, about, { range: POSITIVE })

/** How a code becomes linear, by the encoding's name. */
const DECODERS: Readonly<Record<string, (share: number) => number>> = {
  ...Object.fromEntries(Object.entries(RGB_SPACES).map(([name, { decode }]) => [name, decode])),
  'gamma 1.8': (share) => share ** 1.8,
  'gamma 2.2': (share) => share ** 2.2,
  'L*': (share) => luminanceOf(100 * share),
  linear: (share) => share,
}

/** Codes of pictures, and the colours and light behind them. */
export const ENCODINGS: readonly FunctionRecord[] = [
  {
    name: 'srgb_linear',
    subject: 'colour',
    about: 'The linear value behind an sRGB value.',
    also: ['gamma', 'linearize'],
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
    also: ['cielab', 'colour space'],
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
      // A grey has the same luminance under any white: 116 · 0.2140411^(1/3) − 16.
      { formula: 'lab_from_srgb(0.5, 0.5, 0.5).L', gives: '53.38896', within: '0.0001' },
      { formula: 'lab_from_srgb(1, 0, 0).a', gives: '80.81', within: '0.05' },
      { formula: 'lab_from_srgb(255, 0, 0)', refuses: 'r' },
    ],
    compute: (r: number, g: number, b: number, white: 'D50' | 'D65') => ({ ...labFromRgb([r, g, b], 'sRGB', white) }),
  },
  {
    name: 'lab_from_rgb',
    subject: 'colour',
    about: 'CIELAB, under D50, of a colour in the encoding named.',
    parameters: [
      channel('red', 'red, encoded, 0 to 1'),
      channel('green', 'green, encoded, 0 to 1'),
      channel('blue', 'blue, encoded, 0 to 1'),
      parameter('encoding', TEXT, 'the encoding, as the picture’s profile names it', {
        default: '"sRGB"',
        choices: Object.keys(RGB_SPACES),
      }),
    ],
    result: record('colour in Lab', { lightness: PLAIN, a: PLAIN, b: PLAIN }),
    formula: 'decode; to XYZ by the encoding’s primaries and white; Bradford to D50; ISO/CIE 11664-4',
    source:
      'IEC 61966-2-1; Adobe RGB (1998); ROMM RGB, ANSI/I3A IT10.7666; Display P3 as CSS Color 4 prints it; eciRGB v2; D50 and Bradford of ICC.1',
    validity: 'Codes divided by full scale first: 255 for 8 bits, 65535 for 16.',
    cautions: ['The picture’s profile names its encoding: codes read as another encoding give another colour.'],
    examples: [
      { formula: 'lab_from_rgb(1, 1, 1, "Adobe RGB (1998)").lightness', gives: '100', within: '0.000001' },
      // The luminances that the standard prints for the primaries of ROMM RGB, whose white is D50: 0.2880 for red.
      {
        formula: 'linear_from_code(lab_from_rgb(1, 0, 0, "ROMM RGB").lightness, 100, "L*")',
        gives: '0.2880',
        within: '0.00005',
      },
      { formula: 'lab_from_rgb(0.5, 0.5, 0.5, "eciRGB v2").lightness', gives: '50', within: '0.000001' },
      { formula: 'lab_from_rgb(255, 0, 0)', refuses: 'red' },
      { formula: 'lab_from_rgb(1, 0, 0, "CMYK")', refuses: 'encoding' },
    ],
    compute: (red: number, green: number, blue: number, encoding: Encoding) => {
      const { L, a, b } = labFromRgb([red, green, blue], encoding, 'D50')
      return { lightness: L, a, b }
    },
  },
  {
    name: 'linear_from_code',
    subject: 'colour',
    about: 'The linear value, 0 to 1, behind a code read off the screen.',
    also: ['gamma', 'pixel value', 'rgb value'],
    parameters: [
      parameter('code', PLAIN, 'the code read', { range: NOT_NEGATIVE }),
      parameter('full_scale', PLAIN, 'the code of full white: 255 for 8 bits', { range: POSITIVE }),
      parameter('encoding', TEXT, 'how the picture is encoded', {
        default: '"sRGB"',
        choices: Object.keys(DECODERS),
      }),
    ],
    result: PLAIN,
    formula: 'decode(code/full scale)',
    source:
      'each encoding’s standard: IEC 61966-2-1, Adobe RGB (1998) 4.3, ANSI/I3A IT10.7666; ISO/CIE 11664-4 for L*; power laws derived',
    validity: 'A picture developed without a tone curve of its own, in the encoding named.',
    cautions: ['A tone curve in the raw converter spoils this: develop the frame linear, without one.'],
    examples: [
      { formula: 'linear_from_code(118, 255)', gives: '0.1811642', within: '0.0000001' },
      { formula: 'linear_from_code(50, 100, "L*")', gives: '0.1841865', within: '0.0000001' },
      { formula: 'linear_from_code(32768, 65536, "linear")', gives: '0.5' },
      // 2^(−563/256)
      { formula: 'linear_from_code(0.5, 1, "Adobe RGB (1998)")', gives: '0.2177555', within: '0.0000001' },
      { formula: 'linear_from_code(300, 255)', refuses: 'code' },
    ],
    compute: (code: number, fullScale: number, encoding: string) => {
      if (code > fullScale)
        throw new Refusal('“code” is over full scale. Full scale is 255 for 8 bits, 65535 for 16.', 'code')
      return (DECODERS[encoding] as (share: number) => number)(code / fullScale)
    },
  },
  {
    name: 'white_balance_gains',
    subject: 'colour',
    about: 'Channel gains that make a grey card neutral.',
    also: ['grey card', 'gray card', 'neutral'],
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
    about: 'How far a grey card is from what was intended.',
    also: ['gray card', 'exposure error'],
    parameters: [
      parameter('measured', PLAIN, 'linear value of the card in the frame, 0 to 1', { range: { above: 0, most: 1 } }),
      parameter('intended', PLAIN, 'its reflectance, or the linear value aimed at', { range: { above: 0, most: 1 } }),
    ],
    result: GREY_OFFSET,
    formula: 'shift = log2(measured/intended); lightness = L*(measured) − L*(intended)',
    source: 'derived: a stop is a factor of two; L* of ISO/CIE 11664-4',
    validity: 'Full scale 1 is a perfect white; positive is too light.',
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
        ? 'The reading is at full scale: it may be clipped, so give less exposure and measure again.'
        : undefined,
  },
]
