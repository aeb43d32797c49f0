/** A cell that may be locked against change at the stand. */
interface Lockable {
  readonly locked?: boolean | undefined
}

/** The cell locked against change at the stand, or unlocked; its value stays as it is. */
export function withLock<C extends Lockable>(cell: C, on: boolean): C {
  const { locked: _, ...rest } = cell
  return (on ? { ...rest, locked: true } : rest) as C
}
