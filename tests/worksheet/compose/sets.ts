import { readParts } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import type { ChosenPart } from '../../../src/worksheet/compose/choose-parts.ts'
import { compose } from '../../../src/worksheet/compose/compose.ts'
import type { Filled } from '../../../src/worksheet/compose/sections.ts'
import { type Cell, isNamed, Sheet, type Worksheet } from '../../../src/worksheet/index.ts'

export const PARTS = readParts()
export const PART_IDS: readonly string[] = [...PARTS.parts.keys()].sort()

export const composed = (parts: readonly ChosenPart[], givens: ReadonlyMap<string, Filled> = new Map()): Worksheet =>
  compose(PARTS, { title: 'A sheet', parts, givens }).worksheet

export const set = (...ids: readonly string[]): ChosenPart[] => ids.map((part) => ({ part }))

/** Every reading filled in, as one who has measured would have it. */
export const READ: ReadonlyMap<string, Filled> = new Map(
  [...PARTS.names].flatMap(([name, { reading, example }]): [string, Filled][] =>
    reading && example !== undefined ? [[name, { value: example, from: 'typed' }]] : [],
  ),
)

/** What is in error in a sheet, each with why. */
export function errorsOf(worksheet: Worksheet): string[] {
  const sheet = new Sheet(worksheet, LIBRARY)
  return sheet.cells.filter(isNamed).flatMap(({ kind, id, name }) => {
    if (kind === 'check') {
      const { state, message } = sheet.check(id)
      return state === 'error' ? [`${name}: ${message}`] : []
    }
    const outcome = sheet.outcome(id)
    return outcome.state === 'error' ? [`${name}: ${outcome.diagnostics.map(({ message }) => message).join(' ')}`] : []
  })
}

export const permutations = <T>(list: readonly T[]): T[][] =>
  list.length < 2
    ? [[...list]]
    : list.flatMap((one, at) => permutations(list.filter((_, other) => other !== at)).map((rest) => [one, ...rest]))

export const namesOf = (cells: readonly Cell[]): string[] => cells.filter(isNamed).map(({ name }) => name)
