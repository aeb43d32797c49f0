import type { Library, Scope } from '../../language/index.ts'
import { nearest } from '../../units/index.ts'
import type { Node } from './node.ts'

/** Among more names than this, finding the nearest to a misspelt one takes milliseconds. */
const MANY_NAMES = 1000
/** The most misspelt names that get a suggestion among these. */
const MOST_LOOKED_FOR = 100

/** What the formulas of a sheet may refer to: its cells by name, with their types as they are at each question. */
export class SheetScope {
  /** Another number once a name or a type is another: what was said of a formula in error may be stale. */
  edition = 0
  private nearestTo = new Map<string, string | undefined>()

  constructor(private readonly nodes: () => ReadonlyMap<string, Node>) {}

  /** A name or the type of a cell is another now. */
  changed(): void {
    this.edition++
    this.nearestTo = new Map()
  }

  /** The scope as a formula sees it; the cell it belongs to is not among the names offered. */
  scope(library: Library, lenientLevels: boolean, except?: string): Scope {
    return {
      library,
      lenientLevels,
      nearestName: (name) => this.nearest(name),
      typeOf: (name) => {
        const node = this.nodes().get(name)
        return node ? (node.type ?? 'unknown') : undefined
      },
      names: () => [...this.nodes().keys()].filter((name) => name !== except),
    }
  }

  private nearest(name: string): string | undefined {
    const nodes = this.nodes()
    const isFound = this.nearestTo.has(name)
    if (!isFound && (nodes.size <= MANY_NAMES || this.nearestTo.size < MOST_LOOKED_FOR))
      this.nearestTo.set(name, nearest(name, nodes.keys()))
    return this.nearestTo.get(name)
  }
}
