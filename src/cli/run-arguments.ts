import { type Arguments, readSet } from './input.ts'
import { onlyOperand, readOptions } from './options.ts'

export interface RunArguments extends Pick<Arguments, 'subject' | 'sets' | 'json'> {
  /** A file whose rows are planned instead of the table’s own. */
  readonly originals: string | undefined
  /** Where the plan is written. */
  readonly out: string | undefined
  /** Only what is not done. */
  readonly left: boolean
}

/** Reads `FILE.json --originals list.csv --out plan.csv [--left] [--set name=text]… [--json]`. Throws InputError. */
export function readRunArguments(args: readonly string[]): RunArguments {
  const { values, positionals } = readOptions('run', args, {
    originals: { type: 'string' },
    out: { type: 'string' },
    left: { type: 'boolean' },
    json: { type: 'boolean' },
    set: { type: 'string', multiple: true },
  })
  return {
    subject: onlyOperand('run', positionals),
    originals: values.originals,
    out: values.out,
    left: values.left ?? false,
    json: values.json ?? false,
    sets: (values.set ?? []).map(readSet),
  }
}
