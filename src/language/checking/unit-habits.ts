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
  ...['micron', 'microns', 'mic', 'mcm', 'um'].map((word) => [word, 'µm'] as const),
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
  ...['fstop', 'fstops', 'f-stop', 'f-stops'].map((word) => [word, 'stop'] as const),
  ...['ppcm', 'dpcm', 'pxcm'].map((word) => [word, '[px/cm]'] as const),
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
  ['dioptres', 'dpt'],
  ['pct', '%'],
  ['percents', '%'],
])

/** Units of elsewhere, as a quantity in the units of the language. */
const CONVERTED: ReadonlyMap<string, (figure: number) => number> = new Map([
  // 1 fc is 1 lm/ft², and a foot 0.3048 m exactly.
  ['fc', (figure: number) => figure / 0.3048 ** 2],
  ['footcandle', (figure: number) => figure / 0.3048 ** 2],
  ['footcandles', (figure: number) => figure / 0.3048 ** 2],
  ['°f', (figure: number) => ((figure - 32) * 5) / 9 + 273.15],
  ['degf', (figure: number) => ((figure - 32) * 5) / 9 + 273.15],
  ['fahrenheit', (figure: number) => ((figure - 32) * 5) / 9 + 273.15],
  ['celsius', (figure: number) => figure + 273.15],
  ['thou', (figure: number) => figure / 1000],
  ['mil', (figure: number) => figure / 1000],
  ['mils', (figure: number) => figure / 1000],
])
const CONVERTED_UNIT: Readonly<Record<string, string>> = { f: 'lx', t: 'in', m: 'in', '°': 'K', d: 'K', c: 'K' }
const convertedUnit = (word: string): string =>
  word === 'fahrenheit' ? 'K' : (CONVERTED_UNIT[word[0] as string] as string)

/** The unit that a word in everyday use names, with the quantity to write. */
export function unitMeant(word: string, figure: string): UnitMeant | undefined {
  const plain = word.toLowerCase()
  const convert = CONVERTED.get(plain)
  if (convert) {
    const quantity = `${Number(convert(Number(figure)).toPrecision(9))} ${convertedUnit(plain)}`
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
  if (left.length + right.length === 0) return false
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
