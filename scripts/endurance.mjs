import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { install, ROOT } from './install.mjs'

/**
 * Long runs of the tests that look for what is lost, written over or brought down. Each part runs in blocks, each block
 * with its own seed; what is done is written down, so that a run that was stopped goes on where it was.
 *
 *   npm run endurance                        all parts, to their whole length
 *   npm run endurance -- hostile edits       some of them
 *   npm run endurance -- --blocks 3          at most three blocks of each
 *   npm run endurance -- --seed 7            other cases: begins anew
 *   npm run endurance -- --table             only the table of what was done
 */
const PARTS = {
  kills: {
    about: 'kills of Chromium in mid-edit',
    whole: 1_000,
    block: 20,
    env: (n) => ({ KILLS: n }),
    args: ['--project=browser', 'tests/browser/killed.test.ts'],
    counted: 'kills',
  },
  hostile: {
    about: 'hostile files, links, backups and kits',
    whole: 1_000_000,
    block: 10_000,
    env: (n, seed) => ({ HOSTILE_CASES: n, HOSTILE_SEED: seed }),
    args: ['--project=unit', 'tests/hostile/hostile.test.ts', '-t', 'made up'],
    counted: 'cases',
  },
  edits: {
    about: 'sequences of edits against a fresh computation',
    whole: 100_000,
    block: 2_000,
    env: (n, seed) => ({ EDIT_SEQUENCES: n, EDIT_SEED: seed }),
    args: ['--project=unit', 'tests/endurance/edits.test.ts'],
    counted: 'sequences',
  },
  sheets: {
    about: 'sheets of jobs and parts, pairs, triples and handfuls, in every order',
    whole: 5_000,
    block: 200,
    env: (n, seed) => ({ SHEETS: n, SHEETS_SEED: seed }),
    args: ['--project=unit', 'tests/endurance/sheets.test.ts'],
    counted: 'sheets',
  },
  advice: {
    about: 'jobs with figures of their own, every suggestion typed in',
    whole: 5_000,
    block: 500,
    env: (n, seed) => ({ ADVICE_JOBS: n, ADVICE_SEED: seed }),
    args: ['--project=unit', 'tests/worksheet/advice/plans.test.ts', '-t', 'plans for'],
    counted: 'jobs',
  },
  photographs: {
    about: 'checks against a photograph traced without the sheet',
    whole: 20_000,
    block: 1_000,
    env: (n, seed) => ({ PHOTOGRAPHS: n, PHOTOGRAPHS_SEED: seed }),
    args: ['--project=unit', 'tests/model'],
    counted: 'photographs',
  },
  store: {
    about: 'simulated browsers with a failing database',
    whole: 20_000,
    block: 500,
    env: (n, seed) => ({ STORE_RUNS: n, STORE_SEED: seed }),
    args: ['--project=unit', 'tests/storage/simulated/model.test.ts'],
    counted: 'runs',
  },
}

const FOLDER = join(ROOT, 'node_modules/.cache/endurance')
const STATE = join(FOLDER, 'state.json')

const asked = process.argv.slice(2)
const option = (name) => {
  const at = asked.indexOf(`--${name}`)
  return at < 0 ? undefined : Number(asked.splice(at, 2)[1])
}
const seed = option('seed')
const most = option('blocks') ?? Number.POSITIVE_INFINITY
const onlyTable = asked.includes('--table')
const chosen = asked.filter((one) => Object.hasOwn(PARTS, one))

install()
mkdirSync(FOLDER, { recursive: true })
const saved = () => (existsSync(STATE) ? JSON.parse(readFileSync(STATE, 'utf8')) : { seed: 1, parts: {} })
let state = saved()
if (seed !== undefined && seed !== state.seed) {
  state = { seed, parts: {} }
  rmSync(STATE, { force: true })
}

/** Runs one block and adds what its test reports; false where it failed. */
function run(name, size) {
  const { block, env, args } = PARTS[name]
  state.parts[name] ??= { done: 0, blocks: 0, failed: [], figures: {} }
  const part = state.parts[name]
  const blockSeed = state.seed * 100_000 + part.blocks
  const reported = join(FOLDER, `report-${name}.jsonl`)
  rmSync(reported, { force: true })
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, 'node_modules/vitest/vitest.mjs'), 'run', '--maxWorkers=1', ...args],
    {
      cwd: ROOT,
      encoding: 'utf8',
      maxBuffer: 1e9,
      env: { ...process.env, ...textOf(env(Math.min(size, block), blockSeed)), ENDURANCE_REPORT: reported },
    },
  )
  part.blocks++
  const lines = existsSync(reported) ? readFileSync(reported, 'utf8').trim().split('\n').filter(Boolean) : []
  for (const line of lines) add(part, JSON.parse(line), PARTS[name].counted)
  if (status !== 0) {
    part.failed.push(blockSeed)
    writeFileSync(join(FOLDER, `failed-${name}-${blockSeed}.txt`), `${stdout}\n${stderr}`)
  }
  // Another run of this script may work on another part meanwhile: only this part is written.
  state = { seed: state.seed, parts: { ...saved().parts, [name]: part } }
  writeFileSync(STATE, JSON.stringify(state, undefined, 2))
  return status === 0
}

const textOf = (values) => Object.fromEntries(Object.entries(values).map(([key, value]) => [key, String(value)]))

function add(part, { part: _, seed: __, ...figures }, counted) {
  part.done += figures[counted] ?? 0
  for (const [key, value] of Object.entries(figures)) {
    const before = part.figures[key] ?? 0
    part.figures[key] = /slowest|longest/.test(key) ? Math.max(before, value) : before + value
  }
}

function table() {
  console.log('| part | done | of | failed blocks | figures |\n|---|---|---|---|---|')
  for (const [name, { about, whole }] of Object.entries(PARTS)) {
    const { done = 0, failed = [], figures = {} } = state.parts[name] ?? {}
    const shown = Object.entries(figures).map(([key, value]) => `${key.replaceAll('_', ' ')} ${value}`)
    console.log(`| ${name}: ${about} | ${done} | ${whole} | ${failed.join(' ') || 'none'} | ${shown.join(', ')} |`)
  }
}

if (!onlyTable)
  for (const name of chosen.length > 0 ? chosen : Object.keys(PARTS)) {
    const { whole } = PARTS[name]
    for (let block = 0; block < most; block++) {
      const left = whole - (state.parts[name]?.done ?? 0)
      if (left <= 0) break
      const passed = run(name, left)
      console.log(`${name}: ${state.parts[name].done} of ${whole}${passed ? '' : ', a block failed'}`)
      // A part that fails from the start would otherwise go on for ever.
      if (!passed && state.parts[name].failed.length > 20) break
    }
  }
table()
process.exitCode = Object.values(state.parts).some(({ failed }) => failed.length > 0) ? 1 : 0
