import { compute } from './compute.ts'
import { formula } from './formula.ts'
import { functions } from './functions.ts'
import { InputError, readArguments } from './input.ts'
import { onOneLine } from './report.ts'

const USAGE = `evenfield compute FILE.json [--set 'name=text']… [--json]
evenfield formula 'TEXT' [--set 'name=text']… [--json]
evenfield functions [--json]
  --set fills in a given; of a result it gives the value measured, which is reckoned on with`

/** Runs one command. Exit 0: computed, every check holds. 1: a cell in error or a check that does not hold. 2: unreadable input. */
function run(argv: readonly string[]): number {
  const [command, ...rest] = argv
  switch (command) {
    case 'compute':
      return compute(readArguments(rest, 'compute takes one file'))
    case 'formula':
      return formula(readArguments(rest, 'formula takes one text'))
    case 'functions':
      return functions(rest)
    case 'help':
    case '--help':
      process.stdout.write(`${USAGE}\n`)
      return 0
    default:
      throw new InputError(
        command === undefined
          ? `a command is missing; ${USAGE.replace(/\n\s*/g, '; ')}`
          : `there is no command «${command}»; there are compute, formula and functions`,
      )
  }
}

try {
  process.exitCode = run(process.argv.slice(2))
} catch (error) {
  if (!(error instanceof InputError)) throw error
  process.stderr.write(`evenfield: ${onOneLine(error.message)}\n`)
  process.exitCode = 2
}
