import { expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { toLink } from '../../../src/storage/exchange/link.ts'
import { bareFigures, minimalFigures } from '../../../src/storage/figures/bare-figures.ts'
import { figuresOnly } from '../../../src/storage/figures/figures-only.ts'
import { Sheet } from '../../../src/worksheet/index.ts'
import { JOBS, readTemplate } from '../../templates/open.ts'

const NAMES = JOBS
/** What a QR code of version 40 holds in bytes at level L, by ISO/IEC 18004 (from memory), less a usual address. */
const ROOM = 2953 - 60

test.each(NAMES)('%s fits a QR code at its barest, with the checks that do not pass', async (name) => {
  const sheet = new Sheet(readTemplate(name), LIBRARY)
  // Few dates take more characters.
  const figures = figuresOnly(sheet, new Date(2026, 8, 30))
  const barest = minimalFigures(figures)
  expect((await toLink(barest)).length).toBeLessThanOrEqual(ROOM)
  expect((await toLink(barest)).length).toBeLessThanOrEqual((await toLink(bareFigures(figures))).length)
  const opened = new Sheet(barest, LIBRARY)
  expect(opened.checkSummary).toMatchObject({
    fail: sheet.checkSummary.fail,
    marginal: sheet.checkSummary.marginal,
    errors: 0,
  })
})
