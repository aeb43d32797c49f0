import { readdirSync } from 'node:fs'
import fc from 'fast-check'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Given, readGiven, type Worksheet } from '../../../src/worksheet/index.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { readTemplate } from '../../templates/open.ts'

/** The names of all jobs on the shelf. */
export const JOBS = readdirSync(new URL('../../../templates/', import.meta.url))
  .filter((file) => file.endsWith('.json'))
  .map((file) => file.replace('.json', ''))

const worksheets = new Map(JOBS.map((name) => [name, readTemplate(name)]))

/** Some givens of a job with figures of their own, up to a number of doublings off, so that most sheets have checks that fail. */
export function jobWith(name: string, doublings = 1.25): fc.Arbitrary<Readonly<Record<string, string>>> {
  const quantities = (worksheets.get(name) as Worksheet).cells.filter(
    (cell): cell is Given =>
      cell.kind === 'given' && (cell.entry ?? 'quantity') === 'quantity' && /\d/.test(cell.value),
  )
  return fc
    .array(
      fc.record({
        given: fc.nat(Math.max(0, quantities.length - 1)),
        by: fc.double({ min: -doublings, max: doublings, noNaN: true }),
      }),
      {
        minLength: 2,
        maxLength: 8,
      },
    )
    .map((changes) =>
      Object.fromEntries(
        changes.flatMap(({ given, by }) => {
          const cell = quantities[given]
          const found = cell && /^(\D*)([\d.]+)(.*)$/.exec(cell.value)
          if (!cell || !found) return []
          const text = `${found[1]}${Number((Number(found[2]) * 2 ** by).toPrecision(2))}${found[3]}`
          return readGiven({ ...cell, value: text }).error ? [] : [[cell.name, text]]
        }),
      ),
    )
}

/** A job opened with some of its givens typed otherwise. */
export function openJob(name: string, texts: Readonly<Record<string, string>>): FullSheet {
  const worksheet = worksheets.get(name) as Worksheet
  return typedInto(new FullSheet(worksheet, LIBRARY), texts)
}

/** A fresh sheet with the same cells, some givens typed otherwise: as somebody would who follows a suggestion. */
export function typedInto(sheet: FullSheet, texts: Readonly<Record<string, string>>): FullSheet {
  const cells = sheet.cells.map((cell) =>
    cell.kind === 'given' && Object.hasOwn(texts, cell.name) ? { ...cell, value: texts[cell.name] as string } : cell,
  )
  return new FullSheet({ ...sheet.worksheet, cells }, LIBRARY)
}
