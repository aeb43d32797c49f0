import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { version } from '../package.json'
import { currentJobs, RELEASED, RELEASES_FILE, releasedFile } from '../src/cli/released-jobs.ts'

// The jobs of a release are never removed: links made with it go on to open. Those of the version in package.json are
// not released yet and follow the jobs as they are.
mkdirSync(RELEASED, { recursive: true })
const list = fileURLToPath(new URL(RELEASES_FILE, RELEASED))
// A list that cannot be read stops here: without it no job would be known as released, and all would be removed.
const releases: Record<string, readonly string[]> = existsSync(list) ? JSON.parse(readFileSync(list, 'utf8')) : {}
const older = new Set(Object.entries(releases).flatMap(([release, files]) => (release === version ? [] : files)))
const jobs = currentJobs()
const current = jobs.map(({ job, digest }) => releasedFile(job, digest))
for (const file of readdirSync(RELEASED))
  if (file !== RELEASES_FILE && !older.has(file) && !current.includes(file)) rmSync(new URL(file, RELEASED))
for (const { job, digest, worksheet } of jobs)
  writeFileSync(new URL(releasedFile(job, digest), RELEASED), `${JSON.stringify(worksheet)}\n`)
writeFileSync(list, `${JSON.stringify({ ...releases, [version]: current }, null, 2)}\n`)
process.stdout.write(`${current.length} jobs in ${fileURLToPath(RELEASED)}\n`)
