import type { Cell, NamedCell, Range } from '../schema/document.ts'
import { cellsNamed } from './join-names.ts'

type Kinds = ReadonlyMap<string, NamedCell['kind']>

/** Cells that come into a sheet, without what is there already, and listing only what they still can. */
export function tidied(coming: readonly Cell[], there: readonly Cell[]): Cell[] {
  const kinds: Kinds = new Map([...cellsNamed([...coming, ...there])].map(([name, { kind }]) => [name, kind]))
  const said = new Set(there.map(sameness).filter((one) => one !== undefined))
  return coming.flatMap((cell) => {
    const same = sameness(cell)
    if (same !== undefined && said.has(same)) return []
    if (same !== undefined) said.add(same)
    return relisted(cell, kinds) ?? []
  })
}

/** Notes, steps and drawings with the same of this are the same to a reader. */
function sameness(cell: Cell): string | undefined {
  if (cell.kind === 'note')
    return cell.role === 'heading' ? undefined : `note ${cell.text.replace(/\s+/g, ' ').trim().toLowerCase()}`
  if (cell.kind === 'drawing') return `${cell.drawing} ${JSON.stringify(Object.entries(cell.from).sort())}`
  if (cell.kind === 'steps') return `steps ${cell.steps.map(({ text, reading }) => `${text} ${reading}`).join('\n')}`
  return undefined
}

/** A cell that lists names, without those that are no longer what it lists; undefined where nothing is left of it. */
function relisted(cell: Cell, kinds: Kinds): Cell | undefined {
  const isGiven = (name: string): boolean => kinds.get(name) === 'given'
  const isFigure = (name: string): boolean => isGiven(name) || kinds.get(name) === 'result'
  switch (cell.kind) {
    case 'given':
    case 'frame':
      return cell.fills ? { ...cell, fills: only(cell.fills, (_, name) => isGiven(name)) } : cell
    case 'drawing':
      return cell.moves ? { ...cell, moves: cell.moves.filter(isGiven) } : cell
    case 'steps':
      return {
        ...cell,
        steps: cell.steps.map(({ reading, sets, ...step }) => {
          const set = sets?.filter(isFigure) ?? []
          return {
            ...step,
            ...(reading !== undefined && isFigure(reading) ? { reading } : {}),
            ...(set.length > 0 ? { sets: set } : {}),
          }
        }),
      }
    case 'range':
      return relistedRange(cell, kinds)
    case 'variants':
      return {
        ...cell,
        sets: cell.sets.map((set) => ({ ...set, values: only(set.values, isGiven) })),
        results: cell.results.filter((name) => kinds.has(name)),
      }
    default:
      return cell
  }
}

/** A range without what it can no longer show or vary; undefined where that is what it is over. */
function relistedRange({ second, values, ...cell }: Range, kinds: Kinds): Range | undefined {
  // What is varied may be a side of a given, `original.width`; what is plotted is a column, `originals.width`.
  const kindOf = (of: string): NamedCell['kind'] | undefined => kinds.get(of.replace(/\..*$/, ''))
  if (cell.of !== undefined && kindOf(cell.of) !== (cell.columns ? 'table' : 'given')) return undefined
  return {
    ...cell,
    ...(second?.of !== undefined && kindOf(second.of) === 'given' ? { second } : {}),
    ...(values !== undefined && kindOf(values) === 'table' ? { values } : {}),
    results: cell.results.filter((name) => kinds.has(name)),
  }
}

const only = (
  texts: Readonly<Record<string, string>>,
  keep: (key: string, text: string) => boolean,
): Record<string, string> => Object.fromEntries(Object.entries(texts).filter(([key, text]) => keep(key, text)))
