import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { composeJob, isJob, type Job } from '../worksheet/compose/job.ts'
import { type Part, type PartFiles, type PartLibrary, partLibrary } from '../worksheet/compose/part-library.ts'
import { readData, readDocument, type Worksheet } from '../worksheet/index.ts'
import * as words from './words.ts'

/** The folder of the jobs: that of the project this program is part of, from its sources or bundled. */
export function templatesFolder(): URL {
  for (let folder = new URL('.', import.meta.url); ; folder = new URL('..', folder)) {
    const templates = new URL('templates/', folder)
    if (existsSync(new URL('parts/roles.json', templates))) return templates
    if (folder.pathname === new URL('..', folder).pathname) throw new Error(words.partsMissing)
  }
}

const JOBS = templatesFolder()
const FOLDER = new URL('parts/', JOBS)

const json = (path: string): never => JSON.parse(readFileSync(new URL(path, FOLDER), 'utf8')) as never

/** Roles, names and parts as their files have them. */
export function readPartFiles(): PartFiles {
  const parts: Record<string, Omit<Part, 'id'>> = {}
  for (const role of readdirSync(FOLDER, { withFileTypes: true }))
    if (role.isDirectory())
      for (const file of readdirSync(new URL(`${role.name}/`, FOLDER)).sort())
        parts[file.replace(/\.json$/, '')] = json(`${role.name}/${file}`)
  return { roles: json('roles.json'), names: json('names.json'), parts }
}

let read: PartLibrary | undefined

/** The parts put together, read once. */
export function readParts(): PartLibrary {
  if (!read) {
    const { roles, names, parts } = readPartFiles()
    read = partLibrary(roles, names, parts)
  }
  return read
}

/** The names of the jobs there are. */
export const jobNames = (): readonly string[] =>
  readdirSync(JOBS).flatMap((file) => (file.endsWith('.json') ? [file.replace(/\.json$/, '')] : []))

/** A job by its name; undefined where there is none. */
export const readJob = (name: string): Job | undefined =>
  jobNames().includes(name) ? jobIn(readFileSync(new URL(`${name}.json`, JOBS), 'utf8')) : undefined

/** Reads a worksheet, or a job, which is composed. Throws DocumentError. */
export function readSheetOrJob(text: string): Worksheet {
  const data = jobIn(text)
  return data ? readData(composeJob(readParts(), data)) : readDocument(text)
}

/** The job in a text, where there is one. */
function jobIn(text: string): Job | undefined {
  if (!text.includes('evenfield-job')) return undefined
  try {
    const data: unknown = JSON.parse(text)
    return isJob(data) ? data : undefined
  } catch {
    // Not JSON: reading it as a worksheet says where it goes wrong.
    return undefined
  }
}
