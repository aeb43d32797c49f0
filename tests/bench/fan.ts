import { heap, median, ms, timed } from './measure.ts'
import { millimetres, reachOf, sheetOf, type } from './ours.ts'

const SIZE = 10_000
const EDITS = 60

/** Many result cells off one given, which is edited. */
export function fan(): void {
  const before = heap()
  const sheet = sheetOf(SIZE, (i) => `sqrt(c0^2 + ${i} [mm^2]) * 0.99`)
  const memory = heap() - before
  type(sheet, '100 mm')
  if (reachOf(sheet, '101 mm') !== SIZE + 1) throw new Error('The edit did not reach every cell.')
  const times = Array.from({ length: EDITS }, (_, k) => timed(() => type(sheet, `${102 + k} mm`)))
  const expected = Math.sqrt((101 + EDITS) ** 2 + SIZE) * 0.99
  if (Math.abs(millimetres(sheet, `c${SIZE}`) / expected - 1) > 1e-9) throw new Error('The fan computes wrongly.')
  console.log(`A fan of ${SIZE} result cells off one given: ${ms(median(times))} an edit; ${memory.toFixed(0)} MB`)
}
