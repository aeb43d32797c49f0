import { expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { provenanceOf } from '../../../src/worksheet/analysis/provenance.ts'
import { withoutExample } from '../../../src/worksheet/compose/without-example.ts'
import { readDocument, Sheet, writeDocument } from '../../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'
import { PARTS } from './sets.ts'

test.each(JOBS)('started for one’s own figures, %s has usual values and nothing of its example', (name) => {
  const own = withoutExample(readTemplate(name))
  for (const cell of own.cells) {
    if (cell.kind === 'table') expect(cell.rows, cell.name).toEqual([])
    if (cell.kind !== 'given') continue
    expect(['empty', 'usual'], cell.name).toContain(provenanceOf(cell))
    // A dimension of equipment, room or original is nobody's habit, and a reading is never filled in.
    if (PARTS.names.get(cell.name)?.reading) expect(cell.value, cell.name).toBe('')
  }
  expect(own).not.toHaveProperty('job')
  const sheet = new Sheet(readDocument(writeDocument(own)), LIBRARY)
  expect(sheet.checkSummary.errors).toBe(0)
  expect(sheet.checkSummary.fail).toBe(0)
})
