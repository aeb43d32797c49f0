import { parseArgs } from 'node:util'
import { type Arguments, InputError, readSet } from './input.ts'
import * as words from './words.ts'

export interface RunArguments extends Arguments {
  /** A file whose rows are planned instead of the table’s own. */
  readonly originals: string | undefined
  /** Where the plan is written. */
  readonly out: string | undefined
  /** Only what is not done. */
  readonly left: boolean
}

/** Reads `FILE.json --originals list.csv --out plan.csv [--left] [--set name=text]… [--json]`. Throws InputError. */
export function readRunArguments(args: readonly string[]): RunArguments {
  const { values, positionals } = parsed(args)
  if (positionals.length !== 1) throw new InputError(words.expected(words.takes.run, positionals.length))
  return {
    subject: positionals[0] as string,
    originals: values.originals,
    out: values.out,
    left: values.left ?? false,
    json: values.json ?? false,
    sets: (values.set ?? []).map(readSet),
    asMine: false,
    targets: [],
    advice: false,
  }
}

interface Parsed {
  readonly values: {
    readonly originals?: string
    readonly out?: string
    readonly left?: boolean
    readonly json?: boolean
    readonly set?: string[]
  }
  readonly positionals: readonly string[]
}

function parsed(args: readonly string[]): Parsed {
  try {
    return parseArgs({
      args: [...args],
      options: {
        originals: { type: 'string' },
        out: { type: 'string' },
        left: { type: 'boolean' },
        json: { type: 'boolean' },
        set: { type: 'string', multiple: true },
      },
      allowPositionals: true,
    })
  } catch (error) {
    throw new InputError(`run: ${(error as Error).message.split('. ')[0]}`)
  }
}
