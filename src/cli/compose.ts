import { nearest } from '../units/index.ts'
import type { ChosenPart } from '../worksheet/compose/choose-parts.ts'
import { compose, type SetUp } from '../worksheet/compose/compose.ts'
import { partsOfJob } from '../worksheet/compose/job.ts'
import { writeDocument } from '../worksheet/index.ts'
import { type NamedText, readSet } from './input.ts'
import { InputError } from './input-error.ts'
import { readOptions } from './options.ts'
import { writeOut } from './output-file.ts'
import { jobNames, readJob, readParts } from './part-files.ts'
import { withSets } from './read-worksheet.ts'
import { printLines } from './report.ts'
import * as words from './words.ts'

/**
 * `compose NAME… [--set-up NAME[=PART,…]]… [--set 'name=text']… --out FILE.json`: one sheet from jobs and parts, the same in any order they are
 * named. A given takes its usual value, else the example of the part that owns it; readings are left empty.
 */
export function composeSheet(args: readonly string[]): number {
  const { names, setUps, sets, out } = readComposeArguments(args)
  const jobs = names.map((name) => ({ name, job: readJob(name) }))
  const parts = jobs.flatMap(({ name, job }): ChosenPart[] => (job ? partsOfJob(job) : [knownPart(name)]))
  const titles = [...new Set(jobs.map(({ name, job }) => job?.title ?? readParts().parts.get(name)?.offer ?? name))]
  const { worksheet, replaced } = compose(readParts(), { title: titles.sort().join('; ').slice(0, 500), parts, setUps })
  writeOut(out, writeDocument(withSets(worksheet, sets, words.theSheet)))
  printLines([words.cells(out, worksheet.cells.length), ...replaced.map(({ part, by }) => words.replaced(part, by))])
  return 0
}

function knownPart(name: string): ChosenPart {
  const { parts } = readParts()
  if (parts.has(name)) return { part: name, by: 'hand' }
  const jobs = jobNames()
  const ids = [...parts.keys()].sort()
  throw new InputError(words.noJobOrPart(name, nearest(name, [...jobs, ...ids]), jobs, ids))
}

/** `raking`, or `raking=one-frame,pair`: a later set-up, with parts of its own. */
function readSetUp(text: string): SetUp {
  const [, name = '', list = ''] = /^([^=]*)=?(.*)$/.exec(text) ?? []
  const prefix = name.trim()
  const { setUps, parts, roles } = readParts()
  const offered = setUps.find((one) => one.prefix === prefix)
  if (!offered && !/^[a-z][a-z0-9_]*$/.test(prefix))
    throw new InputError(
      words.noSetUp(
        prefix,
        setUps.map((one) => one.prefix),
      ),
    )
  const own = list.split(',').flatMap((part) => part.trim() || [])
  const allowed = [...parts.values()].flatMap(({ id, role }) =>
    roles.some((one) => one.role === role && one.in_set_up) ? [id] : [],
  )
  const unknown = own.find((part) => !allowed.includes(part))
  if (unknown !== undefined) throw new InputError(words.noPartOfSetUp(unknown, prefix, allowed.sort()))
  const title = offered?.title ?? `${prefix.charAt(0).toUpperCase()}${prefix.slice(1).replaceAll('_', ' ')}`
  const roleOf = (part: string): string | undefined => parts.get(part)?.role
  const decided = new Set(own.map(roleOf))
  const usual = (offered?.parts ?? []).filter((part) => !decided.has(roleOf(part)))
  return { prefix, title, parts: [...usual, ...own].map((part) => ({ part, by: 'hand' })) }
}

interface ComposeArguments {
  readonly names: readonly string[]
  readonly setUps: readonly SetUp[]
  readonly sets: readonly NamedText[]
  readonly out: string
}

function readComposeArguments(args: readonly string[]): ComposeArguments {
  const { values, positionals } = readOptions('compose', args, {
    set: { type: 'string', multiple: true },
    'set-up': { type: 'string', multiple: true },
    out: { type: 'string' },
  })
  if (positionals.length === 0) throw new InputError(words.expected(words.takes.compose, 'none'))
  if (values.out === undefined) throw new InputError(words.composeWrites)
  const setUps = (values['set-up'] ?? []).map(readSetUp)
  const prefixes = setUps.map(({ prefix }) => prefix)
  const twice = prefixes.find((prefix, at) => prefixes.indexOf(prefix) !== at)
  if (twice !== undefined) throw new InputError(words.setUpTwice(twice))
  return { names: positionals, setUps, sets: (values.set ?? []).map(readSet), out: values.out }
}
