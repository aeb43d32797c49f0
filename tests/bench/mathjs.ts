import { all, create, type EvalFunction, type Unit } from 'mathjs'
import type { Contender } from './contender.ts'

const math = create(all ?? {})

/** mathjs with its units: each cell an expression compiled beforehand, evaluated in order. */
export class MathjsUnits implements Contender {
  readonly name = 'mathjs with units'
  private cells: { readonly name: string; readonly code: EvalFunction }[] = []
  private scope = new Map<string, Unit>()

  prepare(size: number): void {
    this.cells = Array.from({ length: size }, (_, i) => ({
      name: `c${i + 1}`,
      code: math.compile(`sqrt(c${i}^2 + 1.5 mm^2) * 0.99`),
    }))
  }

  unset(): void {
    this.scope = new Map()
  }

  edit(value: number): number {
    const { scope } = this
    scope.set('c0', math.unit(value, 'mm'))
    for (const { name, code } of this.cells) scope.set(name, code.evaluate(scope) as Unit)
    return (scope.get(`c${this.cells.length}`) as Unit).toNumber('mm')
  }
}
