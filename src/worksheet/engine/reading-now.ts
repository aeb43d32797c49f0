import { type GivenReading, readGiven } from '../document/read-given.ts'
import { constantsRead } from './converted-light.ts'
import type { Engine } from './engine.ts'
import { VALUE } from './engine-view.ts'
import type { Node } from './node.ts'

/** How a given's text is understood now: what the constant of a meter converts changes with that constant. */
export function readingNow(engine: Engine, { cell, reading, computable }: Node): GivenReading | undefined {
  if (!reading || !computable || cell.kind !== 'given') return reading
  const constants = constantsRead(cell).flatMap(([sign, name]) => {
    const node = engine.named(name)
    return node && engine.state(node) === VALUE ? [[sign, engine.value(node) as number]] : []
  })
  return readGiven(cell, Object.fromEntries(constants))
}
