import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { toJsonSchema } from '@valibot/to-json-schema'
import { VERSION, WorksheetSchema } from '../src/worksheet/index.ts'

export const SCHEMA_FILE = fileURLToPath(new URL('../shared/worksheet.schema.json', import.meta.url))

/** The worksheet's schema for other programs, made from the one that documents are read by. */
export function schemaText(): string {
  const { $schema, ...schema } = toJsonSchema(WorksheetSchema, { target: 'draft-2020-12', errorMode: 'throw' })
  const whole = {
    $schema,
    $id: `urn:evenfield:worksheet:${VERSION}`,
    title: 'Evenfield worksheet',
    description:
      'An ordered list of cells: givens, results, checks, notes, drawings, steps, tables, ranges, variants, runs, frames ' +
      'and functions. Values and formulas are text as typed. ' +
      'Keys that are not named here are preserved. Beyond this schema, the ids of the cells differ from each other.',
    ...schema,
  }
  return `${JSON.stringify(whole, null, 2)}\n`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = schemaText()
  const before = readFileSync(SCHEMA_FILE, { encoding: 'utf8', flag: 'a+' })
  if (text !== before) writeFileSync(SCHEMA_FILE, text)
  process.stdout.write(text === before ? 'The schema is as it was.\n' : `Written: ${SCHEMA_FILE}\n`)
}
