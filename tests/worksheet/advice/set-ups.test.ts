import { expect, test } from 'vitest'
import { readJob } from '../../../src/cli/part-files.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { consequenceText, planText, wholePlanText } from '../../../src/worksheet/advice/plan-text.ts'
import { composeJob, type Job } from '../../../src/worksheet/compose/job.ts'
import type { OfferedSetUp } from '../../../src/worksheet/compose/part-library.ts'
import { offeredSetUp, withSetUp } from '../../../src/worksheet/compose/recompose.ts'
import { type Given, Sheet } from '../../../src/worksheet/index.ts'
import { PARTS } from '../compose/sets.ts'

test('in a sheet of several set-ups a suggestion says which one it is about', () => {
  const sheet = new Sheet(composeJob(PARTS, readJob('flat-sheet') as Job), LIBRARY)
  const offer = PARTS.setUps.find(({ prefix }) => prefix === 'overview') as OfferedSetUp
  const { change } = withSetUp(PARTS, sheet.worksheet, offeredSetUp(sheet.worksheet, offer))
  if (change) sheet.apply(change)
  const before = (name: string): string => (sheet.named(name) as Given).value
  const changed = (given: string, text: string) => ({ given, before: before(given), text })
  const plan = (...changes: ReturnType<typeof changed>[]) => ({
    changes,
    cells: [],
    level: 'setting' as const,
    passes: ['sharp_enough', 'overview_sharp_enough'],
    marginal: ['even_enough', 'overview_even_enough'],
    breaks: [],
    again: { readings: ['overview_illuminance'], checks: ['overview_released_untouched'] },
    cost: 1,
  })
  const own = changed('aperture', 'f/5.6')
  const other = changed('overview_aperture', 'f/11')
  expect(planText(sheet, plan(own))).toBe('Open up to f/5.6.')
  expect(planText(sheet, plan(other))).toBe('Overview: stop down to f/11.')
  const both = plan(own, other, changed('overview_lamp_height', '1200'))
  expect(planText(sheet, both)).toBe('Open up to f/5.6; Overview: stop down to f/11 and raise both lamps to 1200 mm.')
  expect(wholePlanText(sheet, both)).toContain('To make Sampling and Sampling (Overview) pass: ')
  expect(consequenceText(sheet, both)).toBe(
    'Evenness and Evenness (Overview) are then marginal. Then measure again: Light at the original (Overview); until then, Release (Overview) waits.',
  )
})
