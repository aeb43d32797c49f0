import { type FunctionRecord, YES_NO } from '../../language/index.ts'
import { NOT_NEGATIVE, PLAIN, POSITIVE, parameter } from '../maths/parameters.ts'
import { deltaE76, deltaE94, deltaE2000, deltaECmc } from './colour-difference.ts'

const labOf = (n: 1 | 2, which: string) => [
  parameter(`L${n}`, PLAIN, `L* of ${which}`, { range: NOT_NEGATIVE }),
  parameter(`a${n}`, PLAIN, `a* of ${which}`),
  parameter(`b${n}`, PLAIN, `b* of ${which}`),
]
const TWO_LABS = [...labOf(1, 'the aim'), ...labOf(2, 'the sample')]

/** Colour differences. */
export const DELTA_E: readonly FunctionRecord[] = [
  {
    name: 'delta_e_76',
    subject: 'colour',
    about: 'Colour difference of two Lab colours, CIE 1976.',
    also: ['colour difference', 'color difference', 'deltae'],
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
    name: 'delta_e_94',
    subject: 'colour',
    about: 'Colour difference of a sample from a reference, CIE94.',
    parameters: [
      ...TWO_LABS,
      parameter('textiles', YES_NO, 'the weights of textiles; no takes those of graphic arts', { default: 'no' }),
    ],
    result: PLAIN,
    formula:
      'sqrt((ΔL/(k_L))² + (ΔC/(1 + K₁ C₁))² + (ΔH/(1 + K₂ C₁))²), K₁ 0.045, K₂ 0.015; textiles k_L 2, 0.048, 0.014',
    source: 'CIE 116-1995',
    validity:
      'The first colour is the reference: the other way round the result differs. Made for differences up to about 5.',
    examples: [
      { formula: 'delta_e_94(100, -50, 50, 20, 10, -20)', gives: '89.358114', within: '0.0000005' },
      { formula: 'delta_e_94(100, -50, 50, 20, 10, -20, textiles: yes)', gives: '57.247221', within: '0.0000005' },
      // Two greys differ in lightness alone; textiles halve it.
      { formula: 'delta_e_94(50, 0, 0, 54, 0, 0, textiles: yes)', gives: '2' },
      { formula: 'delta_e_94(50, 0, 0, -1, 0, 0)', refuses: 'L2' },
    ],
    compute: (L1: number, a1: number, b1: number, L2: number, a2: number, b2: number, textiles: boolean) =>
      deltaE94({ L: L1, a: a1, b: b1 }, { L: L2, a: a2, b: b2 }, textiles),
  },
  {
    name: 'delta_e_cmc',
    subject: 'colour',
    about: 'Colour difference of a sample from a reference, CMC l:c.',
    parameters: [
      ...TWO_LABS,
      parameter('lightness', PLAIN, 'l: 2 to judge acceptance, 1 to judge whether a difference is seen', {
        default: '2',
        range: POSITIVE,
      }),
      parameter('chroma', PLAIN, 'c', { default: '1', range: POSITIVE }),
    ],
    result: PLAIN,
    formula: 'sqrt((ΔL/(l S_L))² + (ΔC/(c S_C))² + (ΔH/S_H)²), S_L, S_C and S_H from the reference',
    source: 'BS 6923:1988',
    validity: 'The first colour is the reference: the other way round the result differs.',
    examples: [
      { formula: 'delta_e_cmc(100, -50, 50, 20, 10, -20)', gives: '47.038863', within: '0.0000005' },
      {
        formula: 'delta_e_cmc(10.3454, 3.2151, -189.123, 51.7781, -22.5151, 1.0001, lightness: 1)',
        gives: '98.577755',
        within: '0.0000005',
      },
      { formula: 'delta_e_cmc(50, 0, 0, 53, 0, 0, lightness: 0)', refuses: 'lightness' },
    ],
    compute: (
      L1: number,
      a1: number,
      b1: number,
      L2: number,
      a2: number,
      b2: number,
      lightness: number,
      chroma: number,
    ) => deltaECmc({ L: L1, a: a1, b: b1 }, { L: L2, a: a2, b: b2 }, lightness, chroma),
  },
  {
    name: 'delta_e_2000',
    subject: 'colour',
    about: 'Colour difference of two Lab colours, CIEDE2000.',
    also: ['colour difference', 'color difference', 'deltae', 'ciede2000'],
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
]
