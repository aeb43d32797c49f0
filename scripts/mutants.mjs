import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { ROOT } from './install.mjs'

/**
 * Mutation tests, file by file: `npm run mutants -- [FILE OR FOLDER…] [--minutes 30]`. Small files come first. What a file
 * gave is saved with the file's digest, so that a later run goes on where this one ended. `--list` prints what is known.
 * `--tests FILE` (may be repeated) runs these tests only, and all the files in one go, since to start takes as long as a small
 * file: a few minutes instead of many, and a share that is at least so high. `--again` runs what is known once more, for tests
 * that are new.
 */
const ROOMS = ['units', 'language', 'worksheet/engine', 'worksheet/compose', 'worksheet/advice']
const LEFT_OUT = /^src\/language\/(editor\/|syntax\/parser)|\/words\.ts$|\.d\.ts$/
const SAVED = join(ROOT, 'node_modules/.cache/mutants')
const SUMMARY = join(SAVED, 'summary.json')
const DETECTED = new Set(['Killed', 'Timeout'])
const MISSED = new Set(['Survived', 'NoCoverage'])

const { values, positionals } = parseArgs({
  options: {
    minutes: { type: 'string' },
    list: { type: 'boolean' },
    again: { type: 'boolean', default: false },
    tests: { type: 'string', multiple: true, default: [] },
  },
  allowPositionals: true,
})
mkdirSync(SAVED, { recursive: true })
const summary = existsSync(SUMMARY) ? JSON.parse(readFileSync(SUMMARY, 'utf8')) : {}
const ends = Date.now() + Number(values.minutes ?? Number.POSITIVE_INFINITY) * 60_000

if (!values.list)
  for (const files of inGoes(
    filesToMutate().filter((file) => values.again || summary[file]?.digest !== digestOf(file)),
  )) {
    if (Date.now() >= ends) break
    const results = mutate(files)
    if (!results) {
      console.log(`${files.join(', ')}: not run to its end`)
      continue
    }
    Object.assign(summary, results)
    writeFileSync(SUMMARY, `${JSON.stringify(summary, null, 2)}\n`)
    for (const file of files) say(file)
  }
else for (const file of Object.keys(summary).sort()) say(file)

/** The files of the rooms, or those below the paths named, the smallest first. */
function filesToMutate() {
  const all = ROOMS.flatMap((room) =>
    readdirSync(join(ROOT, 'src', room), { recursive: true }).map((name) => `src/${room}/${name}`),
  )
  return all
    .filter((file) => file.endsWith('.ts') && !LEFT_OUT.test(file))
    .filter((file) => positionals.length === 0 || positionals.some((path) => file.startsWith(path.replace(/\/$/, ''))))
    .sort((one, other) => statSync(join(ROOT, one)).size - statSync(join(ROOT, other)).size)
}

function digestOf(file) {
  return createHash('sha256')
    .update(readFileSync(join(ROOT, file)))
    .digest('hex')
    .slice(0, 16)
}

/** Files that share the tests named are mutated in one go; else each by itself, against the tests of its room. */
function inGoes(files) {
  if (values.tests.length === 0) return files.map((file) => [file])
  return files.length > 0 ? [files] : []
}

/** Mutates files of one room against its tests, or those named; undefined where the run was stopped. */
function mutate(files) {
  const room = ROOMS.find((one) => files[0].startsWith(`src/${one}/`))
  // A file may be edited while the copy of it is mutated.
  const digests = Object.fromEntries(files.map((file) => [file, digestOf(file)]))
  const report = join(SAVED, 'report.json')
  writeFileSync(report, '{}')
  spawnSync('npx', ['stryker', 'run', '--mutate', files.join(',')], {
    cwd: ROOT,
    env: {
      ...process.env,
      MUTANTS: room,
      MUTANTS_FILE: files[0].replaceAll('/', '-'),
      MUTANTS_TESTS: values.tests.join(','),
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const read = JSON.parse(readFileSync(report, 'utf8')).files
  if (!read) return undefined
  return Object.fromEntries(files.map((file) => [file, resultOf(digests[file], read[file]?.mutants ?? [])]))
}

function resultOf(digest, mutants) {
  const count = (statuses) => mutants.filter(({ status }) => statuses.has(status)).length
  return {
    digest,
    detected: count(DETECTED),
    missed: count(MISSED),
    survivors: mutants
      .filter(({ status }) => MISSED.has(status))
      .map(({ location, mutatorName, replacement, status }) => ({
        line: location.start.line,
        column: location.start.column,
        what: `${mutatorName}: ${String(replacement).replaceAll(/\s+/g, ' ').slice(0, 100)}`,
        ...(status === 'NoCoverage' ? { covered: false } : {}),
      })),
  }
}

function say(file) {
  const { detected, missed, survivors } = summary[file]
  const share = detected + missed === 0 ? '–' : `${((100 * detected) / (detected + missed)).toFixed(0)} %`
  console.log(`${share.padStart(5)}  ${String(missed).padStart(3)} of ${detected + missed} not noticed  ${file}`)
  for (const { line, column, what, covered } of survivors)
    console.log(`         ${file}:${line}:${column}  ${what}${covered === false ? ' (no test comes here)' : ''}`)
}
