/** What the tries of one figure amount to, in coherent SI. */
export interface SimulatedFigure {
  readonly mean: number
  /** The standard deviation of the tries, divided by one less than their number. */
  readonly sd: number
  /** The ends of the probabilistically symmetric interval that 95 % of the tries lie in. */
  readonly low95: number
  readonly high95: number
  /** In how many tries the figure did not compute. */
  readonly failed: number
  /** How often values fell into each of equally wide classes; only where it was asked for. */
  readonly histogram?: Histogram
}

export interface Histogram {
  /** The ends of the first and the last class, in coherent SI. */
  readonly from: number
  readonly to: number
  readonly counts: readonly number[]
}

const COVERAGE = 0.95
/** How many values are stored as they come; of more, those near the ends of the interval. */
const MOST_STORED = 10_000
/** Wide of the 2.5 % that are looked for: eleven standard errors of the share among the values stored first. */
const TAIL = 0.05

/** The number of classes between the least and the greatest value stored first. */
const CLASSES = 40
/** The classes reach further by this share on either side, for what comes later; the outermost take what lies beyond. */
const FURTHER = 0.25

/** Counts of values in equally wide classes, laid out over the values that come first. */
class Classes {
  private readonly counts: number[]
  private readonly from: number
  private readonly width: number

  constructor(sorted: Float64Array) {
    const [least, greatest] = [sorted[0] as number, sorted[sorted.length - 1] as number]
    this.width = (greatest - least) / CLASSES
    const further = Math.round(CLASSES * FURTHER)
    this.from = least - further * this.width
    this.counts = new Array<number>(CLASSES + 2 * further).fill(0)
    for (const value of sorted) this.add(value)
  }

  add(value: number): void {
    const { counts, width, from } = this
    const at = width > 0 ? Math.floor((value - from) / width) : 0
    const within = Math.min(Math.max(at, 0), counts.length - 1)
    counts[within] = (counts[within] as number) + 1
  }

  /** Without the empty classes at the ends. */
  get histogram(): Histogram {
    const { counts, width, from } = this
    const first = counts.findIndex((count) => count > 0)
    const last = counts.findLastIndex((count) => count > 0)
    return { from: from + first * width, to: from + (last + 1) * width, counts: counts.slice(first, last + 1) }
  }
}

/** Numbers in a buffer that grows. */
class Numbers {
  private data = new Float64Array(1024)
  length = 0

  push(value: number): void {
    if (this.length === this.data.length) {
      const larger = new Float64Array(2 * this.length)
      larger.set(this.data)
      this.data = larger
    }
    this.data[this.length++] = value
  }

  sorted(): Float64Array {
    return this.data.slice(0, this.length).sort()
  }
}

/** Mean, spread and interval of the tries of one figure, without storing a million of them. */
export class Tally {
  private count = 0
  private failed = 0
  /** Sums are taken about the first value, so that a small spread of a large figure is not lost. */
  private origin: number | undefined
  private sum = 0
  private squares = 0
  private readonly first = new Numbers()
  /** Values below the lower edge and above the upper one; those on an edge are not stored, however many they are. */
  private tails: { readonly lower: Numbers; readonly upper: Numbers } | undefined
  private lowerEdge = 0
  private upperEdge = 0
  private classes: Classes | undefined

  constructor(private readonly withHistogram = false) {}

  /** Takes the first `n` numbers in; NaN is a try in which the figure did not compute. */
  add(data: Float64Array, n: number): void {
    let [sum, squares, count] = [0, 0, 0]
    for (let i = 0; i < n; i++) {
      const value = data[i] as number
      if (value - value !== 0) continue
      this.origin ??= value
      const off = value - this.origin
      sum += off
      squares += off * off
      count++
    }
    this.sum += sum
    this.squares += squares
    this.count += count
    this.failed += n - count
    this.store(data, n)
  }

  fail(n: number): void {
    this.failed += n
  }

  private store(data: Float64Array, n: number): void {
    let i = 0
    for (; i < n && !this.tails; i++) {
      const value = data[i] as number
      if (value - value !== 0) continue
      this.first.push(value)
      if (this.first.length === MOST_STORED) this.startTails()
    }
    if (!this.tails) return
    const { lower, upper } = this.tails
    const { lowerEdge, upperEdge, classes } = this
    if (classes) for (let k = i; k < n; k++) if (Number.isFinite(data[k])) classes.add(data[k] as number)
    for (; i < n; i++) {
      const value = data[i] as number
      if (value < lowerEdge) lower.push(value)
      else if (value > upperEdge) upper.push(value)
    }
  }

  private startTails(): void {
    const sorted = this.first.sorted()
    const edge = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] as number
    this.lowerEdge = edge(TAIL)
    this.upperEdge = edge(1 - TAIL)
    this.tails = { lower: new Numbers(), upper: new Numbers() }
    if (this.withHistogram) this.classes = new Classes(sorted)
    for (const value of sorted) {
      if (value < this.lowerEdge) this.tails.lower.push(value)
      else if (value > this.upperEdge) this.tails.upper.push(value)
    }
  }

  /** Undefined where the figure computed in no try. */
  get result(): SimulatedFigure | undefined {
    const { count, sum, squares, failed, origin } = this
    if (origin === undefined) return undefined
    // JCGM 101:2008, 7.7.2: q values between the ends, (M − q)/2 below the lower one.
    const within = Math.round(COVERAGE * count)
    const below = Math.max(1, Math.round((count - within) / 2))
    return {
      mean: origin + sum / count,
      sd: count > 1 ? Math.sqrt(Math.max(0, squares - (sum * sum) / count) / (count - 1)) : 0,
      low95: this.ranked(below),
      high95: this.ranked(Math.min(count, below + within)),
      failed,
      ...(this.withHistogram ? { histogram: (this.classes ?? new Classes(this.first.sorted())).histogram } : {}),
    }
  }

  /** The value of a rank, the least being 1. */
  private ranked(rank: number): number {
    if (!this.tails) return this.first.sorted()[rank - 1] as number
    const { lower, upper } = this.tails
    if (rank <= this.count / 2) return lower.sorted()[rank - 1] ?? this.lowerEdge
    const fromTop = this.count + 1 - rank
    const sorted = upper.sorted()
    return fromTop <= sorted.length ? (sorted[sorted.length - fromTop] as number) : this.upperEdge
  }
}
