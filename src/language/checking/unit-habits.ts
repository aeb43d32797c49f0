import { EVERYDAY, findUnit, unitSpellings } from '../../units/index.ts'

/** What was meant by a word after a number that is no unit. */
export interface UnitMeant {
  /** The unit, or the whole quantity, as it is written in a formula. */
  readonly quantity: string
  /** What the message names. */
  readonly written: string
}

const PREFIXES: readonly (readonly [string, string])[] = [
  ['', ''],
  ['kilo', 'k'],
  ['centi', 'c'],
  ['milli', 'm'],
  ['micro', 'µ'],
  ['nano', 'n'],
  ['mega', 'M'],
  ['giga', 'G'],
  ['tera', 'T'],
]
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/^met(?:re|er)s?$/, 'm'],
  [/^gram(?:me)?s?$/, 'g'],
  [/^(?:sec|seconds?)$/, 's'],
  [/^(?:watts?)$/, 'W'],
  [/^volts?$/, 'V'],
  [/^amp(?:ere)?s?$/, 'A'],
  [/^hertz$/, 'Hz'],
  [/^lux$/, 'lx'],
  [/^lumens?$/, 'lm'],
  [/^candelas?$/, 'cd'],
  [/^kelvins?$/, 'K'],
  [/^joules?$/, 'J'],
  [/^pascals?$/, 'Pa'],
  [/^newtons?$/, 'N'],
  [/^radians?$/, 'rad'],
  [/^ohms?$/, 'Ω'],
  [/^pixels?$/, 'px'],
  [/^bytes?$/, 'B'],
  [/^bits?$/, 'bit'],
]

/** Words in use for a unit that are not among its spellings. */
const WORDS: ReadonlyMap<string, string> = new Map([
  ...['micron', 'microns', 'mic', 'mcm'].map((word) => [word, 'µm'] as const),
  ...['hr', 'hrs'].map((word) => [word, 'h'] as const),
  ...['mins', 'mn'].map((word) => [word, 'min'] as const),
  ...['secs', 'sek'].map((word) => [word, 's'] as const),
  ['msec', 'ms'],
  ['usec', 'µs'],
  ['inchs', 'in'],
  ['ins', 'in'],
  ['pix', 'px'],
  ['pxl', 'px'],
  ...['mp', 'mpx', 'mpix', 'mpixel', 'mpixels'].map((word) => [word, 'Mpx'] as const),
  ['spi', 'ppi'],
  ...['ev', 'evs'].map((word) => [word, 'EV'] as const),
  ...['fstop', 'fstops'].map((word) => [word, 'stop'] as const),
  ...['dpcm', 'pxcm'].map((word) => [word, '[px/cm]'] as const),
  ...['ppmm', 'pxmm'].map((word) => [word, '[px/mm]'] as const),
  ['lpmm', '[lp/mm]'],
  ['lxh', '[lx h]'],
  ['klxh', '[klx h]'],
  ['mlxh', '[Mlx h]'],
  ['lxs', '[lx s]'],
  ['kmh', '[km/h]'],
  ['mph', '[mi/h]'],
  ['sqm', 'm^2'],
  ['sqmm', 'mm^2'],
  ['sqcm', 'cm^2'],
  ['sqft', 'ft^2'],
  ['sqin', 'in^2'],
  ['pct', '%'],
  ['percents', '%'],
])

const inKelvin = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9 + 273.15

/** How a figure in a unit of elsewhere is converted, and the unit that it is in then. */
type Conversion = readonly [convert: (figure: number) => number, unit: string]
const CONVERTED: ReadonlyMap<string, Conversion> = new Map<string, Conversion>([
  ...['°f', 'degf', 'fahrenheit'].map((word): [string, Conversion] => [word, [inKelvin, 'K']]),
  ['celsius', [(figure: number) => figure + 273.15, 'K']],
  ['thou', [(figure: number) => figure / 1000, 'in']],
])

/** The unit that a word in everyday use names, with the quantity to write: of a figure as typed, and its value. */
export function unitMeant(word: string, figure: string, value: number): UnitMeant | undefined {
  const plain = word.toLowerCase()
  const converted = CONVERTED.get(plain)
  if (converted) {
    const [convert, unit] = converted
    const quantity = `${Number(convert(value).toPrecision(9))} ${unit}`
    return { quantity, written: quantity }
  }
  const unit = WORDS.get(plain) ?? spelledOut(plain)
  return unit === undefined ? undefined : { quantity: `${figure} ${unit}`, written: unit }
}

/** `millimetres`, `kilowatt`: the name of a unit with the name of a prefix before it. */
function spelledOut(word: string): string | undefined {
  for (const [prefix, sign] of PREFIXES) {
    if (!word.startsWith(prefix)) continue
    const name = NAMES.find(([pattern]) => pattern.test(word.slice(prefix.length)))
    if (name && findUnit(sign + name[1])) return sign + name[1]
  }
  return undefined
}

/** Whether one letter added, left out, changed, or swapped with its neighbour makes one word of the other. */
function isOneSlip(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a]
  let start = 0
  while (start < short.length && short[start] === long[start]) start++
  let end = 0
  while (end < short.length - start && short[short.length - 1 - end] === long[long.length - 1 - end]) end++
  const left = short.slice(start, short.length - end)
  const right = long.slice(start, long.length - end)
  return right.length === 1 || (right.length === 2 && left === `${right[1]}${right[0]}`)
}

let spellings: readonly string[] | undefined

/**
 * Units a misspelt word may be, the likeliest first. A word of one or two letters is near to many units, so only those
 * in daily use are taken; a longer one must differ by a single slip.
 */
export function unitsNear(word: string): string[] {
  if (word.length > 24) return []
  const sameLetters = EVERYDAY.filter((unit) => unit.toLowerCase() === word.toLowerCase())
  if (sameLetters.length > 0) return sameLetters
  const short = word.length <= 2
  spellings ??= unitSpellings()
  const near = (short ? EVERYDAY : spellings).filter(
    (unit) =>
      Math.abs(unit.length - word.length) <= 1 &&
      (short ? unit.length > 1 || word.startsWith(unit) : unit.length > 2) &&
      isOneSlip(word, unit),
  )
  return near.slice(0, short ? 3 : 2)
}
