import { expect, test } from 'vitest'
import { handOverPage } from '../../../src/app/paper/hand-over.ts'
import type { TableCell } from '../../../src/worksheet/index.ts'
import { given, sheetOf } from '../../worksheet/make.ts'

const cell: TableCell = {
  kind: 'table',
  id: 's',
  name: 'originals',
  label: 'The originals',
  columns: [
    { name: 'title', label: 'Title', entry: 'text' },
    {
      name: 'width',
      label: 'Width',
      unit: 'mm',
      foot: [{ figure: 'greatest' }, { figure: 'count', where: 'width > 100 mm' }],
    },
    { name: 'done', label: 'Done', entry: 'tick' },
    { name: 'whole', label: 'Whole', unit: 'cm', formula: 'width + 2 * border' },
  ],
  rows: [
    ['Town & <b>port</b>', '420', 'yes', ''],
    ['Coast', 'torn', '', ''],
    ['Hill', '80', '', ''],
  ],
}

const page = async (border: string): Promise<string> =>
  (await handOverPage(sheetOf([given('border', border, { unit: 'mm' }), cell]), { at: new Date(0) })).replace(
    /^[\s\S]*<body>/,
    '',
  )

test('a table on paper has its headings with units, every row, and its foot', async () => {
  const text = await page('10')
  expect(text).toContain('<b>The originals</b>')
  expect(text).toContain('<th scope="col" class="end">Width<span class="small">mm</span></th>')
  expect(text).toContain(
    '<td>Town &amp; &lt;b&gt;port&lt;/b&gt;</td><td class="end">420</td><td>yes</td><td class="end">44</td>',
  )
  expect(text).toContain('<span class="small">left out</span>')
  expect(text).toContain('<span class="small">Maximum</span><b>420 mm</b>')
  expect(text).toContain('<span class="small">Count where width &gt; 100 mm</span><b>1</b>')
  expect(text).toMatch(/Row 2 is left out\. Width: /)
  expect(text.match(/<thead>/g)).toHaveLength(1)
})

test('a table that waits names what it needs and shows its typed fields', async () => {
  const text = await page('')
  expect(text).toContain('Its formulas need border.')
  expect(text).toContain('<td class="end">420</td>')
})
