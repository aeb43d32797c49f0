/**
 * One way of computing the chain: `first`, then `size` cells each sqrt(previous² + 1.5 mm²) × 0.99, in millimetres.
 * The chain settles after some 2,000 cells, past which an edit from one number to another changes nothing. So that
 * all cells are computed by those too who stop where nothing changes, the first cell is unset before every edit.
 */
export interface Contender {
  readonly name: string
  /** Builds the chain; not timed. */
  prepare(size: number): void
  /** Takes the first cell's value away, so that no cell has one; not timed. */
  unset(): void
  /** Gives the first cell a value in millimetres and recomputes; the last cell's value in millimetres. Timed. */
  edit(value: number): number
}
