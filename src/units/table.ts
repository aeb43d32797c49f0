import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'

/** Which prefixes a unit takes: `si` every SI prefix, `large` kilo and up, `data` those and the binary ones. */
type Prefixes = 'si' | 'large' | 'data' | 'none'

interface UnitEntry {
  /** The symbol shown. */
  readonly symbol: string
  /** Other ways of typing it; these take no prefix. */
  readonly also?: readonly string[]
  readonly dimension: Dimension
  /** How many coherent SI units one of it is. */
  readonly factor: number
  readonly prefixes: Prefixes
  /** What is added, in coherent SI units, after scaling: the degree Celsius alone has one. */
  readonly offset?: number
}

/** A unit as found: a table entry with its prefix already in the factor. */
export interface Unit {
  readonly symbol: string
  readonly dimension: Dimension
  readonly factor: number
  readonly offset: number
}

const entry = (
  symbol: string,
  dimension: Dimension,
  factor: number,
  prefixes: Prefixes = 'none',
  more: Pick<UnitEntry, 'also' | 'offset'> = {},
): UnitEntry => ({ symbol, dimension, factor, prefixes, ...more })

const POUND = 0.45359237
const STANDARD_GRAVITY = 9.80665
const INCH = 0.0254
const FOOT = 0.3048
const DEGREE = Math.PI / 180

/**
 * Every unit, in coherent SI (m, kg, s, A, K, mol, cd, rad, px, stop, bit). Factors are exact by definition:
 * SI Brochure 9th ed. tables 2, 4, 7 and 8; NIST SP 811 appendix B for inch, pound and their kin.
 */
export const UNITS: readonly UnitEntry[] = [
  entry('m', D.LENGTH, 1, 'si'),
  entry('in', D.LENGTH, INCH, 'none', { also: ['inch', 'inches'] }),
  entry('ft', D.LENGTH, FOOT, 'none', { also: ['foot', 'feet'] }),
  entry('yd', D.LENGTH, 0.9144, 'none', { also: ['yard', 'yards'] }),
  entry('mi', D.LENGTH, 1609.344, 'none', { also: ['mile', 'miles'] }),
  entry('pt', D.LENGTH, INCH / 72, 'none', { also: ['point', 'points'] }),
  entry('mil', D.LENGTH, INCH / 1000, 'none', { also: ['mils'] }),
  entry('nmi', D.LENGTH, 1852),
  entry('g', D.MASS, 1e-3, 'si'),
  entry('t', D.MASS, 1e3, 'none', { also: ['tonne', 'tonnes'] }),
  entry('lb', D.MASS, POUND, 'none', { also: ['lbs', 'pound', 'pounds'] }),
  entry('oz', D.MASS, POUND / 16, 'none', { also: ['ounce', 'ounces'] }),
  entry('s', D.TIME, 1, 'si', { also: ['sec', 'second', 'seconds'] }),
  entry('min', D.TIME, 60, 'none', { also: ['minute', 'minutes'] }),
  entry('h', D.TIME, 3600, 'none', { also: ['hour', 'hours'] }),
  entry('d', D.TIME, 86400, 'none', { also: ['day', 'days'] }),
  entry('A', D.CURRENT, 1, 'si'),
  entry('K', D.TEMPERATURE, 1, 'si'),
  entry('°C', D.TEMPERATURE, 1, 'none', { also: ['degC'], offset: 273.15 }),
  entry('mol', D.AMOUNT, 1, 'si'),
  entry('cd', D.LUMINOUS_INTENSITY, 1, 'si'),
  entry('lm', D.LUMINOUS_FLUX, 1, 'si'),
  entry('lx', D.ILLUMINANCE, 1, 'si', { also: ['lux'] }),
  entry('fc', D.ILLUMINANCE, 1 / FOOT ** 2, 'none', { also: ['footcandle', 'footcandles'] }),
  entry('nit', D.LUMINANCE, 1, 'none', { also: ['nits'] }),
  entry('fL', D.LUMINANCE, 1 / (Math.PI * FOOT ** 2), 'none', { also: ['footlambert', 'footlamberts'] }),
  entry('rad', D.ANGLE, 1, 'si'),
  entry('°', D.ANGLE, DEGREE, 'none', { also: ['deg', 'degree', 'degrees'] }),
  entry('′', D.ANGLE, DEGREE / 60, 'none', { also: ['arcmin'] }),
  entry('″', D.ANGLE, DEGREE / 3600, 'none', { also: ['arcsec'] }),
  entry('sr', D.SOLID_ANGLE, 1, 'si'),
  entry('Hz', D.FREQUENCY, 1, 'si'),
  entry('N', D.FORCE, 1, 'si'),
  entry('Pa', D.PRESSURE, 1, 'si'),
  entry('lbf', D.FORCE, POUND * STANDARD_GRAVITY),
  entry('J', D.ENERGY, 1, 'si'),
  entry('Ws', D.ENERGY, 1, 'si'),
  entry('Wh', D.ENERGY, 3600, 'si'),
  entry('W', D.POWER, 1, 'si'),
  entry('VA', D.POWER, 1, 'si'),
  entry('V', D.VOLTAGE, 1, 'si'),
  entry('Ω', D.RESISTANCE, 1, 'si', { also: ['ohm'] }),
  entry('C', D.CHARGE, 1, 'si'),
  entry('stop', D.STOP, 1, 'none', { also: ['stops'] }),
  entry('EV', D.STOP, 1),
  entry('px', D.PIXEL, 1, 'large', { also: ['pixel', 'pixels'] }),
  entry('ppi', D.SAMPLING, 1 / INCH),
  entry('dpi', D.SAMPLING, 1 / INCH),
  entry('ppcm', D.SAMPLING, 100),
  entry('lp', D.NONE, 1),
  entry('dpt', D.RECIPROCAL_LENGTH, 1, 'none', { also: ['dioptre', 'dioptres', 'diopter', 'diopters'] }),
  entry('mired', D.RECIPROCAL_TEMPERATURE, 1e-6, 'none', { also: ['mireds'] }),
  entry('bit', D.DATA, 1, 'data', { also: ['bits'] }),
  entry('B', D.DATA, 8, 'data', { also: ['byte', 'bytes'] }),
  entry('%', D.NONE, 0.01, 'none', { also: ['percent'] }),
  entry('‰', D.NONE, 0.001, 'none', { also: ['permille'] }),
]

const SI_PREFIXES: readonly (readonly [string, number])[] = [
  ['Q', 1e30],
  ['R', 1e27],
  ['Y', 1e24],
  ['Z', 1e21],
  ['E', 1e18],
  ['P', 1e15],
  ['T', 1e12],
  ['G', 1e9],
  ['M', 1e6],
  ['k', 1e3],
  ['h', 1e2],
  ['da', 1e1],
  ['d', 1e-1],
  ['c', 1e-2],
  ['m', 1e-3],
  ['µ', 1e-6],
  ['u', 1e-6],
  ['n', 1e-9],
  ['p', 1e-12],
  ['f', 1e-15],
  ['a', 1e-18],
  ['z', 1e-21],
  ['y', 1e-24],
  ['r', 1e-27],
  ['q', 1e-30],
]

const BINARY_PREFIXES: readonly (readonly [string, number])[] = [
  ['Ki', 2 ** 10],
  ['Mi', 2 ** 20],
  ['Gi', 2 ** 30],
  ['Ti', 2 ** 40],
  ['Pi', 2 ** 50],
  ['Ei', 2 ** 60],
]

const LARGE_PREFIXES = SI_PREFIXES.filter(([, factor]) => factor >= 1e3)

const PREFIXES_OF: Record<Prefixes, readonly (readonly [string, number])[]> = {
  si: SI_PREFIXES,
  large: LARGE_PREFIXES,
  data: [...LARGE_PREFIXES, ...BINARY_PREFIXES],
  none: [],
}

/**
 * Every spelling of every unit. Exact symbols are set last, so that `min` is the minute and `cd` the candela
 * however prefixes might combine.
 */
const SPELLINGS: ReadonlyMap<string, Unit> = (() => {
  const spellings = new Map<string, Unit>()
  for (const { symbol, dimension, factor, prefixes } of UNITS)
    for (const [prefix, scale] of PREFIXES_OF[prefixes])
      spellings.set(prefix + symbol, {
        symbol: (prefix === 'u' ? 'µ' : prefix) + symbol,
        dimension,
        factor: factor * scale,
        offset: 0,
      })
  for (const { symbol, also = [], dimension, factor, offset = 0 } of UNITS)
    for (const spelling of [symbol, ...also]) spellings.set(spelling, { symbol, dimension, factor, offset })
  return spellings
})()

/** One character for each sign that Unicode encodes twice: micro, ohm, kelvin and degree Celsius. */
export const sameSigns = (text: string): string =>
  text
    .replace(/\u03bc/g, 'µ')
    .replace(/\u2126/g, 'Ω')
    .replace(/\u212a/g, 'K')
    .replace(/\u2103/g, '°C')

/** The unit a spelling names, its prefix counted in. */
export function findUnit(spelling: string): Unit | undefined {
  return SPELLINGS.get(sameSigns(spelling))
}

/** Units used every day at a copy stand, the most likely ones to be mistyped. */
export const EVERYDAY: readonly string[] = [
  'mm',
  'cm',
  'm',
  'in',
  'ft',
  'µm',
  's',
  'min',
  'h',
  'ms',
  'ppi',
  'px',
  'stop',
  'EV',
  'lx',
  'K',
  'W',
  'kg',
  'MB',
  'GB',
]

/** Every spelling, the everyday ones first: for completion and for finding the nearest to a misspelt one. */
export const unitSpellings = (): string[] => [...new Set([...EVERYDAY, ...unitSymbols(), ...SPELLINGS.keys()])]

/** The plain symbols, without prefixes, in the table's order. */
export const unitSymbols = (): string[] => UNITS.map(({ symbol }) => symbol)
