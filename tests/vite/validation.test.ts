import { describe, expect, it } from 'vitest'
import type { PublishedRow } from '../../src/functions/published/report.ts'
import { validationPage, validationStyle } from '../../vite/published/page.ts'

const VERSION = '1.2.3 (abc1234 of 2026-11-29)'

const row = (more: Partial<PublishedRow> = {}): PublishedRow => ({
  id: 'one',
  quantity: 'reach < near',
  formula: 'hyperfocal(50 mm, f/8, 30 um)',
  published: '46.8 ft',
  ours: '46.875 ft',
  difference: '0.075 ft',
  agrees: true,
  source: 'A course & its tables (a school, 1980)',
  read_at: '',
  quoted: false,
  ...more,
})

const page = (rows: readonly PublishedRow[]) =>
  validationPage({
    style: './style.css',
    version: VERSION,
    groups: [
      ['hyperfocal', rows],
      ['grade', rows],
    ],
    rows,
    unchecked: ['abs'],
  })

const found = (text: string, what: RegExp): number => text.match(what)?.length ?? 0

describe('the page of published values', () => {
  it('is one table, whose heads a printer repeats, with the functions as groups of its rows', () => {
    const text = page([row(), row({ id: 'two' })])
    expect(found(text, /<table>/g)).toBe(1)
    expect(found(text, /<thead>/g)).toBe(1)
    expect(found(text, /scope="col"/g)).toBe(6)
    expect(text.match(/scope="rowgroup" colspan="6"><h2>/g)).toHaveLength(2)
    for (const line of text.match(/<tr>\n[\s\S]*?<\/tr>/g) ?? []) expect(found(line, /<td>/g)).toBe(6)
    expect(found(text, /<tr>\n/g)).toBe(4)
  })

  it('names version and day in title and heading, and at the foot of each printed page', () => {
    expect(found(page([row()]), /<(?:title|h1)>Evenfield 1\.2\.3 \(abc1234 of 2026-11-29\): published values</g)).toBe(
      2,
    )
    const [, foot = ''] = /@bottom-left \{ content: "([^"]*)"/.exec(validationStyle(VERSION)) ?? []
    const shown = foot.replaceAll(/\\([0-9a-f]+) /g, (_, code: string) =>
      String.fromCodePoint(Number.parseInt(code, 16)),
    )
    expect(shown).toBe(`Evenfield ${VERSION}: published values`)
    // What could end the text or the style is escaped.
    expect(validationStyle('1"; } body { x').match(/@bottom-left \{ content: "([^"]*)";/)?.[1]).not.toMatch(/[;{}]/)
  })

  it('says what agrees and what differs, and what others quote', () => {
    const text = page([row({ quoted: true, note: 'Rounded there.' }), row({ id: 'two', agrees: false })])
    expect(text).toContain('2 published values from 1 source,')
    expect(text).toMatch(/1 differs by more than/)
    expect(text).toContain('<b>differs</b>')
    expect(text).toContain('as quoted by others. Rounded there.')
    expect(page([row()])).toMatch(/All agree within the rounding/)
    expect(text).toContain('<code>abs</code>')
  })

  it('shows signs of the texts as they are', () => {
    const text = page([row()])
    expect(text).toContain('reach &lt; near')
    expect(text).toContain('A course &amp; its tables')
  })
})
