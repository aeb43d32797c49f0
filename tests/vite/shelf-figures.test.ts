import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import type { Node } from '../../src/drawings/canvas/tree.ts'
import { LIBRARY } from '../../src/functions/index.ts'
import { type Cell, FORMAT, Sheet } from '../../src/worksheet/index.ts'
import { bareFigure } from '../../vite/shelf/bare.ts'
import { drawLimits } from '../../vite/shelf/limit-bars.ts'
import { figuresOf } from '../../vite/shelf/make.ts'
import { open } from '../templates/open.ts'

const FOLDER = fileURLToPath(new URL('../../templates', import.meta.url))
const figures = await figuresOf(FOLDER)

test('every template has a figure and words', () => {
  expect(figures.length).toBe(readdirSync(FOLDER).filter((file) => file.endsWith('.json')).length)
  for (const { key, svg, words } of figures) {
    expect(svg, key).toMatch(/^<\?xml.*<svg .*<path .*<\/svg>\n$/s)
    expect(words, key).toMatch(/^\p{Lu}.*\d/u)
  }
})

test('a figure is small, holds no text, and is a picture that is self-contained', () => {
  for (const { key, svg = '' } of figures) {
    expect(svg.length, key).toBeLessThan(14_000)
    expect(svg, key).not.toMatch(/<text|<title|<script|href=|style=/)
    expect(svg, key).toMatch(/ width="[\d.]+" height="[\d.]+"/)
    expect(svg, key).not.toMatch(/NaN|Infinity|undefined/)
  }
})

test('the words are the template’s own figures', () => {
  for (const { key, words } of figures) {
    const sheet = open(key)
    const shown = sheet.sheet.cells.flatMap((cell) =>
      cell.kind === 'result' && cell.label && sheet.sheet.outcome(cell.id).state === 'value'
        ? [`${cell.label} ${figure(sheet.shown(cell.name))}`.toLowerCase()]
        : [],
    )
    const reported = words.replaceAll('\u00a0', ' ').toLowerCase()
    // One or two of them, in a row.
    const left = shown.reduce((text, one) => text.replace(one, ''), reported)
    expect(left.trim(), key).toMatch(/^;?$/)
  }
})

const figure = ({ text, mark }: { readonly text: string; readonly mark?: string }): string => mark ?? text

const sheetOf = (cells: Cell[]): Sheet => new Sheet({ format: FORMAT, version: 2, title: '', cells }, LIBRARY)

describe('a sheet that draws nothing', () => {
  const check = (condition: string): Cell => ({
    ...{ kind: 'check', id: condition, name: `c${condition.length}`, condition, message: '' },
  })

  test('shows each plain check as a bar against the mark of its limit', () => {
    const node = drawLimits(sheetOf([check('3 mm <= 6 mm'), check('9 kg >= 3 kg and yes')])) as Node
    const svg = bareFigure(node) as string
    const paths = [...svg.matchAll(/ d="([^"]*)"/g)].map(([, d]) => d)
    // The rule, and one bar with its mark: half the limit, which is at 150 / 1.2.
    expect(paths).toEqual(['M 0 -6 L 0 17', 'M 0 0 L 62.5 0 L 62.5 11 L 0 11 Z', 'M 125 -4 L 125 15'])
  })

  test('and nothing where it checks nothing', () => {
    expect(drawLimits(sheetOf([check('1 mm')]))).toBeUndefined()
  })
})
