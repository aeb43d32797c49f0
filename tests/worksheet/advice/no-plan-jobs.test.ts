import { describe, expect, it } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { reasonForNone } from '../../../src/worksheet/advice/no-plan.ts'
import { noPlanText } from '../../../src/worksheet/advice/plan-text.ts'
import { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { JOBS, openJob } from './jobs.ts'

/** The sheet with the checks that pass turned round, so that they fail, and with nothing that may be changed. */
function turned(sheet: FullSheet): FullSheet {
  const cells = sheet.cells.map((cell) => {
    if (cell.kind === 'given') {
      const { advice: _, ...rest } = cell
      return { ...rest, fixed: true }
    }
    const passes = cell.kind === 'check' && ['pass', 'marginal'].includes(sheet.checkState(cell.id))
    return passes ? { ...cell, condition: `not (${cell.condition})` } : cell
  })
  return new FullSheet({ ...sheet.worksheet, cells }, LIBRARY)
}

/** Conditions that compare two quantities, and nothing that is chosen, ticked or counted alike. */
const COMPARES = (condition: string): boolean => /[<>]/.test(condition) && !/ (and|or) |not |"|!=/.test(condition)

describe.each(JOBS)('the checks of %s, where nothing may be changed,', (job) => {
  it('say by how much they fail, and what limits them', () => {
    const sheet = turned(openJob(job, {}))
    let compared = 0
    for (const cell of sheet.cells) {
      if (cell.kind !== 'check' || sheet.checkState(cell.id) !== 'fail') continue
      const { name, condition } = cell
      const none = reasonForNone(sheet, name, [], { changes: [], isExhausted: false })
      const text = noPlanText(sheet, none)
      const said = `${name}: ${condition} → ${text}`
      if (COMPARES(condition.slice(5, -1))) {
        compared++
        expect(none.short, said).toBeDefined()
      }
      if (none.short) expect(text, said).toMatch(/ is .*\d/)
      expect(none.limits.length, said).toBeGreaterThan(0)
      expect(text, said).not.toMatch(/undefined|NaN|\{/)
    }
    expect(compared).toBeGreaterThan(0)
  })
})
