import { USUAL_SEED } from '../worksheet/simulation/draws.ts'
import { framesTakes } from './words.ts'

/** One command of the terminal, as its help shows it. */
export interface Verb {
  readonly usage: string
  readonly about: string
  readonly options: readonly (readonly [option: string, about: string])[]
  readonly example: string
}

const SET = [
  "--set 'name=text'",
  'fills in a given, or gives a result its measured value, which is then used instead',
] as const
const JSON_OPTION = ['--json', 'prints one line of JSON, values in coherent SI units'] as const
const STDIN = ['-', 'reads standard input instead of the file'] as const

/** The commands in the order in which the help lists them. */
export const VERBS = {
  compute: {
    usage:
      "compute FILE.json | '#LINK' | - [--set 'name=text']… [--as-mine] [--advice] [--target 'name=text']… [--simulate N --seed S] [--json]",
    about: 'Computes a worksheet and says which checks pass.',
    options: [
      STDIN,
      ["'#LINK'", 'reads a link instead of the file: the part of the address that starts with #'],
      SET,
      ['--as-mine', 'takes every figure of an example as your own'],
      ['--advice', 'adds suggestions for checks that fail or are marginal'],
      ["--target 'name=text'", 'adds suggestions that bring a result to this value'],
      ['--simulate N', 'computes N times with random values within the limits, and gives means and spreads'],
      ['--seed S', `a whole number that makes a simulation repeatable; ${USUAL_SEED} if left out`],
      JSON_OPTION,
    ],
    example: "compute sheet.json --set 'magnification=1:4' --json",
  },
  link: {
    usage: "link FILE.json [--set 'name=text']… [--figures]",
    about:
      'Prints a worksheet as a link: the part that starts with #, to add to the address of the page or to pass to compute.',
    options: [STDIN, SET, ['--figures', 'replaces formulas with their figures']],
    example: 'link sheet.json',
  },
  compose: {
    usage: "compose NAME… [--set-up NAME[=PART,…]]… [--set 'name=text']… --out FILE.json",
    about: 'Composes one worksheet from jobs and parts, in any order.',
    options: [
      ['--set-up NAME', 'adds another set-up: raking, uv, overview, tiles, through, second, or a name of your own'],
      ['--set-up NAME=PART,…', 'adds it with parts of its own, as in raking=one-frame'],
      SET,
      ['--out FILE.json', 'where the worksheet is written'],
    ],
    example: 'compose flat-sheet in-tiles two-lamps --out sheet.json',
  },
  formula: {
    usage: "formula 'TEXT' [--set 'name=text']… [--json]",
    about: 'Computes one formula, or says what is wrong with it and how to fix it.',
    options: [['-', 'reads the formula from standard input'], SET, JSON_OPTION],
    example: "formula 'width * 2 + 1 in' --set 'width=420 mm'",
  },
  functions: {
    usage: 'functions [WORD]… [--json]',
    about: 'Lists the functions that formulas can call, or those that match the words.',
    options: [JSON_OPTION],
    example: 'functions circle of confusion',
  },
  frame: {
    usage: 'frame FILE --areas AREAS.json [--json]',
    about: 'Measures one picture.',
    options: [['--areas AREAS.json', 'the areas to measure'], JSON_OPTION],
    example: 'frame target.tif --areas areas.json --json',
  },
  frames: {
    usage: `frames FOLDER ${framesTakes.sheet} ${framesTakes.out} [--frame NAME]`,
    about: 'Measures every picture in a folder, in the areas marked in a worksheet.',
    options: [
      [framesTakes.sheet, 'the worksheet whose areas are measured'],
      [framesTakes.out, 'where the report is written'],
      ['--frame NAME', 'the frame that has the areas, if the worksheet has several frames'],
    ],
    example: 'frames monday --sheet sheet.json --out monday.csv',
  },
  run: {
    usage: "run FILE.json [--originals list.csv] [--out plan.csv] [--left] [--set 'name=text']… [--json]",
    about: 'Plans the set-ups and frames of a collection.',
    options: [
      ['--originals list.csv', 'plans the rows of this file instead of the table’s own, matched by headings'],
      ['--out plan.csv', 'where the plan is written'],
      ['--left', 'plans only what is not done yet'],
      SET,
      JSON_OPTION,
    ],
    example: 'run collection.json --originals list.csv --out plan.csv',
  },
} as const satisfies Readonly<Record<string, Verb>>

export type VerbName = keyof typeof VERBS

/** All commands on one screen. */
export const overview = (): string =>
  [
    'evenfield COMMAND …',
    '',
    ...Object.values(VERBS).flatMap(({ usage, about }) => [`  ${usage}`, `      ${about}`]),
    '',
    'evenfield COMMAND --help explains one of them; evenfield --version prints the version.',
    'Exit 0: computed, every check passes or is marginal. 1: an error, or a check that fails or is waiting.',
    '2: the input cannot be read; one line on the error stream says why.',
  ].join('\n')

/** One command with its options and an example. */
export function helpOf({ usage, about, options, example }: Verb): string {
  const wide = Math.max(...options.map(([option]) => option.length))
  return [
    `evenfield ${usage}`,
    '',
    about,
    '',
    ...options.map(([option, text]) => `  ${option.padEnd(wide)}  ${text}`),
    ...(options.length > 0 ? [''] : []),
    `For example: evenfield ${example}`,
  ].join('\n')
}
