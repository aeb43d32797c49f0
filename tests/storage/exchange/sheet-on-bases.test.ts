import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { difference, type Json, PatchMisfit, patched } from '../../../src/storage/exchange/json-difference.ts'
import { fromLink, LinkError, toLink } from '../../../src/storage/exchange/link.ts'
import type { BaseSheet, FindBase } from '../../../src/storage/exchange/sheet-on-bases.ts'
import { fromBases } from '../../../src/storage/exchange/sheet-on-bases.ts'
import type { Worksheet } from '../../../src/worksheet/index.ts'
import { worksheets } from '../sheets.ts'

const json = fc.jsonValue({ maxDepth: 4 }).map((value) => JSON.parse(JSON.stringify(value)) as Json)

const baseOf = (worksheet: Worksheet, job = 'job'): BaseSheet => ({ job, digest: '0123456789', worksheet })
const findIn =
  (bases: readonly BaseSheet[]): FindBase =>
  async (job, digest) =>
    bases.find((base) => base.job === job && base.digest === digest)?.worksheet

describe('a difference of two values', () => {
  test('makes the second of the first, whatever they are', () => {
    fc.assert(
      fc.property(json, json, (before, after) => {
        const patch = difference(before, after)
        expect(patch === undefined ? before : patched(before, patch)).toEqual(after)
      }),
      { numRuns: 1000 },
    )
  })

  test('names what changed alone', () => {
    const cell = { id: 'a', value: '60', hint: 'Engraved on the lens, at the front.' }
    expect(difference(cell, { ...cell, value: '90' })).toEqual({ value: ['90'] })
    expect(difference([['1'], ['2'], ['3']], [['1'], ['2', '4']])).toEqual([[['1'], ['2', '4']]])
    expect(patched([1, 2, 3], { length: [1] })).toEqual([1])
  })

  test('is refused where it does not fit', () => {
    for (const [before, patch] of [
      [{ a: 1 }, []],
      ['text', { a: [1] }],
      [[1], { 5: [1] }],
      [[1], { length: [9] }],
      [[1], { a: [1] }],
    ] as const)
      expect(() => patched(before as Json, patch as never), JSON.stringify(patch)).toThrow(PatchMisfit)
  })
})

describe('a sheet made from a job', () => {
  test('opens as it was sent, whatever of it differs from the job', async () => {
    await fc.assert(
      fc.asyncProperty(worksheets, worksheets, worksheets, async (sheet, one, other) => {
        const cells = [...sheet.cells.slice(0, 3), ...one.cells.slice(2), ...other.cells.slice(1, 3)]
        const mixed = {
          ...sheet,
          cells: cells.map((cell, at) => ({ ...cell, id: at % 5 ? `cell-${at}` : `own-${at}` })),
        }
        const bases = [baseOf(one, 'one'), baseOf(other, 'other')]
        expect(await fromLink(await toLink(mixed as Worksheet, bases), findIn(bases))).toEqual(mixed)
      }),
      { numRuns: 300 },
    )
  })

  test('is never longer than the whole of it', async () => {
    await fc.assert(
      fc.asyncProperty(worksheets, worksheets, async (sheet, base) => {
        expect((await toLink(sheet, [baseOf(base)])).length).toBeLessThanOrEqual((await toLink(sheet)).length)
      }),
      { numRuns: 100 },
    )
  })

  const job: Worksheet = {
    format: 'evenfield-worksheet',
    version: 2,
    title: 'A job',
    cells: Array.from({ length: 40 }, (_, at) => ({
      kind: 'given' as const,
      id: `g-${at}`,
      name: `g${at}`,
      label: `Given number ${at}, and how it is read off a rule`,
      value: `${at} mm`,
    })),
  }
  const changed = {
    ...job,
    cells: job.cells.with(7, { ...(job.cells[7] as (typeof job.cells)[7]), value: '99 mm' } as never),
  }

  test('says which job is missing where it is not there', async () => {
    const link = await toLink(changed, [baseOf(job, 'tithe-map')])
    expect(link).toMatch(/^s=2\./)
    const why = await fromLink(link).catch((error: unknown) => error)
    expect(why).toBeInstanceOf(LinkError)
    expect((why as Error).message).toMatch(/“tithe-map”.*Reload the page/)
  })

  test('altered or made up, it opens as nothing or as a worksheet', async () => {
    const bases = [baseOf(job)]
    const documents: readonly unknown[] = [
      null,
      {},
      { b: [], c: [] },
      { b: [['job', '0123456789']] },
      { b: [['job', '0123456789']], c: [[1, 0, 1]] },
      { b: [['job', '0123456789']], c: [[0, 39, 2]] },
      { b: [['job', '0123456789']], c: [[0, -1, 2]] },
      { b: [['job', '0123456789']], c: Array.from({ length: 600 }, () => [0, 0, 40]) },
      { b: [['job', '0123456789']], c: ['text'] },
      { b: [['job', '0123456789']], c: [[0, 0, 40]], p: { cells: [] } },
    ]
    for (const document of documents)
      await expect(fromBases(document, findIn(bases)), JSON.stringify(document)?.slice(0, 80)).rejects.toThrow(
        PatchMisfit,
      )
  })
})
