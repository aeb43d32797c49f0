import { MAX_CELLS } from '../../worksheet/format/format.ts'
import type { Worksheet } from '../../worksheet/schema/document.ts'
import { difference, type Json, type Patch, PatchMisfit, patched } from './json-difference.ts'

/** A released worksheet of a job that a shorter document can refer to. The digest tells its versions apart. */
export interface BaseSheet {
  readonly job: string
  readonly digest: string
  readonly worksheet: Worksheet
}

/** Fetches the released worksheet of a job by its digest; undefined where there is none. */
export type FindBase = (job: string, digest: string) => Promise<Worksheet | undefined>

/** A run of cells of a base: which base, from which cell, how many; or a cell of the sheet's own. */
type Source = readonly [base: number, first: number, count: number] | { readonly [key: string]: Json }

/** A worksheet as what differs from the worksheets of some jobs; the first of them gives title and other keys. */
export interface SheetOnBases {
  readonly b: readonly (readonly [job: string, digest: string])[]
  readonly c: readonly Source[]
  readonly p?: Patch
}

const MOST_BASES = 3
/** A further base has to save this many characters before packing. */
const LEAST_SAVING = 100

const plain = (worksheet: Worksheet): { readonly cells: readonly Json[] } & { readonly [key: string]: Json } =>
  JSON.parse(JSON.stringify(worksheet))

const idOf = (cell: Json | undefined): string => (cell as { readonly id: string }).id

/** The shortest document that makes the worksheet of some of the bases; undefined where none of them helps. */
export function onBases(worksheet: Worksheet, candidates: readonly BaseSheet[]): SheetOnBases | undefined {
  const ids = new Set(worksheet.cells.map(({ id }) => id))
  const useful = candidates.filter((base) => base.worksheet.cells.some(({ id }) => ids.has(id)))
  let chosen: readonly BaseSheet[] = []
  let best: SheetOnBases | undefined
  let size = Number.POSITIVE_INFINITY
  while (chosen.length < MOST_BASES) {
    const tries = useful
      .filter((one) => !chosen.includes(one))
      .map((one) => {
        const bases = [...chosen, one]
        const made = differing(worksheet, bases)
        return { bases, made, size: JSON.stringify(made).length }
      })
    const next = tries.reduce<(typeof tries)[number] | undefined>(
      (least, one) => (least && least.size <= one.size ? least : one),
      undefined,
    )
    if (!next || next.size > size - LEAST_SAVING) break
    chosen = next.bases
    best = next.made
    size = next.size
  }
  return best
}

function differing(worksheet: Worksheet, bases: readonly BaseSheet[]): SheetOnBases {
  const after = plain(worksheet)
  const places = new Map<string, readonly [base: number, at: number]>()
  for (const [base, { worksheet: one }] of bases.entries())
    for (const [at, { id }] of one.cells.entries()) if (!places.has(id)) places.set(id, [base, at])
  const sources: (Source | [number, number, number])[] = []
  const cells: Json[] = []
  for (const cell of after.cells) {
    const place = places.get(idOf(cell))
    const last = sources.at(-1)
    if (!place) sources.push(cell as { readonly [key: string]: Json })
    else if (Array.isArray(last) && last[0] === place[0] && last[1] + last[2] === place[1]) last[2]++
    else sources.push([place[0], place[1], 1])
    cells.push(place ? plainCell(bases[place[0]] as BaseSheet, place[1]) : cell)
  }
  const patch = difference({ ...plain((bases[0] as BaseSheet).worksheet), cells }, after)
  return {
    b: bases.map(({ job, digest }) => [job, digest]),
    c: sources,
    ...(patch === undefined ? {} : { p: patch }),
  }
}

const plainCell = ({ worksheet }: BaseSheet, at: number): Json => JSON.parse(JSON.stringify(worksheet.cells[at]))

/** A base that is not there: which job it is of. */
export class BaseMissing extends Error {
  constructor(readonly job: string) {
    super(job)
  }
}

/** The worksheet, as data, that such a document describes. Throws BaseMissing, PatchMisfit. */
export async function fromBases(document: unknown, find: FindBase): Promise<unknown> {
  const { b, c, p } = readSheetOnBases(document)
  const bases = await Promise.all(
    b.map(async ([job, digest]) => {
      const worksheet = await find(job, digest)
      if (!worksheet) throw new BaseMissing(job)
      return plain(worksheet)
    }),
  )
  const cells: Json[] = []
  for (const source of c) {
    if (!Array.isArray(source)) cells.push(source as Json)
    else {
      const [base, first, count] = source as readonly [number, number, number]
      const run = bases[base]?.cells.slice(first, first + count) ?? []
      if (run.length !== count) throw new PatchMisfit()
      cells.push(...run)
    }
    if (cells.length > MAX_CELLS) throw new PatchMisfit()
  }
  const before = { ...(bases[0] as { readonly [key: string]: Json }), cells }
  return p === undefined ? before : patched(before, p)
}

const isCount = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 0

function readSheetOnBases(document: unknown): SheetOnBases {
  const { b, c } = (typeof document === 'object' && document !== null ? document : {}) as Partial<SheetOnBases>
  const isBases =
    Array.isArray(b) &&
    b.length > 0 &&
    b.length <= MOST_BASES &&
    b.every((one) => Array.isArray(one) && one.length === 2 && one.every((word) => typeof word === 'string'))
  const isCells =
    Array.isArray(c) &&
    c.every((one) =>
      Array.isArray(one) ? one.length === 3 && one.every(isCount) : typeof one === 'object' && one !== null,
    )
  if (!isBases || !isCells) throw new PatchMisfit()
  return document as SheetOnBases
}
