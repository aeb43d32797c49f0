import { isMainThread } from 'node:worker_threads'
import { compute } from './compute.ts'
import { formula } from './formula.ts'
import { functions } from './functions.ts'
import { InputError, readArguments } from './input.ts'
import { onOneLine } from './report.ts'
import { run } from './run.ts'
import { readRunArguments } from './run-arguments.ts'

const USAGE = `evenfield compute FILE.json [--set 'name=text']… [--simulate N --seed S] [--json]
evenfield formula 'TEXT' [--set 'name=text']… [--json]
evenfield functions [WORD] [--json]
evenfield frame FILE --areas AREAS.json [--json]
evenfield frames FOLDER --sheet SHEET.json --out report.csv [--frame NAME]
evenfield run FILE.json [--originals list.csv] [--out plan.csv] [--left] [--set 'name=text']… [--json]
  --originals plans the rows of this file instead of the table’s own, matched by headings; --left plans only what is not done
  --set fills in a given; of a result it gives the value measured, which is reckoned on with`

/** Runs one command. Exit 0: computed, every check passes or is marginal. 1: a cell in error, or a check that fails or waits. 2: unreadable input. */
async function command(argv: readonly string[]): Promise<number> {
  const [word, ...rest] = argv
  switch (word) {
    case 'compute':
      return compute(readArguments(rest, 'compute takes one file', true))
    case 'formula':
      return formula(readArguments(rest, 'formula takes one text'))
    case 'functions':
      return functions(rest)
    case 'frame': {
      // What decodes pictures is loaded only where one is measured.
      const { frame } = await import('./frame.ts')
      return frame(rest)
    }
    case 'frames': {
      const { frames } = await import('./frames.ts')
      return frames(rest, import.meta.url)
    }
    case 'run':
      return run(readRunArguments(rest))
    case 'help':
    case '--help':
      process.stdout.write(`${USAGE}\n`)
      return 0
    default:
      throw new InputError(
        word === undefined
          ? `a command is missing; ${USAGE.replace(/\n\s*/g, '; ')}`
          : `there is no command «${word}»; there are compute, formula, functions, frame, frames and run`,
      )
  }
}

// A thread of `frames` is this program again, so that it is one file wherever it runs.
const { isFrameWorker, serveFrames } = isMainThread ? {} : await import('./frame-pool.ts')

try {
  if (isFrameWorker?.()) serveFrames?.()
  else process.exitCode = await command(process.argv.slice(2))
} catch (error) {
  if (!(error instanceof InputError)) throw error
  process.stderr.write(`evenfield: ${onOneLine(error.message)}\n`)
  process.exitCode = 2
}
