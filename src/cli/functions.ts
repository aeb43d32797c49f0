import { FUNCTIONS } from '../functions/index.ts'
import { type FunctionRecord, type Parameter, rangeText, resultText, signature, typeName } from '../language/index.ts'
import { InputError } from './input.ts'
import { printJson, printLines } from './report.ts'

/** `functions`: every function of the language, by subject. */
export function functions(args: readonly string[]): number {
  const odd = args.find((arg) => arg !== '--json')
  if (odd !== undefined) throw new InputError(`functions takes only --json, found ${odd}`)
  if (args.includes('--json')) printJson(FUNCTIONS.map(asData))
  else printLines(bySubject())
  return 0
}

function bySubject(): string[] {
  const subjects = [...new Set(FUNCTIONS.map(({ subject }) => subject))]
  return subjects.flatMap((subject) => [
    subject,
    ...FUNCTIONS.filter((record) => record.subject === subject).map(
      (record) => `  ${signature(record)}: ${record.about}`,
    ),
  ])
}

const parameterType = (parameter: Parameter): string => {
  const { type } = parameter
  if (type.kind === 'any') return 'any number'
  if (type.kind === 'any list') return 'list'
  if (type.kind === 'any or list') return 'any number or list of any numbers'
  return type.kind === 'list of any' ? 'list of any numbers' : typeName(type)
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
    signature: signature(record),
    parameters: record.parameters.map(parameterData),
    result: resultText(record),
    formula: record.formula,
    source: record.source,
    validity: record.validity ?? null,
    cautions: record.cautions ?? [],
    safety: record.safety ?? [],
    examples: record.examples,
  }
}
