import { typedUnit } from '../analysis/typed-unit.ts'
import { readGiven } from '../document/read-given.ts'
import { FORMAT, NAME_PATTERN, VERSION } from '../format/format.ts'
import type { Cell, Check, FunctionCell, Given, Note, Result } from '../schema/document.ts'
import { DocumentError, readData } from '../schema/read-document.ts'
import * as words from './words.ts'

/**
 * Cells as lines of text, one a line:
 *
 * | line | cell |
 * |---|---|
 * | `# Framing` | a heading |
 * | `> Measured on the copy.` | a note |
 * | `! Keep the lamps away.` | a caution |
 * | `Width of the page \| page [mm] = 420` | a given, its label before the bar |
 * | `sensor [mm] = 53.4 x 40` | a given that holds a size |
 * | `light = {daylight, tungsten} daylight` | a given that is chosen |
 * | `glossy = yes`, `client = "Ferry Lane"`, `day = 2026-11-25` | a given: yes or no, text, a date |
 * | `distance [mm] = focal * 2` | a result |
 * | `half(length [mm]) [mm] = length / 2 \| Half a length. \| half(4 mm) gives 2 mm` | a function: what it is, and its worked examples |
 * | `? fits: distance < 1 m \| Too far. \| Near enough.` | a check: what it says when it fails, and when it passes |
 */
export interface Lines {
  readonly cells: readonly Cell[]
  /** The lines that are none of these, each with why. */
  readonly leftOut: readonly { readonly line: number; readonly text: string; readonly why: string }[]
}

const FIGURE = /^(?:(.*?)\s*\|\s*)?([A-Za-z]\w*)\s*(?:\[([^[\]]*)\]\s*)?=(?!=)\s*(.*)$/
const FUNCTION =
  /^(?:([^|(]*?)\s*\|\s*)?([A-Za-z]\w*)\s*\(([^()]*)\)\s*(?:\[([^[\]]*)\]\s*)?=(?!=)\s*([^|]*?)\s*(?:\|\s*(.*))?$/
const ARGUMENT = /^([A-Za-z]\w*)\s*(?:\[([^[\]]*)\])?$/
const EXAMPLE = /^(.*\S)\s+gives\s+(.*)$/
const CHECK = /^\?\s*(?:([^:|]*?)\s*\|\s*)?([A-Za-z]\w*)\s*:\s*([^|]*?)\s*(?:\|\s*([^|]*?)\s*)?(?:\|\s*([^|]*?)\s*)?$/
const NOTE = /^([#!>])\s*(.*)$/
const ROLES: Readonly<Record<string, Note['role']>> = { '#': 'heading', '!': 'caution', '>': 'prose' }
const CHOICE = /^\{([^{}"]*)\}\s*(.*)$/

/** Reads cells from lines; a line that is none is left out, with its number and why. */
export function readLines(text: string): Lines {
  const cells: Cell[] = []
  const leftOut: Lines['leftOut'][number][] = []
  text.split(/\r?\n/).forEach((typed, at) => {
    const line = typed.trim()
    if (line === '') return
    const cell = cellOfLine(line, `${at + 1}`)
    const why = cell ? refused(cell) : words.notALine
    if (cell && why === undefined) cells.push(cell)
    else leftOut.push({ line: at + 1, text: line, why: why ?? '' })
  })
  return { cells, leftOut }
}

/** The cell of a line typed by itself: of one of these kinds, or a result named after the function its formula calls; else why it is none. */
export function readEntry(text: string): Cell | string {
  const line = text.trim()
  const call = /^([A-Za-z]\w*)\s*\(/.exec(line)?.[1]
  const isFormula = call !== undefined || /^[-+(]*\.?\d/.test(line)
  const cell =
    cellOfLine(line, '1') ??
    (isFormula ? ({ kind: 'result', id: '1', name: call ?? 'result', formula: line } satisfies Result) : undefined)
  return cell ? (refused(cell) ?? withUnit(cell)) : words.notALine
}

/** A given takes the unit typed with its figures as its own, so that bare figures typed later are in it. */
function withUnit(cell: Cell): Cell {
  if (cell.kind !== 'given' || cell.unit !== undefined || (cell.entry && cell.entry !== 'size')) return cell
  const typed = typedUnit(cell.value)
  return typed ? { ...cell, unit: typed.unit, value: typed.figures } : cell
}

/** Why the format does not take a cell. */
function refused(cell: Cell): string | undefined {
  try {
    readData({ format: FORMAT, version: VERSION, title: '', cells: [cell] })
    return undefined
  } catch (error) {
    if (!(error instanceof DocumentError)) throw error
    return error.message
  }
}

function cellOfLine(line: string, id: string): Cell | undefined {
  const [, sign, words] = NOTE.exec(line) ?? []
  if (sign !== undefined) {
    const role = ROLES[sign]
    return { kind: 'note', id, text: words ?? '', ...(role === 'prose' ? {} : { role }) }
  }
  const [, checkLabel, checkName, condition, message, passes] = CHECK.exec(line) ?? []
  if (checkName !== undefined) {
    const more = { ...(checkLabel ? { label: checkLabel } : {}), ...(passes ? { passes } : {}) }
    return { kind: 'check', id, name: checkName, ...more, condition: condition ?? '', message: message ?? '' } as Check
  }
  const own = functionOf(line, id)
  if (own) return own
  const [, label, name, unit, value] = FIGURE.exec(line) ?? []
  if (name === undefined || value === undefined || !NAME_PATTERN.test(name)) return undefined
  const head = { id, name, ...(label ? { label } : {}), ...(unit?.trim() ? { unit: unit.trim() } : {}) }
  return figureOf(head, value.trim())
}

/** A function with its arguments, and what is said of it: worked examples, and what it computes. */
function functionOf(line: string, id: string): FunctionCell | undefined {
  const [, label, name, list, unit, formula, said = ''] = FUNCTION.exec(line) ?? []
  if (name === undefined || formula === undefined || !NAME_PATTERN.test(name)) return undefined
  const written = (list ?? '').split(',').map((one) => one.trim())
  const args = (written.join('') === '' ? [] : written).map((one) => ARGUMENT.exec(one))
  if (args.includes(null)) return undefined
  const parts = said.split('|').map((one) => one.trim())
  const examples = parts.flatMap((one) => {
    const [, call, gives] = EXAMPLE.exec(one) ?? []
    return call !== undefined && gives !== undefined ? [{ formula: call, gives }] : []
  })
  const about = parts.find((one) => one !== '' && !EXAMPLE.test(one))
  return {
    kind: 'function',
    id,
    name,
    ...(label ? { label } : {}),
    ...(about ? { about } : {}),
    arguments: args.map((one) => ({ name: one?.[1] ?? '', ...(one?.[2] ? { unit: one[2].trim() } : {}) })),
    ...(unit?.trim() ? { unit: unit.trim() } : {}),
    formula,
    ...(examples.length > 0 ? { examples } : {}),
  }
}

type Head = Pick<Given, 'id' | 'name' | 'label' | 'unit'>

/** A given where what is written is a value of some kind; else a result. */
function figureOf(head: Head, value: string): Given | Result {
  const given = (entry: Given['entry'], text = value, more: Partial<Given> = {}): Given => ({
    kind: 'given',
    ...head,
    ...(entry === 'quantity' ? {} : { entry }),
    value: text,
    ...more,
  })
  if (value === '') return given('quantity')
  if (/^(?:yes|no)$/i.test(value)) return given('yes or no', value.toLowerCase())
  const quoted = /^"([^"]*)"$/.exec(value)?.[1]
  if (quoted !== undefined) return given('text', quoted)
  const [, options, chosen] = CHOICE.exec(value) ?? []
  if (options !== undefined && isWord(options))
    return given('choice', chosen ?? '', { options: options.split(',').map((option) => option.trim()) })
  for (const entry of ['date', 'quantity', 'size'] as const) {
    const { value: read, error } = readGiven(given(entry))
    if (read !== undefined && !error) return given(entry)
  }
  return { kind: 'result', ...head, formula: value }
}

/** Options are words; `{1 mm, 2 mm}` is a list of a formula. */
const isWord = (options: string): boolean =>
  options.split(',').every((option) => /^\s*[A-Za-z]/.test(option)) && !/[()*/+]/.test(options)

const oneLine = (text: string): string =>
  text
    .trim()
    .replace(/\s*\n\s*/g, ' ')
    .replaceAll('|', '/')

/** Cells as such lines; kinds that no line can hold are left out. */
export const linesOf = (cells: readonly Cell[]): string =>
  cells
    .flatMap((cell) => {
      const line = lineOf(cell)
      return line === undefined ? [] : [`${line}\n`]
    })
    .join('')

function lineOf(cell: Cell): string | undefined {
  if (cell.kind === 'note') {
    const sign = cell.role === 'heading' ? '#' : cell.role === 'caution' ? '!' : '>'
    return `${sign} ${oneLine(cell.text)}`
  }
  const labelled = (text: string, label: string | undefined): string =>
    label?.trim() ? `${oneLine(label)} | ${text}` : text
  if (cell.kind === 'check') {
    const { name, label, condition, message, passes } = cell
    const says = [message, ...(passes ? [passes] : [])].map((one) => ` | ${oneLine(one)}`).join('')
    return `? ${labelled(`${name}: ${oneLine(condition)}`, label?.replaceAll(':', ','))}${says}`
  }
  if (cell.kind === 'function') return labelled(functionLine(cell), cell.label)
  if (cell.kind !== 'given' && cell.kind !== 'result') return undefined
  const text = cell.kind === 'result' ? cell.formula : writtenGiven(cell)
  return labelled(`${cell.name}${cell.unit ? ` [${cell.unit}]` : ''} = ${oneLine(text)}`.trimEnd(), cell.label)
}

function functionLine({ name, arguments: args = [], unit, formula = '', about, examples = [] }: FunctionCell): string {
  const bracketed = (one: string | undefined): string => (one ? ` [${one}]` : '')
  const list = args.map((one) => `${one.name}${bracketed(one.unit)}`).join(', ')
  const said = [...(about ? [about] : []), ...examples.map((one) => `${one.formula} gives ${one.gives}`)]
  return `${name}(${list})${bracketed(unit)} = ${oneLine(formula)}${said.map((one) => ` | ${oneLine(one)}`).join('')}`
}

function writtenGiven({ entry = 'quantity', value, options = [] }: Given): string {
  if (entry === 'text' || entry === 'kit') return `"${value.replaceAll('"', '”')}"`
  return entry === 'choice' ? `{${options.join(', ')}} ${value}`.trim() : value
}
