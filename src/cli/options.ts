import { type ParseArgsOptionsConfig, parseArgs } from 'node:util'
import { InputError } from './input-error.ts'
import * as words from './words.ts'

/** The options of a verb by name, and what else stands on its line. Throws InputError for an option it does not have. */
export function readOptions<O extends ParseArgsOptionsConfig>(
  verb: keyof typeof words.takes,
  args: readonly string[],
  options: O,
) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true })
  } catch (error) {
    // What follows is advice on how to pass a text that begins with a minus sign.
    throw new InputError(words.inVerb(verb, (error as Error).message.split('. ')[0] as string))
  }
}

/** The one operand of a verb. Throws InputError where there is none, or another. */
export function onlyOperand(verb: keyof typeof words.takes, operands: readonly string[]): string {
  const [operand] = operands
  if (operand === undefined || operands.length > 1)
    throw new InputError(words.expected(words.takes[verb], operands.length))
  return operand
}
