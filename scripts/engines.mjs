import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { build } from './build.mjs'
import { install, installFromDebian, ROOT } from './install.mjs'
import { serve } from './serve.mjs'

// The main paths in the engines that the browser tests do not run: Firefox and WebKit.
//   npm run engines                       both, on a new build
//   npm run engines -- Firefox            one of them
//   npm run engines -- --shots FOLDER     a screenshot of each face in each, as a tablet and a phone
//   npm run engines -- --path 'save|link'  only the paths whose name matches this pattern
//   npm run engines -- --no-build         on dist as it is

/** A whole path, on a busy machine as well. */
const PATIENCE_MS = 240_000
const TABLET = [1024, 1366]

install()
const { firefox } = await import('./engines/firefox.mjs')
const { webkit } = await import('./engines/webkit.mjs')
const { Hand } = await import('./engines/hand.mjs')
const { PATHS } = await import('./engines/paths.mjs')
const { shoot } = await import('./engines/shots.mjs')

const asked = process.argv.slice(2)
const at = asked.indexOf('--shots')
const shots = at >= 0 ? asked.splice(at, 2)[1] : undefined
const only = asked.indexOf('--path')
const wanted = new RegExp(only >= 0 ? asked.splice(only, 2)[1] : '')
const isBuilt = asked.includes('--no-build') && existsSync(join(ROOT, 'dist/index.html'))
const names = asked.filter((one) => !one.startsWith('--')).map((one) => one.toLowerCase())
const engines = [firefox, webkit].filter(({ name }) => names.length === 0 || names.includes(name.toLowerCase()))

/** What an engine lacks here; installed from Debian's packages where that may be done. */
function lacking({ name, needs, packages }) {
  const lacks = () => needs().filter((path) => !existsSync(path))
  if (lacks().length > 0) installFromDebian(name, packages)
  return lacks()
}

const within = (work) => {
  let timer
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(new Error(`not done after ${PATIENCE_MS / 1000} s`)), PATIENCE_MS)
  })
  return Promise.race([work, late]).finally(() => clearTimeout(timer))
}

const counts = { passed: 0, failed: 0 }
function note(name, path, error) {
  counts[error ? 'failed' : 'passed']++
  console.log(`${error ? 'FAILED' : 'passed'}  ${name}  ${path}${error ? `: ${error.message}` : ''}`)
}

async function runAll(engine, site) {
  const lacks = lacking(engine)
  if (lacks.length > 0) {
    const error = new Error(
      `${lacks.join(', ')} is not here, and could not be installed (Debian: ${engine.packages.join(', ')})`,
    )
    for (const [path] of PATHS) note(engine.name, path, error)
    return
  }
  const window = await within(engine.open()).catch((error) => error)
  if (window instanceof Error) {
    for (const [path] of PATHS) note(engine.name, path, window)
    return
  }
  const name = `${engine.name} ${window.version}`
  const hand = new Hand(window)
  await window.resize(...TABLET)
  for (const [path, run] of PATHS.filter(([path]) => wanted.test(path))) {
    try {
      await within(run(hand, site))
      const problems = await hand.in('problems')
      if (problems.length > 0) throw new Error(`the page reports ${problems.join('; ')}`)
      note(name, path)
    } catch (error) {
      note(name, path, error)
      if (shots) await window.screenshot(join(shots, `${engine.name}-failed-${path.replace(/\W+/g, '-')}.png`))
    }
  }
  await window.close()
  if (shots) await shoot(engine, site, shots)
}

if (!isBuilt) await build({ root: ROOT })
if (shots) mkdirSync(shots, { recursive: true })
const site = await serve({ root: join(ROOT, 'dist'), base: '/some/where/' })
for (const engine of engines) await runAll(engine, site.url)
await site.close()
console.log(`\n${counts.passed} passed, ${counts.failed} failed`)
process.exitCode = counts.failed > 0 ? 1 : 0
