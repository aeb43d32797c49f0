import type { Dimension } from './dimension.ts'
import * as D from './dimension.ts'
import { type CompoundUnit, readUnit } from './unit-text.ts'

/** How the trade writes some numbers instead of with a unit behind them. */
export type Notation = 'f-number' | 'ratio' | 'shutter'

/** What a cell declares as its unit: a unit, or one of the trade's ways of writing (`f/`, `1:`, `1/ s`). */
export interface DisplayUnit extends CompoundUnit {
  readonly notation?: Notation
}

const plain = (dimension: Dimension, symbol: string): CompoundUnit => ({ dimension, factor: 1, offset: 0, symbol })

const NOTATIONS: ReadonlyMap<string, DisplayUnit> = new Map<string, DisplayUnit>([
  ['f/', { ...plain(D.NONE, ''), notation: 'f-number' }],
  ['1:', { ...plain(D.NONE, ''), notation: 'ratio' }],
  ['1/ s', { ...plain(D.TIME, 's'), notation: 'shutter' }],
  ['', plain(D.NONE, '')],
  ['1', plain(D.NONE, '')],
])

/** Reads a cell's declared unit. Throws UnitTextError. */
export const readDisplayUnit = (text: string): DisplayUnit => NOTATIONS.get(text.trim()) ?? readUnit(text)

/** The units a dimension is shown in when none is declared, from the largest down: the first that leaves a figure of at least 1. */
const DEFAULTS: ReadonlyMap<Dimension, readonly (readonly [symbol: string, from: number])[]> = new Map([
  [
    D.LENGTH,
    [
      ['m', 10],
      ['mm', 0.1e-3],
      ['µm', 0.1e-6],
      ['nm', 0],
    ],
  ],
  [
    D.AREA,
    [
      ['m²', 0.1],
      ['cm²', 1e-4],
      ['mm²', 0],
    ],
  ],
  [
    D.TIME,
    [
      ['d', 3 * 86400],
      ['h', 2 * 3600],
      ['min', 120],
      ['s', 0.1],
      ['ms', 0],
    ],
  ],
  [
    D.MASS,
    [
      ['kg', 1],
      ['g', 0],
    ],
  ],
  [
    D.LIGHT_DOSE,
    [
      ['lx h', 360],
      ['lx s', 0],
    ],
  ],
  [
    D.RECIPROCAL_LENGTH,
    [
      ['1/mm', 100],
      ['dpt', 0],
    ],
  ],
  [
    D.DATA,
    [
      ['TB', 8e12],
      ['GB', 8e9],
      ['MB', 8e6],
      ['kB', 8e3],
      ['B', 8],
      ['bit', 0],
    ],
  ],
  [
    D.DATA_RATE,
    [
      ['MB/s', 8e6],
      ['kB/s', 0],
    ],
  ],
  [
    D.ENERGY,
    [
      ['kWh', 3.6e6],
      ['J', 0],
    ],
  ],
  [
    D.POWER,
    [
      ['kW', 1e4],
      ['W', 0],
    ],
  ],
] as const)

const SI_SYMBOLS = ['m', 'kg', 's', 'A', 'K', 'mol', 'cd', 'rad', 'stop', 'px', 'bit']
/** Those that one unit serves at any size; any other is spelt out in SI. */
const NAMED: ReadonlyMap<Dimension, string> = new Map(
  ['N', 'Pa', 'V', 'Ω', 'C', 'Hz', 'lm', 'lx', 'cd/m²', 'W/m²', 'W/(m² K)', 'sr', '°', 'ppi', 'µm/px', 'mired'].map(
    (symbol) => [readUnit(symbol).dimension, symbol],
  ),
)

/** Zero suggests no size: where a dimension has several units, it is shown in the everyday one. */
const ZEROS: ReadonlyMap<Dimension, string> = new Map([
  [D.LENGTH, 'mm'],
  [D.AREA, 'cm²'],
  [D.TIME, 's'],
  [D.MASS, 'kg'],
  [D.LIGHT_DOSE, 'lx h'],
  [D.RECIPROCAL_LENGTH, 'dpt'],
  [D.DATA, 'MB'],
  [D.DATA_RATE, 'MB/s'],
  [D.ENERGY, 'J'],
  [D.POWER, 'W'],
])

/** The unit for a value whose cell declares none. */
export function defaultUnit(value: number, dimension: Dimension): DisplayUnit {
  if (dimension === D.NONE) return plain(D.NONE, '')
  const choices = DEFAULTS.get(dimension)
  if (choices) {
    const size = Math.abs(value)
    const zero = size === 0 ? ZEROS.get(dimension) : undefined
    // What is no number at all takes the first.
    const [symbol] = choices.find(([, from]) => !(size < from * (1 - 1e-12))) as readonly [string, number]
    return readUnit(zero ?? symbol)
  }
  const named = NAMED.get(dimension)
  if (named) return readUnit(named)
  return coherent(dimension)
}

/** The coherent SI unit of any dimension, spelt out. Fractional powers are shown with a decimal point. */
function coherent(dimension: Dimension): DisplayUnit {
  const part = (e: number, symbol: string): string => (e === 1 ? symbol : `${symbol}^${+e.toFixed(3)}`)
  const above = dimension.exponents.flatMap((e, i) => (e > 0 ? [part(e, SI_SYMBOLS[i] as string)] : []))
  const below = dimension.exponents.flatMap((e, i) => (e < 0 ? [part(-e, SI_SYMBOLS[i] as string)] : []))
  const whole = dimension.exponents.every(Number.isInteger)
  const lower = below.length > 1 ? `(${below.join(' ')})` : below.join('')
  const text = below.length > 0 ? `${above.join(' ') || '1'}/${lower}` : above.join(' ')
  return whole ? readUnit(text) : plain(dimension, text)
}
