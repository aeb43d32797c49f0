import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import type { Distribution } from '../schema/document.ts'

/** The seed where none is given, so that a sheet shows the same figures every time. */
export const USUAL_SEED = 1

/** How one quantity varies about its value. */
export interface Spreading {
  readonly distribution: Distribution
  /** Half the width of the limits, in coherent SI. */
  readonly limit: number
  /** For a normal distribution: how many standard deviations the limits are. */
  readonly coverage: number
}

const TWO_TO_32 = 2 ** 32

/**
 * Draws of random numbers that are the same for the same seed. Distributions after JCGM 101:2008, 6.4: rectangular,
 * triangular as the mean of two rectangular draws, normal by Box and Muller's transformation (C.4).
 */
export class Draws {
  private readonly generator: RandomGenerator

  constructor(seed: number) {
    this.generator = xoroshiro128plus(seed)
  }

  /** Strictly between 0 and 1. */
  private uniform(): number {
    return ((this.generator.next() >>> 0) + 0.5) / TWO_TO_32
  }

  /** Adds a draw to each of the first `n` numbers. */
  addTo(data: Float64Array, n: number, { distribution, limit, coverage }: Spreading): void {
    if (distribution === 'normal') this.addNormal(data, n, limit / coverage)
    else if (distribution === 'triangular')
      for (let i = 0; i < n; i++) data[i] = (data[i] as number) + limit * (this.uniform() + this.uniform() - 1)
    else for (let i = 0; i < n; i++) data[i] = (data[i] as number) + limit * (2 * this.uniform() - 1)
  }

  private addNormal(data: Float64Array, n: number, deviation: number): void {
    for (let i = 0; i < n; i += 2) {
      const radius = deviation * Math.sqrt(-2 * Math.log(this.uniform()))
      const angle = 2 * Math.PI * this.uniform()
      data[i] = (data[i] as number) + radius * Math.cos(angle)
      if (i + 1 < n) data[i + 1] = (data[i + 1] as number) + radius * Math.sin(angle)
    }
  }
}
