import { expect, test } from 'vitest'
import { comparedOf } from '../../../src/app/stand/setting.ts'
import type { StandFigureCell } from '../../../src/app/stand/stand-steps.ts'
import { open } from '../../templates/open.ts'

test('a list at the stand has no braces, which are for formulas', () => {
  const { sheet } = open('getting-closer', { closer_by: 'close-up lens' })
  const shown = (name: string) => comparedOf(sheet, sheet.named(name) as StandFigureCell)
  expect(shown('lenses_on').target?.figure).toBe('2 dpt, 10 dpt')
  expect(shown('powers').targetText).toBe('2 dpt, 10 dpt')
})
