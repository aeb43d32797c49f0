import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import type { BaseSheet, FindBase } from '../storage/exchange/sheet-on-bases.ts'
import type { Worksheet } from '../worksheet/index.ts'
import { readSheetOrJob, templatesFolder } from './part-files.ts'

/** The worksheets of the jobs of every release, each in a file of its own: links refer to them by digest. */
export const RELEASED = new URL('released/', templatesFolder())

/** Which of the files belong to which release. */
export const RELEASES_FILE = 'releases.json'

const FILE = /^([a-z][a-z0-9-]*)\.([\w-]{10})\.json$/

const sorted = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, one]) => [key, sorted(one)]),
  )
}

/** The digest of a worksheet, whatever the order of its keys: 60 bits of SHA-256. */
export const digestOf = (worksheet: Worksheet): string =>
  createHash('sha256')
    .update(JSON.stringify(sorted(worksheet)))
    .digest('base64url')
    .slice(0, 10)

/** The name of the file of a released worksheet. */
export const releasedFile = (job: string, digest: string): string => `${job}.${digest}.json`

const files = (): readonly string[] => (existsSync(RELEASED) ? readdirSync(RELEASED) : [])

const read = (file: string): Worksheet => JSON.parse(readFileSync(new URL(file, RELEASED), 'utf8'))

/** Every job of every release. */
export const releasedJobs = (): readonly BaseSheet[] =>
  files().flatMap((file) => {
    const [, job, digest] = FILE.exec(file) ?? []
    return job && digest ? [{ job, digest, worksheet: read(file) }] : []
  })

/** The worksheet of a job as it was released with a digest. */
export const findReleased: FindBase = async (job, digest) => {
  const file = releasedFile(job, digest)
  return FILE.test(file) && files().includes(file) ? read(file) : undefined
}

/** The jobs there are now, as a sheet starts from them. */
export const currentJobs = (): readonly BaseSheet[] =>
  readdirSync(templatesFolder())
    .filter((file) => file.endsWith('.json'))
    .map((file) => {
      const { shelf: _, ...worksheet } = readSheetOrJob(readFileSync(new URL(file, templatesFolder()), 'utf8'))
      return { job: file.replace(/\.json$/, ''), digest: digestOf(worksheet), worksheet }
    })
