import Papa from 'papaparse'
import * as words from './words.ts'

/** Tables as text, as programs exchange them: what is read or written here knows nothing of columns. */

/** Why a table cannot be read: what is wrong, where, and what to do. */
export class TableError extends Error {
  override readonly name = 'TableError'
}

export type Separator = ',' | ';' | '\t'

export interface TextTable {
  readonly rows: readonly (readonly string[])[]
  readonly separator: Separator
}

/** In characters; a longer text is refused before it is parsed. */
export const MAX_TABLE_LENGTH = 50_000_000

/** Text is UTF-8, or UTF-16 with a byte order mark; older programs write Windows-1252. Throws TableError. */
export function decodeTable(bytes: Uint8Array): string {
  const [first, second, third, fourth] = bytes
  // A workbook is an archive; a heading may well begin with the same two letters.
  if (first === 0x50 && second === 0x4b && third === 3 && fourth === 4) throw new TableError(words.workbook)
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

const SEPARATORS: readonly Separator[] = ['\t', ';', ',']
/** So much of a table is looked at to find what separates its fields. */
const SAMPLE_LENGTH = 50_000
const SAMPLE_ROWS = 50

export interface Reading {
  /** What separates the fields, where that is known; else it is found. */
  readonly separator?: Separator
  /** The most lines that are read; a longer table is refused. */
  readonly most?: number
}

const MOST_LINES = 1_000_000

/** Reads a table from text: fields separated by commas, semicolons or tabs, some in quotes. Throws TableError. */
export function readTable(text: string, { separator: known, most = MOST_LINES }: Reading = {}): TextTable {
  if (text.length > MAX_TABLE_LENGTH) throw new TableError(words.tooLarge(MAX_TABLE_LENGTH / 1e6))
  const plain = text.replace(/^\ufeff/, '')
  if (plain.trim() === '') throw new TableError(words.noTable)
  const separator = known ?? separatorOf(plain)
  // Reading one line more than the limit shows whether there are too many.
  const rows = parse(plain, separator, most + 2)
  // The end of the last line starts no further row.
  if (/[\r\n]$/.test(plain) && isEmptyRow(rows.at(-1))) rows.pop()
  if (rows.length > most) throw new TableError(words.tooManyLines(most))
  return { rows, separator }
}

/** What a spreadsheet would compute as a formula when the file is opened there, with a quote or several before it. */
const FORMULA = /^'*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/
const QUOTED_FORMULA = /^'+[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/
const PLAIN_NUMBER = /^[+-]?\d+([.,]\d+)?(e[+-]?\d+)?$/i

/** A field no spreadsheet computes: a quote before it makes it text there. `asWritten` takes the quote away again. */
const harmless = (field: string): string => (FORMULA.test(field) && !PLAIN_NUMBER.test(field) ? `'${field}` : field)
const asWritten = (field: string): string => (QUOTED_FORMULA.test(field) ? field.slice(1) : field)

/** A table as text after RFC 4180; a field is quoted where it would else be read otherwise. */
export function writeTable(rows: readonly (readonly string[])[], separator: Separator = ','): string {
  return rows.map((row) => `${row.map((field) => quoted(harmless(field), row.length)).join(separator)}\r\n`).join('')
}

/** Other separators too: the program that reads the file guesses what separates the fields. */
const NEEDS_QUOTES = /["\r\n,;\t\ufeff]|^\s|\s$/

const quoted = (field: string, width: number): string =>
  NEEDS_QUOTES.test(field) || (field === '' && width === 1) ? `"${field.replaceAll('"', '""')}"` : field

const isEmptyRow = (row: readonly string[] | undefined): boolean => row?.length === 1 && row[0] === ''

const parse = (text: string, delimiter: Separator, preview: number): string[][] =>
  Papa.parse<string[]>(text, { delimiter, preview, header: false, skipEmptyLines: false }).data.map((row) =>
    row.map(asWritten),
  )

interface Sample {
  readonly separator: Separator
  /** Fields in most rows. */
  readonly width: number
  /** Rows of another width. */
  readonly odd: number
}

/** A field in quotes, with any separator. */
const IN_QUOTES = /(?<=^|[,;\t\r\n])"(?:[^"]|"")*"(?=[,;\t\r\n]|$)/g
/** Commas between digits are decimal commas: they separate nothing. */
const OTHER_COMMA = /(?<!\d),|,(?!\d)/

function separatorOf(text: string): Separator {
  const lines = text
    .slice(0, SAMPLE_LENGTH)
    .replace(IN_QUOTES, '')
    .split(/\r\n|\r|\n/)
    .slice(0, SAMPLE_ROWS)
  // The last line may be cut, and a blank one is none.
  const whole = lines.filter((line, at) => line !== '' && (at < lines.length - 1 || text.length <= SAMPLE_LENGTH))
  const samples = SEPARATORS.map((separator) => sampleOf(whole, separator)).filter(({ width }) => width > 1)
  const least = Math.min(...samples.map(({ odd }) => odd))
  const [first, second] = samples.filter(({ odd }) => odd === least)
  if (!first) return ','
  const parts = whole.flatMap((line) => line.split(';'))
  return first.separator === ';' && second && parts.some((part) => OTHER_COMMA.test(part)) ? ',' : first.separator
}

function sampleOf(lines: readonly string[], separator: Separator): Sample {
  const widths = new Map<number, number>()
  for (const line of lines) {
    const width = line.split(separator).length
    widths.set(width, (widths.get(width) ?? 0) + 1)
  }
  const [width, ofThatWidth] = [...widths].reduce((a, b) => (b[1] > a[1] ? b : a), [0, 0])
  return { separator, width, odd: lines.length - ofThatWidth }
}
