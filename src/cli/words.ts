import { RECORD_WORDS } from '../language/checking/words.ts'
import { FIGURES_WORDS } from '../storage/figures/words.ts'
import { andMore, anyOf, count, listText, plural } from '../units/plural.ts'

/** Why the terminal cannot read its input: what, where, and what to do. Each is one line. */

export const commandMissing = 'a command is missing; evenfield --help lists them'
export const noCommand = (found: string, commands: readonly string[]): string =>
  `there is no command “${found}”; the commands are ${listText(commands)}`
export const noOption = (found: string, options: readonly string[]): string =>
  `there is no option ${found}; the options are ${listText(options)}`
export const expected = (what: string, found: number | string): string => `${what}, found ${found}`
export const takes = {
  compute: 'compute takes one file',
  formula: 'formula takes one text',
  frame: 'frame takes one picture',
  frames: 'frames takes one folder',
  run: 'run takes one worksheet',
  link: 'link takes one worksheet',
  compose: 'compose takes the names of jobs and parts',
} as const
export const inVerb = (verb: string, why: string): string => `${verb}: ${why}`
export const optionMissing = (verb: string, option: string): string => `${verb}: ${option} is missing`
export const optionTakes = (option: string, what: string): string => `--${option} takes ${what}`
export const nameEqualsText = "'name=text'"
export const aNumber = 'a number'
export const namedTakes = (option: string, found: string): string =>
  `--${option} takes ${nameEqualsText}, found '${found}'`
export const setName = (name: string): string => `--set: “${name}” cannot be a name`
export const set = (name: string, why: string): string => `--set ${name}: ${why}`
export const nothingGiven = 'nothing is given'
export const notInSheet = (name: string, path: string): string =>
  `--set ${name}: ${path} has no given or result named “${name}”`
export const target = (name: string, why: string): string => `--target ${name}: ${why}`
export const noResult = (path: string): string => `${path} has no result of this name`
export const aGiven = (name: string): string => `this is filled in, not computed; use --set ${name}=…`
export const targetMissing = 'no value is given'
export const noPlainFigure = 'this result is not a figure'
export const targetMeasured = 'It has a measured value, which is used whatever is changed.'
export const targetNeeds = (needs: string): string => `It has no value yet; it ${needs}.`
export const targetInError = (why: string): string => `It has no value: ${why}`
export function noSuchPiece(
  name: string,
  text: string,
  sort: string,
  pieces: readonly string[],
  fills: readonly string[],
): string {
  const has = pieces.length > 0 ? `it has ${anyOf(pieces.map((one) => `“${one}”`))}` : 'it has none'
  const instead = fills.length > 0 ? `; to give the figure itself, set ${anyOf(fills)} instead` : ''
  return `--set ${name}: the kit has no ${sort} named “${text}”; ${has}${instead}`
}
export const seedAlone = '--seed can only be used with --simulate'
export const tries = (most: number, found: string): string =>
  `--simulate takes from 1 to ${count(most)} tries, found '${found}'`
export const howManyTries = 'the number of tries'
export const sameSeed = 'which gives the same figures again'
export const wholeNumber = (option: string, meaning: string, found: string): string =>
  `${option} takes a whole number, ${meaning}; found '${found}'`

export const inFile = (path: string, why: string): string => `${path === '-' ? 'standard input' : path}: ${why}`
export const noFile = 'there is no such file'
export const noFolder = 'there is no such folder'
export const aFolder = 'this is a folder'
export const notAFolder = 'this is not a folder'
export const notPermitted = 'you have no permission to open this file'
export const notJson = (why: string): string => `this is not JSON (${why})`
export const tooLargeForSheet = 'the file is too large to be a worksheet'
export const tableTooLarge = (megabytes: number): string =>
  `the table is larger than ${megabytes} MB; import it in parts`
export const noMemory = 'there is not enough memory for this picture'
export const noMemoryExportPart = `${noMemory}; export a part of it`
export const wouldOverwrite = (out: string, what: 'plan' | 'report'): string =>
  `--out ${out}: the ${what} would replace one of its own input files; give it another name`
export const outFailed = (out: string, why: string): string => `--out ${out}: ${why}`

export const noJobOrPart = (
  name: string,
  near: string | undefined,
  jobs: readonly string[],
  parts: readonly string[],
): string =>
  `there is no job or part named ${name}${near ? `; the nearest is ${near}` : ''}; jobs are ${jobs.join(', ')}; parts are ${parts.join(', ')}`
export const noSetUp = (name: string, offered: readonly string[]): string =>
  `--set-up ${name}: the name of a set-up has lower-case letters, digits and underscores, such as ${offered.join(', ')}`
export const noPartOfSetUp = (part: string, setUp: string, parts: readonly string[]): string =>
  `--set-up ${setUp}: a set-up has no part named ${part}; its parts are ${parts.join(', ')}`
export const setUpTwice = (name: string): string => `--set-up ${name} is given twice; give each a name of its own`
export const composeWrites = 'compose writes a file: name it with --out FILE.json'
export const replaced = (part: string, by: string): string => `the part ${part} is replaced by ${by}`

export const noFrameNamed = (name: string, path: string): string => `--frame ${name}: ${path} has no frame of that name`
export const noFrame = 'there is no frame in this worksheet; add one under Build'
export const noAreas = 'its frame has no areas; mark them on one picture'
export const inFrame = (name: string, why: string): string => `in the frame “${name}”, ${why}`
export const noPictures = 'there is no JPEG, PNG or TIFF in this folder'

export const noRun = 'there is no run in this worksheet; add one under Build'
export const noTableOfRun = 'the run has no table in this worksheet; choose one under Build'
export const noHeadings = (missing: readonly string[], headings: readonly string[]): string =>
  `no heading is ${anyOf(missing.map((label) => `“${label}”`))}; its first line has ${headings.slice(0, 30).join(', ') || 'nothing'}`
export const inputsMissing = 'Nothing is planned. These inputs are missing:'
export const runWithoutTable = 'Nothing is planned: the run has no table.'

export const functionsOption = (option: string): string =>
  `functions has no option ${option}. It takes a word and --json.`
export const noFunctionFound = (word: string): string =>
  `No function was found for “${word}”. Without a word, functions lists them all.`

export const needs = (names: readonly string[]): string =>
  names.length > 0 ? `needs ${names.join(', ')}` : 'needs to be filled in'
/** A cell by its label and its name: the name is what `--set` takes. */
export const titled = (label: string, name: string): string => `${label} (${name})`
export const checkText = (state: string, message: string): string => [state, message].filter(Boolean).join(': ')
export const checkLine = (title: string, state: string, message: string): string =>
  `${title}: ${checkText(state, message)}`
export const restsOnExample = (names: readonly string[], state: string, message: string): string =>
  `needs your own ${names.join(', ')}; with the example’s figures: ${checkText(state, message)}`
export const measuredBefore = (names: readonly string[]): string =>
  `measured before ${names.join(', ')} changed: measure it again, or confirm it on the page`
/** Of light typed in another unit than its field’s. */
export const convertedBy = (typed: string, constant: string): string =>
  `from ${typed}, by the meter’s constant ${constant} (ISO 2720)`
export const byItsFormula = (shown: string, difference: string): string => `by its formula ${shown}; ${difference}`
export const notReadAsMeasured = (why: string): string => `not read as measured: ${why}`

export const simulated = (mean: string, low: string, high: string, failed: number): string => {
  const notComputed = failed > 0 ? `; not computed in ${plural(failed, 'try', 'tries')}` : ''
  return `  simulated: mean ${mean}, 95 % of the tries from ${low} to ${high}${notComputed}`
}
export const simulatedPasses = (percent: number): string => `  simulated: passes in ${percent} % of the tries`
export const why = (label: string, why: string): string => `  ${label}: ${why}`
export const inSetUps = (originals: string, setUps: string): string => `${originals} in ${setUps}`
export const inParts = (originals: number): string => ` (${originals} in parts)`
export const moreIn = (count: number, where: string): string => `  ${andMore(count)}${where}`
export const inOut = (out: string): string => `, in ${out}`
export const plannedTotal = (total: string): string => `Planned: ${total}`
export const doneOf = (done: number, all: number): string => `Done: ${done} of ${all}`
export const leftAtRate = (total: string): string => `Left at the current rate:  ${total}`
export const plannedWithout = (label: string, why: string): string => `Planned without: ${label}: ${why}`
export const written = (out: string): string => `Written: ${out}`
export const unplannedRow = (row: number, title: string, why: string): string =>
  `  row ${row}${title === '' ? '' : `, ${title}`}: ${why}`

/** The heads of the columns of a plan as CSV, in their order. Figures are in the unit in brackets. */
export const planHeads = {
  setUp: 'Set-up',
  original: 'Original',
  row: 'Row of the list',
  exposure: 'Exposure',
  magnification: 'Magnification [1:]',
  means: 'Equipment',
  column: 'Column height [mm]',
  across: 'Frames across',
  down: 'Frames down',
  turned: 'Frame turned',
  frames: 'Frames',
  time: 'Time [min]',
  data: 'Data [MB]',
  state: 'State',
  why: 'Why',
} as const
export const planStates = {
  planned: 'planned',
  done: 'done',
  doneUnplanned: 'done, not in the plan',
  notPlanned: FIGURES_WORDS.notPlanned,
} as const
export const yes = 'yes'
export const no = 'no'

export const cells = (out: string, count: number): string => `${out}: ${plural(count, 'cell')}`
export const cautionLine = (text: string): string => `caution: ${text}`
export const errorLine = (text: string): string => `error: ${text}`
export const errorIn = (called: string, text: string): string => `${called}: error: ${text}`
export const tryLine = (formula: string): string => `  try: ${formula}`
/** For a figure that is set on a scale with marks. */
export const exact = (text: string, exactly: string): string => `${text}, exactly ${exactly}`
export const marked = (text: string, mark: string): string => `${text}, marked ${mark}`
export const measured = (text: string): string => `measured ${text}`
export const exampleRight = (formula: string, gives: string): string => `  right: ${formula} = ${gives}`
export const exampleWrong = (formula: string, gives: string, found: string): string =>
  `  wrong: ${formula} = ${gives}, it gives ${found}`
export const measuredFrames = (frames: number, seconds: string, states: string): string =>
  `Measured: ${plural(frames, 'frame')} in ${seconds} s: ${states}`
export const slowest = 'Slowest:'
export const notMeasured = (name: string, why: string): string => `Not measured: ${name}: ${why}`
export const kindOfArgument = {
  any: 'any number',
  list: 'list',
  anyOrList: 'any number or list of any numbers',
  listOfAny: 'list of any numbers',
} as const
export const gives = (result: string, formula: string): string => `${RECORD_WORDS.gives(result)}: ${formula}`
export const caution = (text: string): string => `${RECORD_WORDS.caution} ${text}`
export const examples = 'Examples'
export const example = (formula: string, result: string): string => `  ${formula} ${RECORD_WORDS.example(result)}`
export const published = (quantity: string, published: string, computed: string, difference: string): string =>
  `  ${quantity}: published ${published}, computed ${computed}${difference === '' ? '' : `, difference ${difference}`}`
export const passesWithPart = (check: string, parts: readonly string[]): string =>
  `${check}: passes with the part ${anyOf(parts)}`
export const failsWithPart = (part: string, checks: readonly string[]): string =>
  `with the part ${part}, ${listText(checks)} then ${checks.length === 1 ? 'fails' : 'fail'}`
export const cornersUnfound = (name: string): string =>
  `${name}: its corners cannot be found reliably in this picture; its place as marked in the sheet is used, if it has one`
/** The headings of a report on many pictures, before and after the checks and figures. */
export const reportHeads = {
  file: 'File',
  taken: 'Date taken',
  state: 'State',
  differs: 'Differs from the sheet',
  remarks: 'Remarks',
  time: 'Time [s]',
} as const
export const framesTakes = { sheet: '--sheet SHEET.json', out: '--out report.csv' } as const
export const partsMissing = 'The folder templates/parts is missing.'
export const theLink = 'the link'
export const theSheet = 'the sheet'
