import type { ChosenPart } from '../../../src/worksheet/compose/choose-parts.ts'
import type { SetUp } from '../../../src/worksheet/compose/compose.ts'
import type { Part } from '../../../src/worksheet/compose/part-library.ts'
import type { Worksheet } from '../../../src/worksheet/index.ts'
import { asks, cellOf, computes, type Invented, invented, orderOf, parts, sheetOf } from './invented.ts'

export const later = (prefix: string, ...ids: readonly (string | ChosenPart)[]): SetUp => ({
  prefix,
  title: `In ${prefix}`,
  parts: parts(...ids),
})

/** Original and care are shared by all set-ups; each has its optics and its light. */
export const ROLES: Invented['roles'] = [
  'original',
  { role: 'optics', in_set_up: true },
  { role: 'light', in_set_up: true },
  'care',
]
const NAMES: Invented['names'] = {
  size: { role: 'original', example: '4' },
  focal: { role: 'optics', example: '60' },
  aperture: { role: 'light', example: '8' },
  reach: { role: 'optics', in_every_set_up: true, example: '900' },
}
export const SHEET: Partial<Part> = { role: 'original', cells: [asks('size'), computes('area', 'size * size')] }
export const LENS: Partial<Part> = { role: 'optics', cells: [asks('focal'), computes('scale', 'focal / size')] }
export const PAIR: Partial<Part> = { role: 'light', cells: [asks('aperture'), computes('lit', 'aperture * scale')] }

export const sheet = (
  of: Partial<Invented>,
  ids: Parameters<typeof sheetOf>[1],
  setUps: readonly SetUp[],
  more: Parameters<typeof sheetOf>[2] = {},
): Worksheet =>
  sheetOf(
    invented({
      roles: ROLES,
      ...of,
      names: { ...NAMES, ...of.names },
      parts: { sheet: SHEET, lens: LENS, pair: PAIR, ...of.parts },
    }),
    ids,
    { setUps, ...more },
  )
export const ALL = ['sheet', 'lens', 'pair']
export const behind = (worksheet: Worksheet): string[] => {
  const order = orderOf(worksheet)
  return order.slice(order.findIndex((one) => one.startsWith('[In ')))
}
export const text = (worksheet: Worksheet, id: string): unknown => {
  const { formula, condition, value } = (cellOf(worksheet, id) ?? {}) as Record<string, unknown>
  return formula ?? condition ?? value
}
