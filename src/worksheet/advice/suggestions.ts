import type { Value } from '../../language/index.ts'
import {
  allMarks,
  type DisplayUnit,
  defaultUnit,
  LENGTH,
  NONE,
  ReadError,
  readQuantity,
  showFigure,
} from '../../units/index.ts'
import { describeInput, figureIn, formatInput, quantityOf, rounder } from '../analysis/format-input.ts'
import type { Change } from '../document/change.ts'
import { choosePiece } from '../document/kit-given.ts'
import { readMeasured } from '../document/measured.ts'
import { declaredUnit, readGiven } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import { marginOf, robustnessOf, slackOf } from '../engine/condition.ts'
import type { Engine } from '../engine/engine.ts'
import { VALUE } from '../engine/engine-view.ts'
import { conditionContextOf } from '../engine/explain.ts'
import type { Node } from '../engine/node.ts'
import { upstreamOf } from '../engine/partial-recompute.ts'
import type { Given } from '../schema/document.ts'
import { filledByKit, type KitPiece, piecesThatPass } from './kit-suggestions.ts'
import { crossings, row, scan } from './root-search.ts'
import { WhatIf } from './what-if.ts'

/** One given changed, and all is as wanted. */
export interface Suggestion {
  /** The given's name. */
  readonly given: string
  /** What it would be: `1100 mm`, `f/11`, `no`. */
  readonly shown: string
  /** What the wanted result comes to with it, where that is not just what was asked for. */
  readonly gives?: string
  readonly change: Change
}

export interface Suggestions {
  /** The smallest change first. */
  readonly mends: readonly Suggestion[]
  /** Where none makes it hold: the one that comes nearest, and by how much it falls short. */
  readonly nearest?: { readonly given: string; readonly shown: string; readonly short: string }
  /** Why nothing was looked for, or not everything. */
  readonly why?: string
}

/** What is wanted of the figures at some positions. */
interface Goal {
  readonly id: string
  readonly at: number
  /** For a condition: from zero on it is met. For a target: how far the figure is from it. */
  readonly room: (values: readonly Value[]) => number
  /** How far from the target still counts as there, in the figure's own measure; undefined for a condition. */
  readonly near?: number
  readonly isMet: (trial: Sheet) => boolean
  /** Of a target: whether a piece of kit that is at hand comes near enough to it. */
  readonly isNear?: (trial: Sheet) => boolean
  readonly gives?: (trial: Sheet) => string
  readonly short: (room: number) => string
}

const MOST = 8
const MOST_OF_ONE = 4
/** Where a given has no range of its own, so many times more and less is looked at. */
const RANGE = 100
/** Heavy formulas are looked at in fewer places, and not for ever. */
const QUICK_MS = 0.2
const SLOW_MS = 2
const LONGEST_MS = 400
const COARSE = 1e-4
/** A third of a stop is a quarter of the light; half of that, to the nearest mark. */
const A_THIRD = 0.15
/** What is at hand comes in steps: so near to a target counts as there. */
const BY_A_PIECE = 0.05
/** A choice counts as a change of so much, when the smallest is sought. */
const OF_A_CHOICE = 0.5

/** What would make a check hold, clear of its margin where it holds but is close. */
export function suggestionsFor(sheet: Sheet, id: string, pieces: readonly KitPiece[] = []): Suggestions {
  const { engine } = sheet
  const node = engine.node(id)
  const condition = node?.compiled?.condition
  if (node?.cell.kind !== 'check' || !condition || engine.state(node) !== VALUE) return { mends: [] }
  const grounds = conditionContextOf(engine)
  const { slack, worst } = robustnessOf(condition(), grounds)
  const holds = engine.value(node) === true
  const over = Number.isFinite(slack) && Number.isFinite(worst) ? Math.max(0, slack - worst) : 0
  const wanted = holds ? Math.max(marginOf(node.cell.margin) * (1 + 1e-6), over) : 0
  const { of, names } = slackOf(condition())
  const places = new Map(names.map((name) => [name, engine.positionOf(engine.named(name) as Node)]))
  return search(sheet, pieces, {
    id,
    at: engine.positionOf(node),
    room: (values) => of((name) => values[places.get(name) as number] as Value) - wanted,
    isMet: (trial) => {
      const state = trial.checkState(id)
      return state === 'pass' || (!holds && state === 'marginal')
    },
    short: (room) => `${showFigure(Number((-100 * room).toPrecision(2)))} %`,
  })
}

/** What would make a result come to what it should be, as typed. */
export function suggestionsToward(
  sheet: Sheet,
  id: string,
  text: string,
  pieces: readonly KitPiece[] = [],
): Suggestions {
  const { engine } = sheet
  const node = engine.node(id)
  const type = node?.type
  if (!node || !type || engine.state(node) !== VALUE) return { mends: [], why: 'It has no figure yet.' }
  const reading = readMeasured(text, type, node.unit)
  if (reading?.error) return { mends: [], why: reading.error.message }
  if (typeof reading?.value !== 'number') return { mends: [] }
  const target = reading.value
  const at = engine.positionOf(node)
  const scale = Math.max(Math.abs(target), 1e-12)
  const found = (trial: Sheet): number | undefined => {
    const outcome = trial.outcome(id)
    return outcome.state === 'value' && typeof outcome.value === 'number' ? outcome.value : undefined
  }
  return search(sheet, pieces, {
    id,
    at,
    room: (values) => (values[at] as number) - target,
    near: scale,
    isMet: (trial) => found(trial) !== undefined,
    isNear: (trial) => Math.abs((found(trial) ?? Number.POSITIVE_INFINITY) - target) <= BY_A_PIECE * scale,
    gives: (trial) => {
      const outcome = trial.outcome(id)
      return outcome.state === 'value' ? outcome.shown.text : ''
    },
    short: (room) => `${showFigure(Number(((100 * Math.abs(room)) / scale).toPrecision(2)))} %`,
  })
}

interface Found extends Suggestion {
  readonly moved: number
}

function search(sheet: Sheet, pieces: readonly KitPiece[], goal: Goal): Suggestions {
  const { engine } = sheet
  const { layout } = engine
  const upstream = upstreamOf(layout, [goal.at])
  if (upstream.some((at) => layout.states[at] !== VALUE)) return { mends: [] }
  const behind = cellsBehind(engine, goal.at)
  const trial = sheet.trial(behind)
  trial.engine.limitsBudget = LONGEST_MS
  const started = performance.now()
  const found: Found[] = []
  let cut = false
  const filled = pieces.length > 0 ? filledByKit(sheet.cells) : new Set<string>()
  let nearest: (NonNullable<Suggestions['nearest']> & { readonly room: number }) | undefined
  for (const at of upstream) {
    const given = layout.order[at]?.cell
    if (given?.kind !== 'given' || given.fixed || filled.has(given.name)) continue
    if (performance.now() - started > LONGEST_MS) {
      cut = true
      break
    }
    const probe = new WhatIf(layout, at, upstream, goal.room)
    const seeker = new Seeker(given, goal, probe, trial, started + LONGEST_MS)
    found.push(...seeker.seek())
    const { best } = seeker
    if (best && (!nearest || best.room > nearest.room))
      nearest = { given: given.name, shown: best.shown, short: goal.short(best.room), room: best.room }
  }
  if (!cut) found.push(...byKit(sheet, behind, pieces, goal))
  const mends = found
    .sort((a, b) => a.moved - b.moved)
    .slice(0, MOST)
    .map(({ moved: _, ...mend }): Suggestion => mend)
  if (cut) return { mends, why: 'The formulas here take long: not every given was tried.' }
  if (mends.length > 0 || !nearest) return { mends }
  const { room: _, ...told } = nearest
  return { mends, nearest: told }
}

function byKit(sheet: Sheet, behind: readonly Given[], pieces: readonly KitPiece[], goal: Goal): Found[] {
  return piecesThatPass(sheet, behind, pieces, goal.isNear ?? goal.isMet).map(({ given, piece, trial }) => {
    const gives = goal.gives?.(trial)
    return {
      given: given.name,
      shown: piece.name,
      change: choosePiece(sheet.cells, given, piece),
      moved: OF_A_CHOICE,
      ...(gives === undefined ? {} : { gives }),
    }
  })
}

/** The cells one is computed from in the end, itself among them, as the document has them. */
function cellsBehind(engine: Engine, at: number): Given[] {
  const { needs, order } = engine.layout
  const found = new Set<number>()
  const open = [at]
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    if (found.has(one)) continue
    found.add(one)
    open.push(...(needs[one] as Int32Array))
  }
  return [...found].sort((a, b) => a - b).map((one) => order[one]?.cell as Given)
}

/** Looks for the values of one given that meet a goal. */
class Seeker {
  best: { readonly shown: string; readonly room: number } | undefined

  constructor(
    private readonly given: Given,
    private readonly goal: Goal,
    private readonly probe: WhatIf,
    private readonly trial: Sheet,
    private readonly until: number,
  ) {}

  seek(): Found[] {
    const entry = this.given.entry ?? 'quantity'
    if (entry === 'yes or no') return this.among(['yes', 'no'])
    if (entry === 'choice' || entry === 'list') return this.among(this.given.options ?? [])
    if (entry !== 'quantity') return []
    const { type, value } = readGiven(this.given)
    if (type?.kind !== 'number' || typeof value !== 'number') return []
    const unit = declaredUnit(this.given.unit).unit ?? {
      ...defaultUnit(value, type.dimension),
      ...(type.notation ? { notation: type.notation } : {}),
    }
    const series = this.series(unit)
    return (series ? this.along(series, value, unit) : this.between(value, unit)).slice(0, MOST_OF_ONE)
  }

  /** The marks it is set by, or the values the cell says there are. */
  private series(unit: DisplayUnit): readonly string[] | undefined {
    if (this.given.options && this.given.options.length > 0) return this.given.options
    if (unit.notation === 'f-number') return allMarks('aperture').map(({ text }) => text)
    return unit.notation === 'shutter' ? allMarks('time').map(({ text }) => text) : undefined
  }

  private read(text: string): Value | undefined {
    const { value, error } = readGiven({ ...this.given, value: text })
    return error ? undefined : value
  }

  private note(shown: string, room: number | undefined): void {
    const measure = room === undefined ? undefined : this.goal.near === undefined ? room : -Math.abs(room)
    if (measure !== undefined && Number.isFinite(measure) && measure < 0 && (!this.best || measure > this.best.room))
      this.best = { shown, room: measure }
  }

  private among(options: readonly string[]): Found[] {
    return options.flatMap((text) => {
      const value = text === this.given.value ? undefined : this.read(text)
      if (value === undefined) return []
      const room = this.probe.try(value)
      this.note(text, room)
      return this.isThere(room, 0.01) ? this.verified(text, text, OF_A_CHOICE) : []
    })
  }

  private isThere(room: number | undefined, share: number): boolean {
    if (room === undefined) return false
    return this.goal.near === undefined ? room >= 0 : Math.abs(room) <= share * this.goal.near
  }

  private along(series: readonly string[], now: number, unit: DisplayUnit): Found[] {
    const marks = series
      .flatMap((text) => {
        const value = this.read(text)
        return typeof value === 'number' ? [{ text, value, room: this.probe.try(value) }] : []
      })
      .sort((a, b) => a.value - b.value)
    for (const { text, room } of marks) this.note(text, room)
    const moved = (value: number): number => relative(now, value)
    if (this.goal.near !== undefined) {
      // No mark may hit the target: the nearest on the scale, if it is within a third of a stop or so.
      const near = marks
        .filter(({ room }) => this.isThere(room, unit.notation ? A_THIRD : 0.05))
        .sort((a, b) => Math.abs(a.room as number) - Math.abs(b.room as number))[0]
      return near ? this.verified(near.text, near.text, moved(near.value)) : []
    }
    const isMet = (i: number): boolean => this.isThere(marks[i]?.room, 0)
    return marks
      .flatMap((mark, i) => {
        const begins = isMet(i) && (mark.value > now ? !isMet(i - 1) : !isMet(i + 1))
        return begins ? this.verified(mark.text, mark.text, moved(mark.value)) : []
      })
      .sort((a, b) => a.moved - b.moved)
  }

  private between(now: number, unit: DisplayUnit): Found[] {
    const started = performance.now()
    this.probe.try(now)
    const between = performance.now()
    const atNow = this.probe.try(now)
    // The quicker of two: another program may have held up one of them.
    const each = Math.min(between - started, performance.now() - between)
    const points = each < QUICK_MS ? 60 : each < SLOW_MS ? 24 : 8
    const range = rangeOf(this.given, now, unit)
    if (!range) return []
    const room = (x: number): number | undefined =>
      x === now ? atNow : performance.now() > this.until ? undefined : this.probe.try(x)
    const values = row(range.from, range.to, points, [now, ...range.ends])
    const said = (x: number): string => describeInput(figureIn(Number(x.toPrecision(3)), unit), unit)
    if (this.goal.near !== undefined) {
      const roots = crossings(room, values, this.goal.near)
      for (const x of values) this.note(said(x), room(x))
      return roots.flatMap((x) => this.rounded(x, 0, now, unit)).sort((a, b) => a.moved - b.moved)
    }
    const { edges, best } = scan(room, values, each < QUICK_MS ? undefined : COARSE)
    if (best) this.note(said(best.x), best.room)
    // Of the values that will do, the nearest to what is there now.
    return edges
      .filter(({ x, side }) => side > 0 === x > now)
      .flatMap(({ x, side }) => this.rounded(x, side, now, unit))
      .sort((a, b) => a.moved - b.moved)
  }

  private rounded(x: number, side: -1 | 0 | 1, now: number, unit: DisplayUnit): Found[] {
    const { figure, turned } = figureIn(x, unit)
    const change = Math.abs(figure - figureIn(now, unit).figure)
    const whole = unit.dimension === NONE && !unit.notation && /^\s*\d+\s*$/.test(this.given.value) && figure >= 1
    for (const one of rounder(figure, (turned ? -side : side) as -1 | 0 | 1, change, whole)) {
      const value = quantityOf({ figure: one, turned }, unit)
      if (!this.isThere(this.probe.try(value), 0.005)) continue
      const text = formatInput(this.given, { figure: one, turned }, unit)
      const found = this.verified(text, describeInput({ figure: one, turned }, unit), relative(now, value))
      if (found.length > 0) return found
    }
    return []
  }

  /** Typed into a copy of the sheet it must do what it promises. */
  private verified(text: string, shown: string, moved: number): Found[] {
    const { given, trial, goal } = this
    const change: Change = { do: 'replace', cell: { ...given, value: text } }
    trial.apply(change, { merge: 'trial' })
    const isMet = goal.isMet(trial)
    const gives = isMet ? goal.gives?.(trial) : undefined
    trial.apply({ do: 'replace', cell: given }, { merge: 'trial' })
    return isMet && text !== given.value
      ? [{ given: given.name, shown, change, moved, ...(gives === undefined ? {} : { gives }) }]
      : []
  }
}

const relative = (now: number, value: number): number =>
  now > 0 && value > 0
    ? Math.abs(Math.log(value / now))
    : Math.abs(value - now) / Math.max(Math.abs(now), Math.abs(value), 1e-300)

interface Range {
  readonly from: number
  readonly to: number
  readonly ends: readonly number[]
}

function rangeOf({ least, most }: Given, now: number, unit: DisplayUnit): Range | undefined {
  const limit = (text: string | undefined): number | undefined => {
    try {
      return text?.trim() ? readQuantity(text, unit).value : undefined
    } catch (error) {
      if (error instanceof ReadError) return undefined
      throw error
    }
  }
  const floor = limit(least)
  const ceiling = limit(most)
  const usual = unit.dimension === LENGTH ? 1 : 100 * unit.factor
  let from = now > 0 ? now / RANGE : now < 0 ? now * RANGE : -usual
  let to = now > 0 ? now * RANGE : now < 0 ? now / RANGE : usual
  if (floor !== undefined) from = Math.max(from, floor)
  if (ceiling !== undefined) to = Math.min(to, ceiling)
  const ends = [floor, ceiling].filter((end) => end !== undefined)
  return from < to ? { from, to, ends } : undefined
}
