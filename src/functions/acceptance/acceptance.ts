import { type FunctionRecord, type NumberType, number, Refusal, TEXT } from '../../language/index.ts'
import { NONE } from '../../units/index.ts'
import { COUNT, NOT_NEGATIVE, PLAIN, PLAIN_NUMBERS, parameter } from '../maths/parameters.ts'
import { colourCaution, gradeColour, gradeValue, gradingCaution } from './grade.ts'
import { inspectionCount } from './inspection.ts'
import { SCHEMES } from './tables.ts'

const ANY = { kind: 'any' } as const

const SCHEME = parameter('scheme', TEXT, 'a published table, or the studio’s own as text', {
  default: '"FADGI"',
  choices: ['FADGI', ...SCHEMES],
  open: true,
})
const MATERIAL = parameter('material', TEXT, 'class of original in the table', { default: '"general"' })

/** Acceptance by drift, by inspection and by published classes. */
export const ACCEPTANCE: readonly FunctionRecord[] = [
  {
    name: 'drift',
    subject: 'colour',
    about: 'How far a reading has moved since the baseline.',
    also: ['stability', 'change over time'],
    parameters: [
      parameter('now', ANY, 'the last reading: a target frame at the day’s end'),
      parameter('baseline', ANY, 'the same reading of the day’s first frame'),
    ],
    // Two exposure values differ by stops.
    result: ([now]) => number((now as NumberType).dimension),
    formula: 'now − baseline',
    source: 'derived: a difference',
    validity: 'Readings of one kind: L*, stops, code values, lux. For a ratio in stops use evenness_stops.',
    examples: [{ formula: 'drift(10.1 EV, 10.3 EV)', gives: '-0.2 stop' }],
    compute: (now: number, baseline: number) => now - baseline,
  },
  {
    name: 'inspect_count',
    subject: 'colour',
    about: 'How many frames of a lot to inspect to find a fault that a few have.',
    parameters: [
      parameter('lot', PLAIN, 'frames in the lot', { range: { ...COUNT, most: 10_000_000 } }),
      parameter('bad', PLAIN, 'number of faulty frames that must be noticed', { range: COUNT }),
      parameter('confidence', PLAIN, 'chance of finding at least one: 95 %', { range: { above: 0, most: 1 } }),
    ],
    result: PLAIN,
    formula: 'least n with 1 − C(lot − bad, n)/C(lot, n) ≥ confidence',
    source: 'derived: hypergeometric distribution, sampling without replacement',
    validity: 'Frames picked at random from the whole lot; every fault is noticed.',
    examples: [
      { formula: 'inspect_count(340, 4, 95 %)', gives: '179' },
      // One bad in ten: n/10 ≥ 0.5.
      { formula: 'inspect_count(10, 1, 50 %)', gives: '5' },
      { formula: 'inspect_count(10, 11, 95 %)', refuses: 'bad' },
    ],
    compute: (lot: number, bad: number, confidence: number) => {
      if (bad > lot) throw new Refusal('“bad” is more than the lot has. Give at most as many as “lot”.', 'bad')
      return inspectionCount(lot, bad, confidence)
    },
  },
  {
    name: 'grade',
    subject: 'colour',
    about: 'The class a measured value reaches in a published table or in the studio’s own.',
    also: ['fadgi', 'metamorfoze', 'iso 19264', 'star rating'],
    parameters: [
      parameter('metric', TEXT, 'what was measured: "tone", "colour mean", "sampling" …'),
      parameter('value', ANY, 'the measured value'),
      SCHEME,
      MATERIAL,
    ],
    result: TEXT,
    formula: 'the best class whose limit the value meets, else "below"; < excludes the limit, ≤ includes it',
    source:
      'FADGI 2016, read in the guideline; FADGI 2023 and ISO 19264-1:2021, read in a published comparison; each limit’s source in shared/reference',
    validity:
      '"FADGI" alone is the newest edition. Materials are the headings of the guideline’s tables: "newspapers", "prints and photographs"; "general" is its General Collections tables. A studio’s own table is a text: the classes, best first, then each metric with a limit a class, separated by semicolons: "A, B; tone: 2, 3; sampling: >= 400 ppi, 300 ppi".',
    cautions: ['A class here is not a certificate: check the limits against the document your contract names.'],
    examples: [
      { formula: 'grade("tone", 2.4, "FADGI", "general")', gives: '"3 star"' },
      { formula: 'grade("sampling", 400 ppi, "FADGI")', gives: '"4 star"' },
      { formula: 'grade("colour mean", 5, "ISO 19264-1")', gives: '"B"' },
      { formula: 'grade("colour mean", 4, "FADGI 2016")', gives: '"3 star"' },
      { formula: 'grade("sampling", 400 ppi, "FADGI 2016", "prints and photographs")', gives: '"3 star"' },
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
    advise: (metric: string, _value: number, scheme: string, material: string) =>
      gradingCaution(metric, scheme, material),
  },
  {
    name: 'grade_colour',
    subject: 'colour',
    about: 'The class of a target’s colour differences: the worst over the table’s colour metrics.',
    parameters: [
      parameter('differences', PLAIN_NUMBERS, 'colour difference of each patch', { range: NOT_NEGATIVE }),
      SCHEME,
      MATERIAL,
    ],
    result: TEXT,
    formula:
      'the worst of the classes of the mean, the 90th percentile and the greatest, as far as the table limits them',
    source: 'the tables of grade',
    validity: 'Differences by the formula and weighting that the table prescribes, over all patches of the target.',
    cautions: ['A class here is not a certificate: check the limits against the document your contract names.'],
    examples: [
      // The mean of 2.75 is of 3 star, the 90th percentile of 8 only of 2 star.
      { formula: 'grade_colour({0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 8, 8, 8}, "FADGI 2023")', gives: '"2 star"' },
      { formula: 'grade_colour({1, 1, 1, 15.2}, "ISO 19264-1")', gives: '"below"' },
      { formula: 'grade_colour({1, 2, 3}, "FADGI 2016")', gives: '"4 star"' },
      { formula: 'grade_colour({1, 4}, "fine, fair; colour mean: 3, 5; colour greatest: 3, 5")', gives: '"fair"' },
      { formula: 'grade_colour({1, -1}, "FADGI")', refuses: 'differences' },
    ],
    compute: (differences: readonly number[], scheme: string, material: string) => {
      if (differences.length === 0)
        throw new Refusal('“differences” is empty. Give the difference of at least one patch.', 'differences')
      return gradeColour(differences, scheme, material)
    },
    advise: (_differences: readonly number[], scheme: string, material: string) => colourCaution(scheme, material),
  },
]
