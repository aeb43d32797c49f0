import type { Value } from '../../language/index.ts'
import { allMarks, type DisplayUnit, defaultUnit, ReadError, readQuantity } from '../../units/index.ts'
import { figureIn, formatInput } from '../analysis/format-input.ts'
import { type ChosenPiece, choosePiece, readAnyGiven } from '../document/kit-given.ts'
import { declaredUnit, readGiven } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import { VALUE } from '../engine/engine-view.ts'
import type { Advice, Cell, Given } from '../schema/document.ts'
import { filledByKit, type KitPiece } from './kit-suggestions.ts'
import { LEVELS, type Level } from './plan.ts'

/** One way to set a variable: the cells as they would be, and their values in coherent SI. */
export interface Choice {
  readonly cells: readonly Given[]
  readonly values: readonly Value[]
  /** What choosing it costs: nothing for what is set now. */
  readonly cost: number
}

/** A given that may be changed, or several that change as one: both lamps, or a piece of kit and its figures. */
export interface Variable {
  readonly name: string
  readonly level: Level
  readonly givens: readonly Given[]
  /** Their positions in the engine's arrays. */
  readonly positions: readonly number[]
  /** Every text it may take, in the order of their values where they have one. */
  readonly choices: readonly Choice[]
  /** The place of what is set now. */
  readonly now: number
  /** Whether the choices are in the order of a quantity, so that neighbours are similar. */
  readonly ordered: boolean
  /**
   * For a quantity without marks or steps: the choice of a value in coherent SI, in a number of significant digits;
   * undefined where its field does not take it.
   */
  readonly between?: (value: number, digits: number) => Choice | undefined
}

/** What any change costs by its level, and what a doubling costs on top. */
const BASE: Readonly<Record<Level, number>> = { setting: 1, kit: 3, agreement: 6 }
const PER_DOUBLING: Readonly<Record<Level, number>> = { setting: 1, kit: 1, agreement: 4 }
/** A choice that is no quantity counts as half a doubling. */
const OF_A_CHOICE = 0.5
const MOST_STEPS = 600
/** A given that nothing says more about may be changed to between half and twice what it is. */
const OWN_WITHIN = 2
const ROUNDING = 1e-9

const LEVEL_OF: Readonly<Record<Advice['change'], Level | undefined>> = {
  never: undefined,
  freely: 'setting',
  'by kit': 'kit',
  agree: 'agreement',
}

/** What may be changed in a sheet, and to what, in the order of the sheet. */
export function variablesOf(sheet: Sheet, pieces: readonly KitPiece[]): Variable[] {
  const { cells } = sheet
  const givens = cells.filter((cell): cell is Given => cell.kind === 'given')
  const following = new Set(givens.flatMap(({ advice }) => advice?.with ?? []))
  const filled = pieces.length > 0 ? filledByKit(cells) : new Set<string>()
  return givens.flatMap((given) => {
    if (following.has(given.name) || filled.has(given.name)) return []
    const level = levelOf(given)
    if (level === undefined) return []
    const variable =
      given.entry === 'kit' ? kitVariable(sheet, given, pieces) : textVariable(sheet, given, level, givens)
    return variable && variable.choices.length > 1 ? [variable] : []
  })
}

/** How willingly a given is changed; undefined where it may not be. */
export function levelOf({ advice, fixed, entry }: Given): Level | undefined {
  if (advice) return LEVEL_OF[advice.change]
  if (fixed || entry === 'text' || entry === 'date') return undefined
  return entry === 'kit' ? 'kit' : 'agreement'
}

function textVariable(sheet: Sheet, given: Given, level: Level, all: readonly Given[]): Variable | undefined {
  const followers = given.advice?.with ? all.filter(({ name }) => name === given.advice?.with) : []
  const givens = [given, ...followers]
  const positions = positionsOf(sheet, givens)
  const now = positions && sheet.engine.layout.values[positions[0] as number]
  if (!positions || now === undefined) return undefined
  const seen = new Map<string, Choice>()
  const choiceOf = (text: string): Choice | undefined => {
    const value = text === given.value ? now : typedValue(given, text)
    if (value === undefined || !isWithin(given, now, value)) return undefined
    const cells = givens.map((one) => ({ ...one, value: text }))
    const cost = text === given.value ? 0 : costOf(given, level, now, value)
    return { cells, values: givens.map(() => value), cost }
  }
  const { texts, unmarked } = textsOf(given, now)
  for (const text of texts) {
    const choice = choiceOf(text)
    // The text typed now comes last, so that it replaces another spelling of the same value.
    if (choice) seen.set(JSON.stringify(choice.values[0]), choice)
  }
  // Followers that differ from the first are brought together by any change, but not by staying.
  seen.set(JSON.stringify(now), {
    cells: givens,
    values: positions.map((at) => sheet.engine.layout.values[at] as Value),
    cost: 0,
  })
  const choices = [...seen.values()]
  const ordered = typeof now === 'number'
  if (ordered) choices.sort((a, b) => (a.values[0] as number) - (b.values[0] as number))
  return {
    name: given.name,
    level,
    givens,
    positions,
    choices,
    now: choices.findIndex(({ cost }) => cost === 0),
    ordered,
    ...(unmarked
      ? {
          between: (value: number, digits: number) => {
            const { figure } = figureIn(value, unmarked.unit)
            const choice = choiceOf(typed(given, Number(figure.toPrecision(digits)), unmarked.unit))
            return choice && unmarked.inRange(choice.values[0] as number) ? choice : undefined
          },
        }
      : {}),
  }
}

/** The pieces of its sort in the studio's kit, each with the givens it fills. */
function kitVariable(sheet: Sheet, given: Given, pieces: readonly KitPiece[]): Variable | undefined {
  const filled = Object.values(given.fills ?? {})
  const givens = [given, ...sheet.cells.filter((cell): cell is Given => isFilledGiven(cell, filled))]
  const positions = positionsOf(sheet, givens)
  if (!positions) return undefined
  const current: Choice = { cells: givens, values: givens.map((one) => readAnyGiven(one).value as Value), cost: 0 }
  const others = pieces.filter(({ sort, name }) => sort === given.sort && name !== given.value)
  const choices = others.flatMap((piece) => {
    const cells = withPiece(sheet.cells, given, piece, givens)
    const values = cells.map((one) => readAnyGiven(one).value)
    if (values.some((value) => value === undefined)) return []
    return [{ cells, values: values as Value[], cost: BASE.kit + PER_DOUBLING.kit * OF_A_CHOICE }]
  })
  return {
    name: given.name,
    level: 'kit',
    givens,
    positions,
    choices: [current, ...choices],
    now: 0,
    ordered: false,
  }
}

const isFilledGiven = (cell: Cell, names: readonly string[]): boolean =>
  cell.kind === 'given' && names.includes(cell.name)

function withPiece(cells: readonly Cell[], given: Given, piece: ChosenPiece, givens: readonly Given[]): Given[] {
  const change = choosePiece(cells, given, piece)
  const replaced = new Map<string, Given>()
  if (change.do === 'several')
    for (const one of change.changes)
      if (one.do === 'replace' && one.cell.kind === 'given') replaced.set(one.cell.id, one.cell)
  return givens.map((one) => replaced.get(one.id) ?? one)
}

function positionsOf(sheet: Sheet, givens: readonly Given[]): number[] | undefined {
  const { engine } = sheet
  const nodes = givens.map(({ id }) => engine.node(id))
  if (nodes.some((node) => !node || engine.isDuplicate(node) || engine.state(node) !== VALUE)) return undefined
  return nodes.map((node) => engine.positionOf(node as NonNullable<typeof node>))
}

function typedValue(given: Given, text: string): Value | undefined {
  const { value, error } = readGiven({ ...given, value: text })
  return error ? undefined : value
}

function isWithin({ advice }: Given, now: Value, value: Value): boolean {
  const within = advice ? advice.within : OWN_WITHIN
  if (within === undefined || typeof now !== 'number' || typeof value !== 'number' || !(now > 0)) return true
  return value / now <= within * (1 + ROUNDING) && now / value <= within * (1 + ROUNDING)
}

function costOf({ advice }: Given, level: Level, now: Value, value: Value): number {
  return BASE[level] * (advice?.cost ?? 1) + PER_DOUBLING[level] * doublings(now, value)
}

/** How far two values are apart, in doublings; of a value at or below zero, as a share of the larger. */
function doublings(now: Value, value: Value): number {
  if (typeof now !== 'number' || typeof value !== 'number') return OF_A_CHOICE
  if (now > 0 && value > 0) return Math.abs(Math.log2(value / now))
  const size = Math.max(Math.abs(now), Math.abs(value), Number.MIN_VALUE)
  return Math.min(3, Math.abs(value - now) / size)
}

/** What a given may take. */
interface Texts {
  readonly texts: readonly string[]
  /** Of a quantity without marks or steps, of which any other figure in range may be typed as well. */
  readonly unmarked?: { readonly unit: DisplayUnit; readonly inRange: (value: number) => boolean }
}

/** The texts a given may take, as they would be typed. */
function textsOf(given: Given, now: Value): Texts {
  const { advice, options = [] } = given
  const entry = given.entry ?? 'quantity'
  const listed = Array.isArray(advice?.marks) ? advice.marks.map(String) : undefined
  if (entry === 'yes or no') return { texts: listed ?? ['yes', 'no'] }
  if (entry === 'choice') return { texts: listed ?? options }
  if (entry === 'size' && listed) return { texts: listed }
  const unit = entry === 'quantity' && typeof now === 'number' ? unitOf(given, now) : undefined
  if (!unit || typeof now !== 'number') return { texts: [] }
  const marked = markedTexts(given, unit)
  if (marked) return { texts: marked }
  const within = advice ? advice.within : OWN_WITHIN
  if (within === undefined) return { texts: [] }
  const inRange = rangeOf(given, unit)
  return { texts: allowedTexts(given, inRange, nearFigures(given, now, unit, within)), unmarked: { unit, inRange } }
}

const allowedTexts = (given: Given, inRange: (value: number) => boolean, texts: readonly string[]): string[] =>
  texts.filter((text) => {
    const value = typedValue(given, text)
    return typeof value === 'number' && inRange(value)
  })

/** The marks, steps or options of a quantity; undefined where it has none. */
function markedTexts(given: Given, unit: DisplayUnit): readonly string[] | undefined {
  const { advice, options = [] } = given
  const listed = Array.isArray(advice?.marks) ? advice.marks : undefined
  const inRange = rangeOf(given, unit)
  const allowed = (texts: readonly string[]): string[] => allowedTexts(given, inRange, texts)
  if (listed) return allowed(listed.map((mark) => (typeof mark === 'number' ? typed(given, mark, unit) : mark)))
  if (advice?.marks === 'options') return allowed(options)
  if (advice?.marks === 'thirds') return allowed(allMarks('aperture').map(({ text }) => text))
  if (advice?.marks === 'times') return allowed(allMarks('time').map(({ text }) => text))
  if (advice?.step !== undefined && advice.least !== undefined && advice.most !== undefined)
    return allowed(steps(advice.least, advice.most, advice.step).map((figure) => typed(given, figure, unit)))
  if (advice) return undefined
  if (options.length > 0) return allowed(options)
  if (unit.notation === 'f-number') return allowed(allMarks('aperture').map(({ text }) => text))
  if (unit.notation === 'shutter') return allowed(allMarks('time').map(({ text }) => text))
  return undefined
}

/** Multiples of a step from a least to a most figure. */
function steps(least: number, most: number, step: number): number[] {
  const first = Math.ceil(least / step - ROUNDING)
  const last = Math.floor(most / step + ROUNDING)
  const count = Math.min(MOST_STEPS, last - first + 1)
  return Array.from({ length: Math.max(0, count) }, (_, i) => Number(((first + i) * step).toPrecision(12)))
}

/** Round figures about what is set now, of two significant digits, up to a given factor above and below. */
function nearFigures(given: Given, now: number, unit: DisplayUnit, within: number): string[] {
  const { figure } = figureIn(now, unit)
  const size = Math.abs(figure)
  if (!(size > 0) || !Number.isFinite(size)) return []
  const figures: number[] = []
  for (let power = Math.floor(Math.log10(size / within)); power <= Math.log10(size * within); power++) {
    const low = Math.max(size / within, 10 ** power)
    const high = Math.min(size * within, 10 ** (power + 1))
    figures.push(...steps(low, high, 10 ** (power - 1)))
  }
  return [...new Set(figures)].map((one) => typed(given, Math.sign(figure) * one, unit))
}

function unitOf(given: Given, now: number): DisplayUnit | undefined {
  const { type } = readGiven(given)
  if (type?.kind !== 'number') return undefined
  return (
    declaredUnit(given.unit).unit ?? {
      ...defaultUnit(now, type.dimension),
      ...(type.notation ? { notation: type.notation } : {}),
    }
  )
}

const typed = (given: Given, figure: number, unit: DisplayUnit): string =>
  formatInput(given, { figure, turned: unit.notation === 'ratio' }, unit)

/** Whether a value, in coherent SI, is within what advice and field allow. */
function rangeOf(given: Given, unit: DisplayUnit): (value: number) => boolean {
  const limit = (text: string | number | undefined): number | undefined => {
    if (text === undefined || String(text).trim() === '') return undefined
    try {
      return readQuantity(String(text), unit).value
    } catch (error) {
      if (error instanceof ReadError) return undefined
      throw error
    }
  }
  const { advice, least, most } = given
  const ends = [
    [limit(advice?.least), limit(advice?.most)],
    [limit(least), limit(most)],
  ].map(([a, b]) =>
    // The n of 1:n falls as the value rises.
    a !== undefined && b !== undefined ? [Math.min(a, b), Math.max(a, b)] : [a, b],
  )
  return (value) =>
    ends.every(
      ([low, high]) =>
        (low === undefined || value >= low * (1 - ROUNDING) - ROUNDING * Math.abs(low)) &&
        (high === undefined || value <= high + ROUNDING * Math.abs(high)),
    )
}

/** The place of a level among those of advice: lower is changed before higher. */
export const levelRank = (level: Level): number => LEVELS.indexOf(level)
