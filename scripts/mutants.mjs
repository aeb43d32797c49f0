import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { ROOT } from './install.mjs'

/**
 * Mutation tests, file by file: `npm run mutants -- [FILE OR FOLDER…] [--minutes 30]`. Small files come first. What a file
 * gave is saved with the file's digest, so that a later run goes on where this one ended. `--list` prints what is known.
 * `--tests FILE` (may be repeated) runs these tests only: a few minutes instead of many, and a share that is at least so high.
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
    tests: { type: 'string', multiple: true, default: [] },
  },
  allowPositionals: true,
})
mkdirSync(SAVED, { recursive: true })
const summary = existsSync(SUMMARY) ? JSON.parse(readFileSync(SUMMARY, 'utf8')) : {}
const ends = Date.now() + Number(values.minutes ?? Number.POSITIVE_INFINITY) * 60_000

if (!values.list)
  for (const file of filesToMutate()) {
    if (Date.now() >= ends) break
    if (summary[file]?.digest === digestOf(file)) continue
    const result = mutate(file)
    if (!result) {
      console.log(`${file}: not run to its end`)
      continue
    }
    summary[file] = result
    writeFileSync(SUMMARY, `${JSON.stringify(summary, null, 2)}\n`)
    say(file)
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

/** Mutates one file against its room's tests; undefined where the run was stopped. */
function mutate(file) {
  const room = ROOMS.find((one) => file.startsWith(`src/${one}/`))
  const report = join(SAVED, 'report.json')
  writeFileSync(report, '{}')
  spawnSync('npx', ['stryker', 'run', '--mutate', file], {
    cwd: ROOT,
    env: {
      ...process.env,
      MUTANTS: room,
      MUTANTS_FILE: file.replaceAll('/', '-'),
      MUTANTS_TESTS: values.tests.join(','),
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const mutants = JSON.parse(readFileSync(report, 'utf8')).files?.[file]?.mutants
  if (!mutants) return undefined
  const count = (statuses) => mutants.filter(({ status }) => statuses.has(status)).length
  return {
    digest: digestOf(file),
    detected: count(DETECTED),
    missed: count(MISSED),
    survivors: mutants
      .filter(({ status }) => MISSED.has(status))
      .map(({ location, mutatorName, replacement, status }) => ({
        line: location.start.line,
        what: `${mutatorName}: ${String(replacement).replaceAll(/\s+/g, ' ').slice(0, 100)}`,
        ...(status === 'NoCoverage' ? { covered: false } : {}),
      })),
  }
}

function say(file) {
  const { detected, missed, survivors } = summary[file]
  const share = detected + missed === 0 ? '–' : `${((100 * detected) / (detected + missed)).toFixed(0)} %`
  console.log(`${share.padStart(5)}  ${String(missed).padStart(3)} of ${detected + missed} not noticed  ${file}`)
  for (const { line, what, covered } of survivors)
    console.log(`         ${file}:${line}  ${what}${covered === false ? ' (no test comes here)' : ''}`)
}
