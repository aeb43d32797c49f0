import { spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { CHROMIUM } from './chromium.mjs'
import { install, installFromDebian, ROOT } from './install.mjs'

// A log is easier to read without colour codes.
if (!process.stdout.isTTY && !process.env.FORCE_COLOR) process.env.NO_COLOR = '1'

const counts = { passed: 0, failed: 0, skipped: 0 }

const run = (command, args) => spawnSync(command, args, { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] })

/** Runs a script to its end. Gives what it printed, and whether it succeeded. */
const output = (path, args) =>
  new Promise((settle) => {
    const started = spawn(process.execPath, [join(ROOT, path), ...args], {
      cwd: ROOT,
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    const printed = []
    started.stdout.on('data', (part) => printed.push(part))
    started.stderr.on('data', (part) => printed.push(part))
    started.on('error', (error) => settle({ printed: `${error}\n`, succeeded: false }))
    started.on('close', (status) => settle({ printed: Buffer.concat(printed).toString(), succeeded: status === 0 }))
  })

/** Checks by scripts, all at the same time: each keeps little more than one core busy. Prints them one after the other. */
async function check(scripts) {
  const running = Object.entries(scripts).map(([name, [path, ...args]]) => [name, output(path, args)])
  for (const [name, ends] of running) {
    const { printed, succeeded } = await ends
    console.log(`\n${name}`)
    process.stdout.write(printed)
    counts[succeeded ? 'passed' : 'failed']++
    console.log(succeeded ? '  passed' : '  FAILED')
  }
}

/** Chromium for the browser tests: what is there, or Debian's where we may install it. */
function findChromium() {
  if (!existsSync(CHROMIUM) && !process.env.CHROMIUM) installFromDebian('Chromium for the browser tests', ['chromium'])
  return existsSync(CHROMIUM)
}

/** Runs the tests and adds their results; a run that broke counts as one failure more. */
function vitest(args) {
  console.log('\nTests')
  const folder = mkdtempSync(join(tmpdir(), 'evenfield-test-'))
  const report = join(folder, 'report.json')
  const { status } = run(process.execPath, [
    join(ROOT, 'node_modules/vitest/vitest.mjs'),
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...args,
  ])
  let failed = 0
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
      readFileSync(report, 'utf8'),
    )
    // A file that could not be run has failed without a test in it to say so.
    const broken = testResults.filter(
      (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
    )
    failed = numFailedTests + broken.length
    counts.passed += numPassedTests
    counts.skipped += numPendingTests + numTodoTests
  } catch {
    console.log('The test run left no report.')
  }
  counts.failed += status === 0 ? failed : Math.max(1, failed)
  rmSync(folder, { recursive: true, force: true })
}

install()
await check({
  Types: ['node_modules/typescript/bin/tsc', '--noEmit'],
  'Lint and format': ['node_modules/@biomejs/biome/bin/biome', 'check', '.', '--error-on-warnings'],
  'Unused code': ['node_modules/knip/bin/knip.js'],
  Build: ['scripts/build.mjs'],
})

const asked = process.argv.slice(2)
if (findChromium()) vitest(asked)
else {
  console.log(`\nThere is no Chromium at ${CHROMIUM}, and it could not be installed. Put one there, or name`)
  console.log('another in CHROMIUM; the browser tests count as failed without it.')
  counts.failed++
  vitest(['--project=unit', ...asked])
}

const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : ''
console.log(`\n${counts.passed} passed, ${counts.failed} failed${skipped}`)
process.exitCode = counts.failed > 0 ? 1 : 0
