import { ANGLE, type DisplayUnit, defaultUnit, LENGTH, ReadError, readQuantity } from '../../units/index.ts'
import { formatInput } from '../analysis/format-input.ts'
import type { Change } from '../document/change.ts'
import { isNamed } from '../document/names.ts'
import { declaredUnit, readGiven } from '../document/read-given.ts'
import type { Sheet } from '../editing/sheet.ts'
import type { Cell, Drawing, Given } from '../schema/document.ts'

/** A place in space, in metres, as far as it is required: x right, y up the original, z towards the camera. */
export type Target = Readonly<Partial<Record<'x' | 'y' | 'z', number>>>

/** A given that follows, as it was when the drag began. */
interface Follower {
  readonly given: Given
  readonly unit: DisplayUnit
  /** What it is written to: a millimetre, a tenth of a degree. */
  readonly grain: number
  readonly start: number
  readonly least: number
  readonly most: number
}

const MILLIMETRE = 1e-3
const TENTH_OF_A_DEGREE = Math.PI / 1800
/** Nearer than this counts as there; what is written is coarser. */
const THERE = 1e-5
const ROUNDS = 6
/** A given that moves nothing by a hair moves nothing. */
const NOTHING = 1e-9

/**
 * Moves a lamp of a drawing by way of the givens the cell names under `moves`. How each of them moves the lamp is
 * found by trying it on a copy of the cells it depends on: so signs and offsets are right for any formulas.
 */
export class LampDragSolver {
  private readonly trial: Sheet
  private readonly drawing: Drawing
  private readonly followers: readonly Follower[]
  private values: number[]

  constructor(sheet: Sheet, drawing: Drawing) {
    this.drawing = { ...drawing, from: { lamps: drawing.from.lamps ?? '' } }
    this.trial = sheet.trial([...neededFor(sheet, this.drawing.from.lamps as string), this.drawing])
    this.followers = (drawing.moves ?? []).flatMap((name) => {
      const cell = this.trial.named(name)
      const follower = cell?.kind === 'given' ? followerOf(cell) : undefined
      return follower ? [follower] : []
    })
    this.values = this.followers.map(({ start }) => start)
  }

  /** Where a lamp, counted from 1, is with the givens as they were. */
  placeOf(lamp: number): Required<Target> | undefined {
    return this.place(
      lamp,
      this.followers.map(({ start }) => start),
    )
  }

  /** Whether any given moves the lamp at all. */
  moves(lamp: number): boolean {
    const start = this.followers.map((one) => one.start)
    const from = this.place(lamp, start)
    if (!from) return false
    return this.effects(lamp, start, from, ['x', 'y', 'z']).some((row) => row.some((one) => Math.abs(one) > NOTHING))
  }

  /** The change that brings a lamp as near to a place as the givens can; undefined where that changes nothing. */
  to(lamp: number, target: Target): Change | undefined {
    const found = this.solve(lamp, target)
    const changes = found.flatMap((value, at): readonly Change[] => {
      const follower = this.followers[at] as Follower
      const written = rewritten(follower, value)
      return written === undefined ? [] : [{ do: 'replace', cell: { ...follower.given, value: written } }]
    })
    if (changes.length === 0) return undefined
    return changes.length === 1 ? changes[0] : { do: 'several', changes }
  }

  /** Steps along the effects of the givens until the lamp is there: one step where they are straight lines. */
  private solve(lamp: number, target: Target): number[] {
    const axes = (['x', 'y', 'z'] as const).filter((axis) => Number.isFinite(target[axis]))
    let values = this.followers.map(({ start }) => start)
    let from = this.place(lamp, values)
    for (let round = 0; from && axes.length > 0 && round < ROUNDS; round++) {
      const place = from
      const lacking = axes.map((axis) => (target[axis] as number) - place[axis])
      if (lacking.every((one) => Math.abs(one) < THERE)) break
      const step = leastStep(this.effects(lamp, values, place, axes), lacking)
      let share = 1
      let next: number[] | undefined
      let reached: Required<Target> | undefined
      // Past an extremum the effects change sign: try a shorter step.
      for (; share > 0.01; share /= 2) {
        next = values.map((value, at) => this.clamped(at, value + share * (step[at] as number)))
        reached = this.place(lamp, next)
        if (reached && distance(axes, target, reached) <= distance(axes, target, place)) break
        reached = undefined
      }
      if (!reached || !next || next.every((value, at) => Math.abs(value - (values[at] as number)) < NOTHING)) break
      values = next
      from = reached
    }
    return values
  }

  private clamped(at: number, value: number): number {
    const { least, most } = this.followers[at] as Follower
    return Math.min(most, Math.max(least, value))
  }

  /** By how much each given moves the lamp along each axis, for one more metre or radian of it. */
  private effects(
    lamp: number,
    values: readonly number[],
    from: Required<Target>,
    axes: readonly ('x' | 'y' | 'z')[],
  ): number[][] {
    const columns = values.map((value, at) => {
      // At the end of its range a given can still be tried the other way.
      for (const step of [MILLIMETRE, -MILLIMETRE]) {
        const tried = this.place(lamp, values.with(at, value + step))
        if (tried) return axes.map((axis) => (tried[axis] - from[axis]) / step)
      }
      return axes.map(() => 0)
    })
    return axes.map((_, row) => columns.map((column) => column[row] as number))
  }

  private place(lamp: number, values: readonly number[]): Required<Target> | undefined {
    values.forEach((value, at) => {
      if (value === this.values[at]) return
      const { given, unit } = this.followers[at] as Follower
      this.trial.apply({ do: 'replace', cell: { ...given, value: exactly(value, unit) } }, { merge: 'trial' })
    })
    this.values = [...values]
    const lamps = this.trial.drawing(this.drawing.id).values.lamps
    const one: unknown = Array.isArray(lamps) ? lamps[lamp - 1] : lamp === 1 ? lamps : undefined
    if (typeof one !== 'object' || one === null) return undefined
    const { x, y = 0, z } = one as Readonly<Record<string, unknown>>
    return typeof x === 'number' && typeof y === 'number' && typeof z === 'number' ? { x, y, z } : undefined
  }
}

const distance = (axes: readonly ('x' | 'y' | 'z')[], target: Target, place: Required<Target>): number =>
  Math.hypot(...axes.map((axis) => (target[axis] as number) - place[axis]))

/** The named cells a formula needs, in the end. */
function neededFor(sheet: Sheet, formula: string): readonly Cell[] {
  const needed = new Set<Cell>()
  const add = (text: string): void => {
    for (const name of sheet.namesIn(text)) {
      const cell = sheet.named(name)
      if (!cell || needed.has(cell)) continue
      needed.add(cell)
      if (cell.kind === 'result') add(cell.formula)
      if (cell.kind === 'check') add(cell.condition)
    }
  }
  add(formula)
  return sheet.cells.filter((cell) => isNamed(cell) && needed.has(cell))
}

function followerOf(given: Given): Follower | undefined {
  const { type, value } = readGiven(given)
  if ((given.entry ?? 'quantity') !== 'quantity' || type?.kind !== 'number' || typeof value !== 'number')
    return undefined
  const unit = declaredUnit(given.unit).unit ?? defaultUnit(value, type.dimension)
  if (unit.notation || unit.offset !== 0) return undefined
  const grain = type.dimension === LENGTH ? MILLIMETRE : type.dimension === ANGLE ? TENTH_OF_A_DEGREE : undefined
  if (grain === undefined) return undefined
  const limit = (text: string | undefined, otherwise: number): number => {
    try {
      return text?.trim() ? readQuantity(text, unit).value : otherwise
    } catch (error) {
      if (error instanceof ReadError) return otherwise
      throw error
    }
  }
  return {
    given,
    unit,
    grain,
    start: value,
    least: limit(given.least, Number.NEGATIVE_INFINITY),
    most: limit(given.most, Number.POSITIVE_INFINITY),
  }
}

const exactly = (value: number, unit: DisplayUnit): string =>
  `${Number((value / unit.factor).toPrecision(15))} ${unit.symbol}`

/** The given's new text, rounded, in its own unit; undefined where it says what it said. */
function rewritten({ given, unit, grain, start, least, most }: Follower, value: number): string | undefined {
  if (Math.abs(value - start) < grain / 2) return undefined
  const rounded = Math.min(most, Math.max(least, Math.round(value / grain) * grain))
  const decimals = Math.max(0, Math.ceil(Math.log10(unit.factor / grain) - 1e-9))
  const figure = Number((rounded / unit.factor).toFixed(decimals))
  return formatInput(given, { figure, turned: false }, unit)
}

/** The shortest step whose effect is as near as can be to what is lacking. */
function leastStep(effects: readonly (readonly number[])[], lacking: readonly number[]): readonly number[] {
  const rows = effects.length
  const product = effects.map((a) => effects.map((b) => a.reduce((sum, one, at) => sum + one * (b[at] as number), 0)))
  const size = Math.max(...product.map((row, at) => row[at] as number), 0)
  if (size < NOTHING) return (effects[0] ?? []).map(() => 0)
  // A trace of damping, so that an axis nothing moves along asks for nothing.
  const system = product.map((row, at) => [
    ...row.map((one, k) => one + (k === at ? size * 1e-9 : 0)),
    lacking[at] as number,
  ])
  for (let pivot = 0; pivot < rows; pivot++) {
    const best = system.reduce(
      (most, row, at) =>
        at >= pivot && Math.abs(row[pivot] as number) > Math.abs((system[most] as number[])[pivot] as number)
          ? at
          : most,
      pivot,
    )
    ;[system[pivot], system[best]] = [system[best] as number[], system[pivot] as number[]]
    const head = system[pivot] as number[]
    for (let row = 0; row < rows; row++) {
      if (row === pivot) continue
      const share = ((system[row] as number[])[pivot] as number) / (head[pivot] as number)
      system[row] = (system[row] as number[]).map((one, k) => one - share * (head[k] as number))
    }
  }
  const weights = system.map((row, at) => (row[rows] as number) / (row[at] as number))
  return (effects[0] ?? []).map((_, given) =>
    effects.reduce((sum, row, at) => sum + (row[given] as number) * (weights[at] as number), 0),
  )
}
