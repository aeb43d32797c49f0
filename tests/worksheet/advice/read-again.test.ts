import { expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { adviseSheet } from '../../../src/worksheet/advice/advise.ts'
import { consequenceText, noPlanText } from '../../../src/worksheet/advice/plan-text.ts'
import { asMine } from '../../../src/worksheet/analysis/provenance.ts'
import { type Given, Sheet } from '../../../src/worksheet/index.ts'
import { readTemplate } from '../../templates/open.ts'

/** A flat sheet whose lamps are too steep, its light read in their present places. */
function lit(): Sheet {
  const sheet = new Sheet(asMine(readTemplate('flat-sheet')), LIBRARY)
  const type = (name: string, value: string): void =>
    sheet.apply({ do: 'replace', cell: { ...(sheet.named(name) as Given), value } })
  type('lamp_out', '700')
  type('illuminance', '900')
  return sheet
}

test('a suggestion that moves lamps says what is to be measured again, and counts no check that waits for it', () => {
  const sheet = lit()
  const release = sheet.named('released_untouched')?.id ?? ''
  expect(['pass', 'marginal']).toContain(sheet.checkState(release))
  const { checks } = adviseSheet(sheet)
  const plans = checks.get('lamps_low')?.plans ?? []
  const moving = plans.filter(({ changes }) => changes.some(({ given }) => given.startsWith('lamp_')))
  expect(moving.length).toBeGreaterThan(0)
  for (const plan of moving) {
    expect(plan.again).toEqual({ readings: ['illuminance'], checks: ['released_untouched'] })
    expect(plan.breaks).toEqual([])
    expect(plan.passes).not.toContain('released_untouched')
    expect(consequenceText(sheet, plan)).toContain(
      'Then measure again: Light at the original; until then, Release waits.',
    )
    // Typed in, it is so.
    const typed = lit()
    typed.apply({ do: 'several', changes: plan.cells.map((cell) => ({ do: 'replace', cell }) as const) })
    expect(['pass', 'marginal']).toContain(typed.checkState(typed.named('lamps_low')?.id ?? ''))
    expect(typed.checkState(release)).toBe('waiting')
  }
  for (const plan of plans.filter((one) => !moving.includes(one))) expect(plan.again.readings).toEqual([])
})

test('where a check judges a reading, what decides it is named: to be changed, then read again', () => {
  const sheet = new Sheet(asMine(readTemplate('two-lamps')), LIBRARY)
  const cell = sheet.named('readings') as Given
  sheet.apply({ do: 'replace', cell: { ...cell, value: '900, 700, 650, 880, 720' } })
  const none = adviseSheet(sheet).checks.get('measured_even')?.none
  if (!none) throw new Error('The readings are even.')
  expect(noPlanText(sheet, none)).toMatch(
    /^This check uses measured values: change .*(from the centre line|above).*, then measure again\./,
  )
})
