import { version } from '../../package.json'
import { composeSheet } from './compose.ts'
import { compute } from './compute.ts'
import { formula } from './formula.ts'
import { functions } from './functions.ts'
import { helpOf, overview, VERBS } from './help.ts'
import { InputError, readArguments } from './input.ts'
import { link } from './link.ts'
import { onOneLine } from './report.ts'
import { run } from './run.ts'
import { readRunArguments } from './run-arguments.ts'
import * as words from './words.ts'

/** Runs one command. Exit 0: computed, every check passes or is marginal. 1: a cell in error, or a check that fails or waits. 2: unreadable input. */
async function command(argv: readonly string[], program: string): Promise<number> {
  const [word, ...rest] = argv
  const asked = word === 'help' ? rest[0] : word
  const verb = asked !== undefined && Object.hasOwn(VERBS, asked) ? VERBS[asked] : undefined
  if (verb && (word === 'help' || asksForHelp(rest))) return print(helpOf(verb))
  switch (word) {
    case 'compute':
      return compute(readArguments(rest, words.takes.compute, true))
    case 'compose':
      return composeSheet(rest)
    case 'formula':
      return formula(readArguments(rest, words.takes.formula))
    case 'functions':
      return functions(rest)
    case 'link':
      return link(rest)
    case 'frame': {
      // What decodes pictures is loaded only where one is measured.
      const { frame } = await import('./frame.ts')
      return frame(rest)
    }
    case 'frames': {
      const { frames } = await import('./frames.ts')
      return frames(rest, program)
    }
    case 'run':
      return run(readRunArguments(rest))
    case 'help':
    case '--help':
    case '-h':
      return print(overview())
    case 'version':
    case '--version':
      return print(`evenfield ${version}`)
    default:
      throw new InputError(word === undefined ? words.commandMissing : words.noCommand(word, Object.keys(VERBS)))
  }
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
