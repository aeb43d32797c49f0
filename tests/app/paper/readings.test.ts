import { expect, test } from 'vitest'
import { rowsOf } from '../../../src/app/paper/rows.ts'
import type { Node } from '../../../src/drawings/canvas/tree.ts'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Given, Sheet } from '../../../src/worksheet/index.ts'
import { readTemplate } from '../../templates/open.ts'

const textOf = (node: Node | string): string =>
  typeof node === 'string' ? node : node.children.map((one) => textOf(one as Node | string)).join(' ')

test('a reading is printed with when and by whom it was taken, and what has changed since', () => {
  const sheet = new Sheet(readTemplate('flat-sheet'), LIBRARY)
  const type = (name: string, value: string): void =>
    sheet.apply(
      { do: 'replace', cell: { ...(sheet.named(name) as Given), value } },
      { when: '2026-03-02T14:02:00', by: 'LM' },
    )
  const printed = (): string =>
    rowsOf(sheet, [sheet.named('illuminance') as Given], {})
      .map(textOf)
      .join(' ')
      .replace(/\s+/g, ' ')
  // Of an example nobody knows.
  expect(printed()).not.toContain('measured')
  type('illuminance', '820')
  expect(printed()).toContain('Light at the original measured 2 March 2026, 14:02 by LM 820 lx')
  type('lamp_out', '1200')
  expect(printed()).toContain('measured 2 March 2026, 14:02 by LM before Lamps from the centre line changed')
})
