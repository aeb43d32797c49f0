import { damaged } from './limits.ts'
import * as words from './words.ts'

/**
 * Takes the filters of PNG (third edition, section 9) off rows that each start with their filter’s number.
 * The rows end up one behind the other from the start of `rows`, without the numbers; `unit` is the bytes of a pixel.
 */
export function unfilter(rows: Uint8Array, stride: number, height: number, unit: number): void {
  for (let y = 0; y < height; y++) {
    const from = y * (stride + 1) + 1
    const to = y * stride
    const above = y === 0 ? -1 : to - stride
    const filter = rows[from - 1] as number
    if (filter === 0) rows.copyWithin(to, from, from + stride)
    else if (filter === 1) undoSub(rows, from, to, stride, unit)
    else if (filter === 2) undoUp(rows, from, to, stride, above)
    else if (filter === 3) undoAverage(rows, from, to, stride, unit, above)
    else if (filter === 4) undoPaeth(rows, from, to, stride, unit, above)
    else throw damaged('PNG', words.unknownFilter(y + 1, filter))
  }
}

function undoSub(rows: Uint8Array, from: number, to: number, stride: number, unit: number): void {
  for (let i = 0; i < stride; i++)
    rows[to + i] = (rows[from + i] as number) + (i < unit ? 0 : (rows[to + i - unit] as number))
}

function undoUp(rows: Uint8Array, from: number, to: number, stride: number, above: number): void {
  for (let i = 0; i < stride; i++)
    rows[to + i] = (rows[from + i] as number) + (above < 0 ? 0 : (rows[above + i] as number))
}

function undoAverage(rows: Uint8Array, from: number, to: number, stride: number, unit: number, above: number): void {
  for (let i = 0; i < stride; i++) {
    const left = i < unit ? 0 : (rows[to + i - unit] as number)
    const up = above < 0 ? 0 : (rows[above + i] as number)
    rows[to + i] = (rows[from + i] as number) + ((left + up) >> 1)
  }
}

function undoPaeth(rows: Uint8Array, from: number, to: number, stride: number, unit: number, above: number): void {
  for (let i = 0; i < stride; i++) {
    const left = i < unit ? 0 : (rows[to + i - unit] as number)
    const up = above < 0 ? 0 : (rows[above + i] as number)
    const corner = i < unit || above < 0 ? 0 : (rows[above + i - unit] as number)
    const guess = left + up - corner
    const [byLeft, byUp, byCorner] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)]
    const nearest = byLeft <= byUp && byLeft <= byCorner ? left : byUp <= byCorner ? up : corner
    rows[to + i] = (rows[from + i] as number) + nearest
  }
}
