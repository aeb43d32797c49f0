import { type FunctionRecord, Refusal, TEXT } from '../../language/index.ts'
import { COUNT, PLAIN, parameter } from '../maths/parameters.ts'

const LONGEST_NAME = 255
const MOST_DIGITS = 12

const PATTERN = parameter('pattern', TEXT, 'the name, with a # for each digit of the number: "maps_####.tif"')

/** The runs of # in a pattern: how many digits each number of a name has. */
function digitsOf(pattern: string): readonly number[] {
  const stray = /[^A-Za-z0-9._#-]/.exec(pattern)?.[0]
  if (stray !== undefined)
    throw new Refusal(
      `“pattern” has “${stray}”, which some systems do not take in a file’s name. Use letters without accents, digits, hyphen, underscore and full stop.`,
      'pattern',
    )
  const runs = [...pattern.matchAll(/#+/g)].map(([run]) => run.length)
  if (runs.length === 0)
    throw new Refusal('“pattern” has no #. Write one for each digit of the number, as in "maps_####.tif".', 'pattern')
  if (runs.length > 2)
    throw new Refusal(
      '“pattern” has more than two runs of #. Write one for the original and one for its part.',
      'pattern',
    )
  if (pattern.length > LONGEST_NAME || Math.max(...runs) > MOST_DIGITS)
    throw new Refusal(
      `“pattern” is too long. A name has ${LONGEST_NAME} characters at most, a number in it ${MOST_DIGITS} digits.`,
      'pattern',
    )
  return runs
}

function written(value: number, digits: number, argument: string): string {
  if (value >= 10 ** digits)
    throw new Refusal(
      `“${argument}” needs more digits than the ${digits} # of the pattern, which take numbers up to ${10 ** digits - 1}. Write one more # for each digit.`,
      argument,
    )
  return String(value).padStart(digits, '0')
}

/** What the files are called. */
export const NAMING: readonly FunctionRecord[] = [
  {
    name: 'file_name',
    subject: 'run',
    about: 'The name of a file by a pattern, its numbers with leading zeros.',
    parameters: [
      PATTERN,
      parameter('number', PLAIN, 'of the original', { range: { least: 0, whole: true } }),
      parameter('part', PLAIN, 'of the original: a page, a side, a detail', { default: '1', range: COUNT }),
    ],
    result: TEXT,
    formula: 'the first run of # becomes the number, the second the part',
    source: 'common practice, no source: numbers of one length sort in their order',
    examples: [
      { formula: 'file_name("maps_####.tif", 7)', gives: '"maps_0007.tif"' },
      { formula: 'file_name("maps_####_##.tif", 7, 2)', gives: '"maps_0007_02.tif"' },
      { formula: 'file_name("maps_###.tif", 1000)', refuses: 'up to 999' },
      { formula: 'file_name("maps_###.tif", 7, 2)', refuses: 'second run' },
      { formula: 'file_name("maps ###.tif", 7)', refuses: '“ ”' },
    ],
    compute: (pattern: string, number: number, part: number) => {
      const [first, second] = digitsOf(pattern)
      if (second === undefined && part > 1)
        throw new Refusal(
          '“pattern” would give all parts of an original one name. Write a second run of # for the part.',
          'pattern',
        )
      const numbers = [written(number, first as number, 'number'), written(part, second ?? MOST_DIGITS, 'part')]
      let at = 0
      return pattern.replace(/#+/g, () => numbers[at++] as string)
    },
    advise: (pattern: string) =>
      /[A-Z]/.test(pattern)
        ? 'Some systems distinguish capital from lower-case letters and some do not: use lower-case letters only.'
        : undefined,
  },
  {
    name: 'name_room',
    subject: 'run',
    about: 'The highest number a pattern of file names has room for.',
    parameters: [
      PATTERN,
      parameter('place', PLAIN, 'which run of #: 1 the original, 2 its part', {
        default: '1',
        range: { least: 1, most: 2, whole: true },
      }),
    ],
    result: PLAIN,
    formula: '10ⁿ − 1 for n digits; 1 where there is no second run',
    source: 'derived: the number of digits',
    examples: [
      { formula: 'name_room("maps_####_##.tif")', gives: '9999' },
      { formula: 'name_room("maps_####_##.tif", 2)', gives: '99' },
      { formula: 'name_room("maps_####.tif", 2)', gives: '1' },
      { formula: 'name_room("maps.tif")', refuses: 'has no #' },
    ],
    compute: (pattern: string, place: number) => {
      const digits = digitsOf(pattern)[place - 1]
      return digits === undefined ? 1 : 10 ** digits - 1
    },
  },
]
