import { readdirSync, readFileSync } from 'node:fs'
import { readDocument, type Worksheet } from '../../../src/worksheet/index.ts'

const FOLDER = new URL('examples/version-1/', import.meta.url)

/** The jobs of version 1, whose sheets open for ever. */
export const JOBS_OF_VERSION_1: readonly string[] = readdirSync(FOLDER)
  .map((file) => file.replace(/\.json$/, ''))
  .filter((name) => name !== 'example')
  .sort()

/** The text of a sheet as version 1 saved it. */
export const textOfVersion1 = (job: string): string => readFileSync(new URL(`${job}.json`, FOLDER), 'utf8')

/** A sheet as version 1 saved it, opened. */
export const ofVersion1 = (job: string): Worksheet => readDocument(textOfVersion1(job))
