import { type Box, isNear, type Point } from '../canvas/geometry.ts'

/** Curves without the chords that touch the given boxes. */
export function cutAround(runs: readonly (readonly Point[])[], boxes: readonly Box[]): readonly (readonly Point[])[] {
  return runs.flatMap((run) => {
    const left: Point[][] = []
    let current: Point[] = []
    const finish = () => {
      if (current.length > 1) left.push(current)
      current = []
    }
    for (let at = 1; at < run.length; at++) {
      const [from, to] = [run[at - 1] as Point, run[at] as Point]
      if (boxes.some((box) => isNear(from, to, box))) finish()
      else if (current.length === 0) current.push(from, to)
      else current.push(to)
    }
    finish()
    return left
  })
}
