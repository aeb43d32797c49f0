import { readdirSync, readFileSync } from 'node:fs'
import { type Part, type PartLibrary, partLibrary } from '../worksheet/compose/part-library.ts'

const FOLDER = new URL('../../templates/parts/', import.meta.url)

const json = (path: string): never => JSON.parse(readFileSync(new URL(path, FOLDER), 'utf8')) as never

let read: PartLibrary | undefined

/** The parts as their files have them, read once. */
export function readParts(): PartLibrary {
  if (read) return read
  const parts: Record<string, Omit<Part, 'id'>> = {}
  for (const role of readdirSync(FOLDER, { withFileTypes: true }))
    if (role.isDirectory())
      for (const file of readdirSync(new URL(`${role.name}/`, FOLDER)).sort())
        parts[file.replace(/\.json$/, '')] = json(`${role.name}/${file}`)
  read = partLibrary(json('roles.json'), json('names.json'), parts)
  return read
}
