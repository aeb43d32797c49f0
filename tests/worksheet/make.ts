import { FUNCTIONS, LIBRARY } from '../../src/functions/index.ts'
import { type FunctionRecord, type Library, number } from '../../src/language/index.ts'
import { LENGTH } from '../../src/units/index.ts'
import { type Cell, type Check, FORMAT, type Given, type Result, Sheet } from '../../src/worksheet/index.ts'

/** Cells whose id is their name, so that a test reads as a sheet does. */
export const given = (name: string, value: string, more: Partial<Given> = {}): Given => ({
  kind: 'given',
  id: name,
  name,
  value,
  ...more,
})
export const result = (name: string, formula: string, more: Partial<Result> = {}): Result => ({
  kind: 'result',
  id: name,
  name,
  formula,
  ...more,
})
export const check = (name: string, condition: string, more: Partial<Check> = {}): Check => ({
  kind: 'check',
  id: name,
  name,
  condition,
  message: `${name} does not hold`,
  ...more,
})
export const note = (id: string, text: string): Cell => ({ kind: 'note', id, text })

export const sheetOf = (cells: readonly Cell[], library: Library = LIBRARY): Sheet =>
  new Sheet({ format: FORMAT, version: 2, title: 'A test', cells: [...cells] }, library)

/** What a cell gives, in words: `5 mm`, `waits for a, b`, `error: …`. */
export function seen(sheet: Sheet, id: string): string {
  const outcome = sheet.outcome(id)
  if (outcome.state === 'value') return outcome.shown.text
  if (outcome.state === 'waiting') return `waits for ${outcome.on.join(', ')}`
  return `error: ${outcome.diagnostics[0]?.message}`
}

export const originOf = (sheet: Sheet, id: string): string | undefined => {
  const outcome = sheet.outcome(id)
  return outcome.state === 'error' ? outcome.origin : undefined
}

/** A library with one more function, `counted(x)`, which gives a length back and tells of each call. */
export function countingLibrary(called: () => void = () => {}): { library: Library; calls: number[] } {
  const calls: number[] = []
  const counted: FunctionRecord = {
    name: 'counted',
    subject: 'maths',
    about: 'the length it is given',
    parameters: [{ name: 'x', type: number(LENGTH), about: 'any length' }],
    result: number(LENGTH),
    formula: 'x',
    source: 'derived',
    examples: [],
    compute: (x: number) => {
      calls.push(x)
      called()
      return x
    },
  }
  return { library: new Map([...FUNCTIONS, counted].map((record) => [record.name, record])), calls }
}

/** The ids reported to watchers while something is done; `all` where that was said. */
export function notifiedBy(sheet: Sheet, act: () => void): string[] | 'all' {
  const reported: (string[] | 'all')[] = []
  const stop = sheet.watch((changed) => reported.push(changed === 'all' ? 'all' : [...changed].sort()))
  act()
  stop()
  return reported.length === 1 ? (reported[0] as string[] | 'all') : reported.flat()
}
