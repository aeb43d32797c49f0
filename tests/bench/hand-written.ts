import type { Contender } from './contender.ts'

/** A plain loop over numbers: no names, no units, no errors. What there is to be gained at most. */
export class HandWritten implements Contender {
  readonly name = 'a loop written by hand'
  private values = new Float64Array(0)

  prepare(size: number): void {
    this.values = new Float64Array(size + 1)
  }

  unset(): void {
    this.values.fill(Number.NaN)
  }

  edit(value: number): number {
    const { values } = this
    values[0] = value / 1000
    for (let i = 1; i < values.length; i++) {
      const previous = values[i - 1] as number
      values[i] = Math.sqrt(previous * previous + 1.5e-6) * 0.99
    }
    return (values[values.length - 1] as number) * 1000
  }
}
