/** A graph as the indices each node depends on. */
export type Dependencies = readonly (readonly number[])[]

export interface Order {
  /** The nodes in an order in which each comes after what it depends on; those in a cycle, or dependent on one, are left out. */
  readonly sorted: readonly number[]
  /** For each node in a cycle, a path round it as node indices; the nodes of one cycle share it. */
  readonly cycles: ReadonlyMap<number, readonly number[]>
  /** Nodes that are in no cycle but depend on one, in dependency order. */
  readonly behind: readonly number[]
}

/** Sorts a graph by loops over arrays, so that a chain of any length is fine. */
export function dependencyOrder(dependencies: Dependencies): Order {
  const sorted = sortable(dependencies)
  if (sorted.length === dependencies.length) return { sorted, cycles: new Map(), behind: [] }
  const left = new Set(dependencies.keys())
  for (const node of sorted) left.delete(node)
  const cycles = findCycles(left, dependencies)
  // Without the nodes of the cycles what is left sorts like any graph.
  const open = (node: number): boolean => left.has(node) && !cycles.has(node)
  const rest = dependencies.map((list, node) => (open(node) ? list.filter(open) : []))
  return { sorted, cycles, behind: sortable(rest).filter(open) }
}

/** Kahn's algorithm: every node that is in no cycle and depends on none, in dependency order. */
function sortable(dependencies: Dependencies): number[] {
  const size = dependencies.length
  const dependants: number[][] = Array.from({ length: size }, () => [])
  const open = new Int32Array(size)
  dependencies.forEach((list, node) => {
    open[node] = list.length
    for (const dependency of list) (dependants[dependency] as number[]).push(node)
  })
  const sorted: number[] = []
  for (let node = 0; node < size; node++) if (open[node] === 0) sorted.push(node)
  for (let at = 0; at < sorted.length; at++)
    for (const dependant of dependants[sorted[at] as number] as number[]) {
      const still = (open[dependant] as number) - 1
      open[dependant] = still
      if (still === 0) sorted.push(dependant)
    }
  return sorted
}

/** Of the nodes left over, those in a cycle, each with a shortest path round it, found once for each cycle. */
function findCycles(left: ReadonlySet<number>, dependencies: Dependencies): Map<number, readonly number[]> {
  const cycles = new Map<number, readonly number[]>()
  for (const component of components(left, dependencies)) {
    const members = new Set(component)
    const start = Math.min(...component.slice(0, 1000))
    const loops = component.length > 1 || (dependencies[start] as readonly number[]).includes(start)
    if (!loops) continue
    const path = pathRound(start, members, dependencies)
    for (const member of component) cycles.set(member, path)
  }
  return cycles
}

/** Strongly connected components by Tarjan's algorithm, with an explicit stack. */
function components(nodes: ReadonlySet<number>, dependencies: Dependencies): number[][] {
  const index = new Map<number, number>()
  const low = new Map<number, number>()
  const onStack = new Set<number>()
  const stack: number[] = []
  const found: number[][] = []
  for (const root of nodes) {
    if (index.has(root)) continue
    const work: { node: number; next: number }[] = [{ node: root, next: 0 }]
    while (work.length > 0) {
      const frame = work[work.length - 1] as { node: number; next: number }
      const { node } = frame
      if (frame.next === 0) {
        index.set(node, index.size)
        low.set(node, index.get(node) as number)
        stack.push(node)
        onStack.add(node)
      }
      const list = dependencies[node] as readonly number[]
      let descended = false
      while (frame.next < list.length) {
        const dependency = list[frame.next++] as number
        if (!nodes.has(dependency)) continue
        if (!index.has(dependency)) {
          work.push({ node: dependency, next: 0 })
          descended = true
          break
        }
        if (onStack.has(dependency)) low.set(node, Math.min(low.get(node) as number, index.get(dependency) as number))
      }
      if (descended) continue
      work.pop()
      const parent = work[work.length - 1]
      if (parent) low.set(parent.node, Math.min(low.get(parent.node) as number, low.get(node) as number))
      if (low.get(node) === index.get(node)) {
        const at = stack.lastIndexOf(node)
        const component = stack.splice(at)
        for (const member of component) onStack.delete(member)
        found.push(component)
      }
    }
  }
  return found
}

/** The shortest path from a node through its cycle back to itself. */
function pathRound(start: number, members: ReadonlySet<number>, dependencies: Dependencies): number[] {
  const from = new Map<number, number>()
  const queue = [start]
  for (let at = 0; at < queue.length; at++) {
    const node = queue[at] as number
    for (const dependency of dependencies[node] as readonly number[]) {
      if (dependency === start) {
        const back = [node]
        for (let step = node; step !== start; back.push(step)) step = from.get(step) as number
        return back.reverse()
      }
      if (members.has(dependency) && !from.has(dependency)) {
        from.set(dependency, node)
        queue.push(dependency)
      }
    }
  }
  return [start]
}
