import { describe, expect, test } from 'vitest'
import { findUnit, readUnit, UNITS, unitSpellings } from '../../src/units/index.ts'
import './ratio-matcher.ts'
import { BINARY_PREFIXES, byMathjs, byQuantities, prefixFactor, REFERENCES, SI_PREFIXES } from './references.ts'

const PREFIXES = [...Object.keys(SI_PREFIXES), ...Object.keys(BINARY_PREFIXES)]

interface Spelt {
  readonly spelling: string
  readonly symbol: string
  readonly prefix: string
}

/** What each spelling should mean, worked out apart from the table's own map: a whole symbol before a prefixed one. */
function meaningOf(spelling: string): Spelt[] {
  const whole = UNITS.filter(({ symbol, also }) => symbol === spelling || also?.includes(spelling))
  if (whole.length > 0) return whole.map(({ symbol }) => ({ spelling, symbol, prefix: '' }))
  return PREFIXES.filter((prefix) => spelling.startsWith(prefix)).flatMap((prefix) =>
    UNITS.filter(({ symbol, prefixes }) => prefixes !== 'none' && prefix + symbol === spelling).map(({ symbol }) => ({
      spelling,
      symbol,
      prefix,
    })),
  )
}

const closeTo = (expected: number, found: number, within: number): boolean =>
  Math.abs(found - expected) <= within * Math.abs(expected)

/** 1 of a unit in coherent SI, its offset counted in, as the libraries give it. */
const oneOf = (spelling: string): number => {
  const { factor, offset } = findUnit(spelling) as { factor: number; offset: number }
  return factor + offset
}

test('every unit in the table has a reference, and every reference a unit', () => {
  expect(Object.keys(REFERENCES).sort()).toEqual(UNITS.map(({ symbol }) => symbol).sort())
})

test('no spelling has two meanings', () => {
  expect(unitSpellings().filter((spelling) => meaningOf(spelling).length !== 1)).toEqual([])
})

test('a prefixed symbol gives way to a whole one only where that is known: the exavolt to the exposure value', () => {
  const hidden = UNITS.filter(({ prefixes }) => prefixes !== 'none').flatMap(({ symbol }) =>
    PREFIXES.filter((prefix) => UNITS.some((unit) => unit.symbol === prefix + symbol)).map((prefix) => prefix + symbol),
  )
  expect(hidden).toEqual(['EV'])
})

describe('each unit is', () => {
  for (const { symbol } of UNITS) {
    const reference = REFERENCES[symbol]
    test(`${symbol}: what a reference library or its definition says`, () => {
      const found = oneOf(symbol)
      const [mathjs, quantities] = [byMathjs(reference ?? {}), byQuantities(reference ?? {})]
      // A name in the table above that a library does not know would check nothing.
      expect(mathjs === undefined).toBe(reference?.mathjs === undefined)
      expect(quantities === undefined).toBe(reference?.quantities === undefined)
      const definition = reference?.definition?.[0]
      expect([mathjs, quantities, definition].some((value) => value !== undefined)).toBe(true)
      if (mathjs !== undefined) expect(found).toBeCloseToRatio(mathjs, 1e-15)
      // js-quantities holds the ounce and the pound-force to seven figures.
      if (quantities !== undefined) expect(found).toBeCloseToRatio(quantities, 1e-7)
      if (definition !== undefined) expect(found).toBeCloseToRatio(definition, 1e-15)
    })
  }
})

test('every spelling with a prefix is what a reference library says, or the prefix by its definition times the unit', () => {
  const wrong: string[] = []
  let byLibrary = 0
  for (const spelling of unitSpellings()) {
    const [{ symbol, prefix }] = meaningOf(spelling) as [Spelt]
    if (prefix === '') continue
    const reference = REFERENCES[symbol] ?? {}
    const { factor, offset } = findUnit(spelling) as { factor: number; offset: number }
    const libraries = [byMathjs(reference, prefix), byQuantities(reference, prefix)].filter((v) => v !== undefined)
    const expected = [...libraries, (prefixFactor(prefix) ?? Number.NaN) * (findUnit(symbol)?.factor ?? Number.NaN)]
    if (libraries.length > 0) byLibrary++
    if (offset !== 0 || !expected.every((value) => closeTo(value, factor, 1e-12))) wrong.push(`${spelling} ${expected}`)
  }
  expect(wrong).toEqual([])
  // Were the libraries' names for the prefixes to change, the test would go on without them.
  expect(byLibrary).toBeGreaterThan(500)
})

test('other ways of typing a unit mean the same as its symbol', () => {
  for (const { symbol, also = [] } of UNITS)
    for (const spelling of also) expect(findUnit(spelling), spelling).toEqual(findUnit(symbol))
})

test('the signs that Unicode holds twice are one', () => {
  expect(findUnit('\u03bcm')).toEqual(findUnit('µm'))
  expect(findUnit('um')).toEqual(findUnit('µm'))
  expect(findUnit('\u2126')).toEqual(findUnit('Ω'))
  expect(findUnit('\u212a')).toEqual(findUnit('K'))
  expect(findUnit('\u2103')).toEqual(findUnit('°C'))
})

test.each([
  [0, 273.15],
  [100, 373.15],
  [-273.15, 0],
])('%d °C is %d K (SI Brochure, 9th ed., 2.3.1)', (celsius, kelvin) => {
  const unit = readUnit('°C')
  expect(celsius * unit.factor + unit.offset).toBeCloseTo(kelvin, 12)
})

test.each([
  ['lx h', 3600],
  ['cd/m^2', 1],
  ['cd/m²', 1],
  ['W/(m² K)', 1],
  ['µm/px', 1e-6],
  ['lp/mm', 1000],
  ['km/h', 1 / 3.6],
  ['MB/s', 8e6],
  ['1/m', 1],
  ['m⁻¹', 1],
  ['kg m/s^2', 1],
  ['mm^2', 1e-6],
  ['in³', 0.0254 ** 3],
])('the compound %s is %d coherent SI', (text, factor) => {
  expect(readUnit(text).factor).toBeCloseToRatio(factor, 1e-14)
})

test.each([
  ['lm', 'cd sr'],
  ['lx', 'lm/m^2'],
  ['nit', 'cd/m^2'],
  ['J', 'N m'],
  ['W', 'J/s'],
  ['V', 'W/A'],
  ['Ω', 'V/A'],
  ['C', 'A s'],
  ['Pa', 'N/m^2'],
  ['Hz', '1/s'],
  ['dpt', '1/m'],
  ['mired', '1/MK'],
  ['ppi', 'px/in'],
  ['sr', 'rad^2'],
  ['Ws', 'J'],
  ['kWh', 'kW h'],
  ['B', 'bit'],
])('%s has the dimension of %s', (one, other) => {
  expect(readUnit(one).dimension).toBe(readUnit(other).dimension)
})

test.each([
  ['lx', 'cd/m^2'],
  ['stop', '%'],
  ['px', '%'],
  ['rad', '%'],
  ['ppi', '1/in'],
  ['mired', 'K'],
])('%s does not have the dimension of %s', (one, other) => {
  expect(readUnit(one).dimension).not.toBe(readUnit(other).dimension)
})
