import { describe, expect, test } from 'vitest'
import { readJob, readParts } from '../../src/cli/part-files.ts'
import { isPlace } from '../../src/worksheet/compose/part-library.ts'
import { Filled } from '../templates/open.ts'
import { CASES, type Case } from './cases.ts'
import { JOBS as FLAT_JOBS } from './jobs.ts'
import { NEAR_JOBS } from './phone-object-gloss.ts'
import { ROOM_JOBS } from './rooms.ts'
import { type Texts, worksheetOf } from './trace.ts'

/** The sheet of a case, with figures typed into givens, and as measured into results. */
function opened({ on, given, rows = {} }: Case, texts: Texts): Filled {
  const worksheet = typeof on === 'string' ? worksheetOf(on) : worksheetOf(on.join(' '), on)
  const typed = new Map(Object.entries({ ...given, ...texts }))
  const left = new Set([...typed.keys(), ...Object.keys(rows)])
  const cells = worksheet.cells.map((cell) => {
    if (cell.kind === 'table' && rows[cell.name]) {
      left.delete(cell.name)
      const empty = cell.columns.map(() => '')
      return { ...cell, rows: (rows[cell.name] ?? []).map((row) => [...row, ...empty].slice(0, cell.columns.length)) }
    }
    const text = cell.kind === 'given' || cell.kind === 'result' ? typed.get(cell.name) : undefined
    if (text === undefined) return cell
    left.delete((cell as { name: string }).name)
    return { ...cell, [cell.kind === 'given' ? 'value' : 'measured']: text }
  })
  expect([...left], 'cells that are not there').toEqual([])
  return new Filled({ ...worksheet, cells })
}

describe('what is judged without a picture', () => {
  test.each(CASES.map((one) => [one.part, one.check, one.why, one] as const))('%s, %s: %s', (_, check, _why, one) => {
    for (const texts of one.inside) {
      const sheet = opened(one, texts)
      expect(['pass', 'marginal'], `${JSON.stringify(texts)}: ${sheet.message(check)}`).toContain(sheet.state(check))
    }
    for (const texts of one.outside) {
      const sheet = opened(one, texts)
      expect(sheet.state(check), `${JSON.stringify(texts)}: ${sheet.message(check)}`).toBe('fail')
    }
  })
})

test('every check of every part is judged by a traced photograph or by a case, and none by neither', () => {
  const judged = new Set(CASES.map(({ part, check }) => `${part}: ${check}`))
  for (const { name, parts, judges } of [...FLAT_JOBS, ...NEAR_JOBS, ...ROOM_JOBS])
    for (const part of parts ?? readJob(name)?.parts ?? []) for (const check of judges) judged.add(`${part}: ${check}`)
  const all = [...readParts().parts.values()].flatMap(({ id, cells }) =>
    cells.flatMap((cell) => (!isPlace(cell) && cell.kind === 'check' ? [`${id}: ${cell.name}`] : [])),
  )
  expect(all.filter((check) => !judged.has(check))).toEqual([])
  // A case of a check that is gone judges nothing.
  expect(CASES.map(({ part, check }) => `${part}: ${check}`).filter((check) => !all.includes(check))).toEqual([])
})
