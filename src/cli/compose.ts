import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { ChosenPart } from '../worksheet/compose/choose-parts.ts'
import { compose } from '../worksheet/compose/compose.ts'
import { partsOfJob } from '../worksheet/compose/job.ts'
import { writeDocument } from '../worksheet/index.ts'
import { InputError, readSet, whyUnread } from './input.ts'
import { jobNames, readJob, readParts } from './part-files.ts'
import { withSets } from './read-worksheet.ts'
import { printLines } from './report.ts'
import * as words from './words.ts'

/**
 * `compose NAME… [--set 'name=text']… --out FILE.json`: one sheet from jobs and parts, the same in any order they are
 * named. A given takes its usual value, else the example of the part that owns it; readings are left empty.
 */
export function composeSheet(args: readonly string[]): number {
  const { names, sets, out } = readComposeArguments(args)
  const jobs = names.map((name) => ({ name, job: readJob(name) }))
  const parts = jobs.flatMap(({ name, job }): ChosenPart[] => (job ? partsOfJob(job) : [knownPart(name)]))
  const titles = [...new Set(jobs.map(({ name, job }) => job?.title ?? readParts().parts.get(name)?.offer ?? name))]
  const { worksheet, replaced } = compose(readParts(), { title: titles.sort().join('; ').slice(0, 500), parts })
  const text = writeDocument(withSets(worksheet, sets, words.theSheet))
  try {
    writeFileSync(out, text)
  } catch (error) {
    throw new InputError(words.inFile(out, whyUnread(error)))
  }
  printLines([`${out}: ${worksheet.cells.length} cells`, ...replaced.map(({ part, by }) => words.replaced(part, by))])
  return 0
}

function knownPart(name: string): ChosenPart {
  const { parts } = readParts()
  if (parts.has(name)) return { part: name, by: 'hand' }
  throw new InputError(words.noJobOrPart(name, jobNames(), [...parts.keys()].sort()))
}

interface ComposeArguments {
  readonly names: readonly string[]
  readonly sets: readonly { readonly name: string; readonly text: string }[]
  readonly out: string
}

function readComposeArguments(args: readonly string[]): ComposeArguments {
  const { values, positionals } = parsed(args)
  if (positionals.length === 0) throw new InputError(words.expected(words.takes.compose, 'none'))
  if (values.out === undefined) throw new InputError(words.composeWrites)
  return { names: positionals, sets: (values.set ?? []).map(readSet), out: values.out }
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: { set: { type: 'string', multiple: true }, out: { type: 'string' } },
      allowPositionals: true,
    })
  } catch (error) {
    throw new InputError((error as Error).message)
  }
}
