import { version } from '../../package.json'
import { composeSheet } from './compose.ts'
import { compute } from './compute.ts'
import { formula } from './formula.ts'
import { functions } from './functions.ts'
import { helpOf, overview, VERBS, type VerbName } from './help.ts'
import { readArguments } from './input.ts'
import { InputError } from './input-error.ts'
import { link } from './link.ts'
import { onOneLine } from './report.ts'
import { run } from './run.ts'
import { readRunArguments } from './run-arguments.ts'
import * as words from './words.ts'

type Command = (args: readonly string[], program: string) => number | Promise<number>

/** What each verb runs. What decodes pictures is loaded only where one is measured. */
const COMMANDS: Readonly<Record<VerbName, Command>> = {
  compute: (args) => compute(readArguments('compute', args)),
  compose: composeSheet,
  formula: (args) => formula(readArguments('formula', args)),
  functions,
  link,
  frame: async (args) => (await import('./frame.ts')).frame(args),
  frames: async (args, program) => (await import('./frames.ts')).frames(args, program),
  run: (args) => run(readRunArguments(args)),
}

const isVerb = (word: string | undefined): word is VerbName => word !== undefined && Object.hasOwn(VERBS, word)

/** Runs one command. Exit 0: computed, every check passes or is marginal. 1: a cell in error, or a check that fails or waits. 2: unreadable input. */
async function command(argv: readonly string[], program: string): Promise<number> {
  const [word, ...rest] = argv
  const asked = word === 'help' ? rest[0] : word
  if (isVerb(asked) && (word === 'help' || asksForHelp(rest))) return print(helpOf(VERBS[asked]))
  if (isVerb(word)) return COMMANDS[word](rest, program)
  if (word === 'help' || word === '--help' || word === '-h') return print(overview())
  if (word === 'version' || word === '--version') return print(`evenfield ${version}`)
  throw new InputError(word === undefined ? words.commandMissing : words.noCommand(word, Object.keys(VERBS)))
}

function print(text: string): number {
  process.stdout.write(`${text}\n`)
  return 0
}

/** What follows `--` is text, even where it looks like an option. */
const asksForHelp = (args: readonly string[]): boolean =>
  args.slice(0, args.includes('--') ? args.indexOf('--') : undefined).some((arg) => arg === '--help' || arg === '-h')

/**
 * Runs one command of the terminal, which prints to standard output and to standard error. `program` is the address of
 * this program, of which `frames` starts threads. Gives the exit code.
 */
export async function runCommand(argv: readonly string[], program: string): Promise<number> {
  try {
    return await command(argv, program)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    process.stderr.write(`evenfield: ${onOneLine(error.message)}\n`)
    return 2
  }
}
