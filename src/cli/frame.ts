import { readFileSync } from 'node:fs'
import { type Area, FrameError, frameReport, openFrame, readAreas } from '../frame/index.ts'
import { whyUnread } from './input.ts'
import { InputError } from './input-error.ts'
import { onlyOperand, readOptions } from './options.ts'
import { printJson, printLines } from './report.ts'
import * as words from './words.ts'

/** `frame FILE --areas AREAS.json [--json]`: one picture measured. Exit 2, by InputError, where it or an area cannot be. */
export function frame(args: readonly string[]): number {
  const { path, areas: areasPath, json } = readFrameArguments(args)
  const areas = areasPath === undefined ? [] : readAreasFile(areasPath)
  const report = measureFile(path, areas)
  if (json) printJson(report)
  else printLines(inLines(report))
  return 0
}

function readFrameArguments(args: readonly string[]): { path: string; areas: string | undefined; json: boolean } {
  const { values, positionals } = readOptions('frame', args, { areas: { type: 'string' }, json: { type: 'boolean' } })
  return { path: onlyOperand('frame', positionals), areas: values.areas, json: values.json ?? false }
}

function readAreasFile(path: string): Area[] {
  let data: unknown
  try {
    data = JSON.parse(readFileSync(path, 'utf8').replace(/^\ufeff/, ''))
  } catch (error) {
    const why = error instanceof SyntaxError ? words.notJson(error.message) : whyUnread(error)
    throw new InputError(words.inFile(path, why))
  }
  return inFile(path, () => readAreas(data))
}

function measureFile(path: string, areas: readonly Area[]): object {
  let file: Uint8Array
  try {
    file = readFileSync(path)
  } catch (error) {
    throw new InputError(words.inFile(path, whyUnread(error)))
  }
  return inFile(path, () => frameReport(openFrame(file), areas))
}

function inFile<T>(path: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof FrameError) throw new InputError(words.inFile(path, error.message))
    if (error instanceof RangeError && /allocation|array length/i.test(error.message))
      throw new InputError(words.inFile(path, words.noMemoryExportPart))
    throw error
  }
}

/** One figure a line, `name.figure value`. */
function inLines(report: object): string[] {
  const lines: string[] = []
  const walk = (value: unknown, path: string): void => {
    if (Array.isArray(value) && value.every((one) => typeof one !== 'object' || Array.isArray(one)))
      lines.push(`${path} ${JSON.stringify(value)}`)
    else if (typeof value === 'object' && value !== null)
      for (const [key, part] of Object.entries(value)) walk(part, path === '' ? key : `${path}.${key}`)
    else lines.push(`${path} ${value === null ? '–' : String(value)}`)
  }
  walk(report, '')
  return lines
}
