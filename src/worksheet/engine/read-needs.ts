import { readAnyway } from '../../language/index.ts'
import { type Layout, VALUE } from './engine-view.ts'

/** The cells that the value of a cell was computed from, by position: of a formula with branches, those of the branch taken. */
export function readNeeds({ needs, programs, slots, states, values }: Layout, at: number): Int32Array {
  const all = needs[at] as Int32Array
  const program = programs[at]
  if (!program || states[at] !== VALUE || !readAnyway(program)) return all
  const places = slots[at] as Int32Array
  const read = new Set<string | symbol>()
  program(
    new Proxy(values, {
      get: (values, place) => {
        read.add(place)
        return values[Number(place)]
      },
    }),
    places,
  )
  return all.filter((need) => read.has(String(need)) || !places.includes(need))
}
