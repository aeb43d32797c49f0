import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { downstreamOf } from '../../../src/worksheet/engine/partial-recompute.ts'
import { isNamed, Sheet } from '../../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'

describe('in every job, with one given left empty', () => {
  test.each(JOBS)('%s: what has a value has it whatever is filled in there', (job) => {
    const worksheet = readTemplate(job)
    const filled = new Sheet(worksheet, LIBRARY)
    const figures = (sheet: Sheet): Map<string, string> =>
      new Map(
        sheet.cells.filter(isNamed).flatMap(({ id, kind, name }) => {
          if (kind === 'check') return [[name, sheet.checkState(id)] as const]
          const outcome = sheet.outcome(id)
          return outcome.state === 'value' ? [[name, JSON.stringify(outcome.value)] as const] : []
        }),
      )
    const before = figures(filled)
    for (const cell of worksheet.cells) {
      if (cell.kind !== 'given' || cell.value.trim() === '') continue
      const sheet = new Sheet(
        { ...worksheet, cells: worksheet.cells.map((one) => (one === cell ? { ...cell, value: '' } : one)) },
        LIBRARY,
      )
      const { engine } = sheet
      const node = engine.named(cell.name)
      const marks = downstreamOf(engine.layout, node ? [engine.positionOf(node)] : [])
      const after = figures(sheet)
      for (const [at, { cell: reached }] of engine.layout.order.entries()) {
        if (marks[at] !== 1 || reached.kind === 'check') continue
        const now = after.get(reached.name)
        if (now !== undefined) expect(now, `${reached.name} without ${cell.name}`).toBe(before.get(reached.name))
      }
    }
  })
})
