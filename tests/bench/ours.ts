import { LIBRARY } from '../../src/functions/index.ts'
import { type Cell, FORMAT, type Given, Sheet, VERSION, type Worksheet } from '../../src/worksheet/index.ts'
import type { Contender } from './contender.ts'

const given = (value: string): Given => ({ kind: 'given', id: 'c0', name: 'c0', unit: 'mm', value })

const worksheet = (cells: Cell[]): Worksheet => ({ format: FORMAT, version: VERSION, title: 'Speed', cells })

/** Opens a sheet of a given, `c0`, and results off it, `c1` and on, each with its formula. */
export const sheetOf = (size: number, formula: (i: number) => string): Sheet =>
  new Sheet(
    worksheet([
      given(''),
      ...Array.from({ length: size }, (_, k): Cell => {
        const name = `c${k + 1}`
        return { kind: 'result', id: name, name, unit: 'mm', formula: formula(k + 1) }
      }),
    ]),
    LIBRARY,
  )

/** Types into the given, as a technician would. */
export const type = (sheet: Sheet, text: string): void => sheet.apply({ do: 'replace', cell: given(text) })

/** A result in millimetres. */
export function millimetres(sheet: Sheet, id: string): number {
  const outcome = sheet.outcome(id)
  if (outcome.state !== 'value') throw new Error(`${id} has no value: it is ${outcome.state}.`)
  return (outcome.value as number) * 1000
}

/** How many cells an edit computes. */
export function reachOf(sheet: Sheet, text: string): number {
  let reach = 0
  const stop = sheet.watch((changed) => {
    reach = changed === 'all' ? sheet.cells.length : changed.size
  })
  type(sheet, text)
  stop()
  return reach
}

/** A worksheet: text typed into a given, units checked, everything recomputed by the engine the app runs on. */
export class Ours implements Contender {
  readonly name = 'a worksheet'
  sheet = sheetOf(0, () => '')
  private last = 'c0'

  prepare(size: number): void {
    this.sheet = sheetOf(size, (i) => `sqrt(c${i - 1}^2 + 1.5 [mm^2]) * 0.99`)
    this.last = `c${size}`
  }

  unset(): void {
    type(this.sheet, '')
  }

  edit(value: number): number {
    type(this.sheet, `${value} mm`)
    return millimetres(this.sheet, this.last)
  }
}
