import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import {
  applyFix,
  checkFormula,
  list,
  number,
  record,
  type Scope,
  TEXT,
  type Type,
  YES_NO,
} from '../../src/language/index.ts'
import { ILLUMINANCE, LENGTH, NONE, TIME } from '../../src/units/index.ts'

const CELLS: Readonly<Record<string, Type | 'unknown'>> = {
  x: number(NONE),
  broken: 'unknown',
  width: number(LENGTH),
  play: number(LENGTH),
  wait: number(TIME),
  lit: YES_NO,
  profile: TEXT,
  sensor: record('size', { width: number(LENGTH), height: number(LENGTH) }),
}

const scopeOf = (cells: Readonly<Record<string, Type | 'unknown'>>, more: Partial<Scope> = {}): Scope => ({
  library: LIBRARY,
  typeOf: (name) => cells[name],
  names: () => Object.keys(cells),
  ...more,
})

/** What is said of each `?`, and the formulas that its fixes make. */
const asked = (text: string, scope = scopeOf(CELLS)): readonly (readonly [string, readonly string[]])[] =>
  checkFormula(text, scope)
    .diagnostics.filter(({ message }) => message.startsWith('Here '))
    .map(({ message, from, to, fixes }) => {
      expect(text.slice(from, to)).toBe('?')
      return [message, fixes.map((fix) => applyFix(text, fix))]
    })

describe('a question mark stands for a value, and says which', () => {
  test.each([
    ['? + width', 'a length', ['width + width', 'play + width', 'sensor.width + width', 'sensor.height + width']],
    [
      'max(width, ?)',
      'a length or a list, each a length',
      ['max(width, width)', 'max(width, play)', 'max(width, sensor.width)', 'max(width, sensor.height)'],
    ],
    ['wait - ? > 1 s', 'a time', ['wait - wait > 1 s']],
    ['width * (? + 2 s)', 'a time', ['width * (wait + 2 s)']],
    ['2 + ?', 'a plain number', ['2 + x']],
    ['? and yes', 'yes or no', ['lit and yes']],
    ['when(?, 1, 2)', 'yes or no', ['when(lit, 1, 2)']],
    ['profile = ?', 'text', ['profile = profile']],
    ['?.width', 'a size', ['sensor.width']],
    ['width ± ?', 'a length', ['width ± width', 'width ± play', 'width ± sensor.width', 'width ± sensor.height']],
  ] as const)('%s', (text, kind, fixes) => {
    const named = fixes.map((fixed) =>
      fixed.slice(text.indexOf('?'), fixed.length - (text.length - text.indexOf('?') - 1)),
    )
    const cells = named.length > 1 ? `${named.slice(0, -1).join(', ')} and ${named.at(-1)}` : named[0]
    expect(asked(text)).toEqual([[`Here ${kind} is required. In this sheet: ${cells}.`, fixes]])
  })

  test('any quantity, of which the first eight cells are offered', () => {
    expect(asked('sqrt(?)')).toEqual([
      [
        'Here a number or a quantity is required. In this sheet: x, width, play, wait, sensor.width and sensor.height.',
        ['sqrt(x)', 'sqrt(width)', 'sqrt(play)', 'sqrt(wait)', 'sqrt(sensor.width)', 'sqrt(sensor.height)'],
      ],
    ])
    const many = Object.fromEntries(Array.from({ length: 11 }, (_, i) => [`c${i}`, number(NONE)]))
    const [[message, fixes] = ['', []]] = asked('sqrt(?)', scopeOf(many))
    expect(message).toMatch(/In this sheet: c0, c1, c2, c3, c4, c5, c6, c7 and 3 more\.$/)
    expect(fixes).toHaveLength(8)
    const eight = scopeOf(Object.fromEntries(Object.entries(many).slice(0, 8)))
    expect(asked('sqrt(?)', eight)[0]?.[0]).toMatch(/: c0, c1, c2, c3, c4, c5, c6 and c7\.$/)
  })

  test('a value of any kind, where every kind does', () => {
    const cells = 'x, width, play, wait, lit, profile, sensor'
    expect(asked('count(?)')[0]?.[0]).toBe(
      `Here a value of any kind is required. In this sheet: ${cells.replace(/, (?=\w+$)/, ' and ')}.`,
    )
    expect(asked('mean(?)')[0]?.[0]).toMatch(/^Here a number or a quantity or a list is required\./)
    expect(asked('?')[0]?.[0]).toMatch(/^Here a number or a quantity, yes or no, text or a size is required\./)
  })

  test('also where the sheet has no such cell, or where nothing can be said of it', () => {
    expect(asked('? + 1 [lx]')).toEqual([['Here an illuminance is required. No cell of this sheet fits.', []]])
    expect(asked('? + 1 [lx] + 1 s')).toEqual([['Here a value of any kind is required.', []]])
    expect(asked('? + nothing')).toEqual([['Here a value of any kind is required.', []]])
    expect(asked('(? + 1', scopeOf(CELLS))).toEqual([])
  })

  test('in the unit that the cell of the formula has', () => {
    const inLengths = scopeOf(CELLS, { declared: LENGTH })
    expect(asked('?', inLengths)[0]?.[0]).toBe(
      'Here a length is required. In this sheet: width, play, sensor.width and sensor.height.',
    )
    expect(asked('? * 1 mm', inLengths)[0]?.[0]).toBe('Here a plain number is required. In this sheet: x.')
    expect(asked('? / 1 s', scopeOf(CELLS, { declared: LENGTH.over(TIME) }))[0]?.[1]).toEqual([
      'width / 1 s',
      'play / 1 s',
      'sensor.width / 1 s',
      'sensor.height / 1 s',
    ])
    expect(asked('? = 3', inLengths)).toEqual([['Here a value of any kind is required.', []]])
  })

  test('a list where single values do not do, and both where the result is one', () => {
    const lists = scopeOf({
      widths: list(number(LENGTH)),
      words: list(TEXT),
      width: number(LENGTH),
      sizes: list(record('size', {})),
    })
    expect(asked('sum(?)', lists)[0]).toEqual([
      'Here a number or a quantity or a list is required. In this sheet: widths and width.',
      ['sum(widths)', 'sum(width)'],
    ])
    expect(asked('? + width', lists)[0]).toEqual([
      'Here a length is required. In this sheet: width.',
      ['width + width'],
    ])
    expect(asked('? + widths', lists)[0]?.[1]).toEqual(['widths + widths', 'width + widths'])
    expect(asked('sum(? + widths)', lists)[0]).toMatchObject({ 1: ['sum(widths + widths)', 'sum(width + widths)'] })
    expect(asked('item(words, 1) = item(?, 1)', lists)[0]?.[1]).toEqual(['item(words, 1) = item(words, 1)'])
  })

  test('each of several, with the others still open', () => {
    expect(asked('(? + width) * (? + 1 s)')).toEqual([
      [
        expect.stringMatching(/^Here a length or a list, each a length is required\. In this sheet: width, play, /),
        expect.arrayContaining(['(play + width) * (? + 1 s)']),
      ],
      ['Here a time or a list, each a time is required. In this sheet: wait.', ['(? + width) * (wait + 1 s)']],
    ])
    const eight = `max(1 s, ${Array(8).fill('?').join(', ')})`
    expect(new Set(asked(eight).map(([message]) => message))).toEqual(
      new Set(['Here a time or a list, each a time is required. In this sheet: wait.']),
    )
    const nine = `max(1 s, ${Array(9).fill('?').join(', ')})`
    expect(asked(nine)).toEqual(Array(9).fill(['Here a value of any kind is required.', []]))
  })

  test('and nothing of it where it is only asked whether a formula is sound', () => {
    expect(asked('? + width', scopeOf(CELLS, { isDraft: true }))).toEqual([
      ['Here a value of any kind is required.', []],
    ])
  })

  test('with the first four hundred cells of a large sheet', () => {
    const large: Record<string, Type> = Object.fromEntries(
      Array.from({ length: 399 }, (_, i) => [`c${i}`, number(TIME)]),
    )
    large.last = number(ILLUMINANCE)
    large.beyond = number(ILLUMINANCE)
    large.far = record('far', {})
    expect(asked('? + 1 [lx]', scopeOf(large))).toEqual([
      ['Here an illuminance is required. In this sheet: last.', ['last + 1 [lx]']],
    ])
    expect(asked('count(?)', scopeOf(large))[0]?.[0]).toMatch(/^Here a value of any kind is required/)
    expect(asked('item(?, 1).x + 1', scopeOf(large))).toEqual([['Here a value of any kind is required.', []]])
  })
})
