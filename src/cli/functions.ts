import { FUNCTIONS } from '../functions/index.ts'
import { type PublishedRow, publishedRowsOf } from '../functions/published/report.ts'
import { RECORD_WORDS } from '../language/checking/words.ts'
import { functionFinder } from '../language/finding/find-functions.ts'
import {
  defaultText,
  type FunctionRecord,
  type Parameter,
  rangeText,
  resultText,
  signature,
  typeName,
} from '../language/index.ts'
import { InputError } from './input-error.ts'
import { printJson, printLines } from './report.ts'
import * as words from './words.ts'

/**
 * `functions`: every function by subject. With a name, that function in full and how it was checked; with other
 * words, the functions found by them.
 */
export function functions(args: readonly string[]): number {
  const option = args.find((arg) => arg.startsWith('-') && arg !== '--json')
  const asked = args.filter((arg) => arg !== '--json')
  if (option !== undefined) throw new InputError(words.functionsOption(option))
  const word = asked.length > 0 ? asked.join(' ') : undefined
  const found = word === undefined ? FUNCTIONS : matching(word)
  if (found.length === 0) throw new InputError(words.noFunctionFound(String(word)))
  const exact = word !== undefined && found.length === 1 && found[0]?.name === word
  if (args.includes('--json')) printJson(found.map(asData))
  else printLines(exact ? inFull(found[0] as FunctionRecord) : bySubject(found))
  return 0
}

/** The function of that name, or those found by words of the trade. */
function matching(word: string): readonly FunctionRecord[] {
  const exact = FUNCTIONS.filter(({ name }) => name === word)
  if (exact.length > 0) return exact
  const finder = functionFinder(FUNCTIONS.map((record) => ({ record, text: record })))
  return finder.find(word).flatMap((name) => FUNCTIONS.find((record) => record.name === name) ?? [])
}

function bySubject(found: readonly FunctionRecord[]): string[] {
  const subjects = [...new Set(found.map(({ subject }) => subject))]
  return subjects.flatMap((subject) => [
    subject,
    ...found.filter((record) => record.subject === subject).map((record) => `  ${signature(record)}: ${record.about}`),
  ])
}

function inFull(record: FunctionRecord): string[] {
  const published = publishedRowsOf(record.name)
  return [
    signature(record),
    record.about,
    '',
    ...record.parameters.map((parameter) => `  ${parameter.name}: ${parameter.about}${detailText(parameter)}`),
    words.gives(resultText(record), record.formula),
    RECORD_WORDS.source(record.source),
    ...(record.validity ? [RECORD_WORDS.appliesTo(record.validity)] : []),
    ...[...(record.safety ?? []), ...(record.cautions ?? [])].map(words.caution),
    '',
    words.examples,
    ...record.examples.flatMap(({ formula, gives }) => (gives === undefined ? [] : [words.example(formula, gives)])),
    '',
    published.length > 0 ? RECORD_WORDS.howChecked : RECORD_WORDS.notPublished,
    ...published.flatMap(publishedText),
  ]
}

function detailText(parameter: Parameter): string {
  const details = [
    rangeText(parameter),
    (parameter.choices ?? []).map((choice) => `"${choice}"`).join(' or '),
    defaultText(parameter),
  ].filter((text) => text !== '')
  return details.length > 0 ? ` (${details.join('; ')})` : ''
}

const publishedText = (row: PublishedRow): string[] => [
  words.published(row.quantity, row.published, row.ours, row.difference),
  `    ${row.formula}`,
  `    ${row.source}${row.quoted ? RECORD_WORDS.quoted : ''}${row.note === undefined ? '' : `. ${row.note}`}`,
]

const parameterType = (parameter: Parameter): string => {
  const { type } = parameter
  if (type.kind === 'any') return words.kindOfArgument.any
  if (type.kind === 'any list') return words.kindOfArgument.list
  if (type.kind === 'any or list') return words.kindOfArgument.anyOrList
  return type.kind === 'list of any' ? words.kindOfArgument.listOfAny : typeName(type)
}

const parameterData = (parameter: Parameter): object => ({
  name: parameter.name,
  dimension: parameterType(parameter),
  about: parameter.about,
  default: parameter.default ?? null,
  range: rangeText(parameter) || null,
  choices: parameter.choices ?? null,
})

function asData(record: FunctionRecord): object {
  return {
    name: record.name,
    subject: record.subject,
    about: record.about,
    also: record.also ?? [],
    signature: signature(record),
    parameters: record.parameters.map(parameterData),
    result: resultText(record),
    formula: record.formula,
    source: record.source,
    validity: record.validity ?? null,
    cautions: record.cautions ?? [],
    safety: record.safety ?? [],
    examples: record.examples,
    published: publishedRowsOf(record.name),
  }
}
