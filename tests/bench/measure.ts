export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  const upper = sorted[middle] as number
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] as number) + upper) / 2
}

/** How long something takes, in milliseconds. */
export function timed(work: () => unknown): number {
  const start = performance.now()
  work()
  return performance.now() - start
}

/** The heap in use after tidying up, in megabytes; needs --expose-gc. */
export function heap(): number {
  globalThis.gc?.()
  globalThis.gc?.()
  return process.memoryUsage().heapUsed / 1e6
}

export const ms = (time: number): string => `${time < 10 ? time.toPrecision(3) : time.toFixed(0)} ms`
