import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Dependencies, dependencyOrder } from '../../../src/worksheet/engine/dependency-order.ts'

/** Graphs of up to ten nodes, from sparse to dense, a node that depends on itself among them. */
const graph: fc.Arbitrary<Dependencies> = fc.integer({ min: 0, max: 10 }).chain((size) =>
  fc.array(fc.uniqueArray(fc.nat(Math.max(0, size - 1)), { maxLength: Math.min(3, size) }), {
    minLength: size,
    maxLength: size,
  }),
)

/** The nodes that a node leads to, in one step or more. */
function reachedFrom(start: number, dependencies: Dependencies): Set<number> {
  const reached = new Set<number>()
  const open = [...(dependencies[start] as readonly number[])]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (reached.has(at)) continue
    reached.add(at)
    open.push(...(dependencies[at] as readonly number[]))
  }
  return reached
}

/** The fewest steps from a node back to itself. */
function roundFrom(start: number, dependencies: Dependencies): number {
  let front = new Set([start])
  for (let steps = 1; steps <= dependencies.length; steps++) {
    front = new Set([...front].flatMap((node) => dependencies[node] as readonly number[]))
    if (front.has(start)) return steps
  }
  return Number.POSITIVE_INFINITY
}

const isAfterItsNeeds = (order: readonly number[], dependencies: Dependencies, known: ReadonlySet<number>): boolean =>
  order.every((node, at) =>
    (dependencies[node] as readonly number[]).every((need) => known.has(need) || order.indexOf(need) < at),
  ) &&
  order.every((node) =>
    (dependencies[node] as readonly number[]).every((need) => known.has(need) || order.includes(need)),
  )

describe('the order of a graph', () => {
  test('has each node after what it depends on, once; or in a cycle, or behind one', () => {
    fc.assert(
      fc.property(graph, (dependencies) => {
        const { sorted, cycles, behind } = dependencyOrder(dependencies)
        const nodes = [...dependencies.keys()]
        const reach = nodes.map((node) => reachedFrom(node, dependencies))
        const isInCycle = (node: number): boolean => reach[node]?.has(node) ?? false
        expect([...cycles.keys()].sort()).toEqual(nodes.filter(isInCycle).sort())
        const after = nodes.filter((node) => !isInCycle(node) && [...(reach[node] ?? [])].some(isInCycle))
        expect([...behind].sort()).toEqual(after.sort())
        expect([...sorted, ...behind, ...cycles.keys()].sort()).toEqual(nodes.sort())
        expect(isAfterItsNeeds(sorted, dependencies, new Set())).toBe(true)
        expect(isAfterItsNeeds(behind, dependencies, new Set([...sorted, ...cycles.keys()]))).toBe(true)
      }),
    )
  })

  test('names a shortest way round each cycle from its first node, the same for all in it', () => {
    fc.assert(
      fc.property(graph, (dependencies) => {
        const { cycles } = dependencyOrder(dependencies)
        const reach = [...dependencies.keys()].map((node) => reachedFrom(node, dependencies))
        for (const [node, path] of cycles) {
          const together = [...cycles.keys()].filter((one) => reach[one]?.has(node) && reach[node]?.has(one))
          expect(path[0]).toBe(Math.min(...together))
          expect(path).toHaveLength(roundFrom(path[0] as number, dependencies))
          path.forEach((one, at) => {
            expect(dependencies[one]).toContain(path[(at + 1) % path.length])
          })
          for (const one of together) expect(cycles.get(one)).toBe(path)
        }
      }),
    )
  })
})
