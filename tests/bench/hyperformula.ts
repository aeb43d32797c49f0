import { HyperFormula } from 'hyperformula'
import type { Contender } from './contender.ts'

const at = (row: number): { sheet: number; row: number; col: number } => ({ sheet: 0, row, col: 0 })

/** A spreadsheet engine: plain numbers, no units. */
export class Hyperformula implements Contender {
  readonly name = 'hyperformula, plain numbers'
  private engine: HyperFormula | undefined
  private size = 0

  prepare(size: number): void {
    const rows = Array.from({ length: size }, (_, i) => [`=SQRT(A${i + 1}^2 + 1.5) * 0.99`])
    this.engine = HyperFormula.buildFromArray([['unset'], ...rows], { licenseKey: 'gpl-v3' })
    this.size = size
  }

  unset(): void {
    // A text makes an error of every cell.
    this.engine?.setCellContents(at(0), 'unset')
  }

  edit(value: number): number {
    this.engine?.setCellContents(at(0), value)
    return this.engine?.getCellValue(at(this.size)) as number
  }
}
