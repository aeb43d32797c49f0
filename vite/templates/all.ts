import { readdirSync, readFileSync } from 'node:fs'
import { type FormulaIndex, formulasOf, type TemplateFile } from '../../src/app/templates/template-file.ts'
import { readPartFiles, readSheetOrJob } from '../../src/cli/part-files.ts'
import { LIBRARY, SUBJECTS, type SubjectFile } from '../../src/functions/index.ts'
import { textMark } from '../../src/worksheet/document/rows-mark.ts'
import type { Worksheet } from '../../src/worksheet/index.ts'
import { prepare } from '../../src/worksheet/prepare-templates.ts'

const FOLDER = new URL('../../templates/', import.meta.url)

const SUBJECT_OF = new Map(
  Object.entries(SUBJECTS).flatMap(([file, records]) =>
    records.map(({ name }) => [name, file as SubjectFile] as const),
  ),
)

function fileOf(name: string): TemplateFile {
  const { shelf: _, ...worksheet } = readSheetOrJob(readFileSync(new URL(name, FOLDER), 'utf8'))
  const prepared = prepare([worksheet as Worksheet], LIBRARY)
  const called = Object.values(prepared.formulas).flatMap(({ meanings }) => meanings.flatMap(({ calls }) => calls))
  return { worksheet, prepared, functions: [...new Set(called.flatMap((one) => SUBJECT_OF.get(one) ?? []))].sort() }
}

/** Each template's key, and what the page fetches for it. */
export const files: readonly (readonly [string, TemplateFile])[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name.replace(/\.json$/, ''), fileOf(name)] as const)

/** What the page composes sheets of when a part is added. */
export const parts = readPartFiles()

export const index: FormulaIndex = Object.fromEntries(
  files.map(([key, { worksheet }]) => [key, [...new Set(formulasOf(worksheet.cells).map(textMark))].join(' ')]),
)
