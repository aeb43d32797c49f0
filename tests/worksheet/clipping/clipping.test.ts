import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { readEntry } from '../../../src/worksheet/clipping/lines.ts'
import {
  type Cell,
  ClippingError,
  clippingOf,
  fitted,
  isNamed,
  LARGEST_CLIPPING,
  linesOf,
  type Result,
  readClipped,
  readClipping,
  readDocument,
  type Sheet,
  type Worksheet,
  writeDocument,
} from '../../../src/worksheet/index.ts'
import { hostileNames, PAYLOADS, soundDocuments } from '../../hostile/generate.ts'
import { readTemplate } from '../../templates/open.ts'
import { check, given, note, result, seen, sheetOf } from '../make.ts'

const TEMPLATES = readdirSync(new URL('../../../templates/', import.meta.url))
  .filter((file) => file.endsWith('.json'))
  .map((file) => readTemplate(file.replace('.json', '')))

const counting = (): (() => string) => {
  let n = 0
  return () => `fresh-${n++}`
}

/** Pastes a text into a sheet as the Build face does; gives the cells pasted. */
function paste(sheet: Sheet, text: string, at: number, newId = counting()): readonly Cell[] {
  const cells = fitted(readClipping(text), sheet.cells, newId)
  sheet.apply({ do: 'insert', cells, at })
  return cells
}

const names = (cells: readonly Cell[]): string[] => cells.filter(isNamed).map(({ name }) => name)

const lighting = [
  given('width', '600 mm', { unit: 'mm', label: 'Width' }),
  result('double', 'width * 2'),
  check('fits', 'double <= 2 * width', { message: 'it is {width} wide' }),
  note('n', 'Width is measured.'),
]

describe('cells copied', () => {
  it('are a text one can read, without ids', () => {
    const text = clippingOf([lighting[0] as Cell])
    expect(text).toBe(`{
  "format": "evenfield-cells",
  "version": 2,
  "cells": [
    {
      "kind": "given",
      "name": "width",
      "value": "600 mm",
      "unit": "mm",
      "label": "Width"
    }
  ]
}
`)
  })

  it('are read back as they were, whatever they are', () => {
    for (const { cells } of TEMPLATES)
      expect(readClipping(clippingOf(cells)).map(({ id: _, ...cell }) => cell)).toEqual(
        cells.map(({ id: _, ...cell }) => cell),
      )
  })

  it('keep the names that are free where they go, and what they name is the sheet’s own', () => {
    const sheet = sheetOf([given('width', '300 mm')])
    paste(sheet, clippingOf([lighting[1] as Cell]), 1)
    expect(seen(sheet, 'fresh-0')).toBe('600 mm')
    expect(sheet.cells[1]).toMatchObject({ name: 'double', formula: 'width * 2' })
  })

  it('take free names where theirs are taken, followed through their own formulas and no others', () => {
    const sheet = sheetOf([given('width', '300 mm'), result('half', 'width / 2'), given('width_2', '1 mm')])
    const before = sheet.cells
    paste(sheet, clippingOf([...lighting, given('width_3', '7 mm')]), 1)
    expect(sheet.cells.map((cell) => (isNamed(cell) ? cell.name : cell.kind))).toEqual([
      'width',
      'width_4',
      'double',
      'fits',
      'note',
      'width_3',
      'half',
      'width_2',
    ])
    expect(sheet.cells[2]).toMatchObject({ formula: 'width_4 * 2' })
    expect(sheet.cells[3]).toMatchObject({ condition: 'double <= 2 * width_4', message: 'it is {width_4} wide' })
    expect(seen(sheet, 'half')).toBe('150 mm')
    expect(seen(sheet, 'fresh-1')).toBe('1200 mm')
    sheet.undo()
    expect(sheet.cells).toBe(before)
    expect(sheet.canUndo).toBe(false)
  })

  it('carry a list of steps, its ticks and its reading', () => {
    const sheet = sheetOf([given('left', '')])
    const steps: Cell = {
      kind: 'steps',
      id: 's',
      steps: [{ text: 'Read', reading: 'left', done: true }, { text: 'Go' }],
    }
    paste(sheet, clippingOf([given('left', '400 lx'), steps]), 1)
    expect(sheet.cells[2]).toMatchObject({ steps: [{ text: 'Read', reading: 'left_2', done: true }, { text: 'Go' }] })
  })

  it('of two that have one name leave the first to the formulas', () => {
    const sheet = sheetOf([given('a', '9 mm')])
    paste(sheet, clippingOf([given('a', '1 mm'), { ...given('a', '2 mm'), id: 'b' }, result('c', 'a * 2')]), 0)
    expect(names(sheet.cells)).toEqual(['a_2', 'a_3', 'c', 'a'])
    expect(seen(sheet, 'fresh-2')).toBe('2 mm')
  })

  it('that bear a word of the language as their name are given another', () => {
    const sheet = sheetOf([])
    paste(sheet, clippingOf([given('when', '1 mm')]), 0)
    expect(names(sheet.cells)).toEqual(['cell'])
  })
})

describe('a text that is pasted', () => {
  it('may be a whole worksheet', () => {
    const worksheet = TEMPLATES[0] as Worksheet
    expect(readClipping(writeDocument(worksheet))).toHaveLength(worksheet.cells.length)
  })

  it('may be lines as they are written on paper: a plain quantity is a given, all else a result', () => {
    const cells = readClipping('focal [mm] = 60\n\n  distance = focal * 2 + 10 mm \r\nstop_down [f/]=f/8\n')
    expect(cells).toMatchObject([
      { kind: 'given', name: 'focal', unit: 'mm', value: '60' },
      { kind: 'result', name: 'distance', formula: 'focal * 2 + 10 mm' },
      { kind: 'given', name: 'stop_down', unit: 'f/', value: 'f/8' },
    ])
    const sheet = sheetOf([])
    paste(sheet, 'focal [mm] = 60\ndistance = focal * 2 + 10 mm', 0)
    expect(seen(sheet, 'fresh-1')).toBe('130 mm')
  })

  it('leaves a line out that is no cell, and names it', () => {
    const { cells, leftOut } = readClipped('a = 1\nand so on\nb = a + 1')
    expect(cells.map((cell) => (cell as Result).name)).toEqual(['a', 'b'])
    expect(leftOut).toEqual(['Line 2 is left out, “and so on”: it is not of the form “name = formula”.'])
  })

  it('may be a whole sheet as lines: headings, notes, sizes, labels, choices and checks', () => {
    const cells: Cell[] = [
      { kind: 'note', id: '1', role: 'heading', text: 'Framing' },
      { kind: 'note', id: '2', text: 'Measured on the copy.' },
      { kind: 'note', id: '3', role: 'caution', text: 'Keep the lamps away.' },
      { kind: 'given', id: '4', name: 'page', label: 'Width of the page', unit: 'mm', value: '420 ± 2' },
      { kind: 'given', id: '5', name: 'sensor', unit: 'mm', entry: 'size', value: '53.4 x 40' },
      { kind: 'given', id: '6', name: 'light', entry: 'choice', options: ['daylight', 'tungsten'], value: 'tungsten' },
      { kind: 'given', id: '7', name: 'glossy', entry: 'yes or no', value: 'no' },
      { kind: 'given', id: '8', name: 'client', entry: 'text', value: 'Ferry Lane = parish' },
      { kind: 'given', id: '9', name: 'day', entry: 'date', value: '2026-11-25' },
      { kind: 'given', id: '10', name: 'open', unit: 'mm', value: '' },
      { kind: 'result', id: '11', name: 'ratio', label: 'Of the page', unit: '1:', formula: 'sensor.width / page' },
      {
        kind: 'check',
        id: '12',
        name: 'fits',
        label: 'Fits',
        condition: 'page < 1 m',
        message: 'Too wide.',
        passes: 'Fits.',
      },
      {
        kind: 'function',
        id: '13',
        name: 'bordered',
        label: 'With a border',
        about: 'A length with a border on both sides.',
        arguments: [{ name: 'length', unit: 'mm' }, { name: 'times' }],
        unit: 'mm',
        formula: 'length + 20 mm * times',
        examples: [
          { formula: 'bordered(10 mm, 1)', gives: '30 mm' },
          { formula: 'bordered(10 mm, 2)', gives: '50 mm' },
        ],
      },
      { kind: 'function', id: '14', name: 'third', arguments: [], formula: '1 / 3' },
    ]
    const text = linesOf(cells)
    const read = readClipped(text)
    expect(read.leftOut).toEqual([])
    expect(read.cells.map(({ id: _, ...cell }) => cell)).toEqual(cells.map(({ id: _, ...cell }) => cell))
    expect(linesOf(read.cells)).toBe(text)
  })

  it('with a broken formula keeps it, to be fixed where it is', () => {
    const sheet = sheetOf([])
    paste(sheet, 'a = 5 ft 3 in +', 0)
    expect(sheet.cells[0]).toMatchObject({ formula: '5 ft 3 in +' })
    expect(seen(sheet, 'fresh-0')).toMatch(/^error/)
  })

  test.each([
    ['', /no text/],
    ['  \n ', /no text/],
    ['hello there', /contains no cells/],
    ['and so on\nand on', /None of these lines/],
    ['a == 1', /contains no cells/],
    ['[1, 2]', /contains no cells/],
    ['{', /The text is not JSON/],
    ['{"format":"evenfield-cells","version":1,"cells":{}}', /contains no cells/],
    ['{"format":"evenfield-cells","version":99,"cells":[]}', /newer version/],
    [
      '{"format":"evenfield-cells","version":1,"cells":[{"kind":"given","name":"2nd","value":""}]}',
      /At “cells\[0\].name”/,
    ],
    ['{"format":"evenfield-cells","version":1,"cells":[7]}', /At “cells\[0\]/],
    [`${'['.repeat(60)}${']'.repeat(60)}`, /nested too deep/],
    ['x'.repeat(LARGEST_CLIPPING + 1), /too large/],
    ['a = 1\n'.repeat(501), /501 lines; at most 500/],
    [
      `{"format":"evenfield-cells","version":1,"cells":[${'0,'.repeat(20_000)}0]}`,
      /20\u202f001 cells; a sheet has at most 20\u202f000/,
    ],
  ])('%.60s is refused in words', (text, words) => {
    expect(() => readClipping(text)).toThrow(words)
    expect(() => readClipping(text)).toThrow(ClippingError)
  })
})

/** What holds of every sheet after a paste. */
function expectSound(sheet: Sheet, before: readonly Cell[], put: readonly Cell[], at: number): void {
  const { cells } = readDocument(writeDocument(sheet.worksheet))
  expect(cells).toHaveLength(before.length + put.length)
  expect(new Set(cells.map(({ id }) => id)).size).toBe(cells.length)
  // The cells that were there are the same objects still, and those pasted have other names.
  expect(sheet.cells.toSpliced(at, put.length)).toEqual(before)
  for (const cell of before) expect(sheet.cell(cell.id)).toBe(cell)
  const there = new Set(names(before))
  const fresh = names(put)
  expect(new Set(fresh).size).toBe(fresh.length)
  expect(fresh.filter((name) => there.has(name))).toEqual([])
}

const template = fc.constantFrom(...TEMPLATES)

test('any cells of any sheet, pasted anywhere into any other, make a sound sheet in which no name is borne twice', () => {
  fc.assert(
    fc.property(template, fc.nat(), fc.nat(), template, fc.nat(), (from, start, length, into, place) => {
      const first = start % from.cells.length
      const copied = from.cells.slice(first, first + 1 + (length % from.cells.length))
      const sheet = sheetOf(into.cells)
      const before = sheet.cells
      const at = place % (before.length + 1)
      const untouched = structuredClone(copied)
      const put = paste(sheet, clippingOf(copied), at)
      expectSound(sheet, before, put, at)
      expect(copied).toEqual(untouched)
      sheet.undo()
      expect(sheet.cells).toBe(before)
    }),
    { numRuns: 150 },
  )
})

test('a whole sheet pasted into itself computes as it did, both times', () => {
  for (const { cells } of TEMPLATES) {
    const sheet = sheetOf(cells)
    const put = paste(sheet, clippingOf(cells), cells.length)
    cells.forEach((cell, at) => {
      const twin = put[at] as Cell
      if (cell.kind === 'given' || cell.kind === 'result') {
        const [was, is] = [sheet.outcome(cell.id), sheet.outcome(twin.id)]
        expect(is.state).toBe(was.state)
        if (was.state === 'value' && is.state === 'value') expect(is.shown).toEqual(was.shown)
      }
      if (cell.kind === 'check') expect(sheet.check(twin.id).state).toBe(sheet.check(cell.id).state)
    })
  }
})

describe('a line typed by itself', () => {
  test.each([
    ['border = 10 mm', { kind: 'given', name: 'border', unit: 'mm', value: '10' }],
    ['gap = 600 mm ± 2 mm', { kind: 'given', value: '600 mm ± 2 mm' }],
    ['gap = 600 ± 2 mm', { kind: 'given', unit: 'mm', value: '600 ± 2' }],
    ['time = 1/125 s', { kind: 'given', value: '1/125 s' }],
    ['sensor=53.4x40 mm', { kind: 'given', entry: 'size', unit: 'mm', value: '53.4x40' }],
    ['? ok: a > b | Only {a}.', { kind: 'check', name: 'ok', condition: 'a > b', message: 'Only {a}.' }],
    ['half(a [mm]) [mm] = a / 2', { kind: 'function', name: 'half', arguments: [{ name: 'a', unit: 'mm' }] }],
    ['sqrt(2) * 3', { kind: 'result', name: 'sqrt', formula: 'sqrt(2) * 3' }],
    ['2 * border', { kind: 'result', name: 'result', formula: '2 * border' }],
    ['# Framing', { kind: 'note', role: 'heading', text: 'Framing' }],
  ])('%s is a cell', (text, cell) => {
    expect(readEntry(text)).toMatchObject(cell)
  })

  test.each(['and so on', 'border', 'a == 1'])('%s is none, with why', (text) => {
    expect(readEntry(text)).toMatch(/not of the form/)
  })
})

describe('what someone might put on the clipboard', () => {
  const pasted = (text: string): void => {
    const sheet = sheetOf((TEMPLATES[0] as Worksheet).cells)
    const before = sheet.cells
    try {
      const put = paste(sheet, text, 3)
      expectSound(sheet, before, put, 3)
    } catch (error) {
      if (!(error instanceof ClippingError)) throw error
      expect(error.message.length).toBeGreaterThan(20)
      expect(sheet.cells).toBe(before)
    }
    expect('polluted' in {}).toBe(false)
  }

  const CORPUS = new URL('../../hostile/corpus/', import.meta.url)
  test.each(readdirSync(CORPUS))('%s is refused with a message, or pasted soundly', (file) => {
    const text = readFileSync(new URL(file, CORPUS), 'utf8')
    pasted(text)
    pasted(text.replace('evenfield-worksheet', 'evenfield-cells'))
  })

  test.each(PAYLOADS)('%j is refused with a message, or pasted soundly', (text) => {
    pasted(text)
    pasted(`a = ${text}`)
    pasted(`${text} = a`)
  })

  test('and cases made up', () => {
    fc.assert(
      fc.property(fc.oneof(soundDocuments, hostileNames), fc.boolean(), (text, asCells) =>
        pasted(asCells ? text.replace('evenfield-worksheet', 'evenfield-cells') : text),
      ),
      { numRuns: 400 },
    )
  })
})
